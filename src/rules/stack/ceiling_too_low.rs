//! Clear height under floors and their beams.

use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::BeamSet;
use crate::model::site::{Below, Floor};
use crate::profiles::levels::{BEAM_CLEARANCE, CEILING_HEIGHT, CEILING_HEIGHT_BASEMENT, CEILING_HEIGHT_BATH};
use crate::profiles::{Applied, Limit};
use crate::rules::{Finding, Findings, rule};
use crate::units::Length;

rule! {
    /// A ceiling, or a beam below it, leaves too little height over the floor beneath.
    ///
    /// A floor that says `over basement F` is measured from its ceiling down to the finish of F; the beams set in it or
    /// under it by a limit of their own. F counts as lived in when it says so by its `use`.
    ///
    /// ## Why
    /// Headroom is used up layer by layer, joist, furring, board, tile, and nobody adds the layers up until a tall person
    /// walks in.
    ///
    /// ## Source
    /// Residential code R305.1, read in a copy of low grade; for basements not lived in from memory.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   ceiling     board 1/2"
    ///   over        basement cellar
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    /// slab SL1
    ///   top         92'-6"
    ///   thick       4"
    /// floor cellar
    ///   on          SL1
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   ceiling     board 1/2"
    ///   over        basement cellar
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    /// slab SL1
    ///   top         92'-4"
    ///   thick       4"
    /// floor cellar
    ///   on          SL1
    /// ```
    "ceiling-too-low", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (floor, levels) in house.model.floors.iter().zip(&house.geometry.floors) {
        let Some((below, finish)) = below(house, floor) else { continue };
        let limit = house.limits.of(limit_of(below));
        let Ok(ceiling) = &levels.ceiling else { continue };
        let clear = ceiling.total() - finish;
        if clear >= limit.value {
            continue;
        }
        let finding = findings.about(
            floor.common.id,
            floor.ceiling.span().unwrap_or(floor.common.name_span),
            format!(
                "{} has {clear} under the ceiling of {}: {} at the least",
                below.common.label(),
                floor.common.label(),
                limit.value
            ),
        );
        finding.note(format!("ceiling: {ceiling}")).note(format!(
            "finish of {}: {}",
            below.common.name,
            finish.in_feet()
        ));
        finish_off(finding, below.common.id, clear, &limit);
    }
    beams(house, findings);
}

fn beams(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&BEAM_CLEARANCE);
    for beam in &house.model.beams {
        let Some(BeamSet::Flush(floor, _) | BeamSet::Dropped(floor, _)) = beam.set.value() else { continue };
        let Some(floor) = floor.target.and_then(|floor| house.model.floor(floor)) else { continue };
        let Some((below, finish)) = below(house, floor) else { continue };
        let Ok(bottom) = house.geometry.surfaces.of(beam.common.id, Surface::Bottom) else { continue };
        let clear = bottom.total() - finish;
        if clear >= limit.value {
            continue;
        }
        let finding = findings.about(
            beam.common.id,
            beam.set.span().unwrap_or(beam.common.name_span),
            format!(
                "{} has {clear} under {}: {} at the least",
                below.common.label(),
                beam.common.label(),
                limit.value
            ),
        );
        finding.note(format!("underside of the beam: {bottom}"));
        finish_off(finding, below.common.id, clear, &limit);
        finding.follows(floor.common.id);
    }
}

fn finish_off(finding: &mut Finding, below: ElementId, clear: Length, limit: &Applied<Length>) {
    finding
        .help(format!("find {}: a lower slab, a thinner ceiling, shallower members", limit.value - clear))
        .basis(limit.basis())
        .follows(below);
}

/// The floor of the basement under a floor, and its finish.
fn below<'a>(house: &'a House, floor: &Floor) -> Option<(&'a Floor, Length)> {
    let Below::Basement(below) = floor.over.value()? else { return None };
    let below = below.target?;
    let finish = house.geometry.floors.get(below.index as usize)?.finish.as_ref().ok()?;
    Some((house.model.floor(below)?, finish.total()))
}

/// The height a floor's use asks for; one that does not say its use is a basement not lived in.
fn limit_of(floor: &Floor) -> &'static Limit<Length> {
    match floor.use_.stated().map(|(word, _)| &**word) {
        Some("bath") => &CEILING_HEIGHT_BATH,
        Some("storage" | "garage" | "workshop") | None => &CEILING_HEIGHT_BASEMENT,
        Some(_) => &CEILING_HEIGHT,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(slab: &str, use_line: &str, mark: &str) -> String {
        format!(
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
  ceiling     furring 1-1/2\", board 1/2\"
{mark}  over        basement cellar
joists J1
  floor       main
  size        2x10 SPF No.2
slab SL1
  top         {slab}
floor cellar
  on          SL1
  finish      1/4\"
{use_line}"
        )
    }

    /// 100'-0" − 3/4" − 9-1/4" − 1-1/2" − 1/2" = 99'-0"; 80" below it and 1/4" of finish: 92'-3 3/4" passes where nobody
    /// lives (from memory), 7'-0" asks for 91'-11 3/4" (R305.1, read in a copy of low grade).
    #[test]
    fn rooms_ask_for_more() {
        check_rule(&RULE, &house("92'-3 3/4\"", "", ""));
        check_rule(
            &RULE,
            &house(
                "92'-3 13/16\"",
                "",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^^^ floor cellar has 6'-7 15/16\" under the ceiling of floor main: 6'-8\" at the least\n",
            ),
        );
        check_rule(&RULE, &house("91'-11 3/4\"", "  use         office\n", ""));
        check_rule(
            &RULE,
            &house(
                "91'-11 13/16\"",
                "  use         office\n",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^^^ floor cellar has 6'-11 15/16\" under the ceiling of floor main: 7'-0\" at the least\n",
            ),
        );
    }

    /// 100'-0" − 3/4" − 9-1/4" − 11-1/4" = 98'-2 3/4"; less 91'-11 3/4" and 1/4" is 6'-2 3/4" (6'-4", copy of low grade).
    #[test]
    fn measures_under_beams() {
        let beam = "
beam B1
  size        3-ply 2x12 SPF No.2
  set         dropped under main
--            ^^^^^^^^^^^^^^^^^^ floor cellar has 6'-2 3/4\" under beam B1: 6'-4\" at the least
";
        check_rule(&RULE, &format!("{}{beam}", house("91'-11 3/4\"", "", "")));
    }
}
