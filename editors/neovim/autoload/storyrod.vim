" What the settings of a buffer ask.

" How deep a line is folded: an element into its first line, without the note above the next one.
function! storyrod#fold(line) abort
  let l:text = getline(a:line)
  if l:text =~# '^[^[:space:]-]'
    return '>1'
  elseif l:text =~# '^\s\+\S'
    return 1
  endif
  " A blank line or a comment in the first column is inside when a fact follows before the next element.
  let l:next = a:line + 1
  while getline(l:next) =~# '^\%(--\|\s*$\)' && l:next <= line('$')
    let l:next += 1
  endwhile
  return getline(l:next) =~# '^\s\+\S' ? 1 : 0
endfunction

" How far a line is indented. What stands in the first column or behind blanks by itself stays there.
function! storyrod#indent(line) abort
  let l:text = getline(a:line)
  if index(g:storyrod#words#outdents, matchstr(l:text, '^\s*\zs\a\+')) >= 0
    return 0
  elseif l:text =~# '\S'
    return l:text =~# '^\s' ? shiftwidth() : 0
  endif
  " A new line goes on with the element above it, not with one that a blank line ended.
  let l:above = getline(a:line - 1)
  return l:above =~# '^\s*\S' && l:above !~# '^\%(--\|include\>\)' ? shiftwidth() : 0
endfunction
