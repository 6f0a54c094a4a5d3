//! Posts that stand on a beam away from what carries the beam.

use crate::geometry::plan_contacts::BeamContact;
use crate::house::House;
use crate::model::framing::{Beam, Column};
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

rule! {
    /// A post stands on a beam away from the columns under the beam, and nobody says that it should.
    ///
    /// A post over a column within half the column's width goes straight down. Any other makes its beam a transfer
    /// beam; `transfers P1 to C1` in the beam says that this is meant.
    ///
    /// ## Why
    /// A column that moved on one sheet only looks just like this.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12', C 16'
    ///   y           1 0'
    /// column C1
    ///   at          B/1
    ///   size        HSS 4 x 4 x 1/4
    /// beam T1
    ///   size        W8x18
    ///   from        A/1 to C/1
    ///   bears on    C1
    /// column P1
    ///   at          B less 3' / 1
    ///   stands on   T1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12', C 16'
    ///   y           1 0'
    /// column C1
    ///   at          B/1
    ///   size        HSS 4 x 4 x 1/4
    /// beam T1
    ///   size        W8x18
    ///   from        A/1 to C/1
    ///   bears on    C1
    ///   transfers   P1 to C1
    /// column P1
    ///   at          B less 3' / 1
    ///   stands on   T1
    /// ```
    "stack-broken", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for column in &house.model.columns {
        let Some((stand, span)) = column.stands_on.stated() else { continue };
        let Some(on) = stand.on.reference().and_then(|reference| reference.target) else { continue };
        if on.kind != ElementKind::Beam {
            continue;
        }
        let Some(beam) = house.model.beam(on) else { continue };
        let is_meant =
            beam.transfers.iter().any(|transfer| transfer.value.0.target == Some(column.common.id));
        let Some((name, away, half)) = nearest_support(house, beam, column) else { continue };
        if is_meant || away <= half || beam.common.may_say("transfers") {
            continue;
        }
        findings
            .about(
                column.common.id,
                span,
                format!(
                    "{} stands on {} {away} from {name}, the nearest thing that carries it",
                    column.common.label(),
                    beam.common.label()
                ),
            )
            .related(beam.common.name_span, format!("{} would be a transfer beam", beam.common.label()))
            .help(format!(
                "put one over the other, or write `transfers {} to {name}` in {}",
                column.common.name,
                beam.common.label()
            ))
            .basis("common practice");
    }
}

/// The support of a beam that is nearest to a post on it: its name, how far away, and half its width.
fn nearest_support(house: &House, beam: &Beam, post: &Column) -> Option<(String, Length, Length)> {
    let contacts = house.geometry.contacts.beams.get(beam.common.id.index as usize)?;
    let line = beam.from.value()?;
    let axis = line.axis()?;
    let along = (post.at.value()?.on(axis) - line.from.on(axis)).abs();
    let near = beam.supports.iter().zip(&contacts.supports).filter_map(|(support, contact)| {
        let Ok(BeamContact::Meets { station, strip, .. }) = contact else { return None };
        let on = support.on.reference().and_then(|reference| reference.target);
        let width = on
            .and_then(|on| house.model.column(on))
            .and_then(|column| column.size.value()?.depth())
            .unwrap_or(strip.1 - strip.0);
        Some(((along - *station).abs(), support.on.name().to_owned(), width.half()))
    });
    near.min_by_key(|(away, ..)| *away).map(|(away, name, half)| (name, away, half))
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Half of a 4" tube is 2".
    #[test]
    fn half_the_width_is_still_over_it() {
        let house = |less: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 12', C 16'
  y           1 0'
column C1
  at          B/1
  size        HSS 4 x 4 x 1/4
beam T1
  size        W8x18
  from        A/1 to C/1
  bears on    C1
column P1
  at          B less {less} / 1
  stands on   T1
{mark}"
            )
        };
        check_rule(&RULE, &house("2\"", ""));
        check_rule(
            &RULE,
            &house(
                "2-1/8\"",
                "--            ^^ column P1 stands on beam T1 2-1/8\" from C1, the nearest thing that carries it\n-- | transfers P1 to C1\n",
            ),
        );
    }
}
