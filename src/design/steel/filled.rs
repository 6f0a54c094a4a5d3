//! Tubes and pipes filled with concrete: AISC 360 I1.3, I2.2 and I6.

use std::f64::consts::PI;

use crate::design::NotCovered;
use crate::design::steel::grades::ELASTIC_MODULUS;
use crate::design::steel::sections::{Pipe, Tube};
use crate::design::steel::{Strength, above_zero, inches, modulus_over_yield, up_to};
use crate::units::{Area, Density, FlexuralRigidity, Force, Length, SecondMoment, Stress};

/// The concrete in a tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fill {
    /// f'c.
    pub strength: Stress,
    /// wc: 145 pcf for normal weight.
    pub density: Density,
}

/// A filled tube as a column, without bars in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FilledColumn {
    /// Ac.
    pub concrete_area: Area,
    /// Ic about the axis that governs.
    pub concrete_second_moment: SecondMoment,
    /// Ec.
    pub concrete_modulus: Stress,
    /// Pno, what the section bears at no length.
    pub section_strength: Force,
    /// C3, what counts of the concrete's stiffness.
    pub stiffness_share: f64,
    /// EIeff about the axis that governs.
    pub rigidity: FlexuralRigidity,
    /// Pe, at which it buckles while elastic.
    pub elastic_load: Force,
    /// Pn.
    pub strength: Strength<Force>,
}

/// A square or rectangular tube filled with concrete, as a column.
///
/// Source: AISC 360-16, -22 §I2.2b, Eq. I2-2, I2-3, I2-9a, I2-9b, I2-12, I2-13; C2 = 0.85.
/// Range:  §I1.3: 3 <= f'c <= 10 ksi, Fy <= 75 ksi; §I2.2a: As >= 1 % of the whole; §I1.4: compact walls, B/t and H/t
/// flat <= 2.26 sqrt(E/Fy); 0 < Lc; normal-weight concrete. A load in the axis, on steel and concrete together.
/// Result: force; the effective lengths are about the major and the minor axis. May lie below the bare tube's.
pub fn tube(
    section: &Tube,
    yield_strength: Stress,
    fill: Fill,
    [major, minor]: [Length; 2],
) -> Result<FilledColumn, NotCovered> {
    let wall = inches("t", section.wall, LIMITS)?;
    let compact = 2.26 * modulus_over_yield(yield_strength, LIMITS)?.sqrt();
    up_to("h/t", inches("h", section.flat_depth(), LIMITS)? / wall, compact, LIMITS)?;
    up_to("b/t", inches("b", section.flat_width(), LIMITS)? / wall, compact, LIMITS)?;
    let depth = section.depth.to_inches() - 2.0 * wall;
    let width = section.width.to_inches() - 2.0 * wall;
    let area = Area::sq_in(depth * width - (4.0 - PI) * wall.powi(2));

    let about = |steel, across: f64, along: f64, length| {
        let concrete = rounded_rectangle(across, along, wall);
        column(
            Parts { steel_area: section.area, steel, area, concrete, share: 0.85 },
            yield_strength,
            fill,
            length,
        )
    };
    let about_major = about(section.major.second_moment, width, depth, major)?;
    let about_minor = about(section.minor.second_moment, depth, width, minor)?;
    Ok(if about_minor.elastic_load < about_major.elastic_load { about_minor } else { about_major })
}

/// A pipe or round tube filled with concrete, as a column.
///
/// Source: AISC 360-16, -22 §I2.2b, as for a tube; C2 = 0.95. The limit of compact walls, 0.15 E/Fy, is from memory.
/// Range:  as for a tube; D/t <= 0.15 E/Fy.
/// Result: force. May lie below the bare pipe's.
pub fn pipe(
    section: &Pipe,
    yield_strength: Stress,
    fill: Fill,
    length: Length,
) -> Result<FilledColumn, NotCovered> {
    let wall = inches("t", section.wall, LIMITS)?;
    let compact = 0.15 * modulus_over_yield(yield_strength, LIMITS)?;
    up_to("D/t", section.outside.to_inches() / wall, compact, LIMITS)?;
    let inside = above_zero("D - 2t in inches", section.outside.to_inches() - 2.0 * wall, LIMITS)?;
    let parts = Parts {
        steel_area: section.area,
        steel: section.axis.second_moment,
        area: Area::sq_in(PI * inside.powi(2) / 4.0),
        concrete: SecondMoment::in4(PI * inside.powi(4) / 64.0),
        share: 0.95,
    };
    column(parts, yield_strength, fill, length)
}

/// The better of a filled column and the same one without its concrete.
///
/// Source: AISC 360-16, -22 §I2.2b: the available strength need not be taken below that of the bare steel member.
/// Range:  both of the same tube, grade and lengths.
/// Result: the one that allows more; the factors of safety differ, so filling may help nothing.
pub fn at_least_bare(filled: Strength<Force>, bare: Strength<Force>) -> Strength<Force> {
    if bare.allowable() > filled.allowable() { bare } else { filled }
}

const LIMITS: &str = "AISC 360 I1.3, I1.4";

/// Steel and concrete about one axis. `share` is C2.
struct Parts {
    steel_area: Area,
    steel: SecondMoment,
    area: Area,
    concrete: SecondMoment,
    share: f64,
}

fn column(
    parts: Parts,
    yield_strength: Stress,
    fill: Fill,
    length: Length,
) -> Result<FilledColumn, NotCovered> {
    const CLAUSE: &str = "AISC 360 I2.2";
    let Parts { steel_area, steel, area, concrete, share } = parts;
    let concrete_modulus = concrete_modulus(fill)?;
    up_to("Fy in ksi", yield_strength.to_ksi(), 75.0, LIMITS)?;
    let length = inches("Lc", length, CLAUSE)?;
    let steel_share = above_zero("As/Ag", steel_area / (steel_area + area), CLAUSE)?;
    if steel_share < 0.01 {
        return Err(NotCovered::OutOfRange {
            quantity: "As/Ag",
            value: steel_share,
            limit: 0.01,
            clause: CLAUSE,
        });
    }

    let section_strength = yield_strength * steel_area + fill.strength * share * area;
    let stiffness_share = (0.45 + 3.0 * steel_share).min(0.9);
    let rigidity = ELASTIC_MODULUS * steel + concrete_modulus * concrete * stiffness_share;
    let elastic_load = Force::lb(PI.powi(2) * rigidity.to_lb_in2() / length.powi(2));
    let ratio = section_strength / elastic_load;
    let nominal = if ratio <= 2.25 { section_strength * 0.658_f64.powf(ratio) } else { elastic_load * 0.877 };
    Ok(FilledColumn {
        concrete_area: area,
        concrete_second_moment: concrete,
        concrete_modulus,
        section_strength,
        stiffness_share,
        rigidity,
        elastic_load,
        strength: Strength { nominal, safety_factor: 2.00, resistance_factor: 0.75 },
    })
}

/// Ec = wc^1.5 sqrt(f'c), of concrete that a filled tube may hold.
fn concrete_modulus(fill: Fill) -> Result<Stress, NotCovered> {
    let (strength, density) = (fill.strength.to_ksi(), fill.density.to_pcf());
    if !(3.0..=10.0).contains(&strength) {
        let limit = if strength > 10.0 { 10.0 } else { 3.0 };
        return Err(NotCovered::OutOfRange {
            quantity: "f'c in ksi",
            value: strength,
            limit,
            clause: LIMITS,
        });
    }
    // The range of the formula, list of symbols: 90 to 155 pcf.
    if !(90.0..=155.0).contains(&density) {
        let limit = if density > 155.0 { 155.0 } else { 90.0 };
        return Err(NotCovered::OutOfRange { quantity: "wc in pcf", value: density, limit, clause: LIMITS });
    }
    Ok(Stress::ksi(density.powf(1.5) * strength.sqrt()))
}

/// The second moment of a rectangle about its middle, `along` in the plane of bending, its corners rounded.
fn rounded_rectangle(across: f64, along: f64, radius: f64) -> SecondMoment {
    // What a rounded corner lacks of a square one: r2 (1 - pi/4), its centroid this far from the edges.
    let lacking = radius.powi(2) * (1.0 - PI / 4.0);
    let from_edge = radius * (10.0 - 3.0 * PI) / (12.0 - 3.0 * PI);
    let whole = across * along.powi(3) / 12.0;
    // The corner's own second moment is far below the last printed digit and is left out.
    SecondMoment::in4(whole - 4.0 * lacking * (along / 2.0 - from_edge).powi(2))
}

/// How a load divides between steel and concrete at full section strength.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadShares {
    /// Of the load, what must pass into the concrete when all of it is put on the steel.
    pub to_concrete: f64,
    /// Of the load, what must pass into the steel when all of it is put on the concrete.
    pub to_steel: f64,
}

/// How a load divides between steel and concrete.
///
/// Source: AISC 360-16, -22 §I6.2, Eq. I6-1, I6-2a.
/// Range:  0 < Fy As < Pno.
/// Result: two shares that make one.
pub fn load_shares(
    steel_area: Area,
    yield_strength: Stress,
    section_strength: Force,
) -> Result<LoadShares, NotCovered> {
    let steel = yield_strength * steel_area / section_strength;
    let to_steel = up_to("Fy As/Pno", steel, 1.0, "AISC 360 I6.2")?;
    Ok(LoadShares { to_concrete: 1.0 - to_steel, to_steel })
}

/// A plate inside of a tube that presses on the concrete.
///
/// Source: AISC 360-16, -22 §I6.3a, Eq. I6-3.
/// Range:  0 < A1. Not added to bond (I6.3).
/// Result: force.
pub fn internal_bearing(concrete_strength: Stress, area: Area) -> Result<Strength<Force>, NotCovered> {
    const CLAUSE: &str = "AISC 360 I6.3a";
    above_zero("f'c in psi", concrete_strength.to_psi(), CLAUSE)?;
    above_zero("A1 in square inches", area.to_sq_in(), CLAUSE)?;
    let nominal = concrete_strength * 1.7 * area;
    Ok(Strength { nominal, safety_factor: 2.31, resistance_factor: 0.65 })
}

/// What holds between steel and concrete without any plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bond {
    /// Fin.
    pub stress: Stress,
    /// pb, the inside perimeter.
    pub perimeter: Length,
    /// Lin, the length that counts: twice the shorter side, or twice the diameter.
    pub length: Length,
    /// Rn.
    pub strength: Strength<Force>,
}

/// Bond inside of a square or rectangular tube, on one side of the load.
///
/// Source: AISC 360-16, -22 §I6.3c, Eq. I6-5, Fin = 12 t/H2, not above 0.1 ksi; length of §I6.4.
/// Range:  0 < t. Not added to bearing (I6.3).
/// Result: force.
pub fn tube_bond(section: &Tube) -> Result<Bond, NotCovered> {
    const CLAUSE: &str = "AISC 360 I6.3c";
    let wall = inches("t", section.wall, CLAUSE)?;
    let depth = inches("h", section.flat_depth(), CLAUSE)? + 3.0 * wall;
    let width = inches("b", section.flat_width(), CLAUSE)? + 3.0 * wall;
    let stress = Stress::ksi((12.0 * wall / depth.max(width).powi(2)).min(0.1));
    // Rounded corners of radius t inside.
    let perimeter = 2.0 * (depth + width - 4.0 * wall) - (8.0 - 2.0 * PI) * wall;
    Ok(bond(stress, Length::decimal_inches(perimeter), section.width.min(section.depth) * 2))
}

/// Bond inside of a pipe or round tube, on one side of the load.
///
/// Source: AISC 360-16, -22 §I6.3c, Eq. I6-5, Fin = 30 t/D2, not above 0.2 ksi, from memory; length of §I6.4.
/// Range:  0 < t. Not added to bearing (I6.3).
/// Result: force.
pub fn pipe_bond(section: &Pipe) -> Result<Bond, NotCovered> {
    const CLAUSE: &str = "AISC 360 I6.3c";
    let wall = inches("t", section.wall, CLAUSE)?;
    let inside = inches("D - 2t", section.outside - section.wall * 2, CLAUSE)?;
    let stress = Stress::ksi((30.0 * wall / section.outside.to_inches().powi(2)).min(0.2));
    Ok(bond(stress, Length::decimal_inches(PI * inside), section.outside * 2))
}

fn bond(stress: Stress, perimeter: Length, length: Length) -> Bond {
    let nominal = stress * (perimeter * length);
    let strength = Strength { nominal, safety_factor: 3.00, resistance_factor: 0.50 };
    Bond { stress, perimeter, length, strength }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::steel::sections::Axis;
    use crate::units::SectionModulus;

    const FY: Stress = Stress::ksi(50.0);

    fn fill(strength: f64, density: f64) -> Fill {
        Fill { strength: Stress::ksi(strength), density: Density::pcf(density) }
    }

    /// HSS 4 x 4 x 1/4 of the AISC shapes database v15.0.
    fn post() -> Tube {
        let axis = Axis {
            second_moment: SecondMoment::in4(7.8),
            elastic_modulus: SectionModulus::in3(3.9),
            plastic_modulus: SectionModulus::in3(4.69),
            radius: Length::decimal_inches(1.52),
        };
        Tube {
            area: Area::sq_in(3.37),
            depth: Length::inches(4),
            width: Length::inches(4),
            wall: Length::decimal_inches(0.233),
            torsion: SecondMoment::in4(12.8),
            major: axis,
            minor: axis,
        }
    }

    fn of(fill: Fill, yield_strength: Stress, length: Length) -> Result<FilledColumn, NotCovered> {
        tube(&post(), yield_strength, fill, [length; 2])
    }

    /// By hand: the hole is 3.534 in. square less 0.858 x 0.0543 = 12.44 sq in.; Pno = 50 x 3.37 + 0.85 x 4 x 12.44 = 210.8 kip;
    /// C3 = 0.45 + 3 x 3.37 / 15.81 = 1.09, so 0.9.
    #[test]
    fn a_post_by_hand() {
        let column = of(fill(4.0, 145.0), FY, Length::feet(8)).unwrap();
        assert!((column.concrete_area.to_sq_in() - 12.44).abs() < 0.005);
        assert!((column.section_strength.to_kip() - 210.8).abs() < 0.05);
        assert!((column.stiffness_share - 0.9).abs() < 1e-12);
    }

    /// AISC 360 I1.3: 3 to 10 ksi of concrete, 75 ksi of steel.
    #[test]
    fn the_ends_of_the_materials() {
        let lasts = |strength, density, steel| {
            of(fill(strength, density), Stress::ksi(steel), Length::feet(8)).is_ok()
        };
        assert!(lasts(3.0, 145.0, 50.0) && lasts(10.0, 145.0, 50.0));
        assert!(!lasts(2.999, 145.0, 50.0) && !lasts(10.001, 145.0, 50.0) && !lasts(f64::NAN, 145.0, 50.0));
        assert!(lasts(4.0, 90.0, 50.0) && lasts(4.0, 155.0, 50.0));
        assert!(!lasts(4.0, 89.9, 50.0) && !lasts(4.0, 155.1, 50.0) && !lasts(4.0, f64::NAN, 50.0));
        assert!(lasts(4.0, 145.0, 75.0) && !lasts(4.0, 145.0, 75.1) && !lasts(4.0, 145.0, f64::NAN));
        assert!(of(fill(4.0, 145.0), FY, Length::ZERO).is_err());
    }

    /// By hand at 50 ksi: 2.26 x 24.08 = 54.4 is the thinnest compact wall: 4 / 57.4 = 0.0697 in.; and As at 1 % of the whole.
    #[test]
    fn the_ends_of_the_section() {
        let with = |wall: f64, area: f64| {
            let section = Tube { wall: Length::decimal_inches(wall), area: Area::sq_in(area), ..post() };
            tube(&section, FY, fill(4.0, 145.0), [Length::feet(8); 2])
        };
        assert!(with(0.070, 1.1).is_ok());
        assert!(with(0.0694, 1.1).is_err());
        assert!(with(0.233, 0.13).is_ok());
        assert!(with(0.233, 0.12).is_err());
        assert!(with(0.233, 0.0).is_err());
    }

    #[test]
    fn falls_with_length() {
        let nominal = |feet| of(fill(4.0, 145.0), FY, Length::feet(feet)).unwrap().strength.nominal;
        for feet in 2..40 {
            assert!(nominal(feet) < nominal(feet - 1), "{feet}");
        }
    }

    #[test]
    fn the_better_of_two_is_so_after_the_factors() {
        let filled = Strength { nominal: Force::kip(110.0), safety_factor: 2.00, resistance_factor: 0.75 };
        let bare = Strength { nominal: Force::kip(100.0), safety_factor: 1.67, resistance_factor: 0.90 };
        assert_eq!(at_least_bare(filled, bare), bare);
        let filled = Strength { nominal: Force::kip(125.0), ..filled };
        assert_eq!(at_least_bare(filled, bare), filled);
    }

    /// By hand, from memory of the equation: 30 x 0.25 / 16 = 0.469, so 0.2 ksi; pi x 3.5 x 8 x 0.2 = 17.6 kip.
    #[test]
    fn from_memory_bond_in_a_pipe() {
        let (area, outside) = (Area::sq_in(3.0), Length::inches(4));
        let section = Pipe { area, outside, wall: Length::sixteenths(0, 4), axis: post().major };
        let bond = pipe_bond(&section).unwrap();
        assert!((bond.stress.to_ksi() - 0.2).abs() < 1e-12);
        assert!((bond.strength.nominal.to_kip() - 17.6).abs() < 0.01);
        assert!(pipe_bond(&Pipe { wall: Length::inches(2), ..section }).is_err());
    }

    #[test]
    fn shares_of_a_load_make_one() {
        let shares = load_shares(Area::sq_in(2.0), FY, Force::kip(400.0)).unwrap();
        assert!((shares.to_steel - 0.25).abs() < 1e-12 && (shares.to_concrete - 0.75).abs() < 1e-12);
        assert!(load_shares(Area::sq_in(2.0), FY, Force::kip(99.0)).is_err());
        assert!(load_shares(Area::ZERO, FY, Force::kip(99.0)).is_err());
        assert!(internal_bearing(Stress::ksi(5.0), Area::ZERO).is_err());
        assert!(tube_bond(&Tube { wall: Length::ZERO, ..post() }).is_err());
    }
}
