-- The language server, for `vim.lsp.enable("roomspec")`. The command is found on PATH.
return {
  cmd = { "roomspec", "serve" },
  filetypes = { "roomspec" },
  root_markers = { ".git", "roomspec.toml" },
}
