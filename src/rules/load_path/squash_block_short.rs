//! Squash blocks against the joists beside them.

use crate::geometry::carried::Carried;
use crate::geometry::joist_space;
use crate::house::House;
use crate::profiles::framing::SQUASH_BLOCK_PROUD;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A squash block is shorter than the joist space it fills.
    ///
    /// Beside sawn joists it is as long as they are deep; beside I-joists a little longer, for their webs take no load.
    ///
    /// ## Why
    /// A short block takes nothing until the joist has been crushed by the difference.
    ///
    /// ## Source
    /// Common practice: the limit `squash-block-proud`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    /// wall W1
    ///   kind        concrete
    /// joists J1
    ///   floor       main
    ///   size        11-7/8 I-joist class 40
    ///   bears on    W1
    /// column P1
    ///   stands on   main over W1
    /// squash SQ1
    ///   under       P1
    ///   length      11-7/8"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    /// wall W1
    ///   kind        concrete
    /// joists J1
    ///   floor       main
    ///   size        11-7/8 I-joist class 40
    ///   bears on    W1
    /// column P1
    ///   stands on   main over W1
    /// squash SQ1
    ///   under       P1
    ///   length      11-15/16"
    /// ```
    "squash-block-short", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    let proud = house.limits.of(&SQUASH_BLOCK_PROUD);
    for block in &house.model.squashes {
        let (Some((length, span)), Some(space)) =
            (block.length.stated(), joist_space::of_block(&house.model, &carried, block))
        else {
            continue;
        };
        let extra = if space.is_of_i_joists() { proud.value } else { Length::ZERO };
        let needed = space.depth + extra;
        if *length >= needed {
            continue;
        }
        findings
            .about(
                block.common.id,
                span,
                format!(
                    "{} is {length} long beside joists {} deep: {needed} at the least",
                    block.common.label(),
                    space.depth
                ),
            )
            .related(space.joists.common.name_span, space.joists.common.label())
            .help(format!("cut it {}", joist_space::block_length(&space)))
            .write(span, joist_space::block_length(&space).to_string())
            .follows(space.joists.common.id)
            .basis(proud.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(joists: &str, length: &str, mark: &str) -> String {
        format!(
            "
floor main
  subfloor    100'-0\"
wall W1
  kind        concrete
joists J1
  floor       main
  size        {joists}
  bears on    W1
column P1
  stands on   main over W1
squash SQ1
  under       P1
  length      {length}
{mark}"
        )
    }

    /// Common practice: 1/16\" proud of an I-joist, flush with a sawn one.
    #[test]
    fn at_the_limit() {
        check_rule(&RULE, &house("2x10 SPF No.2", "9-1/4\"", ""));
        check_rule(
            &RULE,
            &house(
                "2x10 SPF No.2",
                "9-3/16\"",
                "--            ^^^^^^^ squash SQ1 is 9-3/16\" long beside joists 9-1/4\" deep: 9-1/4\" at the least\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "11-7/8 I-joist class 40",
                "11-7/8\"",
                "--            ^^^^^^^ squash SQ1 is 11-7/8\" long beside joists 11-7/8\" deep: 11-15/16\" at the least\n",
            ),
        );
    }
}
