//! Air round a beam in its pocket.

use crate::geometry::carried::Carried;
use crate::house::House;
use crate::model::foundation::Pocket;
use crate::model::framing::Beam;
use crate::model::support::{Contact, Support};
use crate::profiles::foundations::POCKET_AIR_GAP;
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A pocket leaves too little room for its beam and the air round it.
    ///
    /// Untreated wood needs air at the sides, the end and the top: the limit `pocket-air-gap`. Steel and treated wood
    /// need only fit.
    ///
    /// ## Why
    /// Wood that touches concrete draws water from it, and a beam end rots unseen inside the wall.
    ///
    /// ## Source
    /// Residential code R317.1, read in a secondary copy.
    ///
    /// ## Examples
    /// ```framing,fires
    /// pocket PK1
    ///   width       5"
    ///   depth       4"
    ///   open        at top
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   bears on    PK1 for 3-1/2"
    /// ```
    /// ```framing,passes
    /// pocket PK1
    ///   width       5-1/2"
    ///   depth       4"
    ///   open        at top
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   bears on    PK1 for 3-1/2"
    /// ```
    "pocket-clearance", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for pocket in &house.model.pockets {
        for (beam, support) in carried.beams_on(pocket.common.id) {
            check_fit(house, pocket, beam, support, findings);
        }
    }
}

fn check_fit(house: &House, pocket: &Pocket, beam: &Beam, support: &Support, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&POCKET_AIR_GAP);
    let Some(size) = beam.size.value() else { return };
    let Some(is_steel) = size.is_steel() else { return };
    let air = if is_steel || size.is_treated { Length::ZERO } else { limit.value };
    let mut short = |room: Option<(&Length, Span)>, needed: Option<Length>, which: &str, of: &str| {
        let (Some((room, span)), Some(needed)) = (room, needed) else { return };
        if *room >= needed {
            return;
        }
        findings
            .about(
                pocket.common.id,
                span,
                format!(
                    "{} is {room} {which}; {} takes {needed} {of}",
                    pocket.common.label(),
                    beam.common.label()
                ),
            )
            .related(beam.size.span().unwrap_or(beam.common.name_span), beam.common.label())
            .help(format!("make it {needed} {which}"))
            .write(span, needed.rounded_up_to(Length::sixteenths(0, 1)).to_string())
            .basis(limit.basis());
    };
    let (of_sides, of_one) = if air.is_positive() {
        (format!("with {air} of air on both sides"), format!("with {air} of air"))
    } else {
        (String::from("itself"), String::from("itself"))
    };
    let width = if beam.is_laid_flat { size.depth() } else { size.width() };
    let depth = if beam.is_laid_flat { size.thickness() } else { size.depth() };
    short(pocket.width.stated(), width.map(|width| width + air.times(2)), "wide", &of_sides);
    if let Contact::Bears(Some(bearing)) = &support.by {
        short(pocket.depth.stated(), Some(bearing.value + air), "deep", &of_one);
    }
    if !pocket.is_open_at_top {
        let build_up = pocket.build_up();
        let needed = depth.zip(build_up).map(|(depth, build_up)| depth + build_up + air);
        short(pocket.height.stated(), needed, "high", &format!("{of_one}, plate and grout"));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Three plies are 4-1/2" wide and 9-1/4" deep: 5-1/2" wide, 3-1/2" + 1/2" deep, 9-1/4" + 1/2" high pass (R317.1,
    /// read in a secondary copy); 1/8" less fails each.
    #[test]
    fn measures_all_three() {
        check_rule(
            &RULE,
            "
pocket PK1
  width       5-1/2\"
  depth       4\"
  height      9-3/4\"
pocket PK2
  width       5-3/8\"
--            ^^^^^^ pocket PK2 is 5-3/8\" wide; beam B1 takes 5-1/2\" with 1/2\" of air on both sides
  depth       3-7/8\"
--            ^^^^^^ pocket PK2 is 3-7/8\" deep; beam B1 takes 4\" with 1/2\" of air
  height      9-5/8\"
--            ^^^^^^ pocket PK2 is 9-5/8\" high; beam B1 takes 9-3/4\" with 1/2\" of air, plate and grout
beam B1
  size        3-ply 2x10 SPF No.2
  bears on    PK1 for 3-1/2\"
  bears on    PK2 for 3-1/2\"
",
        );
    }

    /// A W8x24 has a flange 6-1/2" wide (published): it fits 6-1/2" and needs no air.
    #[test]
    fn steel_needs_only_fit() {
        check_rule(
            &RULE,
            "
pocket PK1
  width       6-1/2\"
  depth       4\"
beam B1
  size        W8x24
  bears on    PK1 for 4\"
",
        );
    }
}
