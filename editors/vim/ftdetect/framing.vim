autocmd BufRead,BufNewFile *.framing setfiletype framing
