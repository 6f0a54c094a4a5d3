//! Untreated posts above concrete and earth.

use crate::geometry::pads::slab_over;
use crate::geometry::sum::Derived;
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::{BeamSet, Column};
use crate::model::site::Below;
use crate::profiles::foundations::{WOOD_POST_ABOVE_CONCRETE, WOOD_POST_ABOVE_EARTH};
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;
use crate::units::Length;

rule! {
    /// An untreated post stands on concrete, or too near the ground.
    ///
    /// Its foot, on its standoff, is compared with the concrete under it, the slab round it, and the ground of the crawl
    /// space under the floor whose beam it carries.
    ///
    /// ## Why
    /// End grain drinks. A post set right on concrete is soft at its foot in a few years.
    ///
    /// ## Source
    /// Residential code R317.1.4, from memory: 1" above a concrete floor, 8" above earth.
    ///
    /// ## Examples
    /// ```framing,fires
    /// footing F1
    ///   top         91'-0"
    /// post P1
    ///   size        6x6 DF No.1
    ///   base        bare
    ///   stands on   F1
    /// ```
    /// ```framing,passes
    /// footing F1
    ///   top         91'-0"
    /// post P1
    ///   size        6x6 DF No.1
    ///   base        standoff 1"
    ///   stands on   F1
    /// ```
    "wood-post-on-concrete", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let above_concrete = house.limits.of(&WOOD_POST_ABOVE_CONCRETE);
    let above_earth = house.limits.of(&WOOD_POST_ABOVE_EARTH);
    for (column, stack) in house.model.columns.iter().zip(&house.geometry.columns) {
        let Some(size) = column.size.value() else { continue };
        if size.is_treated || size.is_steel() != Some(false) || !stands_on_concrete(house, column) {
            continue;
        }
        let (Ok(foot), Ok(bearing)) = (&stack.foot, &stack.bearing) else { continue };
        let slab = column.at.value().and_then(|at| slab_over(&house.model, at));
        let slab_top = slab.and_then(|slab| {
            house.geometry.surfaces.of(slab.common.id, Surface::Top).ok().map(|top| top.total())
        });
        let concrete = slab_top.map_or(bearing.total(), |top| top.max(bearing.total()));
        let span = column.base.span().unwrap_or(column.common.name_span);
        let clear = foot.total() - concrete;
        if clear < above_concrete.value {
            let place = if clear.is_negative() {
                format!("reaches {} into the concrete", clear.abs())
            } else {
                format!("stands {clear} above the concrete")
            };
            findings
                .about(
                    column.common.id,
                    span,
                    format!(
                        "{} is not treated and {place}: {} at the least",
                        column.common.label(),
                        above_concrete.value
                    ),
                )
                .help(format!("give it a `standoff {}`, or treated wood", above_concrete.value))
                .basis(above_concrete.basis());
            continue;
        }
        let Some((ground, ground_span)) = crawl_ground(house, &stack.beams) else { continue };
        let clear = foot.total() - ground;
        if clear < above_earth.value {
            let way = if clear < Length::ZERO { "below" } else { "above" };
            findings
                .about(
                    column.common.id,
                    span,
                    format!(
                        "{} is not treated and stands {} {way} the ground of the crawl space: {} above it at the least",
                        column.common.label(),
                        clear.abs(),
                        above_earth.value
                    ),
                )
                .related(ground_span, "the ground")
                .help("raise its pedestal, or take treated wood")
                .basis(above_earth.basis());
        }
    }
}

fn stands_on_concrete(house: &House, column: &Column) -> bool {
    let stand = column.stands_on.value();
    let Some(on) = stand.and_then(|stand| stand.on.reference()).and_then(|on| on.target) else {
        return false;
    };
    match on.kind {
        ElementKind::Footing | ElementKind::Slab => true,
        ElementKind::Wall => house.model.wall(on).is_some_and(|wall| {
            wall.sill.is_missing() && wall.kind.get().is_some_and(|kind| kind.is_mineral())
        }),
        ElementKind::Floor => house.model.floor(on).is_some_and(|floor| floor.on.value().is_some()),
        _ => false,
    }
}

/// The ground under the floor of the first of these beams.
fn crawl_ground(house: &House, beams: &[(ElementId, Derived)]) -> Option<(Length, Span)> {
    let beam = house.model.beam(beams.first()?.0)?;
    let (BeamSet::Flush(floor, _) | BeamSet::Dropped(floor, _) | BeamSet::Upset(floor, _)) =
        beam.set.value()?
    else {
        return None;
    };
    match house.model.floor(floor.target?)?.over.stated()? {
        (Below::Crawl(ground), span) => Some((*ground, span)),
        (Below::Basement(_) | Below::Outside, _) => None,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 1" above the slab passes, 15/16" does not (from memory): 91'-3" + 1" against 91'-3", then against 91'-3 1/16".
    #[test]
    fn measures_from_the_slab() {
        let house = |slab: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 12'
  y           1 0', 2 12'
slab SL1
  fill        A to B by 1 to 2
  top         {slab}
footing F1
  top         91'-3\"
post P1
  at          A plus 6' / 1 plus 6'
  size        6x6 DF No.1
  base        standoff 1\"
{mark}  stands on   F1
"
            )
        };
        check_rule(&RULE, &house("91'-3\"", ""));
        check_rule(
            &RULE,
            &house(
                "91'-3 1/16\"",
                "--            ^^^^^^^^^^^ column P1 is not treated and stands 15/16\" above the concrete: 1\" at the least\n",
            ),
        );
    }

    /// 91'-3" + 1" less 90'-8 1/16" is 7-15/16" (from memory: 8").
    #[test]
    fn measures_from_the_ground_of_a_crawl_space() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
  over        crawl, ground 90'-8 1/16\"
beam B1
  size        3-ply 2x10 SPF No.2
  set         dropped under main
  bears on    P1
footing F1
  top         91'-3\"
post P1
  size        6x6 DF No.1
  base        standoff 1\"
--            ^^^^^^^^^^^ column P1 is not treated and stands 7-15/16\" above the ground of the crawl space: 8\" above it at the least
  stands on   F1
",
        );
    }
}
