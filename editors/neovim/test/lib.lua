-- What the tests share: files of a spec, waiting, places by their text.
local M = { folder = vim.env.SPEC, LONG = 20000 }

function M.write(name, text)
  local file = assert(io.open(M.folder .. '/' .. name, 'w'))
  file:write(text)
  file:close()
end

function M.sample(name)
  return table.concat(vim.fn.readfile('grammar/samples/' .. name .. '.framing'), '\n') .. '\n'
end

function M.fail(what)
  io.stderr:write('not as it should be: ' .. what .. '\n')
  for _, d in ipairs(vim.diagnostic.get()) do
    io.stderr:write(('  shown: %s:%d:%d %s\n'):format(vim.api.nvim_buf_get_name(d.bufnr), d.lnum + 1, d.col + 1, d.message))
  end
  vim.cmd.cquit()
end

function M.same(what, is, should_be)
  if not vim.deep_equal(is, should_be) then
    M.fail(('%s: %s, not %s'):format(what, vim.inspect(is), vim.inspect(should_be)))
  end
end

-- Waits until a condition holds.
function M.check(what, condition)
  if not vim.wait(M.LONG, condition, 10) then M.fail(what) end
end

function M.text(buffer)
  return table.concat(vim.api.nvim_buf_get_lines(buffer or 0, 0, -1, false), '\n')
end

-- The row and the column, from 0, where `text` stands first in a buffer, so many characters further.
function M.place(buffer, text, behind)
  for row, line in ipairs(vim.api.nvim_buf_get_lines(buffer, 0, -1, false)) do
    local first = line:find(text, 1, true)
    if first then return row - 1, first - 1 + (behind or 0) end
  end
  M.fail('there is no ' .. text)
end

function M.put_cursor(buffer, text, behind)
  local row, column = M.place(buffer, text, behind)
  vim.api.nvim_win_set_cursor(0, { row + 1, column })
end

-- Puts `new` where `old` stands first in the buffer, as typing does. Returns the line, from 1.
function M.replace(buffer, old, new)
  local row, column = M.place(buffer, old)
  vim.api.nvim_buf_set_text(buffer, row, column, row, column + #old, { new })
  return row + 1
end

function M.client(buffer)
  return vim.lsp.get_clients({ bufnr = buffer, name = 'storyrod' })[1]
end

function M.wait_for_server(buffer)
  M.check('the server attaches', function()
    local client = M.client(buffer)
    return client and client.initialized
  end)
end

-- Runs a test and leaves: nothing can go wrong unseen.
function M.run(main)
  local ok, fault = xpcall(main, debug.traceback)
  if not ok then M.fail(fault) end
  vim.cmd.quitall({ bang = true })
end

return M
