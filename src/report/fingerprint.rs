//! What makes a finding the same as one of an earlier run.
//!
//! A finding is known by its project, rule, element and by what its message names. Lines do not count, nor does the
//! order of the elements. Figures do not count either: like a waiver, a fingerprint stays with the fault however large
//! it grows, and a load that moves by a pound somewhere makes no old finding new.

use std::collections::{BTreeSet, HashMap};
use std::hash::Hasher;

use fnv::FnvHasher;

use crate::diagnostic::Diagnostic;

/// A fingerprint for each of the findings of one project, which come in the order of reading. Equal ones are counted.
pub(in crate::report) fn fingerprints(project: &str, findings: &[&Diagnostic]) -> Vec<String> {
    let mut met: HashMap<u64, u32> = HashMap::new();
    let fingerprints = findings.iter().map(|finding| {
        let known_by = known_by(project, finding);
        let count = met.entry(known_by).or_default();
        *count += 1;
        format!("{known_by:016x}:{count}")
    });
    fingerprints.collect()
}

/// What a finding is known by in the project whose root file has this name, without a count.
pub fn known_as(project: &str, finding: &Diagnostic) -> String {
    format!("{:016x}", known_by(project, finding))
}

fn known_by(project: &str, finding: &Diagnostic) -> u64 {
    // As a set: of two elements at odds, the one further up is most often named first and taken for the subject.
    let said = finding.subject.split_whitespace().chain(finding.message.split_whitespace());
    let words: BTreeSet<&str> = said.filter_map(name_or_word).collect();
    // Published and the same on every machine, unlike the hasher of the standard library.
    let mut hasher = FnvHasher::default();
    for part in [project, finding.rule].into_iter().chain(words) {
        hasher.write(part.as_bytes());
        hasher.write_u8(0);
    }
    hasher.finish()
}

/// True when a finding says nothing that another did not say: it is of the same kind, and of some of the same elements.
/// Each is given as its element and its message.
pub fn is_part_of(part: [&str; 2], whole: [&str; 2]) -> bool {
    fn words(texts: [&str; 2]) -> BTreeSet<&str> {
        let words = texts.into_iter().flat_map(str::split_whitespace);
        words.filter_map(name_or_word).map(without_number).collect()
    }
    words(part).is_subset(&words(whole))
}

/// The word for one and for several as one word.
fn without_number(word: &str) -> &str {
    match word {
        "are" => "is",
        "they" => "it",
        "have" => "has",
        "shelves" => "shelf",
        "is" | "has" => word,
        _ => word.strip_suffix('s').unwrap_or(word),
    }
}

/// A word of a message without the marks round it; none when it is a figure.
fn name_or_word(word: &str) -> Option<&str> {
    let word = word.trim_matches(|character: char| !character.is_alphanumeric());
    let first = word.chars().next()?;
    (!first.is_numeric()).then_some(word)
}

#[cfg(test)]
mod tests {
    use super::{is_part_of, name_or_word};

    const BOTH: [&str; 2] = [
        "joists J1",
        "the tops of walls W1 and W2 are 2\" too high for joists J1: say 99'-0 1/2\", they need 98'-10 1/2\"",
    ];

    #[test]
    fn fewer_elements_are_a_part_and_others_are_not() {
        let of = |message: &str| is_part_of(["joists J1", message], BOTH);
        assert!(is_part_of(BOTH, BOTH));
        assert!(of("the top of wall W2 is 1\" too high for joists J1: says 99'-0\", it needs 98'-11\""));
        assert!(!of(
            "the top of wall W3 is 2\" too high for joists J1: says 99'-0 1/2\", it needs 98'-10 1/2\""
        ));
        assert!(!of(
            "the top of wall W2 is 2\" too low for joists J1: says 99'-0 1/2\", it needs 99'-2 1/2\""
        ));
        assert!(!of("the tops of walls W1, W2 and W3 are 2\" too high for joists J1"));
        assert!(!is_part_of(["joists J2", BOTH[1]], BOTH));
    }

    #[test]
    fn figures_are_no_words() {
        let words =
            "walls W1 and `W2` are 2\" too high, say 99'-0 1/2\", of 2x10s on a W10x22: ½ is ~1/2\" (R602)";
        let kept: Vec<_> = words.split_whitespace().filter_map(name_or_word).collect();
        assert_eq!(kept.join(" "), "walls W1 and W2 are too high say of on a W10x22 is R602");
    }
}
