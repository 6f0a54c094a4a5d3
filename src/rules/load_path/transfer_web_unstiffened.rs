//! Posts on the webs of transfer beams.

use crate::house::House;
use crate::model::framing::Beam;
use crate::products::rolled::Outline;
use crate::products::section::Make;
use crate::rules::{Findings, rule};

rule! {
    /// A post stands on a steel transfer beam, and nothing says that anybody has looked at the web below it.
    ///
    /// `stiffener at B` says that plates stiffen the web under the post, no further off than half of the beam's depth;
    /// `stiffener none` that somebody has looked, and it needs none.
    ///
    /// ## Why
    /// Bending and sag are read from tables. That a thin web buckles under one post is not.
    ///
    /// ## Source
    /// AISC 360, chapter J10 (from memory): webs under concentrated forces.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12', C 16'
    ///   y           1 0'
    /// beam T1
    ///   size        W8x18
    ///   from        A/1 to C/1
    ///   transfers   P1 to C1
    /// column C1
    /// column P1
    ///   at          B/1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12', C 16'
    ///   y           1 0'
    /// beam T1
    ///   size        W8x18
    ///   from        A/1 to C/1
    ///   transfers   P1 to C1
    ///   stiffener   at B
    /// column C1
    /// column P1
    ///   at          B/1
    /// ```
    "transfer-web-unstiffened", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for beam in &house.model.beams {
        if !has_web_of_steel(beam) || beam.no_stiffener.is_some() || beam.common.may_say("stiffener") {
            continue;
        }
        for transfer in &beam.transfers {
            let (post, _) = &transfer.value;
            let post = post.target.and_then(|post| house.model.column(post));
            let (Some(post), Some(axis), Some(depth)) = (
                post,
                beam.from.value().and_then(|line| line.axis()),
                beam.size.value().and_then(|size| size.depth()),
            ) else {
                continue;
            };
            let Some(at) = post.at.get().map(|point| point.on(axis)) else { continue };
            if beam.stiffeners.iter().any(|stiffener| (stiffener.at - at).abs() <= depth.half()) {
                continue;
            }
            findings
                .about(
                    beam.common.id,
                    transfer.span,
                    format!(
                        "{} carries {} on its web, and nothing says that the web has been looked at",
                        beam.common.label(),
                        post.common.label()
                    ),
                )
                .related(post.common.name_span, post.common.label())
                .help("have the web checked; then write `stiffener at …` under the post, or `stiffener none source \"…\"`")
                .follows(post.common.id)
                .basis("AISC 360 J10 (from memory)");
        }
    }
}

/// It is a wide flange, or a steel shape that a product declares.
fn has_web_of_steel(beam: &Beam) -> bool {
    match beam.size.value().and_then(|size| size.section.as_ref()).map(|section| section.make) {
        Some(Make::Rolled(shape)) => matches!(shape.outline, Outline::WideFlange { .. }),
        Some(Make::DeclaredSteel) => true,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A W8x18 is 8.14" deep: half of it is 4.07".
    #[test]
    fn a_stiffener_stands_under_the_post() {
        let house = |more: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 12', C 16'
  y           1 0'
beam T1
  size        W8x18
  from        A/1 to C/1
{more}  transfers   P1 to C1
{mark}column C1
column P1
  at          B/1
"
            )
        };
        check_rule(&RULE, &house("  stiffener   at B less 4\"\n", ""));
        check_rule(&RULE, &house("  stiffener   none source \"letter\"\n", ""));
        check_rule(
            &RULE,
            &house(
                "  stiffener   at B less 5\"\n",
                "--^^^^^^^^^^^^^^^^^^^^ beam T1 carries column P1 on its web, and nothing says that the web has been looked at\n",
            ),
        );
    }
}
