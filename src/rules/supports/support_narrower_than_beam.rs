//! Posts and caps across the beams they carry.

use crate::geometry::plan_contacts::cap_width;
use crate::house::House;
use crate::model::framing::{Beam, Cap, Column};
use crate::model::support::Contact;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A post or its cap is narrower than the beam on it.
    ///
    /// Across the beam, the cap plate or, without one, the post itself has to be as wide as the beam: a saddle is made for
    /// it.
    ///
    /// ## Why
    /// The outer plies, or the edges of a flange, bear on nothing, and the beam can roll off.
    ///
    /// ## Source
    /// Common practice. A building code of Canada (9.17.4.1) asks the same of wood columns.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0'
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    ///   bears on    P1
    /// post P1
    ///   size        4x4 SPF No.2
    ///   cap         none
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0'
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    ///   bears on    P1
    /// post P1
    ///   size        6x6 DF No.1
    ///   cap         none
    /// ```
    "support-narrower-than-beam", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for beam in &house.model.beams {
        for support in beam.supports.iter().filter(|support| matches!(support.by, Contact::Bears(_))) {
            let on = support.on.reference().and_then(|on| house.model.column(on.target?));
            let Some(column) = on else { continue };
            let Some((needed, there)) = widths(house, beam, column) else { continue };
            if there >= needed {
                continue;
            }
            let (what, span) = match column.cap.stated() {
                Some((Cap::Plate(..), span)) => ("the cap of ", Some(span)),
                Some(_) | None => ("", column.size.span()),
            };
            findings
                .about(
                    column.common.id,
                    span.unwrap_or(column.common.name_span),
                    format!(
                        "{what}{} is {there} wide across {}, which is {needed}",
                        column.common.label(),
                        beam.common.label()
                    ),
                )
                .related(support.span, format!("{} bears on it", beam.common.label()))
                .help(format!("make it {} wider, or the beam narrower", needed - there))
                .basis("common practice");
        }
    }
}

/// How wide the beam is, and how wide what it bears on is across it.
fn widths(house: &House, beam: &Beam, column: &Column) -> Option<(Length, Length)> {
    let axis = beam.from.value()?.axis()?;
    let size = beam.size.value()?;
    let beam_width = if beam.is_laid_flat { size.depth()? } else { size.width()? };
    Some((beam_width, cap_width(column, axis, &house.model)?))
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// The flange of a W8x24 is 6-1/2" wide (published); three plies of 1-1/2" are 4-1/2".
    #[test]
    fn measures_across_the_beam() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0'
beam B1
  size        W8x24
  from        A/1 to B/1
  bears on    C1
column C1
  size        HSS 4 x 4 x 1/4
  cap         plate 6\" x 10\" x 1/2\", long side along B1
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the cap of column C1 is 6\" wide across beam B1, which is 6-1/2\"
",
        );
    }
}
