" Written by `UPDATE=1 cargo test --test editors` from the vocabulary; not edited by hand.
scriptencoding utf-8
if exists('b:current_syntax')
  finish
endif
syntax case match
syntax iskeyword @,48-57,_,-,.,192-255

" The first line of an element.
syntax match framingElement /^\%(squash\s\+blocks\|hold\s\+point\|footing\|landing\|opening\|product\|project\|column\|girder\|header\|intent\|joists\|ledger\|pocket\|squash\|stairs\|window\|drain\|floor\|jacks\|joist\|ledge\|notch\|sheet\|shelf\|stair\|stoop\|area\|beam\|door\|duct\|grid\|hole\|load\|post\|roof\|slab\|wall\|pad\)\>/ nextgroup=framingName skipwhite
syntax match framingInclude /^\%(include\)\>/
syntax match framingName /[^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|[0-9_.×]\|-\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|[0-9_.]\)\@=\)*/ contained

" A line that begins with no fact keeps its numbers and texts only.
syntax match framingUnknown /^\s\+\zs[^[:space:]-].*/ contains=framingComment,framingText,@framingNumber
syntax match framingFact /^\s\+\zs\%(cantilever\|insulation\|benchmark\|schedules\|threshold\|tolerance\|transfers\|concrete\|fastened\|moisture\|overhang\|pedestal\|subfloor\|checked\|doubled\|opening\|spacing\|accept\|amount\|anchor\|before\|finish\|height\|length\|nosing\|risers\|source\|string\|weight\|brace\|depth\|floor\|frost\|grout\|kings\|pitch\|plate\|riser\|scale\|slope\|thick\|tread\|turns\|under\|width\|dead\|deck\|fill\|hole\|live\|pipe\|rise\|seat\|shim\|step\|wind\|cut\|for\|top\|x\|y\)\>/ nextgroup=framingBehind_above_bottom
syntax match framingFact /^\s\+\zs\%(profile\|limit\|waive\)\>/ nextgroup=framingRule_limit skipwhite
syntax match framingFact /^\s\+\zs\%(shoot\|shows\)\>/ nextgroup=framingBehind_nothing_below
syntax match framingFact /^\s\+\zs\%(stringers\|trimmers\|plates\|squash\|studs\|size\|sole\)\>/ nextgroup=framingBehind_plates
syntax match framingFact /^\s\+\zs\%(seismic\)\>/ nextgroup=framingBehind_seismic
syntax match framingFact /^\s\+\zs\%(values\)\>/ nextgroup=framingBehind_values
syntax match framingFact /^\s\+\zs\%(kind\)\>/ nextgroup=framingBehind_kind
syntax match framingFact /^\s\+\zs\%(severity\)\>/ nextgroup=framingRule_severity skipwhite
syntax match framingFact /^\s\+\zs\%(soil\)\>/ nextgroup=framingBehind_soil
syntax match framingFact /^\s\+\zs\%(open\)\>/ nextgroup=framingBehind_open
syntax match framingFact /^\s\+\zs\%(use\)\>/ nextgroup=framingBehind_use
syntax match framingFact /^\s\+\zs\%(base\)\>/ nextgroup=framingBehind_base
syntax match framingFact /^\s\+\zs\%(over\)\>/ nextgroup=framingBehind_over
syntax match framingFact /^\s\+\zs\%(counts\)\>/ nextgroup=framingBehind_counts
syntax match framingFact /^\s\+\zs\%(nailer\)\>/ nextgroup=framingBehind_nailer
syntax match framingFact /^\s\+\zs\%(at\)\>/ nextgroup=framingBehind_at
syntax match framingFact /^\s\+\zs\%(packing\)\>/ nextgroup=framingBehind_packing
syntax match framingFact /^\s\+\zs\%(sheathed\)\>/ nextgroup=framingBehind_sheathed
syntax match framingFact /^\s\+\zs\%(shot\)\>/ nextgroup=framingBehind_shot
syntax match framingFact /^\s\+\zs\%(landing\)\>/ nextgroup=framingBehind_landing
syntax match framingFact /^\s\+\zs\%(edge\|tie\)\>/ nextgroup=framingBehind_edge
syntax match framingFact /^\s\+\zs\%(span\)\>/ nextgroup=framingBehind_span
syntax match framingFact /^\s\+\zs\%(line\)\>/ nextgroup=framingBehind_line
syntax match framingFact /^\s\+\zs\%(sill\)\>/ nextgroup=framingBehind_sill
syntax match framingFact /^\s\+\zs\%(tails\)\>/ nextgroup=framingBehind_tails
syntax match framingFact /^\s\+\zs\%(headers\)\>/ nextgroup=framingBehind_headers
syntax match framingFact /^\s\+\zs\%(case\|load\)\>/ nextgroup=framingBehind_case
syntax match framingFact /^\s\+\zs\%(status\)\>/ nextgroup=framingBehind_status
syntax match framingFact /^\s\+\zs\%(set\)\>/ nextgroup=framingBehind_set
syntax match framingFact /^\s\+\zs\%(bars\)\>/ nextgroup=framingBehind_bars
syntax match framingFact /^\s\+\zs\%(grade\)\>/ nextgroup=framingBehind_grade
syntax match framingFact /^\s\+\zs\%(guard\)\>/ nextgroup=framingBehind_guard
syntax match framingFact /^\s\+\zs\%(handrail\|climbs\|offset\|swings\|hinge\|runs\|in\|on\)\>/ nextgroup=framingBehind_climbs
syntax match framingFact /^\s\+\zs\%(north\)\>/ nextgroup=framingBehind_north
syntax match framingFact /^\s\+\zs\%(gap\)\>/ nextgroup=framingBehind_gap
syntax match framingFact /^\s\+\zs\%(datum\)\>/ nextgroup=framingBehind_datum
syntax match framingFact /^\s\+\zs\%(laid\)\>/ nextgroup=framingBehind_laid
syntax match framingFact /^\s\+\zs\%(from\)\>/ nextgroup=framingBehind_from
syntax match framingFact /^\s\+\zs\%(snow\)\>/ nextgroup=framingBehind_snow
syntax match framingFact /^\s\+\zs\%(loads\)\>/ nextgroup=framingBehind_loads
syntax match framingFact /^\s\+\zs\%(joint\)\>/ nextgroup=framingBehind_joint
syntax match framingFact /^\s\+\zs\%(keep\)\>/ nextgroup=framingBehind_keep
syntax match framingFact /^\s\+\zs\%(bearing\)\>/ nextgroup=framingBehind_bearing
syntax match framingFact /^\s\+\zs\%(stiffener\|ceiling\|braced\)\>/ nextgroup=framingBehind_braced
syntax match framingFact /^\s\+\zs\%(rim\)\>/ nextgroup=framingBehind_rim
syntax match framingFact /^\s\+\zs\%(cap\)\>/ nextgroup=framingBehind_cap
syntax match framingFact /^\s\+\zs\%(blocked\)\>/ nextgroup=framingBehind_blocked
syntax match framingFact /^\s\+\zs\%(run\)\>/ nextgroup=framingBehind_run
syntax match framingFact /^\s\+\zs\%(above\s\+bottom\|tread\s\+stock\|steps\s\+down\|deck\s\+edge\|finish\s\+at\|hold\s\+down\|local\s\+pad\|no\s\+column\|refers\s\+to\|laid\s\+out\|steps\s\+up\)\>/ nextgroup=framingBehind_above_bottom
syntax match framingFact /^\s\+\zs\%(nothing\s\+below\)\>/ nextgroup=framingBehind_nothing_below
syntax match framingFact /^\s\+\zs\%(hangs\s\+from\)\>/ nextgroup=framingBehind_hangs_from
syntax match framingFact /^\s\+\zs\%(cross\s\+grain\)\>/ nextgroup=framingBehind_cross_grain
syntax match framingFact /^\s\+\zs\%(stands\s\+on\|bears\s\+on\)\>/ nextgroup=framingBehind_bears_on
syntax match framingFactName /^\s\+\zs\%(subfloor\s\+drop\|clear\s\+height\|joist\s\+bottom\|utilisation\|clear\s\+span\|joist\s\+top\|studs\s\+cut\|headroom\|pressure\|reaction\|subfloor\|bearing\|ceiling\|spacing\|bottom\|centre\|finish\|length\|risers\|count\|cover\|riser\|sills\|thick\|area\|drop\|load\|rise\|seat\|size\|span\|step\|cut\|gap\|run\|top\)\>\ze\s\+should\s\+be\>/ nextgroup=framingClaimed
syntax match framingClaimed /.\+/ contained contains=@framingValue

" What may stand behind a fact.
syntax cluster framingNumber contains=framingNumber,framingWord,framingTimes
syntax cluster framingValue contains=@framingNumber,framingOperator,framingText,framingComment
syntax match framingBehind_above_bottom /.\+/ contained contains=@framingValue
syntax match framingBehind_limit /.\+/ contained contains=@framingValue
syntax match framingRule_limit /[^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|[0-9_.×]\|-\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|[0-9_.]\)\@=\)*/ contained nextgroup=framingBehind_limit
syntax match framingBehind_nothing_below /.\+/ contained contains=@framingValue,framingFactName,framingCase
syntax match framingBehind_plates /.\+/ contained contains=@framingValue,framingStuff
syntax match framingBehind_seismic /.\+/ contained contains=@framingValue,framingChoice_seismic
syntax match framingBehind_values /.\+/ contained contains=@framingValue,framingChoice_values
syntax match framingBehind_kind /.\+/ contained contains=@framingValue,framingChoice_kind,framingStuff
syntax match framingBehind_severity /.\+/ contained contains=@framingValue,framingChoice_severity
syntax match framingRule_severity /[^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|[0-9_.×]\|-\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|[0-9_.]\)\@=\)*/ contained nextgroup=framingBehind_severity
syntax match framingBehind_soil /.\+/ contained contains=@framingValue,framingChoice_soil
syntax match framingBehind_open /.\+/ contained contains=@framingValue,framingChoice_open
syntax match framingBehind_use /.\+/ contained contains=@framingValue,framingChoice_use
syntax match framingBehind_base /.\+/ contained contains=@framingValue,framingChoice_base
syntax match framingBehind_over /.\+/ contained contains=@framingValue,framingChoice_over
syntax match framingBehind_counts /.\+/ contained contains=@framingValue,framingChoice_counts
syntax match framingBehind_nailer /.\+/ contained contains=@framingValue,framingChoice_nailer,framingStuff
syntax match framingBehind_at /.\+/ contained contains=@framingValue,framingChoice_at
syntax match framingBehind_packing /.\+/ contained contains=@framingValue,framingChoice_packing,framingStuff
syntax match framingBehind_sheathed /.\+/ contained contains=@framingValue,framingChoice_sheathed
syntax match framingBehind_shot /.\+/ contained contains=@framingValue,framingChoice_shot
syntax match framingBehind_landing /.\+/ contained contains=@framingValue,framingChoice_landing
syntax match framingBehind_edge /.\+/ contained contains=@framingValue,framingChoice_edge
syntax match framingBehind_span /.\+/ contained contains=@framingValue,framingChoice_span
syntax match framingBehind_line /.\+/ contained contains=@framingValue,framingChoice_line
syntax match framingBehind_sill /.\+/ contained contains=@framingValue,framingChoice_sill,framingStuff
syntax match framingBehind_tails /.\+/ contained contains=@framingValue,framingChoice_tails
syntax match framingBehind_headers /.\+/ contained contains=@framingValue,framingChoice_headers,framingStuff
syntax match framingBehind_hangs_from /.\+/ contained contains=@framingValue,framingChoice_hangs_from
syntax match framingBehind_case /.\+/ contained contains=@framingValue,framingChoice_case
syntax match framingBehind_status /.\+/ contained contains=@framingValue,framingChoice_status
syntax match framingBehind_set /.\+/ contained contains=@framingValue,framingChoice_set
syntax match framingBehind_cross_grain /.\+/ contained contains=@framingValue,framingChoice_cross_grain
syntax match framingBehind_bars /.\+/ contained contains=@framingValue,framingChoice_bars
syntax match framingBehind_grade /.\+/ contained contains=@framingValue,framingChoice_grade
syntax match framingBehind_guard /.\+/ contained contains=@framingValue,framingChoice_guard
syntax match framingBehind_climbs /.\+/ contained contains=@framingValue,framingChoice_climbs
syntax match framingBehind_north /.\+/ contained contains=@framingValue,framingChoice_north
syntax match framingBehind_gap /.\+/ contained contains=@framingValue,framingChoice_gap
syntax match framingBehind_datum /.\+/ contained contains=@framingValue,framingChoice_datum
syntax match framingBehind_laid /.\+/ contained contains=@framingValue,framingChoice_laid
syntax match framingBehind_from /.\+/ contained contains=@framingValue,framingChoice_from
syntax match framingBehind_snow /.\+/ contained contains=@framingValue,framingChoice_snow
syntax match framingBehind_loads /.\+/ contained contains=@framingValue,framingChoice_loads
syntax match framingBehind_joint /.\+/ contained contains=@framingValue,framingChoice_joint
syntax match framingBehind_keep /.\+/ contained contains=@framingValue,framingChoice_keep,framingFactName,framingCase
syntax match framingBehind_bearing /.\+/ contained contains=@framingValue,framingChoice_bearing
syntax match framingBehind_braced /.\+/ contained contains=@framingValue,framingChoice_braced
syntax match framingBehind_rim /.\+/ contained contains=@framingValue,framingChoice_rim,framingStuff
syntax match framingBehind_cap /.\+/ contained contains=@framingValue,framingChoice_cap
syntax match framingBehind_bears_on /.\+/ contained contains=@framingValue,framingChoice_bears_on
syntax match framingBehind_blocked /.\+/ contained contains=@framingValue,framingChoice_blocked
syntax match framingBehind_run /.\+/ contained contains=@framingValue,framingChoice_run

" Words, and of several that begin at one place the last. A word of the author's hides what stands inside it.
syntax match framingWord /[^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|[0-9_.×]\|-\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|[0-9_.]\)\@=\)*/ contained transparent contains=NONE
syntax match framingOperator /\<\%(because\|between\|degrees\|install\|service\|beside\|gasket\|ground\|lapped\|lb-in2\|packed\|risers\|source\|within\|above\|along\|below\|cover\|grout\|lb-ft\|round\|thick\|times\|under\|until\|deep\|down\|face\|from\|held\|high\|into\|less\|long\|over\|past\|plus\|side\|and\|dia\|end\|for\|low\|per\|top\|at\|by\|in\|is\|of\|on\|to\|up\)\>/ contained
syntax match framingStuff /\<\%(Construction\|Standard\|I-joist\|Utility\|treated\|glulam\|SPF-S\|class\|DF-L\|No\.1\|No\.2\|No\.3\|Stud\|pipe\|HSS\|LSL\|LVL\|PSL\|SPF\|SYP\|DF\|HF\|SP\|SS\)\>/ contained
syntax match framingFactName /\<\%(utilisation\|headroom\|pressure\|reaction\|subfloor\|bearing\|ceiling\|spacing\|bottom\|centre\|finish\|length\|risers\|count\|cover\|riser\|sills\|thick\|area\|drop\|load\|rise\|seat\|size\|span\|step\|cut\|gap\|run\|top\)\>/ contained
syntax match framingCase /\<\%(dead\|live\|snow\|all\)\>/ contained
syntax match framingOperator /\<\%(above\s\+bottom\|above\s\+finish\|of\s\+concrete\|under\s\+each\|each\s\+side\|risers\s\+at\|should\s\+be\|per\s\+foot\|face\s\+of\|half\s\+of\|held\s\+in\|round\s\+x\|dia\s\+at\)\>/ contained
syntax match framingStuff /\<\%(filled\s\+pipe\|rim\s\+board\)\>/ contained
syntax match framingFactName /\<\%(subfloor\s\+drop\|clear\s\+height\|joist\s\+bottom\|clear\s\+span\|joist\s\+top\|studs\s\+cut\)\>/ contained
syntax match framingOperator /\<\%(long\s\+side\s\+along\|flat\s\+on\s\+top\|to\s\+grade\s\+by\)\>/ contained
syntax match framingOperator /\<\%(at\s\+step\s\+by\s\+engineer\)\>/ contained
syntax match framingChoice_seismic /\<\%(category\|D0\|D1\|D2\|A\|B\|C\|E\)\>/ contained
syntax match framingChoice_values /\<\%(capacity\|interior\|Fc-perp\|density\|moment\|shear\|Emin\|end\|EI\|Fb\|Fc\|Ft\|Fv\|Fy\|E\)\>/ contained
syntax match framingChoice_kind /\<\%(concrete\|existing\|I-joist\|masonry\|rafters\|stepped\|trusses\|framed\|glulam\|hanger\|rolled\|timber\|strip\|beam\|pier\|pony\|pad\)\>/ contained
syntax match framingChoice_severity /\<\%(warning\|advice\|error\|off\)\>/ contained
syntax match framingChoice_soil /\<\%(assumed\|gross\|net\)\>/ contained
syntax match framingChoice_open /\<\%(north\|right\|south\|east\|left\|west\)\>/ contained
syntax match framingChoice_use /\<\%(sleeping\|workshop\|balcony\|kitchen\|library\|storage\|garage\|living\|office\|attic\|bath\|deck\|hall\)\>/ contained
syntax match framingChoice_base /\<\%(standoff\|plate\|bare\)\>/ contained
syntax match framingChoice_over /\<\%(basement\|outside\|crawl\)\>/ contained
syntax match framingChoice_counts /\<\%(footings\|landings\|openings\|columns\|headers\|ledgers\|notches\|pockets\|shelves\|windows\|drains\|floors\|joists\|stairs\|stoops\|beams\|doors\|ducts\|holes\|jacks\|roofs\|slabs\|walls\)\>/ contained
syntax match framingChoice_nailer /\<\%(bolted\)\>/ contained
syntax match framingChoice_at /\<\%(north\|right\|south\|each\|east\|left\|west\)\>/ contained
syntax match framingChoice_packing /\<\%(north\|right\|south\|east\|left\|west\)\>/ contained
syntax match framingChoice_sheathed /\<\%(north\|right\|south\|east\|left\|west\)\>/ contained
syntax match framingChoice_shot /\<\%(subfloor\|bottom\|finish\|length\|seat\|top\)\>/ contained
syntax match framingChoice_landing /\<\%(bottom\|mid\|top\)\>/ contained
syntax match framingChoice_edge /\<\%(bottom\|top\)\>/ contained
syntax match framingChoice_line /\<\%(centre\|north\|right\|south\|east\|left\|west\)\>/ contained
syntax match framingChoice_sill /\<\%(centred\|north\|right\|south\|east\|left\|west\)\>/ contained
syntax match framingChoice_tails /\<\%(hanger\|ledger\|clip\)\>/ contained
syntax match framingChoice_headers /\<\%(hanger\|ledger\|clip\)\>/ contained
syntax match framingChoice_hangs_from /\<\%(outside\|hanger\|ledger\|clip\)\>/ contained
syntax match framingChoice_case /\<\%(roof-live\|sleeping\|dead\|live\|snow\|soil\|wind\)\>/ contained
syntax match framingChoice_status /\<\%(ordered\|poured\|drawn\|set\)\>/ contained
syntax match framingChoice_set /\<\%(top\)\>/ contained
syntax match framingChoice_cross_grain /\<\%(sawn\|dry\)\>/ contained
syntax match framingChoice_bars /\<\%(long\)\>/ contained
syntax match framingChoice_grade /\<\%(north\|right\|south\|east\|left\|none\|west\)\>/ contained
syntax match framingChoice_guard /\<\%(north\|right\|south\|east\|left\|west\)\>/ contained
syntax match framingChoice_climbs /\<\%(north\|right\|south\|east\|left\|west\)\>/ contained
syntax match framingChoice_north /\<\%(x\|y\)\>/ contained
syntax match framingChoice_gap /\<\%(flashed\|filled\|open\)\>/ contained
syntax match framingChoice_datum /\<\%(subfloor\|finish\)\>/ contained
syntax match framingChoice_laid /\<\%(flat\)\>/ contained
syntax match framingChoice_from /\<\%(grade\)\>/ contained
syntax match framingChoice_snow /\<\%(ground\|roof\)\>/ contained
syntax match framingChoice_loads /\<\%(kept\)\>/ contained
syntax match framingChoice_joint /\<\%(spliced\|lapped\)\>/ contained
syntax match framingChoice_keep /\<\%(step-free\|straight\|meeting\)\>/ contained
syntax match framingChoice_bearing /\<\%(yes\|no\)\>/ contained
syntax match framingChoice_braced /\<\%(none\)\>/ contained
syntax match framingChoice_rim /\<\%(none\)\>/ contained
syntax match framingChoice_cap /\<\%(saddle\|plate\|none\|seat\)\>/ contained
syntax match framingChoice_bears_on /\<\%(outside\)\>/ contained
syntax match framingChoice_blocked /\<\%(x-bridging\|solid\)\>/ contained
syntax match framingChoice_run /\<\%(x\|y\)\>/ contained
syntax match framingChoice_kind /\<\%(composite\s\+lumber\|filled\s\+pipe\)\>/ contained
syntax match framingChoice_open /\<\%(at\s\+top\)\>/ contained
syntax match framingChoice_use /\<\%(attic\s\+storage\|book\s\+room\)\>/ contained
syntax match framingChoice_counts /\<\%(squash\s\+blocks\)\>/ contained
syntax match framingChoice_at /\<\%(both\s\+sides\)\>/ contained
syntax match framingChoice_packing /\<\%(both\s\+sides\|on\s\+flange\|solid\s\+2x\|on\s\+face\|in\s\+web\)\>/ contained
syntax match framingChoice_sheathed /\<\%(both\s\+sides\)\>/ contained
syntax match framingChoice_span /\<\%(by\s\+grid\)\>/ contained
syntax match framingChoice_sill /\<\%(flush\s\+with\|held\s\+in\)\>/ contained
syntax match framingChoice_set /\<\%(dropped\s\+under\|flush\s\+in\|upset\s\+in\)\>/ contained
syntax match framingChoice_bars /\<\%(each\s\+way\)\>/ contained
syntax match framingChoice_guard /\<\%(posts\s\+blocked\)\>/ contained
syntax match framingChoice_laid /\<\%(on\s\+edge\)\>/ contained
syntax match framingChoice_loads /\<\%(left\s\+out\)\>/ contained
syntax match framingChoice_keep /\<\%(level\s\+with\)\>/ contained
syntax match framingChoice_base /\<\%(through\s\+the\s\+deck\)\>/ contained
syntax match framingChoice_north /\<\%(east\s\+of\s\+y\|west\s\+of\s\+y\)\>/ contained
syntax match framingStuff /\<HSS\ze\d/ contained
syntax match framingOperator /[<>]\==\|[<>≤≥@]\|\/\|×/ contained

" Numbers. A unit touches its number or stands one blank behind it.
syntax match framingNumber /\%#=1\%(\<EL\.\=\s*\%(-\|−\|(-) \=\|±\|+\/-\|+\)\=\|\%([^[:blank:](,=]\)\@1<!\%(-\|−\|(-) \=\|±\|+\/-\|+\)\)\=\%(\d\+\%(\.\d\+\)\= \=\%('\%('\)\@!\|’\%(’\)\@!\|′\%(′\)\@!\)\%([- ]\=\%(\%(\d\+\/\d\+\|[½¼¾⅛⅜⅝⅞]\)\|\d\+\%(\.\d\+\)\=\%([½¼¾⅛⅜⅝⅞]\|[- ]\%(\d\+\/\d\+\|[½¼¾⅛⅜⅝⅞]\)\)\=\)\%(''\|’’\|′′\|["”″]\)\|-\=\%(\%(\d\+\/\d\+\|[½¼¾⅛⅜⅝⅞]\)\|\d\+\%(\.\d\+\)\=\%([½¼¾⅛⅜⅝⅞]\|[- ]\%(\d\+\/\d\+\|[½¼¾⅛⅜⅝⅞]\)\)\=\)[[:alnum:]]\@!\)\=\|\%(\%(\d\+\/\d\+\|[½¼¾⅛⅜⅝⅞]\)\|\d\+\%(\.\d\+\)\=\%([½¼¾⅛⅜⅝⅞]\|[- ]\%(\d\+\/\d\+\|[½¼¾⅛⅜⅝⅞]\)\)\=\)\%(''\|’’\|′′\|["”″]\)\=\|\d\+\%(\.\d\+\)\=[eE][+-]\=\d\+\)%\=/ contained nextgroup=framingUnit
syntax match framingNumber /\%#=1\d\+\%(\%(kg\/m3\|sq\s\+ft\|sq\s\+in\|kN\/m\|kips\|sq\s\+m\|MPa\|kPa\|kip\|klf\|ksf\|ksi\|lbs\|pcf\|plf\|psf\|psi\|ft\|in\|kN\|lb\|mm\|m\)[[:alnum:]]\@!\)\@!\%([xX×]\d\)\@![^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|\d\)*\%([-.]\%([^\x01-@\[-`{-\xbf×÷−≤≥±⅛⅜⅝⅞’′”″“]\|\d\)\+\)*/ contained nextgroup=framingUnit
syntax match framingNumber /\%#=1\%(\<EL\.\=\s*\%(-\|−\|(-) \=\|±\|+\/-\|+\)\=\|\%([^[:blank:](,=]\)\@1<!\%(-\|−\|(-) \=\|±\|+\/-\|+\)\)\=\d\+\%(\.\d\+\)\=[eE][+-]\=\d\d\=[[:alnum:]]\@!/ contained nextgroup=framingUnit
syntax match framingNumber /\%#=1#\d\{1,3}/ contained nextgroup=framingUnit
syntax match framingNumber /\%#=1\d\d\d\d-\d\d-\d\d/ contained nextgroup=framingUnit
syntax match framingNumber /\%#=1\d\+[xX×]\d\+\%([[:alnum:]\/'"’”′″_×]\|[.-]\d\)\@!/ contained nextgroup=framingUnit
syntax match framingNumber /\%#=1\d\+-ply\>/ contained nextgroup=framingUnit
syntax match framingUnit / \=\%(kg\/m3\|sq\s\+ft\|sq\s\+in\|kN\/m\|kips\|sq\s\+m\|MPa\|kPa\|kip\|klf\|ksf\|ksi\|lbs\|pcf\|plf\|psf\|psi\|ft\|in\|kN\|lb\|mm\|m\)\%([[:alnum:]_]\|[-.][[:alnum:]]\)\@!\.\=/ contained
syntax match framingTimes /[[:blank:]0-9½¼¾⅛⅜⅝⅞'"’”′″]\@1<=[xX×]\ze *[0-9½¼¾⅛⅜⅝⅞]/ contained

" A quote opens a text behind a blank; any other is an inch mark.
syntax match framingText /\%(^\|[[:blank:]]\)\@1<=\%("[^[:blank:]"][^"]*"\|""\|[“”][^[:blank:]"”][^"”]*["”]\)/ contains=@Spell
syntax match framingComment /\%(^\|[[:blank:]]\)\@1<=--.*$/ contains=@Spell,framingTodo
syntax keyword framingTodo TODO FIXME contained

highlight default link framingElement Statement
highlight default link framingInclude Include
highlight default link framingName Function
highlight default link framingFact Identifier
highlight default link framingFactName Identifier
highlight default link framingCase Constant
highlight default link framingRule PreProc
highlight default link framingOperator Operator
highlight default link framingTimes Operator
highlight default link framingChoice Special
highlight default link framingRule_limit framingRule
highlight default link framingChoice_seismic framingChoice
highlight default link framingChoice_values framingChoice
highlight default link framingChoice_kind framingChoice
highlight default link framingChoice_severity framingChoice
highlight default link framingRule_severity framingRule
highlight default link framingChoice_soil framingChoice
highlight default link framingChoice_open framingChoice
highlight default link framingChoice_use framingChoice
highlight default link framingChoice_base framingChoice
highlight default link framingChoice_over framingChoice
highlight default link framingChoice_counts framingChoice
highlight default link framingChoice_nailer framingChoice
highlight default link framingChoice_at framingChoice
highlight default link framingChoice_packing framingChoice
highlight default link framingChoice_sheathed framingChoice
highlight default link framingChoice_shot framingChoice
highlight default link framingChoice_landing framingChoice
highlight default link framingChoice_edge framingChoice
highlight default link framingChoice_span framingChoice
highlight default link framingChoice_line framingChoice
highlight default link framingChoice_sill framingChoice
highlight default link framingChoice_tails framingChoice
highlight default link framingChoice_headers framingChoice
highlight default link framingChoice_hangs_from framingChoice
highlight default link framingChoice_case framingChoice
highlight default link framingChoice_status framingChoice
highlight default link framingChoice_set framingChoice
highlight default link framingChoice_cross_grain framingChoice
highlight default link framingChoice_bars framingChoice
highlight default link framingChoice_grade framingChoice
highlight default link framingChoice_guard framingChoice
highlight default link framingChoice_climbs framingChoice
highlight default link framingChoice_north framingChoice
highlight default link framingChoice_gap framingChoice
highlight default link framingChoice_datum framingChoice
highlight default link framingChoice_laid framingChoice
highlight default link framingChoice_from framingChoice
highlight default link framingChoice_snow framingChoice
highlight default link framingChoice_loads framingChoice
highlight default link framingChoice_joint framingChoice
highlight default link framingChoice_keep framingChoice
highlight default link framingChoice_bearing framingChoice
highlight default link framingChoice_braced framingChoice
highlight default link framingChoice_rim framingChoice
highlight default link framingChoice_cap framingChoice
highlight default link framingChoice_bears_on framingChoice
highlight default link framingChoice_blocked framingChoice
highlight default link framingChoice_run framingChoice
highlight default link framingStuff Type
highlight default link framingNumber Number
highlight default link framingUnit Type
highlight default link framingText String
highlight default link framingComment Comment
highlight default link framingTodo Todo

let b:current_syntax = 'framing'
