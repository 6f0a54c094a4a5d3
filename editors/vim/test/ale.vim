" ALE finds the linter by itself, starts the server and shows what it says.

" Waits until a condition holds.
function! s:Wait(what, condition) abort
  for l:_ in range(600)
    if eval(a:condition)
      return
    endif
    sleep 50m
  endfor
  call Fail(a:what)
endfunction

function! s:Found() abort
  return map(copy(ale#engine#GetLoclist(bufnr(''))), '[v:val.lnum, v:val.type, v:val.code]')
endfunction

call writefile(readfile('grammar/samples/first.framing'), $SPEC . '/ale.framing')
silent edit $SPEC/ale.framing
let s:frost = search('frost  ')
let s:top = search('top  .*95''-0 1/2"')

" By hand as in editing.vim: at 48" of frost the footing is too shallow, and only that.
call setline(s:frost, '  frost         48"')
ALELint
call s:Wait('the mistake is shown', '!empty(ale#engine#GetLoclist(bufnr("")))')
call Check('the mistake', s:Found(), [[s:top, 'E', 'frost-depth']])
let s:mistake = get(ale#engine#GetLoclist(bufnr('')), 0, {'col': 1, 'end_col': 1})
call Check('its text', strpart(getline(s:top), s:mistake.col - 1, s:mistake.end_col - s:mistake.col + 1), '95''-0 1/2"')
call setline(s:frost, '  frost         42"')
ALELint
call s:Wait('the cured mistake goes', 'empty(ale#engine#GetLoclist(bufnr("")))')

" The way from a name to its element, and what the server says of a thing.
call cursor(search('bears on      W2'), 17)
ALEGoToDefinition
call s:Wait('the definition is found', 'getline(".") =~# "^wall W2"')
ALEHover
call s:Wait('the hover tells of the wall', 'join(map(range(1, bufnr("$")), "join(getbufline(v:val, 1, \"$\"))")) =~# "North wall.*carries\\|wall W2"')

" The style by ALE's own fixing, as the help says.
let b:ale_fixers = [{buffer -> {'command': 'storyrod format -'}}]
call setline(s:frost, '  frost 42"')
ALEFix
call s:Wait('the fact is written in the one style', 'getline(s:frost) ==# "  frost         42\""')
call Say('findings, definition, hover and style in ALE')
