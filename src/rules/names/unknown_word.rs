//! Words that are none of a list.

use crate::house::House;
use crate::model::problem::ModelProblemKind;
use crate::profiles::PROFILES;
use crate::rules::names::{report, told};
use crate::rules::wording::{either, quoted};
use crate::rules::{Findings, rule};

rule! {
    /// A word is none of those that can stand there: no profile, no limit.
    ///
    /// ## Why
    /// A profile that is not known sets no limits, and a limit that is not known changes none.
    ///
    /// ## Source
    /// The format's own rule: `grammar/limits.md` lists the profiles and their limits.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Loon Cove"
    ///   profile  irc-2012
    /// ```
    /// ```framing,passes
    /// project "Loon Cove"
    ///   profile  irc-2021
    /// ```
    "unknown-word", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for problem in told(house) {
        let ModelProblemKind::UnknownWord(list, nearest) = &problem.kind else { continue };
        let text = quoted(house.text_at(problem.span));
        let finding = report(findings, problem, format!("{text} is no {list}"));
        if *list == "profile" {
            let profiles: Vec<String> =
                PROFILES.iter().map(|profile| format!("`{}`", profile.name)).collect();
            finding.help(format!("the profiles are {}", either(&profiles)));
        } else if let Some(nearest) = nearest {
            finding.meant(problem.span, nearest);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn offers_what_there_is() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
  profile   irc-2012
--          ^^^^^^^^ `irc-2012` is no profile
-- | the profiles are `irc-2018` or `irc-2021`
  limit     riser-diference 1/2\"
--          ^^^^^^^^^^^^^^^ `riser-diference` is no limit
-- | did you mean `riser-difference`?
  limit     riser-height 8\"
",
        );
    }
}
