//! Which adjustment factor acts on which reference value.
//!
//! Source: NDS 2018 tables 4.3.1, 5.3.1 and 8.3.1, from memory; that load duration never acts on a modulus or on bearing
//! across the grain was read in a secondary copy of §2.3.2. Factors that don't apply to a stuff stay 1.

use crate::units::Stress;

/// The factors on one reference value; 1 unless set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Factors {
    /// C_D: load duration.
    pub duration: f64,
    /// C_M: wet service.
    pub wet_service: f64,
    /// C_t: temperature.
    pub temperature: f64,
    /// C_F of sawn lumber, or the depth factor of composite lumber.
    pub size: f64,
    /// C_fu: bending flat.
    pub flat_use: f64,
    /// C_i: incising for treatment.
    pub incising: f64,
    /// C_r: repetitive members.
    pub repetitive: f64,
    /// C_b: short bearing away from the end.
    pub bearing_area: f64,
    /// C_L: lateral stability of a beam.
    pub beam_stability: f64,
    /// C_V: volume of glulam.
    pub volume: f64,
    /// C_P: stability of a column.
    pub column_stability: f64,
}

impl Default for Factors {
    fn default() -> Self {
        Self {
            duration: 1.0,
            wet_service: 1.0,
            temperature: 1.0,
            size: 1.0,
            flat_use: 1.0,
            incising: 1.0,
            repetitive: 1.0,
            bearing_area: 1.0,
            beam_stability: 1.0,
            volume: 1.0,
            column_stability: 1.0,
        }
    }
}

impl Factors {
    /// What acts on every value, whatever it is.
    fn service(&self) -> f64 {
        self.wet_service * self.temperature * self.incising
    }
}

/// The allowable bending stress, Fb'. With C_L and C_V left at 1 it is Fb*, the value that [`crate::design::wood::stability`] asks for.
///
/// Source: NDS 2018 tables 4.3.1 and 5.3.1; C_L and C_V of glulam are not cumulative, the smaller holds (§5.3.6).
/// Range:  any factors.
/// Result: Fb'.
pub fn bending(reference: Stress, factors: &Factors) -> Stress {
    let Factors { duration, size, flat_use, repetitive, beam_stability, volume, .. } = *factors;
    let stability = beam_stability.min(volume);
    reference * (duration * factors.service() * size * flat_use * repetitive * stability)
}

/// The allowable tension along the grain, Ft'.
///
/// Source: NDS 2018 table 4.3.1.
/// Range:  any factors.
/// Result: Ft'.
pub fn tension(reference: Stress, factors: &Factors) -> Stress {
    reference * (factors.duration * factors.service() * factors.size)
}

/// The allowable shear along the grain, Fv'.
///
/// Source: NDS 2018 table 4.3.1.
/// Range:  any factors.
/// Result: Fv'.
pub fn shear(reference: Stress, factors: &Factors) -> Stress {
    reference * (factors.duration * factors.service())
}

/// The allowable bearing across the grain, Fc-perp': load duration never acts on it.
///
/// Source: NDS 2018 table 4.3.1 and §2.3.2.
/// Range:  any factors.
/// Result: Fc-perp'.
pub fn bearing(reference: Stress, factors: &Factors) -> Stress {
    reference * (factors.service() * factors.bearing_area)
}

/// The allowable compression along the grain, Fc'. With C_P left at 1 it is Fc*, the value that [`crate::design::wood::column`] asks for.
///
/// Source: NDS 2018 table 4.3.1.
/// Range:  any factors.
/// Result: Fc'.
pub fn compression(reference: Stress, factors: &Factors) -> Stress {
    reference * (factors.duration * factors.service() * factors.size * factors.column_stability)
}

/// A modulus in service, E' or Emin': load duration and size never act on it.
///
/// Source: NDS 2018 table 4.3.1 and §2.3.2.
/// Range:  any factors.
/// Result: E' or Emin'.
pub fn modulus(reference: Stress, factors: &Factors) -> Stress {
    reference * factors.service()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// University example on a wet 2x8 of Douglas fir-larch No.1 under dead load and snow, read in a secondary copy:
    /// Fb' = 1000 x 1.15 x 0.85 x 1.2 = 1173; Ft' = 675 x 1.15 x 1.2 = 932; Fv' = 180 x 1.15 x 0.97 = 201 psi.
    #[test]
    fn a_published_wet_joist() {
        let snow = Factors { duration: 1.15, ..Factors::default() };
        let bent = Factors { wet_service: 0.85, size: 1.2, ..snow };
        assert!((bending(Stress::psi(1_000.0), &bent).to_psi() - 1_173.0).abs() < 0.5);
        let pulled = Factors { size: 1.2, ..snow };
        assert!((tension(Stress::psi(675.0), &pulled).to_psi() - 932.0).abs() <= 0.5 + 1e-9);
        let sheared = Factors { wet_service: 0.97, ..snow };
        assert!((shear(Stress::psi(180.0), &sheared).to_psi() - 201.0).abs() < 0.5);
    }

    /// By hand: 1.6 on 425 psi of bearing and on 1,400,000 psi of modulus changes neither.
    #[test]
    fn load_duration_spares_bearing_and_modulus() {
        let wind = Factors { duration: 1.6, size: 1.3, repetitive: 1.15, ..Factors::default() };
        assert!((bearing(Stress::psi(425.0), &wind).to_psi() - 425.0).abs() < 1e-9);
        assert!((modulus(Stress::psi(1_400_000.0), &wind).to_psi() - 1_400_000.0).abs() < 1e-6);
        assert!((compression(Stress::psi(1_000.0), &wind).to_psi() - 2_080.0).abs() < 1e-9);
    }

    /// By hand: 2400 psi with C_L 0.95 and C_V 0.9 has 2400 x 0.9 = 2160, not 2052.
    #[test]
    fn the_smaller_of_stability_and_volume_holds() {
        let both = Factors { beam_stability: 0.95, volume: 0.9, ..Factors::default() };
        assert!((bending(Stress::psi(2_400.0), &both).to_psi() - 2_160.0).abs() < 1e-9);
    }
}
