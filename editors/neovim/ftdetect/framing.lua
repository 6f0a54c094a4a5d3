vim.filetype.add({ extension = { framing = 'framing' } })
