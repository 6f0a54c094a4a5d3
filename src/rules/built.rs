//! What was measured on site.

pub mod built_beyond_tolerance;

use std::collections::HashSet;

use crate::diagnostic::Severity;
use crate::house::House;
use crate::house::as_built::AsBuilt;
use crate::rules::{self, Rule};

/// Groups of rules that ask of the text and the drawings, not of what stands: the spelling of a number, a sheet that
/// shows what was drawn.
const OF_THE_DRAWINGS: [&str; 9] =
    ["spelling", "names", "files", "sheets", "hygiene", "waivers", "severities", "coverage", "built"];

/// Rules that ask how a number was drawn.
const OF_DRAWN_NUMBERS: [&str; 4] =
    ["unbuildable-fraction", "nominal-as-actual", "drop-measured-on-wrong-surface", "drop-unexplained"];

/// True for a rule that can be asked of what stands. Gaps in the stack are told as gaps.
pub fn asks_of_what_stands(rule: &Rule) -> bool {
    !OF_THE_DRAWINGS.contains(&rule.group())
        && !OF_DRAWN_NUMBERS.contains(&rule.slug)
        && ![rules::stack::stack_does_not_close::RULE.slug, rules::stack::floor_drop_not_at_wall::RULE.slug]
            .contains(&rule.slug)
}

/// True for a rule that looks at shots: of the house as built, which has none, it says nothing.
pub fn looks_at_shots(rule: &Rule) -> bool {
    rule.group() == "built" || matches!(rule.slug, "stale-sheet" | "grout-range")
}

/// Something that breaks in the house as built and holds in the drawn one.
#[derive(Debug)]
struct Break {
    /// What the rule says.
    message: String,
    /// The rule.
    rule: &'static str,
    /// Another rule that looks at the shots tells it of the drawn house.
    is_told: bool,
}

/// What breaks in the house as built and holds in the drawn one: errors and warnings.
fn breaks(drawn: &House, as_built: &AsBuilt) -> Vec<Break> {
    let built = &as_built.house;
    // A column that grout can't make up for has to be cut anew: `grout-range` says so.
    let cut_anew: HashSet<String> = as_built
        .grouts
        .iter()
        .filter(|grout| !grout.is_taken_up)
        .filter_map(|grout| Some(built.model.common(grout.of)?.label()))
        .collect();
    let is_told = |rule: &Rule, subject: &String| {
        rule.slug == rules::columns::column_length_does_not_close::RULE.slug && cut_anew.contains(subject)
    };
    let mut new = Vec::new();
    for rule in rules::RULES.iter().filter(|rule| asks_of_what_stands(rule)) {
        let of_built = said_of(rule, built);
        if of_built.is_empty() {
            continue;
        }
        let of_drawn: HashSet<String> =
            said_of(rule, drawn).into_iter().map(|(subject, _)| subject).collect();
        let only_built = of_built.into_iter().filter(|(subject, _)| !of_drawn.contains(subject));
        new.extend(only_built.map(|(subject, message)| Break {
            message,
            rule: rule.slug,
            is_told: is_told(rule, &subject),
        }));
    }
    new
}

/// What a rule says of a house: the subject and the message, of what nobody has waived or accepted.
fn said_of(rule: &'static Rule, house: &House) -> Vec<(String, String)> {
    let (kept, _) = rules::weighed(house, rules::of_rule(rule, house));
    let grave = kept.into_iter().filter(|finding| finding.diagnostic.severity > Severity::Advice);
    grave.map(|finding| (finding.diagnostic.subject, finding.diagnostic.message)).collect()
}
