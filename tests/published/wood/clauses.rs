//! Clauses of the NDS, and the statics that belong to its worked examples.

use storyrod::design::loads::{ALLOWABLE, duration_factor};
use storyrod::design::wood::Stuff;
use storyrod::design::wood::adjusted::{self, Factors};
use storyrod::design::wood::bearing;
use storyrod::design::wood::bending::{bending_stress, design_span};
use storyrod::design::wood::bounce::firm_sag;
use storyrod::design::wood::column::{
    Axis, ColumnStability, Fastening, Laminations, Straightness, built_up_column, column_stability,
};
use storyrod::design::wood::deflection::{by_bending, in_the_long_run};
use storyrod::design::wood::rectangle::{second_moment, section_modulus};
use storyrod::design::wood::repetitive::{Row, repetitive_member_factor};
use storyrod::design::wood::service::wet_service;
use storyrod::design::wood::shear::{
    notched_on_the_tension_face, shear_a_depth_away, shear_capacity, shear_stress,
};
use storyrod::design::wood::size::{Graded, size_factors, volume_factor};
use storyrod::design::wood::stability::{
    LateralSupport, Loading, beam_stability, effective_length, factor_of, lateral_support,
};
use storyrod::products::grades::{self, Values};
use storyrod::products::lumber::{self, Dressed};
use storyrod::products::species::species;
use storyrod::units::{AreaLoad, Force, Length, LineLoad, Stress};

use crate::cases::{Case, Comparison};
use crate::wood::inches;

pub fn check(case: &Case) -> Option<Comparison> {
    let id = case.id.as_str();
    let begins = |beginning: &str| id.starts_with(beginning);
    Some(match id {
        "txt-6-3" => lateral_stability(case),
        "cl-2p83" => Comparison::new().number("CL", factor_of(case.number("FbE_over_Fb")).unwrap()),
        "fcperp-002" => shallow_dent(case),
        "cd-not-on-E-or-perp" => spared_by_duration(case),
        "joist-spf-2x10-14ft" => joist(case),
        "col-6x6-spf2-12ft" => timber_column(case),
        "col-3-2x6-built-up" => built_up(case),
        "design-span" => span(case),
        "creep" => creep(case),
        "table-cell-bearing-hf-30" => bearing_of_a_cell(case),
        _ if begins("cm-cutoff-") => wet(case),
        _ if begins("col-textbook-") => textbook_column(case),
        _ if begins("col-") => column(case),
        _ if begins("cf-") => size(case),
        _ if begins("cv-gl-") => volume(case),
        _ if begins("cb-") => bearing_area(case),
        _ if begins("cd-") && id != "cd-impact" => duration(case),
        _ if begins("girder-") => girder(case),
        _ if begins("notch-") => notch(case),
        _ if begins("lateral-") => proportions(case),
        _ if begins("nbc-vib-") => firm_floor(case),
        _ => return None,
    })
}

fn psi(case: &Case, key: &str) -> Stress {
    Stress::psi(case.number(key))
}

fn lateral_stability(case: &Case) -> Comparison {
    let (breadth, depth) = (inches(case, "b_in"), inches(case, "d_in"));
    let length = effective_length(Loading::PointAtCentreHeld, inches(case, "lu_in"), depth).unwrap();
    // The slenderness asks for no stress; the example's own bending value stands in.
    let stable = beam_stability(Stress::psi(1_625.0), psi(case, "Emin_psi"), length, breadth, depth).unwrap();
    Comparison::new().number("le_in", length.to_inches()).number("RB", stable.slenderness)
}

fn shallow_dent(case: &Case) -> Comparison {
    Comparison::new().number("Fc_perp_002_psi", bearing::shallow_dent(psi(case, "Fc_perp_psi")).to_psi())
}

fn spared_by_duration(case: &Case) -> Comparison {
    let factors = Factors { duration: case.number("CD"), ..Factors::default() };
    Comparison::new()
        .number("Fc_perp_adj_psi", adjusted::bearing(psi(case, "Fc_perp_psi"), &factors).to_psi())
        .number("E_adj_psi", adjusted::modulus(psi(case, "E_psi"), &factors).to_psi())
}

/// The shortest load of a combination in which everything but what is asked for is absent.
fn duration(case: &Case) -> Comparison {
    let [dead, live, roof_live, snow] = match case.words("duration") {
        "permanent_dead" => [true, false, false, false],
        "ten_years_floor_live" => [true, true, false, false],
        "two_months_snow" => [true, true, false, true],
        // The table puts roof live load beside construction load: seven days.
        "seven_days_construction" => [true, true, true, false],
        other => panic!("{}: `{other}`", case.id),
    };
    let name = if roof_live { "D + 0.75L + 0.75Lr" } else { "D + 0.75L + 0.75S" };
    let combination = ALLOWABLE.iter().find(|combination| combination.name == name).unwrap();
    Comparison::new().number("CD", duration_factor(combination, [dead, live, roof_live, snow]))
}

fn wet(case: &Case) -> Comparison {
    let dry = psi(case, "Fb_psi") * case.number("CF");
    let factor = wet_service(Stuff::Dimension, dry, Stress::psi(1_000.0)).unwrap().bending;
    let comparison = Comparison::new().number("Fb_CF_psi", dry.to_psi()).number("CM_b", factor);
    comparison.number("Fb_wet_psi", (dry * factor).to_psi())
}

fn size(case: &Case) -> Comparison {
    let thicknesses: &[i64] = match case.words("nominal_thickness_in") {
        "2-3" => &[2, 3],
        "4" => &[4],
        other => panic!("{}: `{other}`", case.id),
    };
    let width = Length::inches(case.number("nominal_width_in") as i64) - Length::sixteenths(0, 8);
    let of = |thickness: &i64| {
        size_factors(Graded::Visually, Length::inches(*thickness) - Length::sixteenths(0, 8), width).unwrap()
    };
    let factors = of(&thicknesses[0]);
    assert!(thicknesses.iter().all(|thickness| of(thickness) == factors), "{}", case.id);
    Comparison::new()
        .number("CF_Fb", factors.bending)
        .number("CF_Ft", factors.tension)
        .number("CF_Fc", factors.compression)
}

fn volume(case: &Case) -> Comparison {
    let length = Length::decimal_inches(case.number("L_ft") * 12.0);
    let factor = volume_factor(length, inches(case, "d_in"), inches(case, "b_in"), case.number("x"));
    Comparison::new().number("CV", factor.unwrap())
}

fn bearing_area(case: &Case) -> Comparison {
    let factor = bearing::bearing_area_factor(inches(case, "lb_in"), inches(case, "dist_from_end_in"));
    Comparison::new().number("Cb", factor.unwrap())
}

fn notch(case: &Case) -> Comparison {
    let (breadth, depth, notch) = (inches(case, "b_in"), inches(case, "d_in"), inches(case, "notch_in"));
    let allowable = psi(case, "Fv_psi");
    let notched = notched_on_the_tension_face(allowable, breadth, depth, notch).unwrap();
    Comparison::new()
        .number("Vr_lb", notched.to_lb())
        .number("unnotched_Vr_lb", shear_capacity(allowable, breadth, depth).to_lb())
        .left_out("old_Vr_lb", "what a superseded formula or a wrong table would give")
}

fn proportions(case: &Case) -> Comparison {
    let words = match lateral_support(case.number("d_over_b_nominal")).unwrap() {
        LateralSupport::None => "none",
        LateralSupport::EndsHeld => "ends held",
        LateralSupport::EdgeHeld => "one edge held in line",
        LateralSupport::BridgedOrBothEdges => "bridging at 8 ft or both edges held",
        LateralSupport::BothEdgesHeld => "both edges held in line",
    };
    Comparison::new().words("requirement", words)
}

fn firm_floor(case: &Case) -> Comparison {
    let limit = firm_sag(Length::decimal_inches(case.number("span_m") * 1_000.0 / 25.4)).unwrap();
    Comparison::new().number("limit_mm", limit.to_inches() * 25.4)
}

fn span(case: &Case) -> Comparison {
    let needed = inches(case, "req_bearing_in");
    Comparison::new().number("span_in", design_span(inches(case, "clear_in"), [needed; 2]).to_inches())
}

fn creep(case: &Case) -> Comparison {
    let sag = in_the_long_run(inches(case, "dead_defl_in"), inches(case, "live_defl_in"), case.number("Kcr"));
    Comparison::new().number("total_in", sag.to_inches())
}

fn bearing_of_a_cell(case: &Case) -> Comparison {
    let Sawn { size, values, .. } = sawn(case);
    let spacing = inches(case, "spacing_in");
    let load = AreaLoad::psf(case.number("live_psf") + case.number("dead_psf")) * spacing;
    let reaction = load * inches(case, "span_in") / 2.0;
    let needed = bearing::required_length(reaction, size.thickness, values.bearing).unwrap();
    Comparison::new()
        .number("R_lb", reaction.to_lb())
        .number("bearing_needed_in", needed.to_inches())
        .truth("ok", needed <= inches(case, "bearing_in"))
}

/// A stick of the crate's own size, values and factors.
struct Sawn {
    size: Dressed,
    values: Values,
    factors: storyrod::design::wood::size::SizeFactors,
}

fn sawn(case: &Case) -> Sawn {
    let (thickness, width) = case.words("size").split_once('x').unwrap();
    let size = lumber::dressed(thickness.parse().unwrap(), width.parse().unwrap()).unwrap();
    let group = species(case.words("species")).unwrap();
    let grade = grades::grade(case.words("grade")).unwrap();
    let values = grades::sawn(group, grade, size.thickness, size.width).unwrap();
    let factors = size_factors(Graded::Visually, size.thickness.min(Length::inches(4)), size.width).unwrap();
    Sawn { size, values, factors }
}

fn joist(case: &Case) -> Comparison {
    let Sawn { size, values, factors } = sawn(case);
    let Dressed { thickness: breadth, width: depth } = size;
    let span = Length::decimal_inches(case.number("span_ft") * 12.0);
    let spacing = inches(case, "spacing_in");
    let psf = |key| AreaLoad::psf(case.number(key));
    let (live, dead) = (psf("live_psf") * spacing, psf("dead_psf") * spacing);
    let whole = live + dead;

    let (shear, moment) = simple_span(whole, span);
    let modulus = section_modulus(breadth, depth);
    let row = Row { members: 3, spacing, is_joined: true };
    let bent = Factors {
        size: factors.bending,
        repetitive: repetitive_member_factor(Stuff::Dimension, row),
        ..Factors::default()
    };
    let at_depth = shear_a_depth_away(shear, whole, depth);
    let rigidity = values.modulus * second_moment(breadth, depth);
    let sag = |load| by_bending(load, span, rigidity).unwrap().to_inches();
    let reaction = bearing::bearing_stress(shear, breadth, Length::sixteenths(1, 8));
    Comparison::new()
        .number("A_in2", (breadth * depth).to_sq_in())
        .number("S_in3", modulus.to_in3())
        .number("I_in4", second_moment(breadth, depth).to_in4())
        .number("w_plf", whole.to_plf())
        .number("M_lbft", moment.to_lb_ft())
        .number("fb_psi", bending_stress(moment, modulus).to_psi())
        .number("Fb_adj_psi", adjusted::bending(values.bending, &bent).to_psi())
        .number("V_lb", shear.to_lb())
        .number("V_at_d_lb", at_depth.to_lb())
        .number("fv_at_d_psi", shear_stress(at_depth, breadth, depth).to_psi())
        .number("Fv_adj_psi", adjusted::shear(values.shear, &Factors::default()).to_psi())
        .number("defl_live_in", sag(live))
        .number("defl_live_allow_in", span.to_inches() / 360.0)
        .number("defl_total_in", sag(whole))
        .number("fc_perp_1p5_psi", reaction.to_psi())
}

/// Largest shear and moment of a simple span under uniform load.
fn simple_span(load: LineLoad, span: Length) -> (Force, storyrod::units::Moment) {
    (load * span / 2.0, load * span * span / 8.0)
}

fn girder(case: &Case) -> Comparison {
    let Sawn { size, values, factors } = sawn(case);
    let plies = case.number("plies") as u32;
    let span = Length::decimal_inches(case.number("span_ft") * 12.0);
    let (_, moment) = simple_span(LineLoad::plf(case.number("w_plf")), span);
    let row = Row { members: plies, spacing: size.thickness, is_joined: true };
    let repetitive = repetitive_member_factor(Stuff::Dimension, row);
    let bent = Factors { size: factors.bending, repetitive, ..Factors::default() };
    let allowable = adjusted::bending(values.bending, &bent);
    let stress = bending_stress(moment, section_modulus(size.thickness * i64::from(plies), size.width));
    Comparison::new()
        .number("Cr", repetitive)
        .number("M_lbft", moment.to_lb_ft())
        .number("Fb_adj_psi", allowable.to_psi())
        .number("fb_psi", stress.to_psi())
        .truth("ok", stress <= allowable)
}

/// The book has K E where the standard has 0.822 Emin'.
fn textbook_column(case: &Case) -> Comparison {
    let (narrow, wide) = (inches(case, "b_in"), inches(case, "d_in"));
    let crushing = psi(case, "Fc_star_psi");
    let modulus = psi(case, "E_psi") * (case.number("KcE") / 0.822);
    let axis = Axis { effective_length: inches(case, "Le_in"), depth: narrow.min(wide) };
    let column = column_stability(crushing, modulus, axis, Straightness::Sawn).unwrap();
    let capacity = crushing * column.factor * (narrow * wide);
    Comparison::new()
        .number("Le_over_d", column.slenderness)
        .number("FcE_over_Fc", column.critical_buckling / crushing)
        .number("CP", column.factor)
        .number("P_kip", capacity.to_kip())
}

/// A square column of the case's own values.
fn column(case: &Case) -> Comparison {
    let factors = Factors { size: case.number("CF"), ..Factors::default() };
    let crushing = adjusted::compression(psi(case, "Fc_psi"), &factors);
    let axis = Axis { effective_length: inches(case, "Le_in"), depth: inches(case, "d_in") };
    let found = column_stability(crushing, psi(case, "Emin_psi"), axis, Straightness::Sawn).unwrap();
    let area = axis.depth * axis.depth;
    assert!((area.to_sq_in() - case.number("A_in2")).abs() < 1e-9);
    let allowable = crushing * found.factor;
    let mut comparison =
        Comparison::new().number("CP", found.factor).number("P_lb", (allowable * area).to_lb());
    for (name, value) in [
        ("Fc_star_psi", crushing.to_psi()),
        ("FcE_psi", found.critical_buckling.to_psi()),
        ("Fc_adj_psi", allowable.to_psi()),
    ] {
        if case.expects(name) {
            comparison = comparison.number(name, value);
        }
    }
    comparison
}

/// The crate's own table for the section decides: a timber's, not that of dimension lumber.
fn timber_column(case: &Case) -> Comparison {
    let Sawn { size, values, .. } = sawn(case);
    let axis = Axis { effective_length: inches(case, "Le_in"), depth: size.thickness };
    let ColumnStability { critical_buckling, factor, .. } =
        column_stability(values.compression, values.modulus_for_stability, axis, Straightness::Sawn).unwrap();
    let capacity = values.compression * factor * (size.thickness * size.width);
    Comparison::new()
        .number("Fc_star_psi", values.compression.to_psi())
        .number("FcE_psi", critical_buckling.to_psi())
        .number("CP", factor)
        .number("P_lb", capacity.to_lb())
        .left_out("wrong_P_lb", "what a superseded formula or a wrong table would give")
}

fn built_up(case: &Case) -> Comparison {
    let (thickness, width) = case.words("size").split_once('x').unwrap();
    let ply = lumber::dressed(thickness.parse().unwrap(), width.parse().unwrap()).unwrap();
    let count = case.number("plies") as u32;
    let breadth = ply.thickness * i64::from(count);
    let effective_length = inches(case, "Le_in");
    let crushing = psi(case, "Fc_star_psi");
    assert!((case.number("Kf") - 0.6).abs() < 1e-9, "nailed");
    let found = built_up_column(
        crushing,
        psi(case, "Emin_psi"),
        Axis { effective_length, depth: ply.width },
        Axis { effective_length, depth: breadth },
        Laminations { count, thickness: ply.thickness, fastening: Fastening::Nailed },
    )
    .unwrap();
    Comparison::new()
        .number("CP_strong", found.strong.factor)
        .number("CP_weak", found.weak.factor)
        .number("P_lb", (crushing * found.factor * (breadth * ply.width)).to_lb())
}
