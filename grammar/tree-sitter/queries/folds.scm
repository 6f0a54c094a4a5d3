(element) @fold
