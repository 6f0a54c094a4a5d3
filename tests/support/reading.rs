//! What a text must be to count as read, and what was read in it.
#![allow(dead_code, reason = "each test takes the part it needs")]

use storyrod::syntax::{Fact, Opening, parse_fresh};

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

/// Each fact with its labels and values, without their places.
pub fn values(text: &str) -> Vec<String> {
    let chunks = parse_fresh(text).chunks;
    let facts = chunks.iter().flat_map(|chunk| &chunk.body.facts);
    facts.map(|fact| format!("{} {}", fact.spec.phrase, parts_of(fact))).collect()
}

fn parts_of(fact: &Fact) -> String {
    let values: Vec<_> = fact.parts.iter().map(|part| format!("{} {:?}", part.label, part.value)).collect();
    let debug = values.join(", ");
    let mut pieces = debug.split("LocalSpan {");
    let first = pieces.next().unwrap().to_owned();
    pieces.fold(first, |text, piece| text + piece.split_once('}').unwrap().1)
}
