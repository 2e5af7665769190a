vim.filetype.add({ extension = { room = "roomspec" } })
