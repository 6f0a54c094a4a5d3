-- Neovim keeps the places that belong to a diagnostic but does not show them.
local M = {}

-- Lists the places that belong to the findings of the cursor's line: where the numbers come from, what follows.
function M.list()
  local line = vim.api.nvim_win_get_cursor(0)[1] - 1
  local client = vim.lsp.get_clients({ bufnr = 0, name = 'storyrod' })[1]
  local items = {}
  for _, diagnostic in ipairs(vim.diagnostic.get(0, { lnum = line })) do
    local lsp = vim.tbl_get(diagnostic, 'user_data', 'lsp') or {}
    for _, related in ipairs(client and lsp.relatedInformation or {}) do
      local item = vim.lsp.util.locations_to_items({ related.location }, client.offset_encoding)[1]
      item.text = related.message
      table.insert(items, item)
    end
  end
  if #items == 0 then return vim.notify('no other place belongs to a finding on this line') end
  vim.fn.setloclist(0, {}, ' ', { title = 'places that belong to it', items = items })
  vim.cmd.lopen()
end

return M
