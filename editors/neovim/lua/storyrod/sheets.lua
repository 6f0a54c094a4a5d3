-- The server's sheets, each in a window of its own that nobody can write in.
local M = {}

local function complain(what)
  vim.notify('storyrod: ' .. what, vim.log.levels.ERROR)
end

-- What a sheet is called: `storyrod://takedown/B1`.
local function name_of(command, argument)
  local parts = { (command:gsub('^storyrod%.', '')), argument.element, argument.upper, argument.lower }
  local said = {}
  for i = 1, 4 do
    if type(parts[i]) == 'string' then table.insert(said, parts[i]) end
  end
  return 'storyrod://' .. table.concat(said, '/')
end

-- Shows a text below the window it was asked from; a sheet asked for anew takes the place of the old one.
local function show(name, text)
  local buffer = vim.iter(vim.api.nvim_list_bufs()):find(function(one) return vim.api.nvim_buf_get_name(one) == name end)
  if buffer then
    vim.api.nvim_set_current_win(vim.fn.bufwinid(buffer))
  else
    vim.cmd('botright new')
    buffer = vim.api.nvim_get_current_buf()
    vim.api.nvim_buf_set_name(buffer, name)
    vim.bo[buffer].buftype = 'nofile'
    vim.bo[buffer].bufhidden = 'wipe'
    vim.bo[buffer].swapfile = false
    -- A caution is never cut off by the edge of the window.
    vim.wo[0][0].wrap = true
    vim.wo[0][0].linebreak = true
    vim.wo[0][0].breakindent = true
    vim.wo[0][0].breakindentopt = 'shift:4'
    vim.keymap.set('n', 'q', '<C-w>c', { buffer = buffer, desc = 'close the sheet' })
  end
  vim.bo[buffer].modifiable = true
  vim.api.nvim_buf_set_lines(buffer, 0, -1, false, vim.split((text:gsub('\n$', '')), '\n'))
  local height = vim.api.nvim_win_text_height(0, {}).all
  vim.api.nvim_win_set_height(0, math.max(math.min(height, math.floor(vim.o.lines * 0.6)), 3))
  vim.bo[buffer].modifiable = false
  vim.bo[buffer].modified = false
end

-- Asks the server for a sheet. `argument` is what its commands take: the file, an element or two floors.
function M.open(command, argument)
  local client = vim.lsp.get_clients({ name = 'storyrod', bufnr = vim.uri_to_bufnr(argument.uri) })[1]
  if not client then return complain('no language server runs for this file; `:checkhealth storyrod` tells why') end
  client:request('workspace/executeCommand', { command = command, arguments = { argument } }, function(fault, text)
    if fault then return complain(fault.message) end
    show(name_of(command, argument), text)
  end)
end

return M
