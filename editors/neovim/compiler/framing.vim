" `:make` looks at every spec below the current folder, `:make %` at this one.
if exists('current_compiler')
  finish
endif
let current_compiler = 'framing'

let s:keep_cpo = &cpoptions
set cpoptions&vim

CompilerSet makeprg=storyrod\ lint\ --format\ lines
" Columns are counted in characters; `%v` is nearest to it, and the one style has no tabs.
CompilerSet errorformat=%f:%l:%v:\ %trror:\ %m,%f:%l:%v:\ %tarning:\ %m,%I%f:%l:%v:\ advice:\ %m,%-G%.%#

let &cpoptions = s:keep_cpo
unlet s:keep_cpo
