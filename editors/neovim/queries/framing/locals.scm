; Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.

; Names are global to a spec: one scope, and a use may stand before what it names.

(source_file) @local.scope

(element name: (name) @local.definition)

(fact (name) @local.reference)
(fact_name (name) @local.reference)
(section (name) @local.reference)

; Grid lines have names of their own.
(grid (fact name: (grid_line) @local.definition))
(grid_ref line: (grid_line) @local.reference)
