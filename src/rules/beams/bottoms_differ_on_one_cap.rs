//! Beams that share one column.

use crate::house::House;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};

rule! {
    /// Two beams that bear on one column have their undersides at different levels.
    ///
    /// ## Why
    /// A cap is flat. The shallower beam hangs in the air until somebody finds a stack of shims for it.
    ///
    /// ## Source
    /// Common practice: subtraction; the limit `closure-tolerance`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// beam B1
    ///   size        1-3/4 x 11-7/8 LVL
    ///   set         top 100'-0"
    ///   bears on    C1
    /// beam B2
    ///   size        1-3/4 x 9-1/2 LVL
    ///   set         top 100'-0"
    ///   bears on    C1
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    /// ```
    /// ```framing,passes
    /// beam B1
    ///   size        1-3/4 x 11-7/8 LVL
    ///   set         top 100'-0"
    ///   bears on    C1
    /// beam B2
    ///   size        1-3/4 x 11-7/8 LVL
    ///   set         top 100'-0"
    ///   bears on    C1
    /// column C1
    ///   size        HSS 4 x 4 x 1/4
    /// ```
    "bottoms-differ-on-one-cap", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    for (column, stack) in house.model.columns.iter().zip(&house.geometry.columns) {
        let known = stack.beams.iter().filter_map(|(beam, bottom)| {
            let beam = house.model.beam(*beam)?;
            Some((beam, bottom.as_ref().ok()?))
        });
        let lowest = known.clone().min_by_key(|(_, bottom)| bottom.total());
        let highest = known.max_by_key(|(_, bottom)| bottom.total());
        let (Some((low, low_bottom)), Some((high, high_bottom))) = (lowest, highest) else { continue };
        let apart = high_bottom.total() - low_bottom.total();
        if apart < tolerance.value {
            continue;
        }
        findings
            .about(
                column.common.id,
                column.cap.span().unwrap_or(column.common.name_span),
                format!(
                    "{} and {} meet on {}, but their undersides are {apart} apart",
                    low.common.label(),
                    high.common.label(),
                    column.common.label()
                ),
            )
            .note(format!("{}: {low_bottom}", low.common.label()))
            .note(format!("{}: {high_bottom}", high.common.label()))
            .help(format!("step the cap by {apart}, or set {} lower", high.common.label()))
            .basis(tolerance.basis())
            .follows(low.common.id)
            .follows(high.common.id);
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A W8x24 is 7.93" deep, a W8x18 8.14" (published): 0.21" apart, printed 3/16".
    #[test]
    fn steel_is_measured_true() {
        check_rule(
            &RULE,
            "
beam B1
  size        W8x24
  set         top 100'-0\"
  bears on    C1
beam B2
  size        W8x18
  set         top 100'-0\"
  bears on    C1
column C1
  size        HSS 4 x 4 x 1/4
  cap         plate 7\" x 10\" x 1/2\"
--            ^^^^^^^^^^^^^^^^^^^^^ beam B2 and beam B1 meet on column C1, but their undersides are 3/16\"~ apart
",
        );
    }
}
