-- `:Framing`, and what it can be told.
local M = {}

local function sheet(command)
  return function(element)
    require('storyrod.sheets').open(command, { uri = vim.uri_from_bufnr(0), element = element })
  end
end

-- What `:Framing` does, by its first word, with how many words may follow.
local DOES = {
  takedown = { 0, 1, sheet('storyrod.takedown') },
  calc = { 0, 1, sheet('storyrod.calc') },
  rod = { 0, 0, sheet('storyrod.rod') },
  steps = { 2, 2, function(upper, lower)
    require('storyrod.sheets').open('storyrod.steps', { uri = vim.uri_from_bufnr(0), upper = upper, lower = lower })
  end },
  lens = { 0, 0, vim.lsp.codelens.run },
  related = { 0, 0, function() require('storyrod.related').list() end },
}

function M.run(call)
  local words = call.fargs
  local does = DOES[words[1]]
  if not does or #words - 1 < does[1] or #words - 1 > does[2] then
    local can = 'takedown [ELEMENT], calc [ELEMENT], rod, steps UPPER LOWER, lens, related'
    return vim.notify('storyrod: `:Framing` takes ' .. can, vim.log.levels.ERROR)
  end
  does[3](unpack(words, 2))
end

-- The names of the elements of this buffer, of one kind or of every.
local function names(keyword)
  local found = {}
  for _, line in ipairs(vim.api.nvim_buf_get_lines(0, 0, -1, false)) do
    local kind, name = line:match('^(%a[%a ]-)%s+([%w][%w_.-]*)')
    if name and (not keyword or kind == keyword) then table.insert(found, name) end
  end
  return found
end

function M.complete(begun, line)
  local before = vim.split(vim.trim(line:sub(1, #line - #begun)), '%s+')
  local which = before[2]
  local offers = {}
  if not which then
    offers = vim.tbl_keys(DOES)
  elseif which == 'steps' and #before < 4 then
    offers = names('floor')
  elseif (which == 'takedown' or which == 'calc') and #before < 3 then
    offers = names()
  end
  table.sort(offers)
  return vim.tbl_filter(function(offer) return vim.startswith(offer, begun) end, offers)
end

return M
