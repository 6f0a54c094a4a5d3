//! Defaults that stand in for what nobody said.

use crate::house::House;
use crate::model::element::ElementId;
use crate::model::field::Field;
use crate::profiles::foundations::{CONCRETE_STRENGTH, PRESUMPTIVE_BEARING};
use crate::rules::{Findings, rule};
use crate::text::Span;

/// More elements than this are not named one by one.
const MOST_NAMED: usize = 4;

rule! {
    /// A default stands in for a number that the spec does not say.
    ///
    /// The soil's bearing pressure and the strength of footing concrete. Each is reported once for the whole house. Soil
    /// that the project itself states as `assumed` is its author's decision.
    ///
    /// ## Why
    /// A footing that is good on assumed soil is good only if the soil is. Somebody must look.
    ///
    /// ## Source
    /// Residential code R401.4.1 (presumptive bearing) and R402.2 (least concrete strength, from memory), the limits
    /// `presumptive-bearing` and `concrete-strength`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// project "Loon Cove"
    ///   profile   irc-2021
    /// footing F1
    ///   concrete  3000 psi
    /// ```
    /// ```framing,passes
    /// project "Loon Cove"
    ///   profile   irc-2021
    ///   soil      2000 psf net source "soils report" on 2027-01-20
    /// footing F1
    ///   concrete  3000 psi
    /// ```
    "assumed-value", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let Some(first) = house.model.footings.first() else { return };
    let place = house.model.project.as_ref().map_or(&first.common, |project| &project.common);
    soil(house, place.id, place.name_span, findings);
    concrete(house, findings);
}

fn soil(house: &House, subject: ElementId, span: Span, findings: &mut Findings<'_>) {
    let Some(Field::Assumed(soil, assumption)) = house.model.project.as_ref().map(|project| &project.soil)
    else {
        return;
    };
    let on_it = house.model.footings.iter().filter(|footing| footing.soil.is_missing());
    let names: Vec<&str> = on_it.map(|footing| &*footing.common.name).collect();
    if names.is_empty() {
        return;
    }
    findings
        .about(
            subject,
            span,
            format!(
                "no line says what the soil takes: {:.0} psf is assumed under {}",
                soil.pressure.to_psf(),
                named("footing", &names)
            ),
        )
        .note(assumption.what)
        .help("write a line as `soil 2000 psf net source \"soils report\" on 2027-01-20`")
        .basis(house.limits.of(&PRESUMPTIVE_BEARING).basis());
}

fn concrete(house: &House, findings: &mut Findings<'_>) {
    let assumed = || {
        house.model.footings.iter().filter_map(|footing| match &footing.concrete {
            Field::Assumed(strength, assumption) => Some((footing, *strength, *assumption)),
            Field::Stated(..) | Field::Missing | Field::Broken(_) => None,
        })
    };
    let Some((first, strength, assumption)) = assumed().next() else { return };
    let names: Vec<&str> = assumed().map(|(footing, ..)| &*footing.common.name).collect();
    findings
        .about(
            first.common.id,
            first.common.name_span,
            format!(
                "no line says the concrete of {}: {:.0} psi is assumed",
                named("footing", &names),
                strength.to_psi()
            ),
        )
        .note(assumption.what)
        .help("write a line as `concrete 3000 psi`")
        .basis(house.limits.of(&CONCRETE_STRENGTH).basis());
}

/// `footing F1`, `footings F1 and F2`, `footings F1, F2, F3, F4 and 5 more`.
fn named(word: &str, names: &[&str]) -> String {
    let (shown, more) = names.split_at(names.len().min(MOST_NAMED));
    match (shown, more.len()) {
        ([only], 0) => format!("{word} {only}"),
        ([most @ .., last], 0) => format!("{word}s {} and {last}", most.join(", ")),
        (shown, n_more) => format!("{word}s {} and {n_more} more", shown.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 1500 psf and 2500 psi: R401.4.1 and R402.2, as `grammar/limits.md` lists them.
    #[test]
    fn one_for_each_default() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
--<^^^^ no line says what the soil takes: 1500 psf is assumed under footings F1 and F2
  profile   irc-2021
footing F1
--      ^^ no line says the concrete of footing F1: 2500 psi is assumed
footing F2
  concrete  3000 psi
footing F3
  concrete  3000 psi
  soil      3000 psf source \"soils report\"
",
        );
    }

    #[test]
    fn an_assumption_that_is_stated_is_the_authors() {
        check_rule(
            &RULE,
            "
project \"Loon Cove\"
  soil      1500 psf assumed
footing F1
  concrete  3000 psi
",
        );
    }
}
