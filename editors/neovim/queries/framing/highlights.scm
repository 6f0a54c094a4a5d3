; Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.

; Every leaf is captured once, so it does not matter whether the first or the last pattern wins.

(comment) @comment @spell

(keyword) @keyword
(phrase) @property
(link) @operator
(operator) @operator
(relation) @operator

; A name where it is given, and where it is used.
(element name: (name) @type)
(fact (name) @variable)
(fact_name (name) @variable)
(section (name) @variable)
(grid_line) @variable.parameter

(choice) @constant
(mark) @constant
(side) @constant
(shape) @constant
(make) @constant
(species) @constant
(grade) @constant
(slug) @string.special

(text) @string @spell
(words) @string @spell

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
