//! What holds the posts of a guard.

use crate::house::House;
use crate::profiles::loads::GUARD_LOAD;
use crate::rules::{Findings, rule};

rule! {
    /// The posts of a guard along a floor's edge have nothing behind them.
    ///
    /// Looked at for each `guard` line of a floor that doesn't say `posts blocked`.
    ///
    /// ## Why
    /// A person who falls against a guard pushes at its top. A post bolted to one joist or to a rim rolls that joist: it
    /// takes blocking to the next ones to hold it upright.
    ///
    /// ## Source
    /// Residential code Table R301.5 for the push, read in a secondary copy; common practice for the blocking. How the post
    /// is fastened is not looked at.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor terrace
    ///   finish at   99'-6"
    ///   guard       south 36" high
    /// ```
    /// ```framing,passes
    /// floor terrace
    ///   finish at   99'-6"
    ///   guard       south 36" high, posts blocked
    /// ```
    "guard-post-unbacked", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let push = house.limits.of(&GUARD_LOAD);
    for floor in &house.model.floors {
        for guard in floor.guards.iter().filter(|guard| !guard.value.is_backed) {
            findings
                .about(
                    floor.common.id,
                    guard.span,
                    format!(
                        "the {} guard of {} takes {} lb at {}, and nothing says what holds its posts",
                        guard.value.side.word(),
                        floor.common.label(),
                        push.value.to_lb(),
                        guard.value.height
                    ),
                )
                .help("block the joist bays where its posts stand, and add `, posts blocked`")
                .basis(push.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn one_for_each_edge() {
        check_rule(
            &RULE,
            "
floor terrace
  finish at   99'-6\"
  guard       south 36\" high
--^^^^^^^^^^^^^^^^^^^^^^^^^^ the south guard of floor terrace takes 200 lb at 3'-0\", and nothing says what holds its posts
  guard       west 36\" high, posts blocked
",
        );
    }
}
