//! What a shelf has to hold, against its width.

use crate::house::House;
use crate::profiles::foundations::SHELF_GAP;
use crate::profiles::foundations::UPSTAND_THICKNESS;
use crate::rules::{Findings, rule};

rule! {
    /// A shelf is too narrow for its sill and the air behind it.
    ///
    /// The width of the shelf is compared with the width of the sill on it and the limit `shelf-gap`.
    ///
    /// ## Why
    /// Joist ends that touch the concrete beside them stay damp and rot, and a sill as wide as its shelf cannot be set
    /// straight on a wall that is not.
    ///
    /// ## Source
    /// Common practice, by analogy with the air that R317.1 asks for round beams in concrete.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   thick       10"
    ///   top         99'-0 1/2"
    /// shelf SH1
    ///   in          W1 from south face
    ///   top         98'-0"
    ///   width       5-1/2"
    ///   sill        1 of 2x6 treated
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   thick       10"
    ///   top         99'-0 1/2"
    /// shelf SH1
    ///   in          W1 from south face
    ///   top         98'-0"
    ///   width       6"
    ///   sill        1 of 2x6 treated
    /// ```
    "shelf-too-narrow", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let air = house.limits.of(&SHELF_GAP);
    for shelf in &house.model.shelves {
        let Some((width, span)) = shelf.width.stated() else { continue };
        let Some((sill, sill_span)) = shelf.sill.stated() else { continue };
        let Some(sill_width) = sill.width() else { continue };
        let needed = sill_width + air.value;
        if *width >= needed {
            continue;
        }
        let finding = findings.about(
            shelf.common.id,
            span,
            format!("{} is {width} wide; its sill and the air behind it take {needed}", shelf.common.label()),
        );
        finding
            .related(sill_span, format!("a sill {sill_width} wide"))
            .note(format!("{sill_width} of sill + {} of air = {needed}", air.value))
            .help(format!("make the upstand {} thinner, or the sill narrower", needed - *width))
            .basis(air.basis());
        let wall = shelf.wall.value().and_then(|wall| house.model.wall(wall.target?));
        let upstand = wall.and_then(|wall| wall.thick.get()).map(|thick| thick - needed);
        if upstand.is_some_and(|upstand| upstand >= house.limits.of(&UPSTAND_THICKNESS).value) {
            finding.write(span, needed.to_string());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A 2x4 is 3-1/2" wide: with 1/2" of air 4" just holds it, 3-15/16" does not (common practice).
    #[test]
    fn holds_a_2x4_in_four_inches() {
        let shelf = |width: &str| {
            format!(
                "
shelf SH1
  top         98'-0\"
  sill        1 of 2x4 treated
  width       {width}
"
            )
        };
        check_rule(&RULE, &shelf("4\""));
        check_rule(
            &RULE,
            &format!(
                "{}--            ^^^^^^^^ shelf SH1 is 3-15/16\" wide; its sill and the air behind it take 4\"
-- | 3-1/2\" of sill + 1/2\" of air = 4\"
",
                shelf("3-15/16\"")
            ),
        );
    }
}
