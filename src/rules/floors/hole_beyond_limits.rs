//! Holes in joists and beams.

use std::collections::BTreeMap;

use crate::geometry::cuts::{Cuttable, cuttable, member_of};
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::member::Member;
use crate::model::openings::{Hole, HoleSize};
use crate::profiles::framing::{HOLE_DIAMETER, HOLE_EDGE};
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A hole takes too much out of a joist or beam.
    ///
    /// In sawn lumber a hole is no wider than a share of the depth, and keeps away from the edges and from the next
    /// hole. Engineered members and steel are drilled only as their maker or their designer says: such a hole names its
    /// `source`.
    ///
    /// ## Why
    /// Near the edges the wood carries most. What is left beside a large hole splits.
    ///
    /// ## Source
    /// Residential code R502.8.1 for sawn lumber, R502.8.2 (from memory) for engineered members; the limits
    /// `hole-diameter` and `hole-edge`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// joists J1
    ///   size          2x8 SPF No.2
    /// hole HL1
    ///   in            J1
    ///   at            each
    ///   size          2-1/2" dia
    /// ```
    /// ```framing,passes
    /// joists J1
    ///   size          2x8 SPF No.2
    /// hole HL1
    ///   in            J1
    ///   at            each
    ///   size          2-3/8" dia
    /// ```
    "hole-beyond-limits", Error
}

/// A hole as this rule looks at it.
struct Bore<'a> {
    common: &'a Common,
    member: &'a Member,
    name: String,
    span: Span,
    width: Length,
    height: Length,
    above_bottom: Option<Length>,
    has_source: bool,
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for hole in &house.model.holes {
        if let Some(bore) = bore_of(house, hole) {
            judge(house, &bore, findings);
        }
    }
    for beam in &house.model.beams {
        let Some(member) = beam.size.value() else { continue };
        for hole in &beam.holes {
            let bore = Bore {
                common: &beam.common,
                member,
                name: format!("a hole of {}", beam.common.label()),
                span: hole.span,
                width: hole.diameter,
                height: hole.diameter,
                above_bottom: hole.above_bottom,
                has_source: beam.common.source.value().is_some(),
            };
            judge(house, &bore, findings);
        }
    }
    too_near_each_other(house, findings);
}

fn bore_of<'a>(house: &'a House, hole: &'a Hole) -> Option<Bore<'a>> {
    let member = member_of(&house.model, hole.member.value()?.target?)?;
    let (size, span) = hole.size.stated()?;
    let (width, height) = extent(*size);
    if hole.above_bottom.is_broken() {
        return None;
    }
    Some(Bore {
        common: &hole.common,
        member,
        name: hole.common.label(),
        span,
        width,
        height,
        above_bottom: hole.above_bottom.get(),
        has_source: hole.common.source.value().is_some(),
    })
}

const fn extent(size: HoleSize) -> (Length, Length) {
    match size {
        HoleSize::Round(diameter) => (diameter, diameter),
        HoleSize::Rectangle(width, height) => (width, height),
    }
}

fn judge(house: &House, bore: &Bore<'_>, findings: &mut Findings<'_>) {
    let (Some(kind), Some(depth)) = (cuttable(bore.member), bore.member.depth()) else { return };
    if kind != Cuttable::Sawn {
        if !bore.has_source {
            findings
                .about(
                    bore.common.id,
                    bore.span,
                    format!(
                        "{} of {} goes through {}, and nothing says that it may",
                        bore.name, bore.width, bore.member.text
                    ),
                )
                .help("look it up in the maker's chart of holes, or ask the designer, and name it as the `source`")
                .basis("R502.8.2 (from memory)");
        }
        return;
    }
    let share = house.limits.of(&HOLE_DIAMETER);
    let Some(most) = depth.shared_by(share.value.0) else { return };
    let larger = bore.width.max(bore.height);
    if most < larger {
        findings
            .about(
                bore.common.id,
                bore.span,
                format!(
                    "{} of {larger} is too large for {}: {most} at the most",
                    bore.name, bore.member.text
                ),
            )
            .note(format!("a depth of {depth}, 1/{} of it", share.value.0))
            .help("drill it smaller, run the pipe along the joists, or hang it below them")
            .basis(share.basis());
        return;
    }
    let edge = house.limits.of(&HOLE_EDGE);
    let middle = bore.above_bottom.unwrap_or(depth.half());
    let below = middle - bore.height.half();
    let above = depth - middle - bore.height.half();
    let (left, which) = if below < above { (below, "lower") } else { (above, "upper") };
    if left < edge.value {
        findings
            .about(
                bore.common.id,
                bore.span,
                format!(
                    "{} leaves {left} to the {which} edge of {}: {} at the least",
                    bore.name, bore.member.text, edge.value
                ),
            )
            .note(format!("its middle is {middle} above the bottom of {depth}"))
            .help("drill it nearer to mid-depth, or smaller")
            .basis(edge.basis());
    }
}

/// Neighbouring holes of one member, in the order in which they lie along it.
fn too_near_each_other(house: &House, findings: &mut Findings<'_>) {
    let mut by_member: BTreeMap<ElementId, Vec<(Length, Length, &Hole)>> = BTreeMap::new();
    for hole in &house.model.holes {
        if let (Some(station), Some(size), Some(on)) =
            (hole.at, hole.size.get(), hole.member.value().and_then(|member| member.target))
        {
            by_member.entry(on).or_default().push((station.at, extent(size).0, hole));
        }
    }
    let least = house.limits.of(&HOLE_EDGE);
    for (on, mut holes) in by_member {
        let is_sawn = member_of(&house.model, on).and_then(cuttable) == Some(Cuttable::Sawn);
        holes.sort_by_key(|(at, ..)| *at);
        for ((at, width, hole), (next_at, next_width, next)) in holes.iter().zip(holes.iter().skip(1)) {
            let between = *next_at - *at - width.half() - next_width.half();
            if !is_sawn || between >= least.value {
                continue;
            }
            findings
                .about(
                    next.common.id,
                    next.at.map_or(next.common.name_span, |station| station.span),
                    format!(
                        "{} and {} leave {} of wood between them: {} at the least",
                        hole.common.label(),
                        next.common.name,
                        between.max(Length::ZERO),
                        least.value
                    ),
                )
                .related(hole.common.name_span, "the other hole")
                .help("drill them further apart")
                .basis(least.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R502.8.1, the row of a 2x10 printed in a copy of low grade: a hole of 3.083\" at the most, 2\" to the edges.
    #[test]
    fn at_the_published_row() {
        let hole = |size: &str, more: &str| {
            format!(
                "
joists J1
  size          2x10 SPF No.2
hole HL1
  in            J1
  at            each
  size          {size} dia
{more}"
            )
        };
        check_rule(&RULE, &hole("3\"", ""));
        check_rule(
            &RULE,
            &hole(
                "3-1/8\"",
                "--              ^^^^^^ hole HL1 of 3-1/8\" is too large for 2x10 SPF No.2: 3-1/16\"~ at the most\n",
            ),
        );
        // 3\" above the bottom less half of 2\" leaves 2\"; 2-7/8\" leaves 1-7/8\".
        check_rule(&RULE, &hole("2\"", "  above bottom  3\"\n"));
        check_rule(
            &RULE,
            &hole(
                "2\"",
                "--              ^^ hole HL1 leaves 1-7/8\" to the lower edge of 2x10 SPF No.2: 2\" at the least\n  above bottom  2-7/8\"\n",
            ),
        );
    }

    /// 12\" from middle to middle of two holes of 2\" leave 10\"; 3-3/4\" leave 1-3/4\".
    #[test]
    fn measures_between_holes() {
        check_rule(
            &RULE,
            "
grid
  x             A 0', B 12'
  y             1 0', 2 10'
joists J1
  size          2x10 SPF No.2
hole HL1
  in            J1
  at            1 plus 3'
  size          2\" dia
hole HL2
  in            J1
  at            1 plus 3'-3 3/4\"
--              ^^^^^^^^^^^^^^^^ hole HL1 and HL2 leave 1-3/4\" of wood between them: 2\" at the least
  size          2\" dia
hole HL3
  in            J1
  at            1 plus 5'
  size          2\" dia
",
        );
    }

    #[test]
    fn asks_for_the_chart_of_an_i_joist() {
        check_rule(
            &RULE,
            "
joists J1
  size          11-7/8 I-joist class 40
hole HL1
  in            J1
  at            each
  size          4\" dia
--              ^^ hole HL1 of 4\" goes through 11-7/8 I-joist class 40, and nothing says that it may
hole HL2
  in            J1
  at            each
  size          4\" dia
  source        \"chart of holes, invented for this test\"
",
        );
    }
}
