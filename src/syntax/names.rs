//! What may be a name.

use crate::syntax::vocabulary::{COMMON, ELEMENTS};

/// Words that join the parts of a fact; a name among them could not be told from them.
pub const JOINING: &[&str] = &[
    "and", "at", "because", "by", "for", "from", "in", "less", "of", "on", "over", "plus", "source", "to",
    "within",
];

/// Is this word, a single token, fit to name an element or a grid line?
pub fn may_name(word: &str) -> bool {
    !word.contains(['×', '@']) && !word.ends_with('.') && !has_size_mark(word) && !is_reserved(word)
}

/// True for words that open an element or join the parts of a fact.
pub fn is_reserved(word: &str) -> bool {
    joins(word) || ELEMENTS.iter().any(|spec| spec.keyword == word || spec.also.contains(&word))
}

/// True for words that join the parts of a fact.
pub fn joins(word: &str) -> bool {
    JOINING.contains(&word)
}

/// True for the first word of an element's line, and for `include`.
pub fn begins_element(word: &str) -> bool {
    let begins = |words: &str| words.split(' ').next() == Some(word);
    word == "include"
        || ELEMENTS.iter().any(|spec| begins(spec.keyword) || spec.also.iter().copied().any(begins))
}

/// True for the first word of a fact of any element.
pub fn begins_fact(word: &str) -> bool {
    let facts = ELEMENTS.iter().flat_map(|spec| spec.facts).chain(COMMON);
    facts.filter_map(|fact| fact.phrase.split(' ').next()).any(|first| first == word)
}

/// True when an `x` stands between digits, as in a mill's mark.
fn has_size_mark(word: &str) -> bool {
    let bytes = word.as_bytes();
    bytes
        .windows(3)
        .any(|three| matches!(three, [a, b'x' | b'X', c] if a.is_ascii_digit() && c.is_ascii_digit()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_and_joining_words_are_no_names() {
        for name in ["W1", "main", "x1", "A.5", "box2x", "F_1-a", "B"] {
            assert!(may_name(name), "{name}");
        }
        for word in ["W8x24", "beam", "by", "o.c.", "×"] {
            assert!(!may_name(word), "{word}");
        }
    }
}
