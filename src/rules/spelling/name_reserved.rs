//! Names that are words of the format.

use crate::house::House;
use crate::rules::spelling::told;
use crate::rules::wording::{a_kind, quoted};
use crate::rules::{Findings, rule};
use crate::syntax::ProblemKind;
use crate::syntax::vocabulary::element_opened_by;

rule! {
    /// A name is a word that the format needs for itself.
    ///
    /// ## Why
    /// `stands on beam` must mean one thing.
    ///
    /// ## Source
    /// The format's own rule: words that open an element or join the parts of a fact are no names.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor over
    ///   subfloor  100'-0"
    /// ```
    /// ```framing,passes
    /// floor upper
    ///   subfloor  100'-0"
    /// ```
    "name-reserved", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ProblemKind::NameReserved = problem.kind else { continue };
        let text = house.text_at(problem.span);
        let why = match element_opened_by(text) {
            Some(spec) => format!("it opens {}", a_kind(spec.kind)),
            None => "it joins the parts of a fact".to_owned(),
        };
        findings.in_text(problem.span, format!("{} can be no name: {why}", quoted(text)));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_what_the_word_is_for() {
        check_rule(
            &RULE,
            "
floor plus
--    ^^^^ `plus` can be no name: it joins the parts of a fact
beam post
--   ^^^^ `post` can be no name: it opens a column
beam posts
",
        );
    }
}
