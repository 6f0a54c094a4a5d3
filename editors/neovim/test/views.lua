-- What the server knows beyond the text: sheets, lenses, looks of words; and what `:checkhealth` says.
local lib = dofile('editors/neovim/test/lib.lua')

-- What the program prints for the same question.
local function printed(...)
  local answer = vim.system({ 'storyrod', ... }, { text = true }):wait()
  if answer.code ~= 0 then lib.fail(answer.stderr) end
  return vim.trim(answer.stdout)
end

-- Waits for a sheet, compares it with what the program prints, and closes it.
local function sheet(name, holds, expected)
  lib.check('a window shows ' .. name, function() return vim.api.nvim_buf_get_name(0) == name end)
  local buffer = vim.api.nvim_get_current_buf()
  local text = vim.trim(lib.text(buffer))
  lib.same('the sheet ' .. name, text, expected)
  if not text:find(holds, 1, true) then lib.fail(name .. ' says nothing of ' .. holds) end
  lib.same('nobody can write in it', { vim.bo[buffer].modifiable, vim.bo[buffer].buftype, vim.bo[buffer].modified }, { false, 'nofile', false })
  -- The caution at the end can be read whole, however narrow the window is.
  lib.same('a long line goes on below itself', vim.wo.wrap, true)
  if not text:find('Have it checked by a licensed professional', 1, true) then lib.fail(name .. ' has no caution') end
  vim.api.nvim_feedkeys('q', 'xt', false)
  lib.same('the sheet is closed with q', vim.api.nvim_buf_is_valid(buffer), false)
end

-- The looks that the server's words have at a place. Only what stands in the window has any.
local function looks(buffer, text)
  local row, column = lib.place(buffer, text)
  vim.api.nvim_win_set_cursor(0, { row + 1, column })
  vim.cmd.redraw()
  local found = {}
  for _, mark in ipairs(vim.inspect_pos(buffer, row, column).semantic_tokens) do
    table.insert(found, (mark.opts.hl_group))
  end
  return found
end

local function complaint(command)
  local said
  local notify = vim.notify
  vim.notify = function(what) said = what end
  vim.cmd(command)
  vim.wait(lib.LONG, function() return said end, 10)
  vim.notify = notify
  return said or ''
end

lib.run(function()
  lib.write('house.framing', lib.sample('loon-cove'))
  local file = lib.folder .. '/house.framing'
  vim.cmd.edit(file)
  local buffer = vim.api.nvim_get_current_buf()
  lib.wait_for_server(buffer)

  -- By hand: half of the floor's load on the joists, of 40 psf, and the girder's own weight.
  vim.cmd('Framing takedown C1')
  sheet('storyrod://takedown/C1', '13,136 lb', printed('takedown', file, 'C1'))
  vim.cmd('Framing takedown')
  sheet('storyrod://takedown', 'columns, at the head', printed('takedown', file))
  vim.cmd('Framing calc B1')
  sheet('storyrod://calc/B1', 'beam B1', printed('calc', file, 'B1'))
  vim.cmd('Framing rod')
  sheet('storyrod://rod', 'footing F1 top', printed('rod', file))
  -- By hand: 19-3/8" between the subfloors and 1/8" between the finishes are 19-1/2", in three.
  vim.cmd('Framing steps main sunroom')
  sheet('storyrod://steps/main/sunroom', '3 of 6-1/2"', printed('steps', file, 'main', 'sunroom'))
  lib.same('one file is open, and no copy of a sheet', #vim.fn.getbufinfo({ buflisted = 1 }), 1)

  if not complaint('Framing takedown C99'):find('there is no element `C99`', 1, true) then lib.fail('C99 is not missed') end
  if not complaint('Framing steps main'):find('steps UPPER LOWER', 1, true) then lib.fail('a floor is not missed') end
  lib.same('floors to choose from', vim.fn.getcompletion('Framing steps s', 'cmdline'), { 'sunroom' })
  lib.same('what there is', vim.fn.getcompletion('Framing r', 'cmdline'), { 'related', 'rod' })

  -- The lens above the column opens what it carries.
  local row = lib.place(buffer, 'column C1')
  lib.check('the column has a lens', function()
    return vim.iter(vim.lsp.codelens.get(buffer)):any(function(lens)
      return lens.range.start.line == row and lens.command and lens.command.title:find('^carries 13,')
    end)
  end)
  lib.put_cursor(buffer, 'column C1')
  vim.cmd('Framing lens')
  sheet('storyrod://takedown/C1', '13,136 lb', printed('takedown', file, 'C1'))

  -- Words of an ordered column, a claim and a waiver look so; of an assumed soil, once nothing says it.
  for text, group in pairs({
    ['C1 "Column under'] = '@lsp.mod.ordered.framing',
    ['cut           should be 96'] = '@lsp.mod.claim.framing',
    ['project "Loon'] = '@lsp.mod.waived.framing',
  }) do
    lib.check(text .. ' looks like ' .. group, function() return vim.tbl_contains(looks(buffer, text), group) end)
  end
  if vim.tbl_contains(looks(buffer, 'project "Loon'), '@lsp.mod.assumed.framing') then lib.fail('a stated soil is no assumed one') end
  lib.replace(buffer, '  soil          2000 psf source "soils report, invented for this sample"', '')
  lib.check('the assumed soil shows', function()
    return vim.tbl_contains(looks(buffer, 'project "Loon'), '@lsp.mod.assumed.framing')
  end)
  vim.cmd.colorscheme('habamax')
  local look = vim.api.nvim_get_hl(0, { name = '@lsp.mod.assumed.framing' })
  lib.same('and does in another colour scheme', look.underdotted, true)

  vim.cmd.checkhealth('storyrod')
  local health = lib.text()
  for _, expected in ipairs({ 'the server runs', 'the tree-sitter parser is built', printed('--version') }) do
    if not health:find(expected, 1, true) then lib.fail(('`:checkhealth` does not say %q:\n%s'):format(expected, health)) end
  end
  if health:find('ERROR') or health:find('WARNING') then lib.fail(health) end

  vim.cmd.helptags('editors/neovim/doc')
  vim.cmd.help('storyrod-neovim')
  lib.same('the help', vim.fn.expand('%:t'), 'storyrod.txt')
end)
