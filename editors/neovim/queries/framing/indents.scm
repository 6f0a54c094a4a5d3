; Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.

; The facts of an element, and the line behind its heading.
(element) @indent.begin
