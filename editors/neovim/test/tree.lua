-- With the parser built: what the tree of a file colours and folds.
local lib = dofile('editors/neovim/test/lib.lua')

-- The captures at a place, as `name name`.
local function captures(buffer, text, behind)
  local row, column = lib.place(buffer, text, behind)
  local found = vim.tbl_map(function(one) return one.capture end, vim.treesitter.get_captures_at_pos(buffer, row, column))
  return table.concat(found, ' ')
end

lib.run(function()
  for _, name in ipairs({ 'folds', 'highlights', 'indents', 'injections', 'locals', 'textobjects' }) do
    if not vim.treesitter.query.get('framing', name) then lib.fail('there is no query of ' .. name) end
  end

  for _, path in ipairs(vim.fn.glob('grammar/samples/*.framing', true, true)) do
    vim.cmd.edit(path)
    if vim.treesitter.get_parser(0):parse()[1]:root():has_error() then lib.fail(path .. ' is not read whole') end
  end

  vim.cmd.edit('grammar/samples/loon-cove.framing')
  local buffer = vim.api.nvim_get_current_buf()
  if not vim.treesitter.highlighter.active[buffer] then lib.fail('the tree does not colour the file') end
  lib.same('the words of Vim are off', vim.bo.syntax, '')
  vim.treesitter.get_parser(buffer):parse(true)
  for text, expected in pairs({
    ['-- Loon Cove: a lakeside'] = 'comment spell',
    ['column C1'] = 'keyword',
    ['bears on      PK1'] = 'property',
    ['"Centre girder"'] = 'string spell',
    ['48"'] = 'number',
    ['98\'-4 5/8"'] = 'number',
    ['2000 psf'] = 'number',
    ['2x10 SPF'] = 'number',
    ['SPF No.2'] = 'constant',
    ['No.2'] = 'constant',
    ['treated'] = 'constant',
    ['south face'] = 'constant',
    ['less 10"'] = 'operator',
    ['should be'] = 'operator',
    ['check-not-run'] = 'string.special',
    ['PK1 for'] = 'variable',
  }) do
    lib.same('the captures of ' .. text, captures(buffer, text), expected)
  end
  lib.same('the captures of a name where it is given', captures(buffer, 'column C1', 7), 'type')
  lib.same('the captures of a grid line', captures(buffer, 'A/2', 2), 'variable.parameter')

  -- Every element is a fold of its own, into its first line.
  vim.wo.foldmethod, vim.wo.foldlevel = 'expr', 0
  vim.cmd('normal! zx')
  local first = lib.place(buffer, 'wall W5 "Sunroom') + 1
  local last = lib.place(buffer, 'wall W6 "Sunroom') - 1
  lib.check('an element is folded', function() return vim.fn.foldclosed(first) == first end)
  lib.same('the end of the fold', vim.fn.foldclosedend(first), last)
end)
