//! Untreated joists and girders above the ground of a crawl space.

use crate::geometry::carried::Carried;
use crate::geometry::surfaces::{Surface, joist_bottom};
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::framing::BeamSet;
use crate::model::member::Member;
use crate::model::site::{Below, Floor};
use crate::profiles::Applied;
use crate::profiles::foundations::{CRAWL_CLEARANCE_GIRDERS, CRAWL_CLEARANCE_JOISTS};
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// Untreated joists or girders lie too near the ground of a crawl space.
    ///
    /// The undersides of a floor's joists and of the beams set in it or under it, against `over crawl, ground ELEV`.
    ///
    /// ## Why
    /// The air just above bare ground is damp all year. Nobody can crawl in to look, either.
    ///
    /// ## Source
    /// Residential code R317.1, read in a secondary copy; the limits `crawl-clearance-joists` and
    /// `crawl-clearance-girders`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   over        crawl, ground 98'-0"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   over        crawl, ground 97'-8"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    /// ```
    "crawl-clearance", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let joist_limit = house.limits.of(&CRAWL_CLEARANCE_JOISTS);
    let girder_limit = house.limits.of(&CRAWL_CLEARANCE_GIRDERS);
    let carried = Carried::of(&house.model);
    for floor in &house.model.floors {
        let Some(ground) = Ground::under(floor) else { continue };
        for joists in carried.fields_of(floor.common.id) {
            if let Ok(bottom) = joist_bottom(&house.geometry.floors, joists)
                && let Some(size) = joists.size.value()
            {
                report(&joists.common, size, bottom.total(), &ground, &joist_limit, findings);
            }
        }
    }
    for beam in &house.model.beams {
        let Some(BeamSet::Flush(floor, _) | BeamSet::Dropped(floor, _) | BeamSet::Upset(floor, _)) =
            beam.set.value()
        else {
            continue;
        };
        let floor = floor.target.and_then(|floor| house.model.floor(floor));
        let Some(ground) = floor.and_then(Ground::under) else { continue };
        if let Ok(bottom) = house.geometry.surfaces.of(beam.common.id, Surface::Bottom)
            && let Some(size) = beam.size.value()
        {
            report(&beam.common, size, bottom.total(), &ground, &girder_limit, findings);
        }
    }
}

/// The ground of the crawl space under a floor.
struct Ground {
    floor: ElementId,
    at: Length,
    span: Span,
}

impl Ground {
    fn under(floor: &Floor) -> Option<Self> {
        match floor.over.stated()? {
            (Below::Crawl(at), span) => Some(Self { floor: floor.common.id, at: *at, span }),
            (Below::Basement(_) | Below::Outside, _) => None,
        }
    }
}

fn report(
    of: &Common,
    size: &Member,
    bottom: Length,
    ground: &Ground,
    limit: &Applied<Length>,
    findings: &mut Findings<'_>,
) {
    let above = bottom - ground.at;
    if size.is_treated || size.is_steel() != Some(false) || above >= limit.value {
        return;
    }
    findings
        .about(
            of.id,
            of.name_span,
            format!(
                "the underside of {} is {above} above the ground of the crawl space: {} at the least for untreated wood",
                of.label(),
                limit.value
            ),
        )
        .related(ground.span, "the ground")
        .help(format!("dig {} out, raise the floor, or treat the wood", limit.value - above))
        .basis(limit.basis())
        .suspects(ground.floor, "over");
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 100'-0" less 3/4" less 9-1/4" is 99'-2"; less 97'-8 1/16" is 17-15/16" (R317.1, read in a secondary copy: 17"
    /// fails, 18" passes). The girder: 99'-2" less 11-1/4" less 97'-8 1/16" is 6-11/16", 11-1/2" fails already.
    #[test]
    fn measures_joists_and_girders() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
  over        crawl, ground 97'-8 1/16\"
joists J1
--     ^^ the underside of joists J1 is 1'-5 15/16\" above the ground of the crawl space: 1'-6\" at the least for untreated wood
  floor       main
  size        2x10 SPF No.2
  bears on    B1
beam B1
--   ^^ the underside of beam B1 is 6-11/16\" above the ground of the crawl space: 1'-0\" at the least for untreated wood
  size        3-ply 2x12 SPF No.2
  set         dropped under main
beam B2
  size        3-ply 2x12 SPF No.2 treated
  set         dropped under main
",
        );
    }
}
