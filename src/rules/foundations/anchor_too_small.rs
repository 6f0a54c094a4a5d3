//! Anchor bolts against the wood they go through.

use crate::geometry::anchors::bolts;
use crate::house::House;
use crate::house::lines::part_at;
use crate::profiles::foundations::{ANCHOR_DIAMETER, ANCHOR_EMBEDMENT, ANCHOR_PROJECTION};
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// An anchor bolt is too short for the sills it goes through, or too thin.
    ///
    /// Its length is what goes into the concrete, the sills with their gasket, and a thread long enough for washer and
    /// nut (`anchor-projection`). Without a sill the sole of the wall that stands there is what it goes through. Nothing
    /// is looked at where no `anchor` is said.
    ///
    /// ## Why
    /// Bolts are bought for one sill. A second one is packed in to mend a low wall, and then the nut finds no thread, or
    /// the bolt was set too high and holds in nothing.
    ///
    /// ## Source
    /// Residential code R403.1.6, read in a copy of low grade; the limits `anchor-embedment` and `anchor-diameter`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   sill        2 of 2x6 treated
    ///   anchor      1/2" x 10" at 6'-0"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   sill        1 of 2x6 treated
    ///   anchor      1/2" x 10" at 6'-0"
    /// ```
    "anchor-too-small", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let (embedment, least) = (house.limits.of(&ANCHOR_EMBEDMENT), house.limits.of(&ANCHOR_DIAMETER));
    let projection = house.limits.of(&ANCHOR_PROJECTION).value;
    for line in bolts(&house.model) {
        if line.anchor.diameter < least.value {
            let message = format!(
                "the bolts of {} are {} thick: {} at the least",
                line.of.label(),
                line.anchor.diameter,
                least.value
            );
            let finding = findings.about(line.of.id, line.span, message);
            finding.basis(least.basis());
            if let Some(size) = part_at(house, line.span, "size") {
                finding.write(size, size_of(least.value, line.anchor.length));
            }
        }
        let Some(wood) = line.wood else { continue };
        let needed = embedment.value + wood + projection;
        if line.anchor.length >= needed {
            continue;
        }
        let finding = findings.about(
            line.of.id,
            line.span,
            format!(
                "the bolts of {} are {} long, and need {} through {wood} of wood",
                line.of.label(),
                line.anchor.length.in_inches(),
                needed.in_inches()
            ),
        );
        if let Some(size) = part_at(house, line.span, "size") {
            finding.write(size, size_of(line.anchor.diameter, needed.rounded_up_to(WHOLE_INCH)));
        }
        finding
            .note(format!(
                "{} in concrete + {wood} of wood + {projection} for washer and nut = {}",
                embedment.value,
                needed.in_inches()
            ))
            .help("take longer bolts")
            .basis(embedment.basis());
    }
}

/// Bolts come by the inch. Common practice.
const WHOLE_INCH: Length = Length::inches(1);

fn size_of(diameter: Length, length: Length) -> String {
    format!("{} x {}", diameter.in_inches(), length.in_inches())
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// R403.1.6, read in a copy of low grade: 7" in concrete. With 1" for washer and nut (common practice) two sills of
    /// 1-1/2" take 11", one takes 9-1/2".
    #[test]
    fn at_the_limit() {
        let house = |sills: u32, length: &str, mark: &str| {
            format!(
                "
wall W1
  kind        concrete
  sill        {sills} of 2x6 treated
  anchor      1/2\" x {length} at 6'-0\"
{mark}"
            )
        };
        check_rule(&RULE, &house(1, "9-1/2\"", ""));
        check_rule(&RULE, &house(2, "11\"", ""));
        check_rule(
            &RULE,
            &house(
                2,
                "10\"",
                "--            ^^^^^^^^^^^^^^^^^^^ the bolts of wall W1 are 10\" long, and need 11\" through 3\" of wood\n",
            ),
        );
    }

    #[test]
    fn counts_the_sole_where_there_is_no_sill() {
        check_rule(
            &RULE,
            "
wall W1
  kind        concrete
  anchor      3/8\" x 8\" at 6'-0\"
--            ^^^^^^^^^^^^^^^^^^ the bolts of wall W1 are 3/8\" thick: 1/2\" at the least
--            ^^^^^^^^^^^^^^^^^^ the bolts of wall W1 are 8\" long, and need 9-1/2\" through 1-1/2\" of wood
wall PW1
  kind        pony
  studs       2x6 SPF No.2 at 16\"
  sole        1 of 2x6 treated
  stands on   W1
",
        );
    }
}
