//! Load combinations of ASCE 7, and how long each load lasts.
//!
//! Source: ASCE 7-16 sections 2.3.1, 2.4.1 and 4.7.2, read in secondary copies; what is known of ASCE 7-22 stands beside
//! it; load durations of NDS 2018 table 2.3.2, read in a secondary copy. Wind, earthquake, rain and soil are left out:
//! what is not followed down is never combined.

use crate::design::NotCovered;
use crate::units::{Area, AreaLoad};

/// An edition of ASCE 7. They differ in snow: the maps of the later one are at strength level.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LoadCode {
    /// ASCE 7-16.
    Asce7_16,
    /// ASCE 7-22. Ground snow of an older map with its factors is far too little.
    Asce7_22,
}

/// The allowable stress combinations of gravity loads of an edition.
pub const fn allowable(code: LoadCode) -> &'static [Combination] {
    match code {
        LoadCode::Asce7_16 => ALLOWABLE,
        LoadCode::Asce7_22 => ALLOWABLE_22,
    }
}

/// The strength combinations of gravity loads of an edition.
pub const fn strength(code: LoadCode) -> &'static [Combination] {
    match code {
        LoadCode::Asce7_16 => STRENGTH,
        LoadCode::Asce7_22 => STRENGTH_22,
    }
}

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
/// Those with one load alone are parts of the others, told first so that a sheet names no load that is not there.
pub const STRENGTH: &[Combination] = &[
    combination("1.4D", [1.4, 0.0, 0.0, 0.0]),
    combination("1.2D + 1.6L", [1.2, 1.6, 0.0, 0.0]),
    combination("1.2D + 1.6Lr", [1.2, 0.0, 1.6, 0.0]),
    combination("1.2D + 1.6S", [1.2, 0.0, 0.0, 1.6]),
    combination("1.2D + 1.6L + 0.5Lr", [1.2, 1.6, 0.5, 0.0]),
    combination("1.2D + 1.6L + 0.5S", [1.2, 1.6, 0.0, 0.5]),
    combination("1.2D + 1.6Lr + L", [1.2, 1.0, 1.6, 0.0]),
    combination("1.2D + 1.6S + L", [1.2, 1.0, 0.0, 1.6]),
];

/// Allowable stress combinations of gravity loads: ASCE 7-22 §2.4.1, 1 to 4; those with snow read in secondary articles.
const ALLOWABLE_22: &[Combination] = &[
    combination("D", [1.0, 0.0, 0.0, 0.0]),
    combination("D + L", [1.0, 1.0, 0.0, 0.0]),
    combination("D + Lr", [1.0, 0.0, 1.0, 0.0]),
    combination("D + 0.7S", [1.0, 0.0, 0.0, 0.7]),
    combination("D + 0.75L + 0.75Lr", [1.0, 0.75, 0.75, 0.0]),
    combination("D + 0.75L + 0.75(0.7S)", [1.0, 0.75, 0.0, 0.75 * 0.7]),
];

/// Strength combinations of gravity loads: ASCE 7-22 §2.3.1, 1 to 3; 1.0S read in secondary articles, 0.3S from memory.
const STRENGTH_22: &[Combination] = &[
    combination("1.4D", [1.4, 0.0, 0.0, 0.0]),
    combination("1.2D + 1.6L + 0.5Lr", [1.2, 1.6, 0.5, 0.0]),
    combination("1.2D + 1.6L + 0.3S", [1.2, 1.6, 0.0, 0.3]),
    combination("1.2D + 1.6Lr + L", [1.2, 1.0, 1.6, 0.0]),
    combination("1.2D + 1.0S + L", [1.2, 1.0, 0.0, 1.0]),
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

/// How many floors a member carries.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Floors {
    /// One.
    One,
    /// Two or more.
    TwoOrMore,
}

/// A live load reduced for a large area, and what it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LiveLoadReduction {
    /// K_LL A_T.
    pub influence_area: Area,
    /// The share that is left, 1 below 400 sq ft.
    pub share: f64,
    /// L.
    pub reduced: AreaLoad,
}

/// A floor live load reduced because all of a large area is never loaded at once. Nobody takes it unasked: the residential
/// code prints none.
///
/// Source: ASCE 7-16 §4.7.2: Lo (0.25 + 15/√(K_LL A_T)) from 400 sq ft of K_LL A_T on, at least half for one floor and 0.4 for more,
///         read in an open textbook. K_LL by table 4.7-1, read in a city's code: 4 columns, 2 beams, 1 others.
/// Range:  floor live loads to 100 psf, K_LL from 1 to 4. Not roofs, garages and places of assembly (from memory).
/// Result: at most the load itself.
pub fn reduced_live_load(
    unreduced: AreaLoad,
    tributary: Area,
    element_factor: f64,
    floors: Floors,
) -> Result<LiveLoadReduction, NotCovered> {
    const CLAUSE: &str = "ASCE 7-16 4.7.2";
    for (quantity, value, [low, high]) in [
        ("Lo in psf", unreduced.to_psf(), [0.0, 100.0]),
        ("A_T in sq ft", tributary.to_sq_ft(), [0.0, f64::MAX]),
        ("K_LL", element_factor, [1.0, 4.0]),
    ] {
        if !(low <= value && value <= high) {
            let limit = if value < low { low } else { high };
            return Err(NotCovered::OutOfRange { quantity, value, limit, clause: CLAUSE });
        }
    }
    let influence_area = tributary * element_factor;
    let share = if influence_area < Area::sq_ft(400.0) {
        1.0
    } else {
        let least = match floors {
            Floors::One => 0.5,
            Floors::TwoOrMore => 0.4,
        };
        (0.25 + 15.0 / influence_area.to_sq_ft().sqrt()).max(least)
    };
    Ok(LiveLoadReduction { influence_area, share, reduced: unreduced * share })
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

    /// By hand: 40 psf on a column, 4 x 400 = 1,600 sq ft: 0.25 + 15/40 = 0.625, 25 psf. 400 sq ft is where it begins, at 1.0;
    /// 4 x 900 gives 0.5 exactly; 4 x 2,500 gives 0.4, and a half for one floor.
    #[test]
    fn large_areas_are_never_full() {
        let share = |area, floors| {
            reduced_live_load(AreaLoad::psf(40.0), Area::sq_ft(area), 4.0, floors).unwrap().share
        };
        for (area, one, more) in [
            (99.0, 1.0, 1.0),
            (100.0, 1.0, 1.0),
            (400.0, 0.625, 0.625),
            (900.0, 0.5, 0.5),
            (2_500.0, 0.5, 0.4),
            (9_000.0, 0.5, 0.4),
        ] {
            assert!((share(area, Floors::One) - one).abs() < 1e-12, "{area}");
            assert!((share(area, Floors::TwoOrMore) - more).abs() < 1e-12, "{area}");
        }
    }

    #[test]
    fn heavy_loads_and_impossible_areas_are_not_reduced() {
        let reduced = |psf, area, factor| {
            reduced_live_load(AreaLoad::psf(psf), Area::sq_ft(area), factor, Floors::One).is_ok()
        };
        assert!(reduced(100.0, 900.0, 4.0));
        assert!(!reduced(100.1, 900.0, 4.0) && !reduced(f64::NAN, 900.0, 4.0));
        assert!(!reduced(40.0, -1.0, 4.0) && !reduced(40.0, f64::NAN, 4.0));
        assert!(!reduced(40.0, 900.0, 0.5) && !reduced(40.0, 900.0, 5.0));
    }
}
