//! Load combinations of ASCE 7, and how long each load lasts.
//!
//! Source: ASCE 7-16 sections 2.3.1 and 2.4.1, read in a secondary copy; load durations of NDS 2018 table 2.3.2, read
//! in a secondary copy. Wind, earthquake, rain and soil are left out: what is not followed down is never combined.

/// A combination of the cases of gravity load, each with its factor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Combination {
    /// As the standard writes it, with the factors: `D + 0.75L + 0.75S`.
    pub name: &'static str,
    /// The factor of dead load.
    pub dead: f64,
    /// The factor of floor live load.
    pub live: f64,
    /// The factor of roof live load.
    pub roof_live: f64,
    /// The factor of snow.
    pub snow: f64,
}

const fn combination(name: &'static str, [dead, live, roof_live, snow]: [f64; 4]) -> Combination {
    Combination { name, dead, live, roof_live, snow }
}

/// Allowable stress combinations of gravity loads: ASCE 7-16 §2.4.1, 1 to 4.
pub const ALLOWABLE: &[Combination] = &[
    combination("D", [1.0, 0.0, 0.0, 0.0]),
    combination("D + L", [1.0, 1.0, 0.0, 0.0]),
    combination("D + Lr", [1.0, 0.0, 1.0, 0.0]),
    combination("D + S", [1.0, 0.0, 0.0, 1.0]),
    combination("D + 0.75L + 0.75Lr", [1.0, 0.75, 0.75, 0.0]),
    combination("D + 0.75L + 0.75S", [1.0, 0.75, 0.0, 0.75]),
];

/// Strength combinations of gravity loads: ASCE 7-16 §2.3.1, 1 to 3. The live load that goes with a principal roof load
/// keeps its whole factor: the halved one that the standard allows for small live loads is not taken, on the safe side.
pub const STRENGTH: &[Combination] = &[
    combination("1.4D", [1.4, 0.0, 0.0, 0.0]),
    combination("1.2D + 1.6L + 0.5Lr", [1.2, 1.6, 0.5, 0.0]),
    combination("1.2D + 1.6L + 0.5S", [1.2, 1.6, 0.0, 0.5]),
    combination("1.2D + 1.6Lr + L", [1.2, 1.0, 1.6, 0.0]),
    combination("1.2D + 1.6S + L", [1.2, 1.0, 0.0, 1.6]),
];

/// The load duration factor of wood, C_D: that of the shortest load in the combination that really acts.
///
/// Source: NDS 2018 §2.3.2 and table 2.3.2: permanent 0.9, floor live 1.0, snow 1.15, roof live 1.25.
/// Range:  gravity loads. It is never put on a modulus or on bearing across the grain.
/// Result: dimensionless. `acts` says of dead, floor live, roof live and snow whether any of it is there.
pub fn duration_factor(combination: &Combination, acts: [bool; 4]) -> f64 {
    let [_, live, roof_live, snow] = acts;
    if roof_live && combination.roof_live > 0.0 {
        1.25
    } else if snow && combination.snow > 0.0 {
        1.15
    } else if live && combination.live > 0.0 {
        1.0
    } else {
        0.9
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn named(name: &str) -> Combination {
        *ALLOWABLE.iter().find(|combination| combination.name == name).unwrap()
    }

    /// NDS 2018 table 2.3.2, read in a secondary copy.
    #[test]
    fn the_shortest_load_that_acts_decides() {
        let whole = named("D + 0.75L + 0.75S");
        assert!((duration_factor(&whole, [true, true, false, true]) - 1.15).abs() < 1e-12);
        assert!((duration_factor(&whole, [true, true, false, false]) - 1.0).abs() < 1e-12);
        assert!((duration_factor(&named("D"), [true, true, true, true]) - 0.9).abs() < 1e-12);
        assert!((duration_factor(&named("D + Lr"), [true, false, true, true]) - 1.25).abs() < 1e-12);
    }
}
