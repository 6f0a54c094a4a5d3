//! The spacing of anchor bolts.

use crate::geometry::anchors::bolts;
use crate::house::House;
use crate::house::lines::part_at;
use crate::profiles::foundations::ANCHOR_SPACING;
use crate::rules::{Findings, rule};

rule! {
    /// Anchor bolts stand too far apart.
    ///
    /// ## Why
    /// Wind and shaking push the house along its sills. Few bolts split the sill between them.
    ///
    /// ## Source
    /// Residential code R403.1.6, read in a copy of low grade; the limit `anchor-spacing`. Where wind or earthquakes are
    /// strong the code wants them closer: override the limit there.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   sill        1 of 2x6 treated
    ///   anchor      1/2" x 10" at 8'-0"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   sill        1 of 2x6 treated
    ///   anchor      1/2" x 10" at 6'-0"
    /// ```
    "anchors-too-far-apart", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let most = house.limits.of(&ANCHOR_SPACING);
    for line in bolts(&house.model).into_iter().filter(|line| line.anchor.spacing > most.value) {
        let message = format!(
            "the bolts of {} stand {} apart: {} at the most",
            line.of.label(),
            line.anchor.spacing,
            most.value
        );
        let finding = findings.about(line.of.id, line.span, message);
        if let Some(spacing) = part_at(house, line.span, "at") {
            finding.write(spacing, most.value.to_string());
        }
        finding
            .help(format!("set them {} apart, and two in each piece of sill", most.value))
            .basis(most.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R403.1.6, read in a copy of low grade: 6'-0"; shelves as walls.
    #[test]
    fn at_the_limit() {
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  anchor      1/2\" x 10\" at 6'-0 1/4\"
--            ^^^^^^^^^^^^^^^^^^^^^^^ the bolts of wall W1 stand 6'-0 1/4\" apart: 6'-0\" at the most
shelf SH1
  in          W1 from south face
  anchor      1/2\" x 10\" at 6'-0\"
",
        );
    }
}
