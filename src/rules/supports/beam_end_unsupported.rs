//! Ends of beams that nothing carries.

use crate::house::House;
use crate::model::framing::Beam;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// An end of a beam lies on nothing.
    ///
    /// A beam may run on past its last support by a quarter of the span before it; farther, its end needs one of its own.
    ///
    /// ## Why
    /// Everything that the beam carries comes down with that end.
    ///
    /// ## Source
    /// Common practice: equilibrium; the quarter is the deck rule R507.5 (from memory), used for every beam.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    /// beam B1
    ///   size        W8x18
    ///   from        A/1 to B/1
    ///   bears on    C1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    /// column C2
    ///   at          B less 2' / 1
    ///   size        HSS 4 x 4 x 1/4
    /// beam B1
    ///   size        W8x18
    ///   from        A/1 to B/1
    ///   bears on    C1
    ///   bears on    C2
    /// ```
    "beam-end-unsupported", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (beam, contacts) in house.model.beams.iter().zip(&house.geometry.contacts.beams) {
        let Some(length) = contacts.length else { continue };
        match (contacts.loose_start, contacts.loose_end) {
            (Some(_), Some(_)) if beam.supports.is_empty() => {
                report(beam, format!("{} lies on nothing", beam.common.label()), findings);
            }
            (start, end) => {
                // A beam that meets none of its supports has that said of each support already.
                if start == Some(length) && end == Some(length) {
                    continue;
                }
                for (name, loose) in [("first", start), ("far", end)] {
                    if let Some(loose) = loose {
                        report(beam, past(beam, name, loose), findings);
                    }
                }
            }
        }
    }
}

fn past(beam: &Beam, end: &str, loose: Length) -> String {
    format!("the {end} end of {} runs {loose} past its last support", beam.common.label())
}

fn report(beam: &Beam, message: String, findings: &mut Findings<'_>) {
    let span = beam.from.span().unwrap_or(beam.common.name_span);
    let finding = findings.about(beam.common.id, span, message);
    finding.suspects(beam.common.id, "plan");
    finding.help("say what carries it there, or end it at its support").basis("common practice");
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 12' long, the tubes 4" wide: the second stands 4' before the end, the cap reaches 2" further: 3'-10" past it,
    /// where a quarter of the 8' span is 2'.
    #[test]
    fn measures_the_overhang() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
column C1
  at          A/1
  size        HSS 4 x 4 x 1/4
column C2
  at          B less 4' / 1
  size        HSS 4 x 4 x 1/4
beam B1
  size        W8x18
  from        A/1 to B/1
--            ^^^^^^^^^^ the far end of beam B1 runs 3'-10\" past its last support
  bears on    C1
  bears on    C2
",
        );
    }
}
