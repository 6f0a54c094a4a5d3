; Written by `UPDATE=1 cargo test --test editors` from grammar/tree-sitter/queries; not edited by hand.

(element name: (name) @name) @definition.class

(project title: (text) @name) @definition.module
(intent title: (text) @name) @definition.module

(fact (name) @name) @reference.class
(fact_name (name) @name) @reference.class
(section (name) @name) @reference.class
