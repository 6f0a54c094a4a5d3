//! Bending of a rectangular section with bars on one side.

use crate::design::NotCovered;
use crate::design::concrete::{ConcreteCode, Section, positive, root_of_strength, within};
use crate::units::{Area, Length, Moment, Stress};

/// Strain of concrete at crushing: ACI 318 §22.2.2.1, from memory.
const CRUSHING_STRAIN: f64 = 0.003;
/// Modulus of the bars in psi: ACI 318 §20.2.2.2, from memory.
const STEEL_MODULUS: f64 = 29_000_000.0;
/// Strength reduction of a tension-controlled section: ACI 318 table 21.2.2.
const PHI_TENSION: f64 = 0.90;
/// Strength reduction of a compression-controlled section without spirals: ACI 318 table 21.2.2.
const PHI_COMPRESSION: f64 = 0.65;

/// The bending strength of a section, and what it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flexure {
    /// As / bd.
    pub steel_ratio: f64,
    /// Depth of the block of compression, a.
    pub block: Length,
    /// Depth of the neutral axis, c.
    pub neutral_axis: Length,
    /// Strain of the bars when the concrete crushes.
    pub strain: f64,
    /// The strength reduction factor that goes with the strain.
    pub phi: f64,
    /// Mn.
    pub nominal: Moment,
    /// Phi Mn.
    pub design: Moment,
}

/// The moment that a section with bars on its tension side bears.
///
/// Source: ACI 318 §22.2 (block of compression), table 21.2.2 (phi by the strain of the bars), §7.3.3.1 (least strain).
///         The strain limit of 318-19, fy/Es + 0.003, read in a secondary copy; those of 318-14, 0.004 and 0.005, and
///         the block's depth ratio from memory.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi; 40 ksi ≤ fy ≤ 80 ksi (318-14) or 100 ksi (318-19), from memory; bars that yield as
///         far as §7.3.3.1 asks: a section with more steel than that has no value.
/// Result: moments of the whole width.
pub fn strength(code: ConcreteCode, section: &Section) -> Result<Flexure, NotCovered> {
    root_of_strength(section.concrete)?;
    let yield_stress = yield_in_range(code, section.yield_strength)?;
    positive("b", section.width, "ACI 318 22.2")?;
    positive("d", section.depth, "ACI 318 22.2")?;
    within("As in in2", section.steel.to_sq_in(), [f64::MIN_POSITIVE, f64::MAX], "ACI 318 22.2")?;

    let (width, depth) = (section.width.to_inches(), section.depth.to_inches());
    let tension = section.steel.to_sq_in() * yield_stress;
    let block = tension / (0.85 * section.concrete.to_psi() * width);
    let neutral_axis = block / block_ratio(section.concrete);
    let strain = CRUSHING_STRAIN * (depth - neutral_axis) / neutral_axis;

    let yield_strain = yield_stress / STEEL_MODULUS;
    let (least, controlled) = match code {
        ConcreteCode::Aci318_14 => (0.004, 0.005),
        ConcreteCode::Aci318_19 => (yield_strain + 0.003, yield_strain + 0.003),
    };
    within("strain of the bars", strain, [least, f64::MAX], "ACI 318 7.3.3.1")?;
    let phi = if strain >= controlled {
        PHI_TENSION
    } else {
        let way = (strain - yield_strain) / (controlled - yield_strain);
        PHI_COMPRESSION + (PHI_TENSION - PHI_COMPRESSION) * way
    };

    let nominal = Moment::lb_in(tension * (depth - block / 2.0));
    Ok(Flexure {
        steel_ratio: section.steel_ratio(),
        block: Length::decimal_inches(block),
        neutral_axis: Length::decimal_inches(neutral_axis),
        strain,
        phi,
        nominal,
        design: nominal * phi,
    })
}

/// The area of bars that a moment needs.
///
/// Source: the strength above, solved for As with the phi of a tension-controlled section.
/// Range:  as [`strength`], and a moment that a tension-controlled section of this size can bear.
/// Result: of the whole width. The least steel of a footing is a check of its own.
pub fn steel_for(
    code: ConcreteCode,
    width: Length,
    depth: Length,
    concrete: Stress,
    yield_strength: Stress,
    moment: Moment,
) -> Result<Area, NotCovered> {
    let block_force = 0.85 * concrete.to_psi() * width.to_inches();
    let d = depth.to_inches();
    let rest = d.powi(2) - 2.0 * moment.to_lb_in() / (PHI_TENSION * block_force);
    within("d² - 2Mu/(phi 0.85 f'c b) in in2", rest, [0.0, f64::MAX], "ACI 318 22.2")?;
    let steel = Area::sq_in(block_force * (d - rest.sqrt()) / yield_strength.to_psi());
    let found = strength(code, &Section { width, depth, steel, concrete, yield_strength })?;
    within("phi", found.phi, [PHI_TENSION, PHI_TENSION], "ACI 318 table 21.2.2")?;
    Ok(steel)
}

/// Depth of the block of compression over that of the neutral axis: ACI 318 table 22.2.2.4.3, from memory.
fn block_ratio(concrete: Stress) -> f64 {
    (0.85 - 0.05 * (concrete.to_ksi() - 4.0)).clamp(0.65, 0.85)
}

/// ACI 318 table 20.2.2.4(a), from memory.
fn yield_in_range(code: ConcreteCode, yield_strength: Stress) -> Result<f64, NotCovered> {
    let most = match code {
        ConcreteCode::Aci318_14 => 80_000.0,
        ConcreteCode::Aci318_19 => 100_000.0,
    };
    within("fy in psi", yield_strength.to_psi(), [40_000.0, most], "ACI 318 table 20.2.2.4(a)")
}

#[cfg(test)]
mod tests {
    use super::ConcreteCode::{Aci318_14, Aci318_19};
    use super::*;

    fn section(steel: f64) -> Section {
        Section {
            width: Length::inches(12),
            depth: Length::inches(10),
            steel: Area::sq_in(steel),
            concrete: Stress::psi(4_000.0),
            yield_strength: Stress::ksi(60.0),
        }
    }

    /// By hand: b 12, d 10, f'c 4,000, As 0.68, fy 60 ksi: T = 40.8 kip, a = 40.8 / (0.85 x 4 x 12) = 1.0 in., c = 1/0.85 =
    /// 1.1765, strain 0.003 (10 - 1.1765)/1.1765 = 0.0225, Mn = 40.8 x 9.5 = 387.6 kip-in, phi Mn = 348.84 kip-in.
    #[test]
    fn one_inch_of_block() {
        for code in [Aci318_14, Aci318_19] {
            let found = strength(code, &section(0.68)).unwrap();
            assert!((found.block.to_inches() - 1.0).abs() < 1e-4);
            assert!((found.strain - 0.0225).abs() < 1e-4);
            assert!((found.nominal.to_kip_in() - 387.6).abs() < 0.01);
            assert!((found.design.to_kip_in() - 348.84).abs() < 0.01);
        }
    }

    /// By hand: the same section at c = 4 in. has a = 3.4, As = 2.312, strain 0.0045: under 318-14 phi = 0.65 + 0.25
    /// (0.0045 - 0.002069)/(0.005 - 0.002069) = 0.857; under 318-19 the strain is short of 0.00507.
    #[test]
    fn the_editions_part_where_the_strain_is_short() {
        let between = section(2.312);
        assert!((strength(Aci318_14, &between).unwrap().phi - 0.8574).abs() < 1e-3);
        assert!(strength(Aci318_19, &between).is_err());
    }

    /// By hand: strain 0.004 lies at c = 3/7 of d = 4.2857 in., As = 0.85² x 4 x 12 x 4.2857 / 60 = 2.477 in2.
    #[test]
    fn more_steel_than_yields_has_no_value() {
        assert!(strength(Aci318_14, &section(2.47)).is_ok());
        assert!(strength(Aci318_14, &section(2.49)).is_err());
        // By hand: strain 0.005069 lies at c = 3.718 in., As = 2.149 in2.
        assert!(strength(Aci318_19, &section(2.14)).is_ok());
        assert!(strength(Aci318_19, &section(2.16)).is_err());
    }

    #[test]
    fn the_ends_of_the_range() {
        let with = |steel: f64, fy: f64| {
            strength(Aci318_14, &Section { yield_strength: Stress::psi(fy), ..section(steel) })
        };
        assert!(with(0.68, 40_000.0).is_ok() && with(0.68, 80_000.0).is_ok());
        assert!(with(0.68, 39_999.0).is_err() && with(0.68, 80_001.0).is_err());
        assert!(with(0.0, 60_000.0).is_err() && with(f64::NAN, 60_000.0).is_err());
        let flat = Section { depth: Length::ZERO, ..section(0.68) };
        assert!(strength(Aci318_14, &flat).is_err());
    }

    /// By hand: the section above bears 348.84 kip-in with 0.68 in2; 2,000 kip-in is beyond any steel.
    #[test]
    fn steel_for_a_moment_undoes_the_strength() {
        let steel = |kip_in: f64| {
            let given = section(0.68);
            steel_for(
                Aci318_19,
                given.width,
                given.depth,
                given.concrete,
                given.yield_strength,
                Moment::kip_in(kip_in),
            )
        };
        assert!((steel(348.84).unwrap().to_sq_in() - 0.68).abs() < 1e-6);
        assert!(steel(2_000.0).is_err());
        assert!(steel(f64::NAN).is_err());
    }

    /// By hand: 0.85 at 4,000 psi, 0.80 at 5,000, 0.65 from 8,000.
    #[test]
    fn the_block_grows_shallow_with_strength() {
        for (psi, ratio) in
            [(2_500.0, 0.85), (4_000.0, 0.85), (5_000.0, 0.80), (8_000.0, 0.65), (9_000.0, 0.65)]
        {
            assert!((block_ratio(Stress::psi(psi)) - ratio).abs() < 1e-12, "{psi}");
        }
    }
}
