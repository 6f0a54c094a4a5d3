//! Beams below a ceiling that was to stay plain.

use crate::geometry::band;
use crate::geometry::carried::{Carried, carrying_element};
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::{Beam, BeamSet};
use crate::model::plan::{Axis, PlanRect};
use crate::model::promises::Promise;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// A beam or its cap plate comes lower than a ceiling that was to have nothing below it.
    ///
    /// `nothing below ceiling of main` looks at the beams set in or under that floor and at those that carry its joists;
    /// with `in A to C by 1 to 2` only at what lies in that area.
    ///
    /// ## Why
    /// The deep flush beam was paid for to be out of sight. A plate on a column below it shows as well.
    ///
    /// ## Source
    /// Arithmetic of the stack.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor       100'-0"
    ///   deck           3/4"
    /// joists J1
    ///   floor          main
    ///   size           2x10 SPF No.2
    /// beam B1
    ///   size           3-ply 2x12 SPF No.2
    ///   set            flush in main
    /// intent "Plain ceiling"
    ///   nothing below  ceiling of main
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor       100'-0"
    ///   deck           3/4"
    /// joists J1
    ///   floor          main
    ///   size           2x10 SPF No.2
    /// beam B1
    ///   size           3-ply 2x10 SPF No.2
    ///   set            flush in main
    /// intent "Plain ceiling"
    ///   nothing below  ceiling of main
    /// ```
    "intent-below-ceiling", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let promises = house.model.intents.iter().flat_map(|intent| {
        intent.promises.iter().filter_map(move |promise| match promise {
            Promise::NothingBelowCeiling(floor, area, span) => Some((intent, floor.target?, area, *span)),
            _ => None,
        })
    });
    let promises: Vec<_> = promises.collect();
    if promises.is_empty() {
        return;
    }
    let carried = Carried::of(&house.model);
    for (intent, floor, area, promise) in promises {
        let Some(Ok(ceiling)) = house.geometry.floors.get(floor.index as usize).map(|levels| &levels.ceiling)
        else {
            continue;
        };
        for beam in house.model.beams.iter().filter(|beam| is_of(beam, floor, &carried)) {
            if area.as_ref().is_some_and(|area| !lies_in(house, beam, area)) {
                continue;
            }
            let Ok(bottom) = house.geometry.surfaces.of(beam.common.id, Surface::Bottom) else { continue };
            let cap = thickest_cap(house, beam).filter(|(_, cap)| bottom.total() - *cap < ceiling.total());
            let below = ceiling.total() - bottom.total();
            let (what, below) = match cap {
                _ if below.is_positive() => (beam.common.label(), below),
                Some((column, cap)) => {
                    (format!("the cap plate of {column} under {}", beam.common.label()), below + cap)
                }
                None => continue,
            };
            findings
                .about(
                    beam.common.id,
                    beam.set.span().unwrap_or(beam.common.name_span),
                    format!(
                        "{what} comes {below} below the ceiling that \"{}\" keeps plain",
                        intent.common.name
                    ),
                )
                .related(promise, "the promise")
                .note(format!("the ceiling: {ceiling}"))
                .note(format!("the beam's underside: {bottom}"))
                .help("take a shallower beam, or give the promise up")
                .suspects(beam.common.id, "ceiling")
                .basis("arithmetic");
        }
    }
}

/// True when a beam is set in or under a floor, or carries its joists.
fn is_of(beam: &Beam, floor: ElementId, carried: &Carried<'_>) -> bool {
    let set = match beam.set.value() {
        Some(BeamSet::Flush(floor, _) | BeamSet::Dropped(floor, _) | BeamSet::Upset(floor, _)) => {
            floor.target
        }
        Some(BeamSet::Top(_)) | None => None,
    };
    let carries = carried
        .joists_on(beam.common.id)
        .iter()
        .any(|(joists, _)| joists.floor.value().and_then(|floor| floor.target) == Some(floor));
    set == Some(floor) || carries
}

fn lies_in(house: &House, beam: &Beam, area: &PlanRect) -> bool {
    band::of(&house.model, beam.common.id).is_some_and(|band| {
        [Axis::X, Axis::Y].into_iter().all(|axis| {
            let ((low, high), (from, to)) = (band.on(axis), area.on(axis));
            low < to && from < high
        })
    })
}

/// The thickest cap plate of the columns under a beam, with the column's name.
fn thickest_cap<'a>(house: &'a House, beam: &'a Beam) -> Option<(&'a str, crate::units::Length)> {
    let columns = beam.supports.iter().filter_map(|support| {
        let column = carrying_element(support).filter(|on| on.kind == ElementKind::Column)?;
        let column = house.model.column(column)?;
        Some((&*column.common.name, column.cap.value()?.thickness()))
    });
    columns.max_by_key(|(_, thickness)| *thickness)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(held: &str, promise: &str, mark: &str) -> String {
        format!(
            "
grid
  x              A 0', B 12'
  y              1 0', 2 10'
floor main
  subfloor       100'-0\"
  deck           3/4\"
  ceiling        board 1/2\"
joists J1
  floor          main
  size           2x10 SPF No.2
column C1
  cap            plate 5\" x 8\" x 3/8\"
beam B1
  size           3-ply 2x10 SPF No.2
  from           A/1 to B/1
  set            flush in main, held {held} low
{mark}  bears on       C1
intent \"Plain\"
  nothing below  ceiling of main{promise}
"
        )
    }

    /// The ceiling is 1/2\" below the joists, the beam held 1/8\" low with its cap of 3/8\" too; held 1/4\" low the cap is
    /// 1/8\" below it, held 3/4\" low the beam itself 1/4\".
    #[test]
    fn counts_board_and_cap() {
        check_rule(&RULE, &house("1/8\"", "", ""));
        let cap = "--               ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the cap plate of C1 under beam B1 comes 1/8\" below the ceiling that \"Plain\" keeps plain\n";
        check_rule(&RULE, &house("1/4\"", "", cap));
        check_rule(
            &RULE,
            &house(
                "3/4\"",
                "",
                "--               ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ beam B1 comes 1/4\" below the ceiling that \"Plain\" keeps plain\n",
            ),
        );
        check_rule(&RULE, &house("3/4\"", " in A to B by 1 plus 5' to 2", ""));
    }
}
