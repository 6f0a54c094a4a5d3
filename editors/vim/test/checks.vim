" What every test here starts with.
let s:failures = 0

function! Say(text) abort
  call writefile([a:text], '/dev/stdout', 'a')
endfunction

function! Fail(text) abort
  let s:failures += 1
  if s:failures < 40
    call writefile(['not as it should be: ' . a:text], '/dev/stderr', 'a')
  endif
endfunction

function! Check(what, is, should_be) abort
  if type(a:is) != type(a:should_be) || a:is !=# a:should_be
    call Fail(a:what . ': ' . strpart(string(a:is), 0, 400) . ', not ' . strpart(string(a:should_be), 0, 400))
  endif
endfunction

" Runs a test and leaves: nothing can go wrong unseen.
function! Run(test) abort
  try
    execute 'source' fnameescape(a:test)
  catch
    call Fail(v:exception . ' at ' . v:throwpoint)
  endtry
  if s:failures
    call Fail(s:failures . ' in all')
    cquit!
  endif
  qall!
endfunction
