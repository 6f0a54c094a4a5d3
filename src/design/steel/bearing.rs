//! Bearing of steel on steel and of a plate on concrete: AISC 360 J7 and J8.

use crate::design::NotCovered;
use crate::design::steel::{Strength, above_zero};
use crate::units::{Area, Force, Stress};

/// A plate that bears on concrete.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ConcreteBearing {
    /// sqrt(A2/A1), what the concrete round the plate adds, not above 2.
    pub confinement: f64,
    /// Pp.
    pub strength: Strength<Force>,
}

/// Steel on steel, both surfaces finished, or the end of a fitted stiffener.
///
/// Source: AISC 360-16, -22 §J7, Eq. J7-1, from memory.
/// Range:  0 < Apb, the projected area; Fy is the lower of the two.
/// Result: force.
pub fn finished_surfaces(area: Area, yield_strength: Stress) -> Result<Strength<Force>, NotCovered> {
    const CLAUSE: &str = "AISC 360 J7";
    above_zero("Apb in square inches", area.to_sq_in(), CLAUSE)?;
    above_zero("Fy in ksi", yield_strength.to_ksi(), CLAUSE)?;
    let nominal = yield_strength * 1.8 * area;
    Ok(Strength { nominal, safety_factor: 2.00, resistance_factor: 0.75 })
}

/// A plate on concrete.
///
/// Source: AISC 360-16, -22 §J8, Eq. J8-1, J8-2.
/// Range:  0 < A1 <= A2. A1 is the plate; A2 the largest area of the concrete's top that is like A1 in shape and
/// centred on it.
/// Result: force, not above 1.7 f'c A1.
pub fn on_concrete(
    concrete_strength: Stress,
    plate: Area,
    concrete: Area,
) -> Result<ConcreteBearing, NotCovered> {
    const CLAUSE: &str = "AISC 360 J8";
    above_zero("f'c in psi", concrete_strength.to_psi(), CLAUSE)?;
    above_zero("A1 in square inches", plate.to_sq_in(), CLAUSE)?;
    let ratio = above_zero("A2/A1", concrete / plate, CLAUSE)?;
    if ratio < 1.0 {
        return Err(NotCovered::OutOfRange { quantity: "A2/A1", value: ratio, limit: 1.0, clause: CLAUSE });
    }
    // 0.85 times 2 is the 1.7 of the clause.
    let confinement = ratio.sqrt().min(2.0);
    let nominal = concrete_strength * (0.85 * confinement) * plate;
    Ok(ConcreteBearing {
        confinement,
        strength: Strength { nominal, safety_factor: 2.31, resistance_factor: 0.65 },
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn on(plate: f64, concrete: f64) -> Result<ConcreteBearing, NotCovered> {
        on_concrete(Stress::psi(2_500.0), Area::sq_in(plate), Area::sq_in(concrete))
    }

    /// By hand: 8 by 8 on 2,500 psi is 0.85 x 2.5 x 64 = 136 kip; twice that from four times the area on.
    #[test]
    fn by_hand() {
        let nominal = |concrete| on(64.0, concrete).unwrap().strength.nominal.to_kip();
        assert!((nominal(64.0) - 136.0).abs() < 1e-9);
        assert!((nominal(144.0) - 204.0).abs() < 1e-9);
        assert!((nominal(256.0) - 272.0).abs() < 1e-9);
        assert!((nominal(2_304.0) - 272.0).abs() < 1e-9);
    }

    #[test]
    fn a_plate_wider_than_its_concrete_has_no_value() {
        assert!(on(64.0, 63.9).is_err());
        assert!(on(0.0, 64.0).is_err());
        assert!(on(64.0, f64::NAN).is_err());
    }

    /// By hand, from memory of the clause: 1.8 x 36 x 2 = 129.6 kip, 64.8 allowable.
    #[test]
    fn from_memory_steel_on_steel() {
        let strength = finished_surfaces(Area::sq_in(2.0), Stress::ksi(36.0)).unwrap();
        assert!((strength.allowable().to_kip() - 64.8).abs() < 1e-9);
    }
}
