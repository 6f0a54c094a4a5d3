//! Loads that are stated and not followed down.

use crate::house::House;
use crate::rules::wording::{by_case, pounds};
use crate::rules::{Findings, rule};
use crate::statics::action::Lost;
use crate::statics::applied::WhyLeftOut;
use crate::units::Force;

rule! {
    /// A stated load is not followed down.
    ///
    /// Wind, earth and other cases that are not gravity, a load whose unit does not fit its place, and what stands on a
    /// member that runs along neither axis of the grid.
    ///
    /// ## Why
    /// No member below counts it: what they show as sufficient is so without it.
    ///
    /// ## Source
    /// Common practice: what the takedown leaves out it says.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column P1
    ///   at          A/1
    ///   load        900 lb wind
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column P1
    ///   at          A/1
    ///   load        900 lb snow
    /// ```
    "load-left-out", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for left in &house.forces.left_out {
        let Some(common) = house.model.common(left.on) else { continue };
        let label = common.label();
        let (message, help) = match left.why {
            WhyLeftOut::Case => (
                format!("this load on {label} is not followed down: only dead, live, roof live and snow are"),
                "have what carries it checked for it by hand",
            ),
            WhyLeftOut::Unit => (
                format!("this load on {label} is not followed down: its unit does not fit its place"),
                "psf on an area, plf along a line, lb at a point",
            ),
            WhyLeftOut::Place => (
                format!("this load on {label} is not followed down: no line says where it stands"),
                "say where along it, or make it a `load` of its own with a place",
            ),
        };
        findings.about(common.id, left.span, message).help(help);
    }
    for (element, why, force) in &house.forces.balance.lost {
        let all = force.map(Force::abs).total();
        let Some(common) = house.model.common(*element).filter(|_| *why == Lost::Skew && all > Force::ZERO)
        else {
            continue;
        };
        findings
            .about(
                common.id,
                common.name_span,
                format!("{} on {} is not followed down: {}", pounds(all), common.label(), why.words()),
            )
            .note(by_case(force))
            .help("have what carries it checked for it by hand");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_the_line() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0'
beam B1
  size        W8x18
  from        A/1 to B/1
  load        435 plf live
  load        435 plf wind
--^^^^^^^^^^^^^^^^^^^^^^^^ this load on beam B1 is not followed down: only dead, live, roof live and snow are
  load        40 psf live
--^^^^^^^^^^^^^^^^^^^^^^^ this load on beam B1 is not followed down: its unit does not fit its place
",
        );
    }
}
