vim.lsp.enable('storyrod')

vim.api.nvim_create_user_command('Framing', function(call) require('storyrod.command').run(call) end, {
  nargs = '+',
  complete = function(begun, line) return require('storyrod.command').complete(begun, line) end,
  desc = 'open a sheet of the house, run a lens, list the places of a finding',
})

-- What a lens asks for.
for _, command in ipairs({ 'takedown', 'calc', 'rod', 'steps' }) do
  vim.lsp.commands['storyrod.' .. command] = function(asked)
    require('storyrod.sheets').open(asked.command, asked.arguments[1])
  end
end

local group = vim.api.nvim_create_augroup('storyrod', {})

local function set_colours() require('storyrod.colours').set() end
vim.api.nvim_create_autocmd('ColorScheme', { group = group, callback = set_colours })

vim.api.nvim_create_autocmd('LspAttach', {
  group = group,
  callback = function(attached)
    local client = vim.lsp.get_client_by_id(attached.data.client_id)
    if not client or client.name ~= 'storyrod' then return end
    set_colours()
    local function refresh() vim.lsp.codelens.refresh({ bufnr = attached.buf }) end
    vim.api.nvim_clear_autocmds({ group = group, buffer = attached.buf })
    vim.api.nvim_create_autocmd({ 'BufEnter', 'InsertLeave', 'TextChanged' }, {
      group = group,
      buffer = attached.buf,
      callback = refresh,
    })
    refresh()
  end,
})
