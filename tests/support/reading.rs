//! What a text must be to count as read.

use storyrod::syntax::{Opening, parse_fresh};

/// No problem, no unknown element, and a fact for every indented line.
pub fn assert_clean(text: &str) {
    let tree = parse_fresh(text);
    let chunk_text = |start: u32, length: u32| &text[start as usize..(start + length) as usize];
    for chunk in &tree.chunks {
        let source = chunk_text(chunk.start, chunk.body.length);
        assert!(chunk.body.problems.is_empty(), "{source}{:#?}", chunk.body.problems);
        assert!(matches!(chunk.body.opening, Opening::Element(_)), "{source}");
        let n_lines = source.lines().filter(|line| line.starts_with(' ')).count();
        assert_eq!(chunk.body.facts.len(), n_lines, "{source}");
    }
}
