" Written by `UPDATE=1 cargo test --test editors` from the vocabulary; not edited by hand.
if exists('b:current_syntax')
  finish
endif

syntax match framingElement /^\%(squash\s\+blocks\|hold\s\+point\|footing\|landing\|opening\|product\|project\|column\|girder\|header\|intent\|joists\|ledger\|pocket\|squash\|stairs\|window\|drain\|floor\|jacks\|joist\|ledge\|notch\|sheet\|shelf\|stair\|stoop\|area\|beam\|door\|duct\|grid\|hole\|load\|post\|roof\|slab\|wall\|pad\)\>/
syntax match framingInclude /^include\>/
syntax match framingFact /^\s\+\zs\%(nothing\s\+below\|above\s\+bottom\|cross\s\+grain\|tread\s\+stock\|cantilever\|hangs\s\+from\|insulation\|steps\s\+down\|benchmark\|deck\s\+edge\|finish\s\+at\|hold\s\+down\|local\s\+pad\|no\s\+column\|refers\s\+to\|schedules\|stands\s\+on\|stiffener\|stringers\|threshold\|tolerance\|transfers\|bears\s\+on\|concrete\|fastened\|handrail\|laid\s\+out\|moisture\|overhang\|pedestal\|sheathed\|steps\s\+up\|subfloor\|trimmers\|bearing\|blocked\|ceiling\|checked\|doubled\|headers\|landing\|opening\|packing\|profile\|seismic\|spacing\|accept\|amount\|anchor\|before\|braced\|climbs\|counts\|finish\|height\|length\|nailer\|nosing\|offset\|plates\|risers\|source\|squash\|status\|string\|swings\|values\|weight\|brace\|datum\|depth\|floor\|frost\|grade\|grout\|guard\|hinge\|joint\|kings\|limit\|loads\|north\|pitch\|plate\|riser\|scale\|shoot\|shows\|slope\|studs\|tails\|thick\|tread\|turns\|under\|waive\|width\|bars\|base\|case\|dead\|deck\|edge\|fill\|from\|hole\|keep\|kind\|laid\|line\|live\|load\|open\|over\|pipe\|rise\|runs\|seat\|shim\|shot\|sill\|size\|snow\|soil\|sole\|span\|step\|wind\|cap\|cut\|for\|gap\|rim\|run\|set\|tie\|top\|use\|at\|in\|on\|x\|y\)\>/
syntax match framingNumber /\%(^\|[ ,#-]\)\@1<=\d[0-9.'"\/-]*\%(\s\d\+\/\d\+"\)\?/
syntax match framingText /\%(^\|\s\)\@1<="[^" \t][^"]*"/
syntax match framingComment /\%(^\|\s\)\@1<=--.*$/ contains=@Spell

highlight default link framingElement Statement
highlight default link framingInclude Include
highlight default link framingFact Identifier
highlight default link framingNumber Number
highlight default link framingText String
highlight default link framingComment Comment

let b:current_syntax = 'framing'
