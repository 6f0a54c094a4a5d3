-- `:checkhealth storyrod`
local M = {}

local function check_server()
  local program = (vim.lsp.config.storyrod or {}).cmd
  program = type(program) == 'table' and program[1] or nil
  if not program or vim.fn.executable(program) == 0 then
    return vim.health.error(('`%s` is not on the PATH'):format(program or 'storyrod'), {
      'install it with `cargo install --path .` in the folder of the project',
      "or say where it is: vim.lsp.config('storyrod', { cmd = { '/path/to/storyrod', 'server' } })",
    })
  end
  local answer = vim.system({ program, '--version' }, { text = true }):wait(5000)
  if answer.code ~= 0 then
    return vim.health.error(('`%s --version` ends with %d'):format(program, answer.code))
  end
  vim.health.ok(('%s is %s'):format(vim.trim(answer.stdout), vim.fn.exepath(program)))
  local n_running = #vim.lsp.get_clients({ name = 'storyrod' })
  vim.health.info(n_running > 0 and 'the server runs' or 'the server starts with the first framing file')
end

function M.check()
  vim.health.start('storyrod')
  if vim.fn.has('nvim-0.11') == 1 then
    vim.health.ok('Neovim is 0.11 or later')
  else
    vim.health.error('Neovim 0.11 or later is needed')
  end
  check_server()
  if vim.treesitter.language.add('framing') then
    vim.health.ok('the tree-sitter parser is built')
  else
    vim.health.warn('the tree-sitter parser is not built: the colours are those of Vim', {
      'run `build` in the folder of this package',
    })
  end
end

return M
