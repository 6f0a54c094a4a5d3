vim.bo.commentstring = '-- %s'
vim.bo.comments = ':--'
-- A fact never goes on in a second line: only comments are wrapped.
vim.opt_local.formatoptions:remove('t')
vim.opt_local.formatoptions:append('croql')
vim.bo.expandtab = true
vim.bo.shiftwidth = 2
vim.bo.softtabstop = 2
-- Names and rules have dashes: `A-301`, `riser-difference`.
vim.opt_local.iskeyword:append('-')
vim.bo.include = [[^include\s\+"]]
vim.bo.suffixesadd = '.framing'
if vim.g.current_compiler == nil then vim.cmd.compiler('framing') end

-- The colours and folds of the tree where its parser is built, those of Vim otherwise.
local has_tree = vim.treesitter.language.add('framing')
if has_tree then vim.treesitter.start() end
vim.wo[0][0].foldexpr = has_tree and 'v:lua.vim.treesitter.foldexpr()' or 'storyrod#fold(v:lnum)'
if vim.g.framing_folding == 1 or vim.g.framing_folding == true then vim.wo[0][0].foldmethod = 'expr' end

vim.b.undo_ftplugin = table.concat({
  vim.b.undo_ftplugin or '',
  'setlocal commentstring< comments< formatoptions< expandtab< shiftwidth< softtabstop< iskeyword< include<',
  'setlocal suffixesadd< makeprg< errorformat< foldexpr< foldmethod<',
  'call v:lua.vim.treesitter.stop()',
}, '\n')
