; Every element once: by its name, by its title where it has no name, by its keyword where it has neither.

(element
  keyword: (keyword) @context
  name: (name) @name
  title: (text)? @context.extra) @item

(project keyword: (keyword) @context title: (text) @name) @item
(intent keyword: (keyword) @context title: (text) @name) @item

(project keyword: (keyword) @name !title) @item
(intent keyword: (keyword) @name !title) @item
(grid keyword: (keyword) @name) @item
