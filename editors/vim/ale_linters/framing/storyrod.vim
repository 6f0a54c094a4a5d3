" The language server, for ALE: it finds this file by itself.
call ale#Set('framing_storyrod_executable', 'storyrod')
call ale#Set('framing_storyrod_settings', {})

" The folder that a spec belongs to: the nearest upwards with the project's own file.
function! ale_linters#framing#storyrod#Root(buffer) abort
  let l:mark = ale#path#FindNearestFile(a:buffer, 'storyrod.toml')
  if !empty(l:mark)
    return fnamemodify(l:mark, ':h')
  endif
  let l:git = ale#path#FindNearestDirectory(a:buffer, '.git')
  return !empty(l:git) ? fnamemodify(l:git, ':h:h') : expand('#' . a:buffer . ':p:h')
endfunction

call ale#linter#Define('framing', {
      \ 'name': 'storyrod',
      \ 'lsp': 'stdio',
      \ 'language': 'framing',
      \ 'executable': {buffer -> ale#Var(buffer, 'framing_storyrod_executable')},
      \ 'command': '%e server',
      \ 'project_root': function('ale_linters#framing#storyrod#Root'),
      \ 'lsp_config': {buffer -> {'storyrod': ale#Var(buffer, 'framing_storyrod_settings')}},
      \ })
