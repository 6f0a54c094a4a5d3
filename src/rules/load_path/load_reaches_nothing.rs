//! Loads that nothing carries to the ground, in pounds.

use crate::house::House;
use crate::rules::wording::{by_case, pounds};
use crate::rules::{Findings, rule};
use crate::statics::action::Lost;
use crate::units::Force;

/// Less than this is rounding.
const LEAST: Force = Force::lb(1.0);

rule! {
    /// A load reaches nothing: how much of it is lost, and where.
    ///
    /// It stands under the finding that says what is missing there. What was put on the house, less what is lost, is what the
    /// soil carries; nothing of it is counted on any member below.
    ///
    /// ## Why
    /// Every figure below the gap is too small by what is lost.
    ///
    /// ## Source
    /// Common practice: vertical equilibrium.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column P1
    ///   at          A/1
    ///   load        4000 lb snow
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column P1
    ///   at          A/1
    ///   stands on   F1
    ///   load        4000 lb snow
    /// footing F1
    ///   at          A/1
    /// ```
    "load-reaches-nothing", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (element, why, force) in &house.forces.balance.lost {
        let is_told_elsewhere = match why {
            // The line that can't be read has its own finding; what runs askew is left out, not lost.
            Lost::Unreadable | Lost::Skew => true,
            Lost::NoSupport | Lost::NotReached | Lost::Unstable | Lost::Circle => false,
        };
        let all = force.map(Force::abs).total();
        let Some(common) = house.model.common(*element).filter(|_| !is_told_elsewhere && all >= LEAST) else {
            continue;
        };
        let finding = findings
            .about(
                common.id,
                common.name_span,
                format!("{} of load reach nothing from {}: {}", pounds(all), common.label(), by_case(force)),
            )
            .note(why.words())
            .help("see to what carries it; the figures below leave it out until then")
            .follows(common.id);
        // All that stands below a circle waits for it.
        for member in house.geometry.load_path.cycles.iter().flatten().filter(|_| *why == Lost::Circle) {
            finding.follows(*member);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// By hand: 2,500 + 4,000 lb; a column without a size weighs nothing.
    #[test]
    fn says_how_much_of_each_case() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 20'
  y           1 0'
column P1
--     ^^ 6,500 lb of load reach nothing from column P1: D 2,500 lb, L 4,000 lb
-- | nothing is named that carries it
  at          A/1
  load        2500 lb dead
  load        4000 lb live
",
        );
    }
}
