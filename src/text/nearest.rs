//! The word that someone probably meant.

/// The one of `words` nearest to what was written, when it is near enough to be offered: one slip in a short word, one
/// in three letters of a long one. Of equals, the first.
pub fn nearest<'a>(written: &str, words: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    if written.len() > LONGEST {
        return None;
    }
    let most = (written.chars().count() / 3).max(1);
    let lower = written.to_lowercase();
    words
        .into_iter()
        .map(|word| (strsim::damerau_levenshtein(&lower, &word.to_lowercase()), word))
        .filter(|(slips, word)| *slips <= most && *slips < word.chars().count())
        .min_by_key(|(slips, _)| *slips)
        .map(|(_, word)| word)
}

/// A longer word is no slip of the pen, and comparing it would take its time.
const LONGEST: usize = 64;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_is_seen_through_and_a_stranger_is_not() {
        let words = ["bears on", "hangs from", "stands on", "W1", "w12"];
        assert_eq!(nearest("bear on", words), Some("bears on"));
        assert_eq!(nearest("hnags from", words), Some("hangs from"));
        assert_eq!(nearest("W2", words), Some("W1"));
        assert_eq!(nearest("W12", words), Some("w12"));
        assert_eq!(nearest("ceiling", words), None);
        assert_eq!(nearest("", words), None);
    }
}
