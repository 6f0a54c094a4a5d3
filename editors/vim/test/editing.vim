" What happens to a text that is typed, formatted, folded and checked.
set shellpipe=>%s\ 2>&1
edit $SPEC/house.framing
call Check('the file type', &filetype, 'framing')
call Check('comments', [&commentstring, &comments], ['-- %s', ':--'])

" Typed as a person types: what is in the first column opens an element, what follows is indented.
call feedkeys("ggcGpost P1 \"West\"\<CR>at A/1\<CR>\<CR>beam B1\<CR>size 3-ply 2x10\<CR>floor main\<CR>landing L1\<CR>wall W1\<CR>-- why\<Esc>", 'tx')
call Check('typed lines', getline(1, '$'), ['post P1 "West"', '  at A/1', '', 'beam B1', '  size 3-ply 2x10',
      \ '  floor main', '  landing L1', 'wall W1', '  -- why'])
" What stands where it should stays there.
let s:before = readfile('grammar/samples/loon-cove.framing')
silent edit! $SPEC/loon-cove.framing
silent normal! gg=G
call Check('an indented sample', getline(1, '$'), s:before)
silent %substitute/^  /\t/
silent normal! gg=G
call Check('tabs become blanks', getline(1, '$'), s:before)

" A comment goes on in the next line, a fact is never parted.
silent edit! $SPEC/house.framing
call feedkeys("ggcG-- one\<CR>two\<Esc>", 'tx')
call Check('comments go on', getline(1, '$'), ['-- one', '-- two'])
setlocal textwidth=20
call feedkeys("ggcGwall W1\<CR>sill 1 of 2x6 HF treated, flush with south face\<Esc>", 'tx')
call Check('a long fact', getline(2), '  sill 1 of 2x6 HF treated, flush with south face')
normal! gggqG
call Check('formatted', getline(1, '$'), ['wall W1', '  sill          1 of 2x6 HF treated, flush with south face'])

" Every element is a fold, and nothing else is in it.
silent edit! $SPEC/loon-cove.framing
setlocal foldmethod=expr foldlevel=0
let s:open = 0
for s:line in range(1, line('$'))
  let s:text = getline(s:line)
  if s:text =~# '^\a'
    call Check('a fold begins at line ' . s:line, foldclosed(s:line) == s:line || getline(s:line + 1) !~# '^\s', 1)
    let s:open = s:line
  elseif s:text =~# '^\s\+\S'
    call Check('a fold holds line ' . s:line, foldclosed(s:line), s:open)
  elseif s:text !=# '' && getline(s:line + 1) !~# '^\s'
    call Check('the note in line ' . s:line, foldclosed(s:line), -1)
  endif
endfor
setlocal foldmethod=manual

" By hand: the ground at 98'-0", the underside of the footing at 95'-0 1/2" less 8", so 3'-7 1/2" deep: 48" is more.
call writefile(map(readfile('grammar/samples/first.framing'), 'substitute(v:val, "frost         42\"", "frost         48\"", "")'), $SPEC . '/frost.framing')
silent edit! $SPEC/frost.framing
silent make! %
let s:found = filter(getqflist(), 'v:val.valid')
call Check('one mistake is listed', len(s:found), 1)
if len(s:found) == 1
  let s:found = s:found[0]
  call Check('its file', bufname(s:found.bufnr), expand('%'))
  call Check('its kind and rule', [s:found.type, matchstr(s:found.text, '\[\zs[^]]*\ze\]$')], ['e', 'frost-depth'])
  execute 'cc' 1
  call Check('its place', strpart(getline('.'), col('.') - 1), '95''-0 1/2"')
endif
" The place is right behind characters of several bytes.
call setline(2, '  profile       nowhere-2021 -- ½ é')
call setline(1, 'project "½ of a cabin" at')
silent write
silent make! %
let s:which = match(map(getqflist(), 'v:val.text'), '\[heading-unclear\]$')
execute 'cc' s:which + 1
call Check('a place behind ½', strpart(getline('.'), col('.') - 1), 'at')

" What `setfiletype` set goes when it does.
set filetype=
call Check('nothing stays', [&commentstring ==# '-- %s', &indentexpr, &l:formatprg, &makeprg], [0, '', '', 'make'])

helptags editors/vim/doc
help storyrod
call Check('the help', expand('%:t'), 'storyrod.txt')
call Say('editing, folds, :make and help')
