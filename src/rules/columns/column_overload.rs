//! Columns under more than they can bear.

use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::wording::decided_by;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;
use crate::verify::{steel_sizes, wood_columns};

rule! {
    /// A column, post or pack of jacks is under more than it can bear.
    ///
    /// What comes down on its head, by the combinations of allowable stress, against its crushing strength with buckling
    /// counted over the length between what holds it sideways: wood in both directions, steel by its least radius of
    /// gyration. A load off its centre counts as bending as well.
    ///
    /// ## Why
    /// A column that bows gives way at once and without a sign, and lets down all that stands on it.
    ///
    /// ## Source
    /// Wood: NDS 2018 3.7, 15.3 and 15.4. Steel: AISC 360 E3, E7 and H1. Each value's certainty stands on the calculation
    /// sheet (`storyrod calc`). Load combinations: ASCE 7-16 2.4.1, read in a secondary copy.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column P1
    ///   at          A/1
    ///   size        4x4 SPF No.2
    ///   length      12'-0"
    ///   base        bare
    ///   stands on   F1
    ///   load        9000 lb live
    /// footing F1
    ///   at          A/1
    ///   top         90'-0"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column P1
    ///   at          A/1
    ///   size        6x6 DF-L No.1
    ///   length      12'-0"
    ///   base        bare
    ///   stands on   F1
    ///   load        9000 lb live
    /// footing F1
    ///   at          A/1
    ///   top         90'-0"
    /// ```
    "column-overload", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for verification in house.verifications.on(LimitState::Compression).filter(|found| found.fails()) {
        let (Ok(check), Some(common)) = (&verification.outcome, house.model.common(verification.of)) else {
            continue;
        };
        let part = verification.part.as_ref().map(|part| format!(", {part},")).unwrap_or_default();
        let message = match check.demand {
            Quantity::Force(_) => format!(
                "{}{part} {} {}, and {} come down on {}",
                common.label(),
                common.verb("bears", "bear"),
                check.capacity,
                check.demand,
                common.verb("it", "them"),
            ),
            _ => format!(
                "{}{part} {} {} times as full as {} may be",
                common.label(),
                common.verb("is", "are"),
                check.demand,
                common.verb("it", "they"),
            ),
        };
        let place = size_of(house, verification.of).unwrap_or(common.name_span);
        let finding = findings.about(common.id, place, message);
        finding.note(decided_by(verification, check));
        for step in check.steps.iter().filter(|step| matches!(step.symbol, "le" | "le/d" | "Lc" | "Lc/r")) {
            finding.note(format!("{} = {}", step.symbol, step.result));
        }
        for assumed in &check.assumed {
            finding.note(format!("assumed: {assumed}"));
        }
        if let Some(size) = next_size(house, verification.of) {
            finding
                .help(format!("the next size that holds is {size}: for review by a licensed professional"));
        }
        finding.suspects(common.id, "size");
        finding.basis(check.clause);
    }
}

fn next_size(house: &House, element: ElementId) -> Option<Box<str>> {
    let column = house.model.column(element)?;
    let known = house.known();
    let steel = || steel_sizes::next_column(&known, column).map(|shape| Box::from(shape.mark));
    wood_columns::next_size(&known, column).or_else(steel)
}

fn size_of(house: &House, element: ElementId) -> Option<Span> {
    match element.kind {
        ElementKind::Jacks => house.model.jacks_of(element)?.size.span(),
        _ => house.model.column(element)?.size.span(),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::found;

    fn post(size: &str, load: &str) -> String {
        format!(
            "
grid
  x         A 0'
  y         1 0'
column P1
  at        A/1
  size      {size}
  length    14'-0\"
  base      bare
  stands on F1
  load      {load} lb snow
footing F1
  at        A/1
  top       90'-0\"
"
        )
    }

    /// By hand, values of DF-L No.1 posts from memory (Fc 1000, Emin 0.58M): le/d 30.55, FcE 511 psi, Fc* 1,150 psi under
    /// snow, CP 0.393: 452 psi on 30.25 sq in, 13,683 lb.
    #[test]
    fn at_what_the_post_bears() {
        assert!(found(&RULE, &post("6x6 DF No.1", "13650")).is_empty());
        let over = found(&RULE, &post("6x6 DF No.1", "13700"));
        assert!(matches!(over.as_slice(), [one] if one.message.contains("13,700 lb")), "{over:?}");
    }

    /// Past le/d 50 the standard gives no value: that is said elsewhere, and is no pass.
    #[test]
    fn a_stick_has_no_value() {
        assert!(found(&RULE, &post("2x4 DF No.1", "100")).is_empty());
    }
}
