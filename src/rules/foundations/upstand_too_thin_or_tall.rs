//! The concrete that goes on beside and above a shelf.

use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::profiles::foundations::{UPSTAND_HEIGHT, UPSTAND_THICKNESS};
use crate::rules::{Findings, rule};

rule! {
    /// The concrete beside a shelf is too thin, or too tall for what is left of it.
    ///
    /// A wall less the width of its shelf is the thickness of the upstand; the wall's top less the shelf's is its height.
    ///
    /// ## Why
    /// The upstand is a thin cantilever that soil, wind and the floor above push against. Beyond a modest size it wants
    /// bars and somebody who designs them.
    ///
    /// ## Source
    /// A building code of Ontario (9.15.4.7), taken by analogy where the local code says nothing; common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   thick       8"
    ///   top         99'-0 1/2"
    /// shelf SH1
    ///   in          W1 from south face
    ///   top         98'-0 1/2"
    ///   width       5"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   thick       8"
    ///   top         99'-0 1/2"
    /// shelf SH1
    ///   in          W1 from south face
    ///   top         98'-0 1/2"
    ///   width       4-1/2"
    /// ```
    "upstand-too-thin-or-tall", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let (least, most) = (house.limits.of(&UPSTAND_THICKNESS), house.limits.of(&UPSTAND_HEIGHT));
    for shelf in &house.model.shelves {
        let Some(wall) = shelf.wall.value().and_then(|wall| house.model.wall(wall.target?)) else { continue };
        if let (Some((width, span)), Some(thick)) = (shelf.width.stated(), wall.thick.get())
            && thick - *width < least.value
        {
            findings
                .about(
                    shelf.common.id,
                    span,
                    format!(
                        "beside {} {} of {} is left: {} at the least without design",
                        shelf.common.label(),
                        thick - *width,
                        wall.common.label(),
                        least.value
                    ),
                )
                .note(format!("{thick} of wall − {width} of shelf = {}", thick - *width))
                .help("make the wall thicker or the shelf narrower, or have the upstand designed")
                .basis(least.basis());
        }
        let surfaces = &house.geometry.surfaces;
        let (Ok(top), Ok(seat)) =
            (surfaces.of(wall.common.id, Surface::Top), surfaces.of(shelf.common.id, Surface::Top))
        else {
            continue;
        };
        let height = top.total() - seat.total();
        if height > most.value {
            findings
                .about(
                    shelf.common.id,
                    shelf.top.span().unwrap_or(shelf.common.name_span),
                    format!(
                        "{} goes on {height} above {}: {} at the most without design",
                        wall.common.label(),
                        shelf.common.label(),
                        most.value
                    ),
                )
                .related(
                    wall.top.span().unwrap_or(wall.common.name_span),
                    format!("the wall's top at {}", top.total().in_feet()),
                )
                .help("lessen the step, or have the upstand and its dowels designed")
                .basis(most.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    const WALL: &str = "
wall W1
  kind        concrete
  thick       10\"
  top         100'-0\"
shelf SH1
  in          W1 from south face
  width       6\"
";

    /// 13-3/4" is the tallest (a foreign code, by analogy): 100'-0" less 98'-10 1/4".
    #[test]
    fn measures_the_height() {
        check_rule(&RULE, &format!("{WALL}  top         98'-10 1/4\"\n"));
        check_rule(
            &RULE,
            &format!(
                "{WALL}  top         98'-10 3/16\"
--            ^^^^^^^^^^^^ wall W1 goes on 1'-1 13/16\" above shelf SH1: 1'-1 3/4\" at the most without design
"
            ),
        );
    }

    /// 3-1/2" is the thinnest (a foreign code, by analogy); 8" less 4-9/16" is 3-7/16".
    #[test]
    fn measures_the_thickness() {
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  thick       8\"
shelf SH1
  in          W1 from south face
  width       4-9/16\"
--            ^^^^^^^ beside shelf SH1 3-7/16\" of wall W1 is left: 3-1/2\" at the least without design
",
        );
    }
}
