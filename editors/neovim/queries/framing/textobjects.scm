; Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.

; Each thing under both names that editors know it by.

(element) @class.outer @class.around
(element [(fact) (claim)]+ @class.inner @class.inside)

(fact) @statement.outer @entry.around
(claim) @statement.outer @entry.around
(fact (phrase) _+ @entry.inside)

(comment)+ @comment.outer @comment.around
(comment) @comment.inner @comment.inside
