if exists('b:did_ftplugin')
  finish
endif
let b:did_ftplugin = 1

let s:keep_cpo = &cpoptions
set cpoptions&vim

setlocal comments=:-- commentstring=--\ %s
" A fact never goes on in a second line: only comments are wrapped.
setlocal formatoptions-=t formatoptions+=croql
setlocal expandtab shiftwidth=2 softtabstop=2
" Names and rules have dashes: `A-301`, `riser-difference`.
setlocal iskeyword+=-
" `gq` over whole elements writes them in the one style; what can't be read stays as it is.
setlocal formatprg=storyrod\ format\ -
setlocal keywordprg=storyrod\ explain
setlocal include=^include\\s\\+\" suffixesadd=.framing
setlocal foldexpr=storyrod#fold(v:lnum)
let b:undo_ftplugin = 'setlocal comments< commentstring< formatoptions< expandtab< shiftwidth< softtabstop< iskeyword<'
      \ . ' formatprg< keywordprg< include< suffixesadd< foldexpr<'
if get(g:, 'framing_folding', 0)
  setlocal foldmethod=expr
  let b:undo_ftplugin .= ' foldmethod<'
endif

if !exists('current_compiler')
  compiler framing
  let b:undo_ftplugin .= ' makeprg< errorformat< | unlet! b:current_compiler'
endif

let &cpoptions = s:keep_cpo
unlet s:keep_cpo
