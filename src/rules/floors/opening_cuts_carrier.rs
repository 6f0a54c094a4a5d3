//! Floor openings cut into what carries something.

use crate::geometry::carried::Carried;
use crate::geometry::opening_cuts::{Loss, losses};
use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::{Findings, rule};

rule! {
    /// A floor opening cuts a beam, or joists on which a bearing wall or a post stands.
    ///
    /// A beam set in the floor that runs through the opening, a post or bearing wall that stands where the floor is
    /// open, and one on joists that the opening cuts between their supports.
    ///
    /// ## Why
    /// A stair is moved on the plan of the rooms; what it cuts stands on the plan of the framing.
    ///
    /// ## Source
    /// Common practice: the plan's own coordinates. Headers and trimmers of the usual sizes carry a floor, no walls
    /// (residential code R502.10, from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 14'
    /// floor main
    ///   subfloor    100'-0"
    /// beam B1
    ///   size        W8x24
    ///   from        A / 1 plus 7' to B / 1 plus 7'
    ///   set         flush in main
    /// opening O1
    ///   floor       main
    ///   fill        A plus 6' to A plus 9' by 1 plus 4' to 1 plus 13'
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 14'
    /// floor main
    ///   subfloor    100'-0"
    /// beam B1
    ///   size        W8x24
    ///   from        A / 1 plus 3' to B / 1 plus 3'
    ///   set         flush in main
    /// opening O1
    ///   floor       main
    ///   fill        A plus 6' to A plus 9' by 1 plus 4' to 1 plus 13'
    /// ```
    "opening-cuts-carrier", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for opening in &house.model.openings {
        for loss in losses(&house.model, &house.geometry.contacts, &carried, opening) {
            let label =
                |id: ElementId| house.model.common(id).map(|common| common.label()).unwrap_or_default();
            let name = opening.common.label();
            let (of, message) = match loss {
                Loss::Beam(beam) => (beam, format!("{} runs through {name}", label(beam))),
                Loss::Ground(load) => (load, format!("{} stands where {name} leaves no floor", label(load))),
                Loss::Joists(joists, load) => {
                    (load, format!("{name} cuts {}, and {} stands on them there", label(joists), label(load)))
                }
            };
            let span = opening.fill.first().map_or(opening.common.name_span, |rect| rect.span);
            let finding = findings.about(opening.common.id, span, message);
            finding
                .help("move one of the two, or head the opening off on members that are sized for it")
                .follows(of)
                .basis("common practice");
            if let Some(common) = house.model.common(of) {
                finding.related(common.name_span, common.label());
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(wall: &str, bearing: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 14', 3 28'
floor main
  subfloor    100'-0\"
wall W1
  from        A/1 to B/1
  thick       8\"
wall W2
  from        A/2 to B/2
  thick       8\"
wall W3
  from        A/3 to B/3
  thick       8\"
joists J1
  floor       main
  fill        A to B by 1 to 3
  run         along y
  bears on    W1
  bears on    W2
  bears on    W3
wall W4
  from        {wall}
  thick       5-1/2\"
  bearing     {bearing}
  stands on   main over J1
opening O1
  floor       main
  fill        A plus 6' to A plus 9' by 1 plus 4' to 1 plus 10'
{mark}"
        )
    }

    #[test]
    fn a_wall_on_the_tails_stands_on_cut_joists() {
        let marked = |message: &str| format!("--            {} {message}\n", "^".repeat(49));
        check_rule(
            &RULE,
            &house(
                "A / 1 plus 12' to B / 1 plus 12'",
                "yes",
                &marked("opening O1 cuts joists J1, and wall W4 stands on them there"),
            ),
        );
        check_rule(&RULE, &house("A / 1 plus 12' to B / 1 plus 12'", "no", ""));
        // Past the next support, and beside the cut joists.
        check_rule(&RULE, &house("A / 1 plus 16' to B / 1 plus 16'", "yes", ""));
        check_rule(&RULE, &house("A plus 10' / 1 plus 12' to B / 1 plus 12'", "yes", ""));
        check_rule(
            &RULE,
            &house(
                "A / 1 plus 8' to B / 1 plus 8'",
                "yes",
                &marked("wall W4 stands where opening O1 leaves no floor"),
            ),
        );
    }
}
