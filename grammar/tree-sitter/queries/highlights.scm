; Every leaf is captured once, so it does not matter whether the first or the last pattern wins.

(comment) @comment

(keyword) @keyword
(phrase) @property
(link) @keyword.operator
(operator) @operator
(relation) @operator

; A name where it is given, and where it is used.
(element name: (name) @type)
(fact (name) @variable)
(fact_name (name) @variable)
(section (name) @variable)
(grid_line) @label

(choice) @constant
(mark) @constant
(side) @constant
(shape) @constant
(make) @constant
(species) @constant
(grade) @constant
(slug) @string.special

(text) @string
(words) @string

(length) @number
(elevation) @number
(load_value) @number
(stress) @number
(area_value) @number
(percent) @number
(count) @number
(number) @number
(date) @number
(bar) @number
(nominal) @number
(rolled) @number

["," "/" "x"] @punctuation.delimiter
["(" ")"] @punctuation.bracket
