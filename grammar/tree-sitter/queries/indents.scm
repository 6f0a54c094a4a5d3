; The facts of an element, and the line behind its heading.
(element) @indent.begin
