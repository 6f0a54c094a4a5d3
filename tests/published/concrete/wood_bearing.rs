//! Beams of wood on the saddles and caps of steel posts.

use storyrod::design::wood::bearing::{bearing_area_factor, bearing_stress};
use storyrod::units::{Force, Length, Stress};

use crate::cases::{Case, Comparison};
use crate::concrete::inches;

pub fn check(case: &Case) -> Option<Comparison> {
    // WB-1 bears at the end of its beam, WB-2 well away from it.
    let from_end = match case.id.as_str() {
        "WB-1" => Length::ZERO,
        "WB-2" => Length::inches(12),
        _ => return None,
    };
    let (breadth, length) = (inches(case, "b_in"), inches(case, "lb_in"));
    let reaction = Force::lb(case.number("R_lb"));
    let stress = bearing_stress(reaction, breadth, length);
    let factor = bearing_area_factor(length, from_end).unwrap();
    let allowable = Stress::psi(case.number("Fc_perp_psi")) * factor * (breadth * length);
    let found = Comparison::new()
        .number("Cb", factor)
        .number("allowable_lb", allowable.to_lb())
        .number("ratio", reaction / allowable);
    Some(if case.expects("fc_perp_psi") { found.number("fc_perp_psi", stress.to_psi()) } else { found })
}
