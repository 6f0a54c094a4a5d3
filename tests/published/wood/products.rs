//! Sizes, weights, composite lumber and I-joists.

use storyrod::design::wood::deflection::{by_bending, by_shear, i_joist_shear_rigidity};
use storyrod::design::wood::rectangle::{second_moment, section_modulus};
use storyrod::design::wood::shear::shear_capacity;
use storyrod::design::wood::size::composite_depth_factor;
use storyrod::products::grades::composite;
use storyrod::products::lumber::{self, Surfaced};
use storyrod::products::section::solid_weight;
use storyrod::products::species::species;
use storyrod::units::{Density, FlexuralRigidity, Force, Length, LineLoad};

use crate::cases::{Case, Comparison};
use crate::wood::inches;

pub fn check(case: &Case) -> Option<Comparison> {
    match case.id.split('-').next()? {
        "lvl" => Some(veneer_lumber(case)),
        "ijoist" => Some(i_joist(case)),
        "dressed" => Some(dressed(case)),
        "sg" => Some(weight(case)),
        "dead" if case.id == "dead-footing" => Some(footing(case)),
        _ => None,
    }
}

fn veneer_lumber(case: &Case) -> Comparison {
    let class = composite::class_of("2.0E-2600Fb").unwrap();
    let (breadth, depth) = (inches(case, "b_in"), inches(case, "d_in"));
    let factor = composite_depth_factor(depth, class.depth_exponent).unwrap();
    let moment = class.values.bending * factor * section_modulus(breadth, depth);
    Comparison::new()
        .number("I_in4", second_moment(breadth, depth).to_in4())
        .number("CV", factor)
        .number("M_allow_lbft", moment.to_lb_ft())
        .number("V_allow_lb", shear_capacity(class.values.shear, breadth, depth).to_lb())
}

fn i_joist(case: &Case) -> Comparison {
    let load = LineLoad::plf(case.number("w_plf"));
    let span = Length::decimal_inches(case.number("span_ft") * 12.0);
    let bending = by_bending(load, span, FlexuralRigidity::lb_in2(case.number("EI_lbin2"))).unwrap();
    let shear = by_shear(load, span, i_joist_shear_rigidity(Force::lb(case.number("K_lb")))).unwrap();
    Comparison::new()
        .number("defl_bending_in", bending.to_inches())
        .number("defl_shear_in", shear.to_inches())
        .number("defl_total_in", (bending + shear).to_inches())
        .number("L480_in", span.to_inches() / 480.0)
}

fn dressed(case: &Case) -> Comparison {
    let surfaced = match case.words("condition") {
        "dry" => Surfaced::Dry,
        "green" => Surfaced::Green,
        other => panic!("{}: `{other}`", case.id),
    };
    let side = lumber::side(case.number("nominal_in") as u32, 2, surfaced).unwrap();
    Comparison::new().number("actual_in", side.to_inches())
}

fn weight(case: &Case) -> Comparison {
    let group = species(case.words("species")).unwrap();
    Comparison::new()
        .number("pcf", group.weight.to_pcf())
        .left_out("G", "specific gravity serves connections, which are declared with their capacity")
}

fn footing(case: &Case) -> Comparison {
    let density = Density::pcf(case.number("pcf"));
    let found = solid_weight(inches(case, "b_in"), inches(case, "t_in"), density);
    Comparison::new().number("plf", found.to_plf())
}
