//! What may be a name, and which known word is nearest to an unknown one.

use crate::syntax::vocabulary::ELEMENTS;

/// Words that join the parts of a fact; a name among them could not be told from them.
const JOINING: &[&str] = &[
    "and", "at", "because", "by", "for", "from", "in", "less", "of", "on", "over", "plus", "source", "to",
    "within",
];

/// Is this word, a single token, fit to name an element or a grid line?
pub fn may_name(word: &str) -> bool {
    !word.contains(['×', '@']) && !word.ends_with('.') && !has_size_mark(word) && !is_reserved(word)
}

/// True for words that open an element or join the parts of a fact.
pub fn is_reserved(word: &str) -> bool {
    JOINING.contains(&word) || ELEMENTS.iter().any(|spec| spec.keyword == word || spec.also.contains(&word))
}

/// True when an `x` stands between digits, as in a mill's mark.
fn has_size_mark(word: &str) -> bool {
    let bytes = word.as_bytes();
    bytes
        .windows(3)
        .any(|three| matches!(three, [a, b'x' | b'X', c] if a.is_ascii_digit() && c.is_ascii_digit()))
}

/// The candidate nearest to `word`, when it is near enough to have been meant: at most one change in three letters.
/// Of equally near ones the first.
pub fn nearest<'c>(word: &str, candidates: impl IntoIterator<Item = &'c str>) -> Option<&'c str> {
    let length = word.chars().count();
    let most = (length / 3).max(1);
    if length > LONGEST_COMPARED {
        return None;
    }
    let mut best = None;
    for candidate in candidates {
        if candidate.chars().count().abs_diff(length) > most {
            continue;
        }
        let changes = changes_between(word, candidate);
        if changes <= most && best.is_none_or(|(least, _)| changes < least) {
            best = Some((changes, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// Longer words are no slip of the pen.
const LONGEST_COMPARED: usize = 40;

/// How many letters must be put in, taken out, replaced or swapped with their neighbour to make one word the other.
/// Capitals don't count.
fn changes_between(one: &str, other: &str) -> usize {
    let letters = |word: &str| word.chars().flat_map(char::to_lowercase).collect::<Vec<_>>();
    let (one, other) = (letters(one), letters(other));
    let mut before_last: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=other.len()).collect();
    for (row, letter) in one.iter().enumerate() {
        let mut current = vec![row + 1];
        for (column, other_letter) in other.iter().enumerate() {
            let at = |row: &[usize], column: usize| row.get(column).copied().unwrap_or(usize::MAX / 2);
            let replaced = at(&last, column) + usize::from(letter != other_letter);
            let mut changes = replaced.min(at(&last, column + 1) + 1).min(at(&current, column) + 1);
            let is_swapped = row > 0
                && column > 0
                && one.get(row - 1) == Some(other_letter)
                && other.get(column - 1) == Some(letter);
            if is_swapped {
                changes = changes.min(at(&before_last, column - 1) + 1);
            }
            current.push(changes);
        }
        before_last = std::mem::replace(&mut last, current);
    }
    last.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_nearest_word_is_one_slip_away() {
        let words = ["column", "beam", "footing", "jacks"];
        assert_eq!(nearest("colum", words), Some("column"));
        assert_eq!(nearest("baem", words), Some("beam"));
        assert_eq!(nearest("Footing", words), Some("footing"));
        assert_eq!(nearest("girt", words), None);
        assert_eq!(nearest("", words), None);
    }

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
