-- How it shows what the server knows of a word; the kinds of words have Neovim's own colours.
local M = {}

-- What is told of a word, by the name of the server's modifier. The trade of an element has no look until given one.
M.looks = {
  declaration = { link = '@type' },
  assumed = { underdotted = true },
  waived = { link = 'DiagnosticUnnecessary' },
  claim = { italic = true },
  ordered = { bold = true },
  poured = { bold = true },
  set = { bold = true },
  framing = {},
  foundation = {},
  passage = {},
  service = {},
  promise = {},
}

-- A colour scheme forgets what it does not know.
function M.set()
  for modifier, look in pairs(M.looks) do
    if next(look) then
      vim.api.nvim_set_hl(0, '@lsp.mod.' .. modifier .. '.framing', vim.tbl_extend('error', look, { default = true }))
    end
  end
end

return M
