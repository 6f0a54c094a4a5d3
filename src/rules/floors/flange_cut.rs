//! Cuts into the flanges of I-joists.

use crate::geometry::cuts::{flange_of, member_of};
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::openings::HoleSize;
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A hole or a notch cuts into a flange of an I-joist.
    ///
    /// A maker's chart says which holes the web takes; no chart lets a flange be cut, so no `source` makes up for it. A
    /// notch is in a flange always.
    ///
    /// ## Why
    /// The flanges carry the bending. A cut flange is a broken joist that still looks whole.
    ///
    /// ## Source
    /// Residential code R502.8.2 (from memory), and the depth of a flange, 1-1/2" (from memory: 1-3/8 to 1-1/2).
    ///
    /// ## Examples
    /// ```framing,fires
    /// joists J1
    ///   size          11-7/8 I-joist class 40
    /// notch NT1
    ///   in            J1
    ///   size          2" x 1"
    ///   source        "invented"
    /// ```
    /// ```framing,passes
    /// joists J1
    ///   size          11-7/8 I-joist class 40
    /// hole HL1
    ///   in            J1
    ///   at            each
    ///   size          8" dia
    ///   source        "chart of holes, invented"
    /// ```
    "flange-cut", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for notch in &house.model.notches {
        let on = notch.member.value().and_then(|member| member.target);
        let (Some(on), Some(([_, depth], span))) = (on, notch.size.stated()) else { continue };
        report(house, &notch.common, span, on, *depth, findings);
    }
    for hole in &house.model.holes {
        let on = hole.member.value().and_then(|member| member.target);
        let (Some(on), Some((size, span))) = (on, hole.size.stated()) else { continue };
        let height = match size {
            HoleSize::Round(height) | HoleSize::Rectangle(_, height) => *height,
        };
        let depth = member_of(&house.model, on).and_then(|member| member.depth());
        let (Some(depth), false) = (depth, hole.above_bottom.is_broken()) else { continue };
        let middle = hole.above_bottom.get().unwrap_or(depth.half());
        let left = (middle - height.half()).min(depth - middle - height.half());
        let into = flange_of(&house.model, on).map(|flange| flange - left);
        if let Some(into) = into.filter(|into| into.is_positive()) {
            report(house, &hole.common, span, on, into, findings);
        }
    }
}

fn report(house: &House, cut: &Common, span: Span, on: ElementId, into: Length, findings: &mut Findings<'_>) {
    let (Some(flange), Some(joists)) = (flange_of(&house.model, on), house.model.common(on)) else { return };
    findings
        .about(
            cut.id,
            span,
            format!(
                "{} goes {into} into a flange of {}, which is {flange} deep",
                cut.label(),
                joists.label()
            ),
        )
        .related(joists.name_span, joists.label())
        .help("leave the flange whole: drill the web where the maker's chart lets you, or go round the joist")
        .basis("R502.8.2 (from memory)");
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A depth of 11-7/8" less two flanges of 1-1/2" (from memory) leaves 8-7/8" of web: a hole of 9" at mid-depth takes
    /// 1/16" of each flange. A hole of 3" whose middle is 2-3/4" up begins 1-1/4" up: 1/4" in.
    #[test]
    fn from_memory_between_the_flanges() {
        let hole = |size: &str, up: &str, mark: &str| {
            format!(
                "
joists J1
  size          11-7/8 I-joist class 40
hole HL1
  in            J1
  at            each
  size          {size} dia
{mark}  above bottom  {up}
  source        \"chart of holes, invented for this test\"
"
            )
        };
        check_rule(&RULE, &hole("8-7/8\"", "5-15/16\"", ""));
        check_rule(
            &RULE,
            &hole(
                "9\"",
                "5-15/16\"",
                "--              ^^ hole HL1 goes 1/16\" into a flange of joists J1, which is 1-1/2\" deep\n",
            ),
        );
        check_rule(
            &RULE,
            &hole(
                "3\"",
                "2-3/4\"",
                "--              ^^ hole HL1 goes 1/4\" into a flange of joists J1, which is 1-1/2\" deep\n",
            ),
        );
    }

    #[test]
    fn sawn_joists_have_no_flange() {
        check_rule(&RULE, "joists J1\n  size  2x10 SPF No.2\nnotch NT1\n  in  J1\n  size  2\" x 1\"\n");
    }
}
