//! Where wood serves: wet, warm, or incised for treatment.

use crate::design::NotCovered;
use crate::design::wood::Stuff;
use crate::units::Stress;

/// One factor for each of the reference values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ServiceFactors {
    /// On Fb.
    pub bending: f64,
    /// On Ft.
    pub tension: f64,
    /// On Fv.
    pub shear: f64,
    /// On Fc-perp.
    pub bearing: f64,
    /// On Fc.
    pub compression: f64,
    /// On E and Emin.
    pub modulus: f64,
}

/// No loss.
pub const DRY: ServiceFactors =
    ServiceFactors { bending: 1.0, tension: 1.0, shear: 1.0, bearing: 1.0, compression: 1.0, modulus: 1.0 };

/// The wet service factors, C_M, of wood that stays above 19% moisture (glulam: 16%).
///
/// Source: NDS Supplement 2018, notes of tables 4A, 4B and 4D, 5A: dimension lumber's bending, shear and modulus, and the
/// limit of 1150 psi, read in secondary copies (and borne out by published deck spans); the rest from memory.
/// Range:  sawn lumber and glulam. `bending` is Fb C_F and `compression` Fc C_F, before any other factor: at no more than
///         1150 and 750 psi they lose nothing. Composite lumber and I-joists are for dry service.
/// Result: a factor for each value, none above 1.
pub fn wet_service(stuff: Stuff, bending: Stress, compression: Stress) -> Result<ServiceFactors, NotCovered> {
    match stuff {
        Stuff::Dimension => Ok(ServiceFactors {
            bending: if bending <= SPARED_BENDING { 1.0 } else { 0.85 },
            tension: 1.0,
            shear: 0.97,
            bearing: 0.67,
            compression: if compression <= SPARED_COMPRESSION { 1.0 } else { 0.8 },
            modulus: 0.9,
        }),
        Stuff::Timber => Ok(ServiceFactors { bearing: 0.67, compression: 0.91, ..DRY }),
        Stuff::Glulam => Ok(ServiceFactors {
            bending: 0.8,
            tension: 0.8,
            shear: 0.875,
            bearing: 0.53,
            compression: 0.73,
            modulus: 0.833,
        }),
        Stuff::Composite => Err(dry_only("composite lumber in wet service")),
        Stuff::IJoist => Err(dry_only("an I-joist in wet service")),
    }
}

/// Fb C_F up to which wet dimension lumber loses no bending strength: NDS Supplement 2018, note of table 4A.
pub const SPARED_BENDING: Stress = Stress::psi(1_150.0);

/// Fc C_F up to which wet dimension lumber loses no compression strength: NDS Supplement 2018, note of table 4A.
pub const SPARED_COMPRESSION: Stress = Stress::psi(750.0);

const fn dry_only(what: &'static str) -> NotCovered {
    NotCovered::NoRule { what, clause: "made for dry service; its maker decides, from memory" }
}

/// The temperature factor, C_t, on every value.
///
/// Source: NDS 2018 §2.3.3, from memory.
/// Range:  sustained temperature up to 100 degrees Fahrenheit; the table's rows above are not here.
/// Result: 1.
pub fn temperature_factor(fahrenheit: f64) -> Result<f64, NotCovered> {
    if fahrenheit <= WARMEST {
        return Ok(1.0);
    }
    Err(NotCovered::OutOfRange {
        quantity: "sustained temperature, degrees F",
        value: fahrenheit,
        limit: WARMEST,
        clause: "NDS 2018 2.3.3",
    })
}

/// NDS 2018 §2.3.3.
const WARMEST: f64 = 100.0;

/// The incising factors, C_i, of dimension lumber with incised faces.
///
/// Source: NDS 2018 §4.3.8, from memory; bending and modulus are borne out by published deck spans.
/// Range:  dimension lumber, the usual pattern: 0.4 in. deep, 3/8 in. long, up to 1100 to the square foot.
/// Result: a factor for each value, none above 1.
pub fn incising(stuff: Stuff) -> Result<ServiceFactors, NotCovered> {
    match stuff {
        Stuff::Dimension => Ok(ServiceFactors {
            bending: 0.8,
            tension: 0.8,
            shear: 0.8,
            bearing: 1.0,
            compression: 0.8,
            modulus: 0.95,
        }),
        Stuff::Timber | Stuff::Glulam | Stuff::Composite | Stuff::IJoist => Err(NotCovered::NoRule {
            what: "incised wood other than dimension lumber",
            clause: "NDS 2018 4.3.8",
        }),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NDS Supplement, note of table 4A: Douglas fir-larch No.2 2x6 has 900 x 1.3 = 1170 psi and loses, hem-fir No.2
    /// 850 x 1.3 = 1105 psi and doesn't. At the limit nothing is lost.
    #[test]
    fn weak_lumber_loses_nothing_when_wet() {
        let wet = |bending: f64, compression: f64| {
            wet_service(Stuff::Dimension, Stress::psi(bending), Stress::psi(compression)).unwrap()
        };
        assert!((wet(1_170.0, 1_485.0).bending - 0.85).abs() < 1e-9);
        assert!((wet(1_105.0, 1_430.0).bending - 1.0).abs() < 1e-9);
        assert!((wet(1_150.0, 750.0).bending - 1.0).abs() < 1e-9);
        assert!((wet(1_150.1, 750.0).bending - 0.85).abs() < 1e-9);
        assert!((wet(1_150.0, 750.0).compression - 1.0).abs() < 1e-9);
        assert!((wet(1_150.0, 750.1).compression - 0.8).abs() < 1e-9);
        // What is no number is never spared.
        assert!((wet(f64::NAN, f64::NAN).bending - 0.85).abs() < 1e-9);
    }

    #[test]
    fn glued_lumber_serves_dry() {
        let psi = Stress::psi(1_000.0);
        assert!(matches!(wet_service(Stuff::IJoist, psi, psi), Err(NotCovered::NoRule { .. })));
        assert!(matches!(wet_service(Stuff::Composite, psi, psi), Err(NotCovered::NoRule { .. })));
        assert!((wet_service(Stuff::Timber, psi, psi).unwrap().compression - 0.91).abs() < 1e-9);
        assert!(incising(Stuff::Timber).is_err());
    }

    #[test]
    fn hot_wood_is_not_covered() {
        assert_eq!(temperature_factor(100.0), Ok(1.0));
        assert!(temperature_factor(100.1).is_err());
        assert!(temperature_factor(f64::NAN).is_err());
    }
}
