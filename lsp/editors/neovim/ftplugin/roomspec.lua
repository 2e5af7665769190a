-- What a room file needs of the editor itself: comments, names as words, and lines under their heading.
vim.bo.commentstring = "# %s"
vim.bo.comments = ":#"
vim.opt_local.iskeyword = "@,48-57,192-255,_,-,."
vim.opt_local.formatoptions:remove("t")
vim.bo.expandtab = true
vim.bo.shiftwidth = 2
vim.bo.softtabstop = -1
vim.bo.indentexpr = "v:lua.require'roomspec_indent'()"
vim.bo.indentkeys = "o,O,!^F"
vim.b.undo_ftplugin = "setlocal commentstring< comments< iskeyword< formatoptions< expandtab< shiftwidth< "
  .. "softtabstop< indentexpr< indentkeys<"

-- Colours come from the server; sooner, and without one, where the tree-sitter parser has been compiled.
pcall(vim.treesitter.start)
