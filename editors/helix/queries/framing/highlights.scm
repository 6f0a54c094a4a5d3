; Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.

(comment) @comment

(keyword) @keyword
(phrase) @variable.other.member
(link) @keyword.operator
(operator) @operator
(relation) @operator

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

(length) @constant.numeric
(elevation) @constant.numeric
(load_value) @constant.numeric
(stress) @constant.numeric
(area_value) @constant.numeric
(percent) @constant.numeric
(count) @constant.numeric
(number) @constant.numeric
(date) @constant.numeric
(bar) @constant.numeric
(nominal) @constant.numeric
(rolled) @constant.numeric

["," "/" "x"] @punctuation.delimiter
["(" ")"] @punctuation.bracket
