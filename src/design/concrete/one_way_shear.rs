//! Shear across the whole width of a member without stirrups.

use crate::design::NotCovered;
use crate::design::concrete::{ConcreteCode, Section, positive, root_of_strength, within};
use crate::units::{Force, Length};

/// Strength reduction of shear: ACI 318 table 21.2.1.
const PHI: f64 = 0.75;

/// Whether a deep member without stirrups counts as weaker a square inch than a shallow one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeEffect {
    /// It does.
    Counted,
    /// It does not: one-way shear of shallow foundations and punching of isolated, combined and mat footings, ACI 318-19
    /// §13.2.6.2.
    Waived,
}

/// The one-way shear strength of a section, and what it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OneWayShear {
    /// As / bd.
    pub steel_ratio: f64,
    /// The size factor, 1 where it is waived or the edition has none.
    pub size_factor: f64,
    /// The strength over √f'c bd.
    pub coefficient: f64,
    /// Vc.
    pub nominal: Force,
    /// Phi Vc.
    pub design: Force,
}

/// The shear that concrete without stirrups bears across a whole section.
///
/// Source: ACI 318-14 §22.5.5.1 (2√f'c bd); ACI 318-19 table 22.5.5.1(c) (8 λs ρ^(1/3) √f'c bd) and §22.5.5.1.1 (at most
///         5√f'c bd), read in a secondary copy.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi, some steel, no axial force.
/// Result: of the whole width.
pub fn strength(
    code: ConcreteCode,
    section: &Section,
    size_effect: SizeEffect,
) -> Result<OneWayShear, NotCovered> {
    let root = root_of_strength(section.concrete)?;
    positive("b", section.width, "ACI 318 22.5")?;
    positive("d", section.depth, "ACI 318 22.5")?;
    let steel_ratio =
        within("As/bd", section.steel_ratio(), [f64::MIN_POSITIVE, 1.0], "ACI 318 table 22.5.5.1")?;

    let size_factor = size_factor(code, section.depth, size_effect)?;
    let coefficient = match code {
        ConcreteCode::Aci318_14 => 2.0,
        ConcreteCode::Aci318_19 => (8.0 * size_factor * steel_ratio.cbrt()).min(5.0),
    };
    let nominal = root * (section.width * section.depth) * coefficient;
    Ok(OneWayShear { steel_ratio, size_factor, coefficient, nominal, design: nominal * PHI })
}

/// The share of the shear strength that a deep member without stirrups keeps.
///
/// Source: ACI 318-19 eq. 22.5.5.1.3, read in a secondary copy in its metric form; waived by §13.2.6.2.
/// Range:  d above zero.
/// Result: dimensionless, at most 1; 1 in ACI 318-14, which does not know it.
pub fn size_factor(code: ConcreteCode, depth: Length, size_effect: SizeEffect) -> Result<f64, NotCovered> {
    positive("d", depth, "ACI 318-19 22.5.5.1.3")?;
    match (code, size_effect) {
        (ConcreteCode::Aci318_14, _) | (_, SizeEffect::Waived) => Ok(1.0),
        (ConcreteCode::Aci318_19, SizeEffect::Counted) => {
            Ok((2.0 / (1.0 + depth.to_inches() / 10.0)).sqrt().min(1.0))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::ConcreteCode::{Aci318_14, Aci318_19};
    use super::SizeEffect::{Counted, Waived};
    use super::*;
    use crate::units::{Area, Stress};

    /// b 10, d 30, ρ = 0.001, f'c 2,500: ρ^(1/3) = 0.1, √f'c bd = 15,000 lb.
    fn section() -> Section {
        Section {
            width: Length::inches(10),
            depth: Length::inches(30),
            steel: Area::sq_in(0.3),
            concrete: Stress::psi(2_500.0),
            yield_strength: Stress::ksi(60.0),
        }
    }

    /// By hand: 318-14 2 x 15,000 = 30,000 lb; 318-19 8 x 0.1 x 15,000 = 12,000 lb, with the size factor √(2/4) 8,485 lb.
    #[test]
    fn the_editions_differ_by_more_than_half() {
        let nominal = |code, effect| strength(code, &section(), effect).unwrap().nominal.to_lb();
        assert!((nominal(Aci318_14, Waived) - 30_000.0).abs() < 0.01);
        assert!((nominal(Aci318_19, Waived) - 12_000.0).abs() < 0.01);
        assert!((nominal(Aci318_19, Counted) - 8_485.28).abs() < 0.01);
        let design = strength(Aci318_19, &section(), Waived).unwrap().design.to_lb();
        assert!((design - 9_000.0).abs() < 0.01);
    }

    /// By hand: 8 ρ^(1/3) reaches 5 at ρ = 0.244.
    #[test]
    fn much_steel_stops_at_five() {
        let heavy = Section { steel: Area::sq_in(90.0), ..section() };
        assert!((strength(Aci318_19, &heavy, Waived).unwrap().coefficient - 5.0).abs() < 1e-12);
    }

    #[test]
    fn a_section_without_steel_or_depth_is_not_covered() {
        for broken in [
            Section { steel: Area::ZERO, ..section() },
            Section { steel: Area::sq_in(f64::NAN), ..section() },
            Section { depth: Length::ZERO, ..section() },
            Section { width: Length::inches(-1), ..section() },
            Section { concrete: Stress::psi(2_000.0), ..section() },
        ] {
            assert!(strength(Aci318_19, &broken, Waived).is_err());
        }
        assert!(size_factor(Aci318_19, Length::ZERO, Counted).is_err());
    }

    /// By hand: 1 up to 10 in., √(2/4) at 30 in.; it never rises with depth.
    #[test]
    fn the_size_factor_falls_with_depth() {
        let at = |inches| size_factor(Aci318_19, Length::inches(inches), Counted).unwrap();
        assert!((at(10) - 1.0).abs() < 1e-12);
        assert!((at(30) - 0.5_f64.sqrt()).abs() < 1e-12);
        assert!((1..60).all(|inches| at(inches) >= at(inches + 1)));
        assert!((size_factor(Aci318_14, Length::inches(30), Counted).unwrap() - 1.0).abs() < 1e-12);
    }
}
