//! Names of the wrong kind of thing.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::rules::names::{report, told};
use crate::rules::wording::{a_kind, either, quoted};
use crate::rules::{Findings, rule};

rule! {
    /// A name is used where its kind of element does not fit.
    ///
    /// ## Why
    /// A column does not stand on a stair, and joists belong to a floor, not to a wall: two names are mixed up.
    ///
    /// ## Source
    /// The format's own rule: each fact says which kinds of element it can name (`grammar/reference.md`).
    ///
    /// ## Examples
    /// ```framing,fires
    /// joists J1
    ///   floor  W1
    /// wall W1
    /// ```
    /// ```framing,passes
    /// joists J1
    ///   floor  main
    /// floor main
    /// ```
    "name-of-other-kind", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ModelProblemKind::WrongKind(wanted, kind, place) = &problem.kind else { continue };
        let name = quoted(house.text_at(problem.span));
        let message = match wanted {
            [only] => format!("{name} is {}; {} belongs here", a_kind(*kind), a_kind(*only)),
            _ => format!("{name} is {}, which does not fit here", a_kind(*kind)),
        };
        let finding = report(findings, problem, message);
        finding.related(*place, "named here");
        if wanted.len() > 1 {
            let fitting: Vec<String> = wanted.iter().map(|kind| a_kind(*kind)).collect();
            finding.note(format!("what fits: {}", either(&fitting)));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_what_it_is_and_what_fits() {
        check_rule(
            &RULE,
            "
floor main
stair S1
joists J1
  floor     S1
--          ^^ `S1` is a stair; a floor belongs here
-- | named here
beam B1
  bears on  main
--          ^^^^ `main` is a floor, which does not fit here
-- | what fits: a wall, a shelf
",
        );
    }
}
