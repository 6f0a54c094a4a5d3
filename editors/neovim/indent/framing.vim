if exists('b:did_indent')
  finish
endif
let b:did_indent = 1

setlocal indentexpr=storyrod#indent(v:lnum)
" A word that opens an element and begins no fact goes to the first column when it is typed.
setlocal indentkeys=o,O,!^F
runtime autoload/storyrod/words.vim
for s:word in g:storyrod#words#outdents
  execute 'setlocal indentkeys+=0=' . s:word
endfor
unlet s:word
let b:undo_indent = 'setlocal indentexpr< indentkeys<'
