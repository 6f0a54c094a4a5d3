//! Comparisons that don't hold, in words: what intents and sheets share.

use crate::facts::comparison::Failure;
use crate::house::House;
use crate::model::element::Assertion;
use crate::rules::Finding;
use crate::syntax::value::{Expression, Relation, Sign, Term, Within};
use crate::text::Span;

/// What each side says and comes to: `finish of den is 98'-5", top of SL2 is 98'-4": 1" apart`.
pub fn sentence(house: &House, assertion: &Assertion, failure: &Failure) -> String {
    let comparison = &assertion.comparison;
    let left = format!("{} is {}", text(house, assertion, &comparison.left), failure.left);
    let right = text(house, assertion, &comparison.right);
    let is_stated = is_stated(&comparison.right);
    match (comparison.relation, is_stated) {
        (Relation::Equal, true) => format!("{left}, not {}{}", failure.right, apart(assertion, failure)),
        (Relation::Equal, false) => {
            format!("{left}, {right} is {}{}", failure.right, apart(assertion, failure))
        }
        (relation, true) => format!("{left}; it should be {} {}", words(relation), failure.right),
        (relation, false) => format!("{left}; it should be {} {right}, {}", words(relation), failure.right),
    }
}

/// How far the two are apart, and how far they may be: `: 1" apart, 1/4" allowed`.
pub fn apart(assertion: &Assertion, failure: &Failure) -> String {
    let allowed = match assertion.comparison.within.and_then(Within::length) {
        Some(within) => format!(", {within} allowed"),
        None => String::new(),
    };
    failure.difference.map(|difference| format!(": {} apart{allowed}", difference.abs())).unwrap_or_default()
}

/// The arithmetic on either side, and the elements it rests on.
pub fn explain(finding: &mut Finding, failure: &Failure) {
    for sum in &failure.sums {
        finding.note(sum.to_string());
    }
    for element in &failure.of {
        finding.follows(*element);
    }
    for sum in &failure.sums {
        for element in sum.elements() {
            finding.follows(element);
        }
    }
}

/// A side as the author wrote it.
pub fn text<'h>(house: &'h House, assertion: &Assertion, expression: &Expression) -> &'h str {
    house.text_at(place_of(assertion, expression))
}

/// Where a side stands.
pub const fn place_of(assertion: &Assertion, expression: &Expression) -> Span {
    expression.span.within(assertion.origin.file, assertion.origin.start)
}

/// True for a value alone, which needs no saying what it is.
pub fn is_stated(expression: &Expression) -> bool {
    matches!(expression.terms.as_slice(), [(Sign::Plus, Term::Value(_))])
}

const fn words(relation: Relation) -> &'static str {
    match relation {
        Relation::Equal => "equal to",
        Relation::Less => "less than",
        Relation::AtMost => "at most",
        Relation::More => "more than",
        Relation::AtLeast => "at least",
    }
}
