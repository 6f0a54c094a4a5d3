-- One session in a real Neovim: write a spec of two files, open one, and look at what is shown.
local lib = dofile('editors/neovim/test/lib.lua')
local folder, fail, check, replace, put_cursor = lib.folder, lib.fail, lib.check, lib.replace, lib.put_cursor

-- The diagnostics of a file that are about this text.
local function shown(name, text)
  local buffer = vim.fn.bufnr(folder .. '/' .. name)
  if buffer < 0 then return {} end
  vim.fn.bufload(buffer)
  return vim.tbl_filter(function(d)
    return d.source == 'storyrod' and vim.api.nvim_buf_get_text(buffer, d.lnum, d.col, d.end_lnum, d.end_col, {})[1] == text
  end, vim.diagnostic.get(buffer))
end

lib.run(function()
  -- A house with nothing wrong in it, its foundation in a file apart.
  local sample = lib.sample('first')
  local at = sample:find('wall W1 ', 1, true)
  lib.write('house.framing', sample:sub(1, at - 1) .. 'include "foundation.framing" -- 😀\n')
  lib.write('foundation.framing', sample:sub(at))
  vim.cmd.edit(folder .. '/house.framing')
  local buffer = vim.api.nvim_get_current_buf()

  if vim.bo.filetype ~= 'framing' then fail('the file type is ' .. vim.bo.filetype) end
  if vim.bo.commentstring ~= '-- %s' then fail('comments are ' .. vim.bo.commentstring) end
  lib.wait_for_server(buffer)

  -- By hand: the grade is 98'-0", the footing's underside 95'-0 1/2" less 8", so it is 3'-7 1/2" deep.
  -- The footing stands in the file that is not open.
  local shallow = "95'-0 1/2\""
  replace(buffer, 'frost         42"', 'frost         48"')
  check('the mistake is shown once, in the file that is not open', function()
    return #shown('foundation.framing', shallow) == 1 and #vim.diagnostic.get(buffer) == 0
  end)
  local mistake = shown('foundation.framing', shallow)[1]
  if mistake.code ~= 'frost-depth' or mistake.severity ~= vim.diagnostic.severity.ERROR then fail(vim.inspect(mistake)) end
  vim.cmd.undo()
  check('an undone change leaves nothing', function() return #vim.diagnostic.get() == 0 end)

  local row = replace(buffer, 'bears on      W1', 'bears   on W1')
  vim.api.nvim_win_set_cursor(0, { row, 4 })
  vim.lsp.buf.hover()
  check('the hover says what the fact means', function()
    for _, window in ipairs(vim.api.nvim_list_wins()) do
      local lines = vim.api.nvim_buf_get_lines(vim.api.nvim_win_get_buf(window), 0, -1, false)
      if vim.api.nvim_win_get_config(window).relative ~= '' and table.concat(lines, ' '):find('bears on', 1, true) then
        vim.api.nvim_win_close(window, true)
        return true
      end
    end
  end)
  vim.lsp.buf.format({ timeout_ms = lib.LONG })
  local line = vim.api.nvim_buf_get_lines(buffer, row - 1, row, false)[1]
  if not vim.startswith(line, '  bears on      W1 for') then fail('formatted: ' .. line) end

  -- What carries the joists, as a tree.
  local function ask(method, params)
    local answer = vim.lsp.buf_request_sync(buffer, method, params, lib.LONG)
    for _, one in pairs(answer or {}) do
      if one.err then fail(method .. ': ' .. vim.inspect(one.err)) end
      return one.result
    end
    fail(method .. ' is not answered')
  end
  put_cursor(buffer, 'joists J1', 8)
  local encoding = lib.client(buffer).offset_encoding
  local joists = ask('textDocument/prepareCallHierarchy', vim.lsp.util.make_position_params(0, encoding))
  local below = vim.tbl_map(function(call) return call.to.name end, ask('callHierarchy/outgoingCalls', { item = joists[1] }))
  table.sort(below)
  if not vim.deep_equal(below, { 'wall W1', 'wall W2' }) then fail('J1 hands on to ' .. vim.inspect(below)) end

  -- Beside the text, by hand: 12 and 40 psf on half of 12'-0" are 312 plf on each wall.
  vim.lsp.inlay_hint.enable(true, { bufnr = buffer })
  check('what comes down on the wall stands beside it', function()
    for _, hint in ipairs(vim.lsp.inlay_hint.get({ bufnr = buffer })) do
      local line = vim.api.nvim_buf_get_lines(buffer, hint.inlay_hint.position.line, hint.inlay_hint.position.line + 1, false)[1]
      if hint.inlay_hint.label == '312 plf' and line:find('bears on      W2', 1, true) then return true end
    end
  end)

  -- What joists can bear on: walls, not joists.
  put_cursor(buffer, 'bears on      W2', 14)
  local offer = ask('textDocument/completion', vim.lsp.util.make_position_params(0, encoding))
  local offered = {}
  for _, item in ipairs(offer.items) do offered[item.label] = true end
  if not (offered.W1 and offered.W4) or offered.J1 then fail('offered: ' .. vim.inspect(vim.tbl_keys(offered))) end

  -- Another name, in the file that is open and in the one that is not.
  put_cursor(buffer, 'bears on      W2', 15)
  vim.lsp.buf.rename('W77')
  check('the name changes in both files', function()
    local part = vim.fn.bufnr(folder .. '/foundation.framing')
    if part < 0 then return false end
    local function count(text)
      local _, n = table.concat(vim.api.nvim_buf_get_lines(part, 0, -1, false), '\n'):gsub(text, '')
      return n
    end
    local here = table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), '\n')
    return here:find('bears on      W77', 1, true) and count('W77') == 2 and count('W2') == 0
  end)
  check('nothing is found afterwards', function() return #vim.diagnostic.get() == 0 end)

  -- A cure, chosen by its title. By hand: 100'-0" less deck 3/4", joist 9-1/4" and sill 1-1/2" is 99'-0 1/2".
  vim.cmd.edit(folder .. '/foundation.framing')
  local part = vim.api.nvim_get_current_buf()
  replace(part, "top           99'-0 1/2\"", "top           98'-4\"")
  check('the low wall is found', function() return #shown('foundation.framing', "98'-4\"") > 0 end)
  put_cursor(part, "98'-4\"", 2)
  vim.lsp.buf.code_action({
    apply = true,
    filter = function(action) return action.title == "write 99'-0 1/2\"" end,
  })
  check('the cure is written and nothing is found', function()
    local text = table.concat(vim.api.nvim_buf_get_lines(part, 0, -1, false), '\n')
    return not text:find("98'-4\"", 1, true) and #vim.diagnostic.get() == 0
  end)
  vim.cmd.buffer(buffer)

  -- Other files of a spec lose their findings with the last document of it.
  replace(buffer, 'frost         42"', 'frost         48"')
  check('the mistake is shown again', function() return #shown('foundation.framing', shallow) == 1 end)
  vim.cmd('%bwipeout!')
  check('a closed spec shows nothing', function() return #vim.diagnostic.get() == 0 end)

  local client = vim.lsp.get_clients({ name = 'storyrod' })[1]
  if client then client:stop() end
  check('the server ends', function() return #vim.lsp.get_clients({ name = 'storyrod' }) == 0 end)
end)
