//! Pads with bars and without, against ACI 318.

use storyrod::design::concrete::bars::numbered;
use storyrod::design::concrete::bearing::{self, Reinforcement};
use storyrod::design::concrete::critical_sections::{self as cuts, Support};
use storyrod::design::concrete::development::{self, Placing};
use storyrod::design::concrete::one_way_shear::{self, SizeEffect, size_factor};
use storyrod::design::concrete::plain::{self, CastOn};
use storyrod::design::concrete::two_way_shear::{self, ColumnPlace, Punching, interior_perimeter};
use storyrod::design::concrete::{ConcreteCode, Section, flexure, footing_bars, residential};
use storyrod::design::loads::STRENGTH;
use storyrod::design::soil::pressure::{Basis, area_for, contact_pressure};
use storyrod::units::{Area, AreaLoad, Density, Force, Length, Stress};

use crate::cases::{Case, Comparison};
use crate::concrete::inches;

const CONCRETE: Density = Density::pcf(150.0);
const COVER: Length = Length::inches(3);
/// Bars near the bottom of a footing, well apart.
const APART: Placing = Placing { clear_spacing: Length::inches(6), cover: COVER, concrete_below: COVER };

pub fn check(case: &Case) -> Option<Comparison> {
    Some(match case.id.as_str() {
        "FT-F1-14" => textbook_footing(case),
        "FT-F2" => reinforced_pad(case),
        "FT-F3a" | "FT-F3c" => plain_pad(case),
        "FT-F4-in" => area_by_combination(case),
        "FT-LS" => size_factors(case),
        "FT-LD" => development_lengths(),
        _ => return None,
    })
}

fn textbook_footing(case: &Case) -> Comparison {
    let code = ConcreteCode::Aci318_14;
    let footing = Footing::of(case, Support::Concrete { width: inches(case, "column_in") });
    let section = footing.section(case, Area::sq_in(case.number("As_in2")));
    let bending = flexure::strength(code, &section).unwrap();
    let bears = |support: Length, key: &str| {
        let column = [footing.cut; 2];
        let concrete = Stress::psi(case.number(key));
        bearing::strength(column, [support; 2], footing.thickness, concrete, Reinforcement::Bars)
            .unwrap()
            .design
            .to_kip()
    };
    let no_8 = numbered(8).unwrap();
    assert_eq!(case.words("bars"), "11 No. 8");
    assert!((no_8.area * 11.0 / section.steel - 1.0).abs() < 1e-9);
    let ld = development::simple(code, no_8, section.concrete, section.yield_strength, APART).unwrap();
    let dowels = bearing::least_dowels(footing.cut * footing.cut);
    Comparison::new()
        .number("Pu_kip", footing.load.to_kip())
        .number("qu_ksf", footing.pressure.to_ksf())
        .number("Vu_two_way_kip", footing.punched(section.depth))
        .number("phiVc_two_way_kip", footing.punching(section.depth, code, SizeEffect::Waived))
        .number("Vu_one_way_kip", footing.sheared(section.depth))
        .number("phiVc_one_way_kip", across(code, &section))
        .number("Mu_kipft", footing.moment())
        .number("phiMn_kipft", bending.design.to_kip_ft())
        .number("a_in", bending.block.to_inches())
        .number("phi_bearing_footing_kip", bears(footing.side, "fc_psi"))
        .number("phi_bearing_column_kip", bears(footing.cut, "column_fc_psi"))
        .number("dowels_in2", dowels.to_sq_in())
        .number("ld_8_in", ld.length.to_inches())
}

fn reinforced_pad(case: &Case) -> Comparison {
    let code = ConcreteCode::Aci318_19;
    let footing = Footing::on_plate(case);
    assert_eq!(case.words("bars"), "4 No. 5 each way (As 1.24)");
    let no_5 = numbered(5).unwrap();
    let section = footing.section(case, no_5.area * 4.0);
    let spacing = footing_bars::spacing(footing.side, COVER, no_5, 4).unwrap();
    let placing = Placing { clear_spacing: spacing - no_5.diameter, ..APART };
    let ld = development::simple(code, no_5, section.concrete, section.yield_strength, placing).unwrap();
    let moment = cuts::moment(footing.pressure, footing.side, footing.reach);
    let steel = flexure::steel_for(
        code,
        section.width,
        section.depth,
        section.concrete,
        section.yield_strength,
        moment,
    );
    let least =
        footing_bars::least_steel(code, section.yield_strength, footing.side, footing.thickness).unwrap();
    let soil = AreaLoad::psf(case.number("soil_psf"));
    let area = area_for(Basis::Gross, service(case), soil, CONCRETE * footing.thickness).unwrap();
    Comparison::new()
        .number("Pu_kip", footing.load.to_kip())
        .number("qu_ksf", footing.pressure.to_ksf())
        .number("critical_width_in", footing.cut.to_inches())
        .number("cantilever_in", footing.reach.to_inches())
        .number("Mu_kipft", footing.moment())
        .number("As_required_in2", steel.unwrap().to_sq_in())
        .number("As_min_in2", least.to_sq_in())
        .number("phiMn_kipft", flexure::strength(code, &section).unwrap().design.to_kip_ft())
        .number("Vu1_kip", footing.sheared(section.depth))
        .number("phiVc1_318_14_kip", across(ConcreteCode::Aci318_14, &section))
        .number("phiVc1_318_19_kip", across(code, &section))
        .number("Vu2_kip", footing.punched(section.depth))
        .number("phiVc2_kip", footing.punching(section.depth, code, SizeEffect::Waived))
        .number("area_required_ft2", area.to_sq_ft())
        .number("ld_No5_in", ld.length.to_inches())
        .number("bar_length_available_in", development::embedment(footing.reach, COVER).to_inches())
}

fn plain_pad(case: &Case) -> Comparison {
    let footing = Footing::on_plate(case);
    let (side, cut, concrete) = (footing.side, footing.cut, footing.concrete);
    let used = plain::footing_thickness(footing.thickness, CastOn::Soil).unwrap();
    let bending = plain::flexure(side, used, concrete).unwrap().design;
    let perimeter = interior_perimeter([cut; 2], used).unwrap();
    let punching = plain::two_way_shear([cut; 2], perimeter, used, concrete).unwrap().design;
    let shear = plain::one_way_shear(side, used, concrete).unwrap().design;
    let own_weight = CONCRETE * footing.thickness * (side * side);
    let pressure =
        contact_pressure(Basis::Gross, service(case), own_weight, [side; 2], [Length::ZERO; 2]).unwrap();
    let projection = cuts::cantilever(side, inches(case, "base_plate_in"), Length::ZERO).unwrap();
    let shape = residential::shape(side, footing.thickness, projection);
    Comparison::new()
        .number("h_used_in", used.to_inches())
        .number("Pu_kip", footing.load.to_kip())
        .number("Mu_kipft", footing.moment())
        .number("phiMn_kipft", bending.to_kip_ft())
        .truth("flexure_ok", footing.moment() <= bending.to_kip_ft())
        .number("Vu1_kip", footing.sheared(used))
        .number("phiVn1_kip", shear.to_kip())
        .number("Vu2_kip", footing.punched(used))
        .number("phiVn2_kip", punching.to_kip())
        .number("service_pressure_psf", pressure.largest.to_psf())
        .truth("prescriptive_projection_le_thickness", shape.projects_within_thickness)
}

fn area_by_combination(case: &Case) -> Comparison {
    let (dead, live) = (case.number("D_kip"), case.number("L_kip"));
    let area = |load, allowable| {
        let allowable = AreaLoad::psf(case.number(allowable));
        area_for(Basis::Net, Force::kip(load), allowable, AreaLoad::ZERO).unwrap().to_sq_ft()
    };
    let (dead_only, both) = (area(dead, "q_D_psf"), area(dead + live, "q_DL_psf"));
    Comparison::new()
        .number("area_D_only_ft2", dead_only)
        .number("area_DL_ft2", both)
        .words("governing", if dead_only > both { "D only" } else { "D + L" })
}

fn size_factors(case: &Case) -> Comparison {
    let factor = |depth| {
        size_factor(ConcreteCode::Aci318_19, Length::decimal_inches(depth), SizeEffect::Counted).unwrap()
    };
    Comparison::new().numbers("lambda_s", case.numbers("d_in").into_iter().map(factor).collect())
}

fn development_lengths() -> Comparison {
    let bars = [
        (4, 40.0, 2_500.0, "No4_fy40_fc2500"),
        (4, 40.0, 3_000.0, "No4_fy40_fc3000"),
        (4, 60.0, 2_500.0, "No4_fy60_fc2500"),
        (4, 60.0, 3_000.0, "No4_fy60_fc3000"),
        (5, 40.0, 2_500.0, "No5_fy40_fc2500"),
        (5, 40.0, 3_000.0, "No5_fy40_fc3000"),
        (5, 60.0, 2_500.0, "No5_fy60_fc2500"),
        (5, 60.0, 3_000.0, "No5_fy60_fc3000"),
        (6, 40.0, 2_500.0, "No6_fy40_fc2500"),
        (6, 40.0, 3_000.0, "No6_fy40_fc3000"),
        (6, 60.0, 2_500.0, "No6_fy60_fc2500"),
        (6, 60.0, 3_000.0, "No6_fy60_fc3000"),
        (8, 40.0, 2_500.0, "No8_fy40_fc2500"),
        (8, 40.0, 3_000.0, "No8_fy40_fc3000"),
        (8, 60.0, 2_500.0, "No8_fy60_fc2500"),
        (8, 60.0, 3_000.0, "No8_fy60_fc3000"),
    ];
    bars.into_iter().fold(Comparison::new(), |found, (number, ksi, psi, name)| {
        let bar = numbered(number).unwrap();
        let ld = development::simple(ConcreteCode::Aci318_19, bar, Stress::psi(psi), Stress::ksi(ksi), APART);
        found.number(name, ld.unwrap().length.to_inches())
    })
}

/// A square footing of a case, with what acts on it.
struct Footing {
    side: Length,
    thickness: Length,
    cut: Length,
    reach: Length,
    concrete: Stress,
    load: Force,
    pressure: AreaLoad,
}

impl Footing {
    fn of(case: &Case, support: Support) -> Self {
        let side = inches(case, "B_in");
        let cut = cuts::critical_width(support).unwrap();
        let load = factored(case);
        Self {
            side,
            thickness: inches(case, "h_in"),
            cut,
            reach: cuts::cantilever(side, cut, Length::ZERO).unwrap(),
            concrete: Stress::psi(case.number("fc_psi")),
            load,
            pressure: cuts::net_pressure(load, [side; 2]).unwrap(),
        }
    }

    fn on_plate(case: &Case) -> Self {
        let (column, plate) = (inches(case, "column_in"), inches(case, "base_plate_in"));
        Self::of(case, Support::BasePlate { column, plate })
    }

    fn section(&self, case: &Case, steel: Area) -> Section {
        Section {
            width: self.side,
            depth: inches(case, "d_in"),
            steel,
            concrete: self.concrete,
            yield_strength: Stress::psi(case.number("fy_psi")),
        }
    }

    fn moment(&self) -> f64 {
        cuts::moment(self.pressure, self.side, self.reach).to_kip_ft()
    }

    fn sheared(&self, at: Length) -> f64 {
        cuts::one_way_shear(self.pressure, self.side, self.reach, at).to_kip()
    }

    fn punched(&self, depth: Length) -> f64 {
        let (footing, cut, centred) = ([self.side; 2], [self.cut; 2], [Length::ZERO; 2]);
        cuts::two_way_shear(self.load, footing, cut, centred, depth).unwrap().to_kip()
    }

    fn punching(&self, depth: Length, code: ConcreteCode, size_effect: SizeEffect) -> f64 {
        let sides = [self.cut; 2];
        let punching = Punching {
            sides,
            place: ColumnPlace::Interior,
            perimeter: interior_perimeter(sides, depth).unwrap(),
            depth,
            concrete: self.concrete,
        };
        two_way_shear::strength(code, &punching, size_effect).unwrap().design.to_kip()
    }
}

fn across(code: ConcreteCode, section: &Section) -> f64 {
    one_way_shear::strength(code, section, SizeEffect::Waived).unwrap().design.to_kip()
}

fn service(case: &Case) -> Force {
    Force::kip(case.number("D_kip") + case.number("L_kip"))
}

/// The largest of the strength combinations of a case's dead and live load.
fn factored(case: &Case) -> Force {
    let (dead, live) = (case.number("D_kip"), case.number("L_kip"));
    let sums = STRENGTH.iter().map(|combination| combination.dead * dead + combination.live * live);
    Force::kip(sums.fold(0.0, f64::max))
}

/// The textbook's footing under 318-19: shear across falls from 308 to 163 kip; punching stays at 847 because §13.2.6.2 lets
/// footings off the size factor, which would leave 614. Computed from the clauses apart from this crate.
#[test]
fn derived_textbook_footing_under_the_later_edition() {
    let cases = crate::cases::all(crate::concrete::BOOK.text);
    let case = cases.iter().find(|case| case.id == "FT-F1-14").unwrap();
    let footing = Footing::of(case, Support::Concrete { width: inches(case, "column_in") });
    let later = ConcreteCode::Aci318_19;
    let section = footing.section(case, Area::sq_in(case.number("As_in2")));
    assert!((across(later, &section) - 163.0).abs() < 0.5);
    assert!((footing.punching(section.depth, later, SizeEffect::Waived) - 847.0).abs() < 0.5);
    assert!((footing.punching(section.depth, later, SizeEffect::Counted) - 614.0).abs() < 0.5);
}
