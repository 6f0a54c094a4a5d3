; Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.

(element) @class.around
(element [(fact) (claim)]+ @class.inside)

(fact) @entry.around
(claim) @entry.around
(fact (phrase) _+ @entry.inside)

(comment)+ @comment.around
(comment) @comment.inside
