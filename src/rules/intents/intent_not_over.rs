//! Things that were to stand over one another.

use crate::geometry::alignment::offset;
use crate::house::House;
use crate::model::promises::Promise;
use crate::profiles::framing::POST_OFF_LINE;
use crate::rules::{Findings, rule};

rule! {
    /// Something that was to stay over something else has moved off it.
    ///
    /// Walls and beams are compared middle to middle across, posts with what is below them.
    ///
    /// ## Why
    /// The one below was placed for the one above. A line moved on one plan alone parts them.
    ///
    /// ## Source
    /// Common practice: the limit `post-off-line`, or the promise's own `within`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x         A 0', B 12'
    ///   y         1 0', 2 10'
    /// column P1
    ///   at        A plus 1" / 1
    /// column C1
    ///   at        A/1
    /// intent "Posts in one line"
    ///   keep      P1 over C1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x         A 0', B 12'
    ///   y         1 0', 2 10'
    /// column P1
    ///   at        A plus 1/2" / 1
    /// column C1
    ///   at        A/1
    /// intent "Posts in one line"
    ///   keep      P1 over C1
    /// ```
    "intent-not-over", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&POST_OFF_LINE);
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let Promise::Over(above, below, within, span) = promise else { continue };
            let (Some(above_id), Some(below_id)) = (above.target, below.target) else { continue };
            let allowed = within.unwrap_or(limit.value);
            let Some(off) = offset(&house.model, above_id, below_id).filter(|off| *off > allowed) else {
                continue;
            };
            let finding = findings.about(
                intent.common.id,
                *span,
                format!(
                    "\"{}\" is not kept: {} lies {off} off {}, {allowed} allowed",
                    intent.common.name, above.name, below.name
                ),
            );
            for common in [above_id, below_id].into_iter().filter_map(|element| house.model.common(element)) {
                finding.related(common.name_span, common.label());
                finding.follows(common.id);
            }
            finding.basis(match within {
                Some(_) => "the promise's own `within`".to_owned(),
                None => limit.basis(),
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// Common practice: 1/2\" off the line; a beam at 10'-0\" and a post at 10'-0 5/8\".
    #[test]
    fn at_the_limit() {
        let house = |at: &str, promise: &str, mark: &str| {
            format!(
                "
grid
  x         A 0', B 12'
  y         1 0', 2 10'
beam B1
  size      3-ply 2x10 SPF No.2
  from      A/2 to B/2
column P1
  at        A plus 4' / {at}
intent \"In line\"
  keep      {promise}
{mark}"
            )
        };
        check_rule(&RULE, &house("2 plus 1/2\"", "P1 over B1", ""));
        check_rule(
            &RULE,
            &house(
                "2 plus 5/8\"",
                "P1 over B1",
                "--^^^^^^^^^^^^^^^^^^^^ \"In line\" is not kept: P1 lies 5/8\" off B1, 1/2\" allowed\n",
            ),
        );
        check_rule(&RULE, &house("2 plus 5/8\"", "P1 over B1 within 1\"", ""));
    }
}
