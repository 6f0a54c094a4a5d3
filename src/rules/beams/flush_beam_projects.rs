//! The underside of a flush beam against that of the joists around it.

use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::framing::BeamSet;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};

rule! {
    /// A beam set flush in a floor hangs out of it below.
    ///
    /// Its underside is compared with that of the floor's deepest joists; furring below the joists hides as much as it
    /// is thick.
    ///
    /// ## Why
    /// The ceiling was to run through under it. Now it needs a box around the beam, or shallower steel.
    ///
    /// ## Source
    /// Common practice: subtraction, with the true depth of rolled shapes.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x8 SPF No.2
    /// beam B1
    ///   size        W8x18
    ///   set         flush in main
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    /// beam B1
    ///   size        W8x18
    ///   set         flush in main, held 1/2" low
    /// ```
    "flush-beam-projects", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    for beam in &house.model.beams {
        let Some((BeamSet::Flush(floor, _), _)) = beam.set.stated() else { continue };
        let levels = floor.target.and_then(|floor| house.geometry.floors.get(floor.index as usize));
        let Some(Ok(joists)) = levels.map(|levels| &levels.joist_bottom) else { continue };
        let Ok(bottom) = house.geometry.surfaces.of(beam.common.id, Surface::Bottom) else { continue };
        let below = joists.total() - bottom.total();
        if below < tolerance.value {
            continue;
        }
        findings
            .about(
                beam.common.id,
                beam.size.span().unwrap_or(beam.common.name_span),
                format!("{} hangs {below} below the joists of {}", beam.common.label(), floor.name),
            )
            .note(format!("underside of the beam: {bottom}"))
            .note(format!("underside of the joists: {joists}"))
            .help("take a shallower section, deeper joists, or drop it and box it in")
            .suspects(beam.common.id, "ceiling")
            .basis("common practice");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A W8x18 is 8.14" deep (true depth, shapes database v15.0), a dressed 2x8 7-1/4" (PS 20): 0.89" below.
    #[test]
    fn takes_the_true_depth() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
joists J1
  floor       main
  size        2x8 SPF No.2
beam B1
  size        W8x18
--            ^^^^^ beam B1 hangs 7/8\"~ below the joists of main
  set         flush in main
",
        );
    }
}
