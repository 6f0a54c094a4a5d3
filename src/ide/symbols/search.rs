//! Which symbols a few letters mean, the likeliest first.

use std::cmp::Reverse;

/// So many are found at most.
pub const MOST_FOUND: usize = 256;

/// The symbols that fit every word of the query, the likeliest first; the first of all, in their order, for an empty one.
///
/// A word fits a symbol whose name has its letters in this order, capital or small. It fits best as a whole word of the
/// name, then as the beginning of one, then as the first letters of several, then as a stretch of it.
pub fn symbols_like<T>(
    query: &str,
    symbols: impl IntoIterator<Item = T>,
    name_of: impl Fn(&T) -> &str,
) -> Vec<T> {
    let wanted: Vec<Vec<char>> = query.split_whitespace().map(folded).collect();
    let fits = symbols.into_iter().filter_map(|symbol| {
        let letters = Letters::of(name_of(&symbol));
        let score = wanted.iter().map(|word| letters.score(word)).sum::<Option<u32>>()?;
        Some((Reverse(score), symbol))
    });
    let mut found: Vec<(Reverse<u32>, T)> = fits.collect();
    // Of two that fit alike the shorter name has less besides.
    if !wanted.is_empty() {
        found.sort_by_key(|(score, symbol)| (*score, name_of(symbol).len()));
    }
    found.into_iter().take(MOST_FOUND).map(|(_, symbol)| symbol).collect()
}

fn folded(word: &str) -> Vec<char> {
    word.chars().flat_map(char::to_lowercase).collect()
}

/// The small letters of a name, and which of them begin a word.
struct Letters {
    small: Vec<char>,
    begins: Vec<bool>,
}

impl Letters {
    fn of(name: &str) -> Self {
        let (mut small, mut begins) = (Vec::with_capacity(name.len()), Vec::with_capacity(name.len()));
        let mut before = ' ';
        for letter in name.chars() {
            let is_behind_sign = letter.is_alphanumeric() && !before.is_alphanumeric();
            let is_capital = letter.is_uppercase() && before.is_lowercase();
            let is_number = letter.is_numeric() && before.is_alphabetic();
            for (at, folded) in letter.to_lowercase().enumerate() {
                small.push(folded);
                begins.push(at == 0 && (is_behind_sign || is_capital || is_number));
            }
            before = letter;
        }
        Self { small, begins }
    }

    /// How well a word fits; `None` when it does not.
    fn score(&self, word: &[char]) -> Option<u32> {
        let mut best = None;
        for (at, stretch) in self.small.windows(word.len().max(1)).enumerate() {
            if stretch == word {
                let ends = self.small.get(at + word.len()).is_none_or(|next| !next.is_alphanumeric());
                let score = match (self.begins_whole_word(at), ends) {
                    (true, true) => 1_000,
                    (true, false) => 800,
                    (false, _) if self.begins.get(at) == Some(&true) => 700,
                    (false, _) => 400,
                };
                best = best.max(Some(score));
            }
        }
        best.or_else(|| self.of_beginnings(word).then_some(600)).or_else(|| self.scattered(word))
    }

    /// True where a word begins behind a blank or sign, and not inside `B12`.
    fn begins_whole_word(&self, at: usize) -> bool {
        let before = at.checked_sub(1).and_then(|before| self.small.get(before));
        self.begins.get(at) == Some(&true) && before.is_none_or(|before| !before.is_alphanumeric())
    }

    /// True when the letters begin words of the name one behind the other: `cg` in `Center girder`.
    fn of_beginnings(&self, word: &[char]) -> bool {
        let mut beginnings = self.small.iter().zip(&self.begins).filter(|(_, begins)| **begins);
        word.iter().all(|letter| beginnings.any(|(beginning, _)| beginning == letter))
    }

    /// The score of letters that stand in this order anywhere: the closer together, the better.
    fn scattered(&self, word: &[char]) -> Option<u32> {
        let mut places = self.small.iter().enumerate();
        let (mut first, mut last) = (None, 0);
        for letter in word {
            let (at, _) = places.find(|(_, small)| *small == letter)?;
            first = first.or(Some(at));
            last = at;
        }
        let spread = last.saturating_sub(first.unwrap_or(0)).saturating_sub(word.len());
        Some(300u32.saturating_sub(u32::try_from(spread).unwrap_or(u32::MAX)).max(1))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const NAMES: [&str; 7] = [
        "beam B1 \"Center girder\"",
        "beam B12 \"Rim at the stair\"",
        "column C1 \"Under the girder\"",
        "floor main \"Main floor\"",
        "joists J1 \"Main joists\"",
        "wall W2 \"North foundation wall\"",
        "sheet A-301 \"Section through the den\"",
    ];

    fn names(query: &str) -> Vec<&'static str> {
        symbols_like(query, NAMES, |name| name)
    }

    #[test]
    fn the_whole_name_comes_before_its_beginning() {
        assert_eq!(names("b1")[..2], [NAMES[0], NAMES[1]]);
        assert_eq!(names("B12")[0], NAMES[1]);
        assert_eq!(names("main")[..2], [NAMES[3], NAMES[4]]);
    }

    #[test]
    fn titles_kinds_and_several_words_are_found() {
        assert_eq!(names("girder"), [NAMES[0], NAMES[2]]);
        assert_eq!(names("beam girder"), [NAMES[0]]);
        assert_eq!(names("girder column"), [NAMES[2]]);
        assert_eq!(names("a301"), [NAMES[6]]);
        assert_eq!(names("A-301"), [NAMES[6]]);
    }

    #[test]
    fn first_letters_and_scattered_letters_are_found() {
        assert_eq!(names("cg")[0], NAMES[0]);
        assert_eq!(names("nfw")[0], NAMES[5]);
        assert_eq!(names("jsts")[0], NAMES[4]);
        assert_eq!(names("zz"), [""; 0]);
    }

    #[test]
    fn no_letters_mean_all_and_never_too_many() {
        assert_eq!(names(" "), NAMES);
        let many: Vec<String> = (0..1_000).map(|at| format!("post P{at}")).collect();
        let all = symbols_like("p7", &many, |name| name);
        assert_eq!(all.len(), MOST_FOUND);
        assert_eq!(all[0], "post P7");
    }

    proptest! {
        #[test]
        fn what_has_the_letters_in_order_is_found(name in "[a-zA-Z0-9 \"é-]{1,30}", keep in proptest::collection::vec(any::<bool>(), 30)) {
            let query: String = name.chars().zip(keep).filter(|(letter, keep)| *keep && !letter.is_whitespace()).map(|(letter, _)| letter).collect();
            prop_assert_eq!(symbols_like(&query, [name], |name| name).len(), 1);
        }
    }
}
