//! What was measured against what was drawn.

use crate::facts::FactValue;
use crate::geometry::tolerances::tolerance_of;
use crate::house::House;
use crate::house::as_built::{AsBuilt, Measured};
use crate::profiles::Limit;
use crate::rules::built::{Break, breaks};
use crate::rules::{Finding, Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

rule! {
    /// Something was measured further from the drawing than the work may be off, or what was built breaks a rule.
    ///
    /// The last `shot` of each surface counts. The house is then derived once more with every measured number in place of the
    /// drawn one, and the finding lists only what breaks in it and holds in the drawn one, or says that all else fits.
    /// A wall, shelf, seat or floor that is off leaves a gap or has to be cut; `storyrod rod --as-built` lists those.
    ///
    /// What was measured of a poured, ordered or set element is this rule's. Numbers that are stated there and disagree with
    /// the rest, because the design changed after the pour, have no rule of their own: the rule that compares them says that
    /// the element is already in place, adds the ways out on site, and becomes advice once the element has an
    /// `accept "note" on DATE`. So does this one.
    ///
    /// ## Why
    /// Whoever builds on it goes by the drawing. Shims, the cut of a column, rough seats and risers follow from what is there.
    ///
    /// ## Source
    /// Common practice: the limits `wall-top-tolerance`, `pad-top-tolerance`, `column-cut-tolerance`, `post-cut-tolerance` and
    /// `ledger-tolerance`; all else the limit `field-tolerance`. The rod list shows them as `within`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind    concrete
    ///   top     99'-0 1/2"
    ///   shot    top 98'-11 3/4" on 2027-04-03
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind    concrete
    ///   top     99'-0 1/2"
    ///   shot    top 99'-0 1/4" on 2027-04-03
    /// ```
    "built-beyond-tolerance", Warning
}

/// So many of what breaks are told one by one.
const MOST_TOLD: usize = 8;

fn check(house: &House, findings: &mut Findings<'_>) {
    let Some(built) = house.as_built() else { return };
    let known: Vec<(&Measured, Length, &Limit<Length>)> = built
        .measured
        .iter()
        .filter_map(|shot| Some((shot, shot.by()?, tolerance_of(&house.model, shot.of, &shot.fact))))
        .filter(|(_, by, _)| *by != Length::ZERO)
        .collect();
    let beyond = |by: Length, limit: &Limit<Length>| by.abs() - house.limits.of(limit).value;
    // What breaks is told once, where the most is off.
    let Some((worst, ..)) = known.iter().max_by_key(|(_, by, limit)| beyond(*by, limit)) else { return };
    let broken = breaks(house, built);
    let is_untold = broken.iter().any(|it| !it.is_told);
    for (shot, by, limit) in &known {
        let allowed = house.limits.of(limit);
        let is_worst = std::ptr::eq(*shot, *worst);
        if by.abs() <= allowed.value && !(is_worst && is_untold) {
            continue;
        }
        let Some(common) = house.model.common(shot.of) else { continue };
        let message = if by.abs() > allowed.value {
            format!("{}: {} at the most", sentence(house, shot, *by), allowed.value)
        } else {
            format!(
                "{}, within {}, but the house as built breaks a rule",
                sentence(house, shot, *by),
                allowed.value
            )
        };
        let finding = findings.about(common.id, shot.span, message);
        if let Some(drawn) = shot.drawn {
            finding.disagrees(common.id, &shot.fact, value(shot, shot.value), value(shot, drawn));
        }
        if let Some(why) = shot.not_followed {
            finding.note(format!("the house as built does not follow it: {why}"));
        }
        if is_worst {
            tell(built, &broken, finding);
        }
        finding.basis(allowed.basis());
    }
}

fn tell(built: &AsBuilt, broken: &[Break], finding: &mut Finding) {
    let followed = built.measured.iter().filter(|shot| shot.not_followed.is_none()).count();
    let with = if followed > 1 { format!(" (all {followed} measurements)") } else { String::new() };
    if broken.is_empty() {
        finding.note(format!("all else fits as built{with}: nothing breaks that holds as drawn"));
    }
    for Break { message, rule, .. } in broken.iter().take(MOST_TOLD) {
        finding.note(format!("as built{with}: {message} [{rule}]"));
    }
    if let Some(more) = broken.len().checked_sub(MOST_TOLD).filter(|more| *more > 0) {
        finding.note(format!("as built: {more} more; `storyrod rod --as-built` lists them"));
    }
}

/// `the top of wall W2 was measured at 98'-11 3/4", 3/4" lower than drawn (99'-0 1/2")`
fn sentence(house: &House, shot: &Measured, by: Length) -> String {
    let label = house.model.common(shot.of).map(|common| common.label()).unwrap_or_default();
    let (what, off) = (&shot.fact, by.abs());
    let drawn = value(shot, shot.drawn.unwrap_or_default());
    let place = shot.at.map(|at| format!(" at {}", house.text_at(at))).unwrap_or_default();
    let way = match (is_length(shot), by.is_negative()) {
        (true, true) => "shorter",
        (true, false) => "longer",
        (false, true) => "lower",
        (false, false) => "higher",
    };
    let measured = value(shot, shot.value);
    format!("the {what} of {label}{place} was measured at {measured}, {off} {way} than drawn ({drawn})")
}

fn is_length(shot: &Measured) -> bool {
    &*shot.fact == "length" && matches!(shot.of.kind, ElementKind::Column | ElementKind::Squash)
}

fn value(shot: &Measured, length: Length) -> FactValue {
    if is_length(shot) { FactValue::Length(length) } else { FactValue::Elevation(length) }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::diagnostic::{Diagnostic, Severity};
    use crate::rules::found_in;
    use crate::testing::rule_check::{check_rule, house};

    /// A wall may be off by 1/4", a pad by 1/2" (common practice): at the limit both pass.
    #[test]
    fn each_surface_has_its_own_tolerance() {
        check_rule(
            &RULE,
            "
wall W1
  kind  concrete
  top   99'-0 1/2\"
  shot  top 99'-0 1/4\" on 2027-04-03
footing F1
  top   91'-0\"
  shot  top 90'-11 1/2\" on 2027-04-03
footing F2
  top   91'-0\"
  shot  top 90'-11 7/16\" on 2027-04-03
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the top of footing F2 was measured at 90'-11 7/16\", 9/16\" lower than drawn (91'-0\"): 1/2\" at the most
-- | all else fits as built (all 3 measurements)
",
        );
    }

    /// Three risers from 98'-4 1/2" to 100'-0" are laid out at 6-1/2"; the lower floor's covering was measured 1/2" high, so
    /// the lowest riser is 6". At 1/8" it is 6-3/8", and all fits.
    #[test]
    fn what_breaks_is_listed_and_nothing_else() {
        let text = |den: &str, mark: &str| {
            format!(
                "
floor main
  subfloor  100'-0\"
floor den
  subfloor  98'-4 1/2\"
  shot      finish {den} on 2027-05-03
{mark}stair S1
  from      den to main
  risers    3
  laid out  98'-4 1/2\" to 100'-0\"
"
            )
        };
        check_rule(
            &RULE,
            &text(
                "98'-5\"",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the finish of floor den was measured at 98'-5\", 1/2\" higher than drawn (98'-4 1/2\"): 1/4\" at the most\n-- | go from 6\" to 6-1/2\"\n",
            ),
        );
        check_rule(&RULE, &text("98'-4 5/8\"", ""));
    }

    fn of_this(text: &str) -> Vec<Diagnostic> {
        let mut all = found_in(&house(text), &|| false).unwrap().findings;
        all.retain(|finding| finding.rule == RULE.slug);
        all
    }

    #[test]
    fn what_was_decided_is_advice_with_its_note() {
        let text = |accept: &str| {
            format!("wall W1\n  kind  concrete\n  top   99'\n  shot  top 98'-11\" on 2027-04-03\n{accept}")
        };
        let [open] = of_this(&text("")).try_into().unwrap();
        assert_eq!(open.severity, Severity::Warning);
        assert_eq!(open.help[0], "build it up by 1\": packing or grout under what bears there");
        let accept = "  accept \"second sill under J1\" on 2027-04-10\n";
        let [settled] = of_this(&text(accept)).try_into().unwrap();
        assert_eq!(settled.severity, Severity::Advice);
        assert_eq!(settled.notes[0], "wall W1: accepted on 2027-04-10, \"second sill under J1\"");
        assert!(settled.help.is_empty(), "{:?}", settled.help);
    }
}
