" Holds the colours of whole files to what the reader says each word is: `NAME.words` beside `NAME.framing`, one word a
" line, as its line, its column in bytes, its bytes and what it is.

" What a word may be coloured as. What the author names has no colour of its own, but at its own place.
let s:groups = {
      \ 'keyword': ['framingElement', 'framingInclude', 'framingOperator'],
      \ 'property': ['framingFact', 'framingFactName', 'framingRule'],
      \ 'namespace': [''],
      \ 'class': [''],
      \ 'variable': [''],
      \ 'declaration': ['framingName'],
      \ 'parameter': ['', 'framingNumber'],
      \ 'enumMember': ['framingChoice', 'framingStuff', 'framingCase'],
      \ 'number': ['framingNumber'],
      \ 'type': ['framingUnit'],
      \ 'words': ['', 'framingNumber', 'framingOperator', 'framingChoice', 'framingStuff'],
      \ 'string': ['framingText'],
      \ 'comment': ['framingComment', 'framingTodo'],
      \ 'joining': ['framingOperator', 'framingChoice'],
      \ 'operator': ['framingOperator', 'framingTimes'],
      \ 'decorator': ['framingRule'],
      \ }

" The group at a place, without the fact that it belongs to; none where nothing shows.
" Words that join behind one fact and are chosen behind another of that phrase; a floor called like what stands before it.
let s:namesakes = ['lapped', 'basement']

function! s:Group(line, at) abort
  let l:group = split(synIDattr(synID(a:line, a:at, 0), 'name') . '_', '_')
  return empty(l:group) || l:group[0] =~# '^framing\%(Word\|Behind\|Claimed\|Unknown\)$' ? '' : l:group[0]
endfunction

function! s:Compare(file) abort
  execute 'edit' fnameescape(a:file)
  call Check(a:file . ' has a file type', &filetype, 'framing')
  let l:spoken = {}
  let l:counts = {}
  for l:row in readfile(fnamemodify(a:file, ':r') . '.words')
    let [l:line, l:column, l:length, l:kind] = split(l:row)
    let l:groups = s:groups[l:kind]
    let l:text = strpart(getline(l:line), l:column - 1, l:length)
    let l:counts[l:kind] = get(l:counts, l:kind, 0) + 1
    for l:at in range(l:column, l:column + l:length - 1)
      let l:spoken[l:line . ' ' . l:at] = 1
    endfor
    for l:at in range(l:column, l:column + l:length - 1)
      let l:group = s:Group(l:line, l:at)
      if strpart(getline(l:line), l:at - 1, 1) !~# '\s' && index(l:groups, l:group) < 0 && index(s:namesakes, l:text) < 0
        call Fail(printf('%s:%d:%d: the %s `%s` is %s', a:file, l:line, l:column, l:kind, l:text, l:group))
        break
      endif
    endfor
  endfor
  " Nothing else is coloured.
  for l:line in range(1, line('$'))
    for l:at in range(1, len(getline(l:line)))
      let l:group = s:Group(l:line, l:at)
      if l:group isnot# '' && !has_key(l:spoken, l:line . ' ' . l:at) && strpart(getline(l:line), l:at - 1, 1) !~# '\s'
        call Fail(printf('%s:%d:%d: %s where there is no word', a:file, l:line, l:at, l:group))
        break
      endif
    endfor
  endfor
  return l:counts
endfunction

let s:files = glob($WORDS . '/*.framing', 1, 1)
call Check('there are files to compare', len(s:files) > 10, 1)
let s:total = {}
for s:file in s:files
  for [s:kind, s:count] in items(s:Compare(s:file))
    let s:total[s:kind] = get(s:total, s:kind, 0) + s:count
  endfor
endfor
for s:kind in keys(s:groups)
  call Check('words of every kind: ' . s:kind, get(s:total, s:kind, 0) > 0, 1)
endfor
call Say(len(s:files) . ' files, ' . eval(join(values(s:total), '+')) . ' words coloured')
