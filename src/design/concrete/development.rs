//! How much straight bar it takes to hold the bar's whole strength.

use crate::design::NotCovered;
use crate::design::concrete::bars::Bar;
use crate::design::concrete::{ConcreteCode, positive, root_of_strength, within};
use crate::units::{Length, Stress};

/// How bars lie in the concrete.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Placing {
    /// Clear distance between neighbours.
    pub clear_spacing: Length,
    /// Clear cover.
    pub cover: Length,
    /// Depth of fresh concrete below a bar, which settles away from it.
    pub concrete_below: Length,
}

/// A development length, and what it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Development {
    /// ψt: 1.3 over more than 12 in. of fresh concrete.
    pub location_factor: f64,
    /// ψg: the grade's, in 318-19.
    pub grade_factor: f64,
    /// ld over the bar's diameter, before the least length.
    pub diameters: f64,
    /// ld.
    pub length: Length,
}

/// The length of straight bar that holds its yield strength, by the simple rule.
///
/// Source: ACI 318 table 25.4.2.3: fy / 25√f'c up to #6, fy / 20√f'c from #7, half as much again where bars lie close or
///         shallow; §25.4.2.1: 12 in. at least. From memory; one worked example of a #8 bar agrees.
/// Range:  uncoated bars #3 to #11, 2,500 psi ≤ f'c ≤ 10,000 psi, 40 ksi ≤ fy ≤ 80 ksi (318-14) or 100 ksi (318-19). From
///         80 ksi on with bars nearer than 6 in., 318-19 asks for bars across (§25.4.2.2): no value.
/// Result: the excess of bars over what is needed shortens nothing here, on the safe side (§25.4.10).
pub fn simple(
    code: ConcreteCode,
    bar: Bar,
    concrete: Stress,
    yield_strength: Stress,
    placing: Placing,
) -> Result<Development, NotCovered> {
    let root = root_of_strength(concrete)?;
    let clear = placing.clear_spacing >= bar.diameter * 2 && placing.cover >= bar.diameter;
    let divisor = match (is_small(bar), clear) {
        (true, true) => 25.0,
        (false, true) => 20.0,
        (true, false) => 50.0 / 3.0,
        (false, false) => 40.0 / 3.0,
    };
    development(code, bar, yield_strength, placing, yield_strength / (root * divisor))
}

/// The length of straight bar that holds its yield strength, by its cover and spacing.
///
/// Source: ACI 318 eq. 25.4.2.4a with no bars across (Ktr = 0), the cover term at most 2.5 diameters; ψs 0.8 up to #6; §25.4.2.1:
///         12 in. at least. From memory.
/// Range:  as [`simple`], with some cover.
/// Result: often shorter than the simple rule's in footings, whose cover is deep; either may be used.
pub fn by_cover(
    code: ConcreteCode,
    bar: Bar,
    concrete: Stress,
    yield_strength: Stress,
    placing: Placing,
) -> Result<Development, NotCovered> {
    let root = root_of_strength(concrete)?;
    positive("cover", placing.cover, "ACI 318 25.4.2.4")?;
    positive("clear spacing", placing.clear_spacing, "ACI 318 25.4.2.4")?;
    let to_splitting = (placing.cover * 2).min(placing.clear_spacing) + bar.diameter;
    let confinement = (to_splitting / bar.diameter / 2.0).min(2.5);
    let size_factor = if is_small(bar) { 0.8 } else { 1.0 };
    let diameters = 3.0 / 40.0 * (yield_strength / root) * size_factor / confinement;
    development(code, bar, yield_strength, placing, diameters)
}

/// The length of straight bar from the cut of a footing to the bar's end.
///
/// Source: geometry.
/// Range:  none.
/// Result: to be compared with a development length. Below zero where the cover is deeper than the footing reaches.
pub fn embedment(cantilever: Length, end_cover: Length) -> Length {
    cantilever - end_cover
}

fn development(
    code: ConcreteCode,
    bar: Bar,
    yield_strength: Stress,
    placing: Placing,
    unfactored: f64,
) -> Result<Development, NotCovered> {
    const LEAST: Length = Length::inches(12);
    const CLAUSE: &str = "ACI 318 table 25.4.2.5";
    let most = match code {
        ConcreteCode::Aci318_14 => 80_000.0,
        ConcreteCode::Aci318_19 => 100_000.0,
    };
    let psi = within("fy in psi", yield_strength.to_psi(), [40_000.0, most], CLAUSE)?;
    if code == ConcreteCode::Aci318_19
        && psi >= 80_000.0
        && placing.clear_spacing + bar.diameter < Length::inches(6)
    {
        return Err(NotCovered::NoRule {
            what: "bars of 80 ksi and more nearer than 6 in. without bars across",
            clause: "ACI 318-19 25.4.2.2",
        });
    }
    let location_factor = if placing.concrete_below > Length::inches(12) { 1.3 } else { 1.0 };
    // The table knows grades 40 and 60, 80 and 100: one between two of them counts as the next one up.
    let grade_factor = match code {
        ConcreteCode::Aci318_14 => 1.0,
        ConcreteCode::Aci318_19 if psi <= 60_000.0 => 1.0,
        ConcreteCode::Aci318_19 if psi <= 80_000.0 => 1.15,
        ConcreteCode::Aci318_19 => 1.3,
    };
    let diameters = unfactored * location_factor * grade_factor;
    let length = bar.diameter.scaled(diameters).max(LEAST);
    Ok(Development { location_factor, grade_factor, diameters, length })
}

fn is_small(bar: Bar) -> bool {
    bar.number <= 6
}

#[cfg(test)]
mod tests {
    use super::ConcreteCode::{Aci318_14, Aci318_19};
    use super::*;
    use crate::design::concrete::bars::numbered;

    const WEAK: Stress = Stress::psi(2_500.0);
    const GRADE_60: Stress = Stress::ksi(60.0);
    const FOOTING: Placing = Placing {
        clear_spacing: Length::inches(12),
        cover: Length::inches(3),
        concrete_below: Length::inches(3),
    };

    fn simple_length(number: u32, placing: Placing) -> f64 {
        simple(Aci318_19, numbered(number).unwrap(), WEAK, GRADE_60, placing).unwrap().length.to_inches()
    }

    /// By hand: 60,000 / (25 x 50) = 48 diameters: #4 24 in.; #8 60,000 / (20 x 50) = 60 in.; close bars #4 36 in.
    #[test]
    fn the_simple_rule() {
        assert!((simple_length(4, FOOTING) - 24.0).abs() < 1e-4);
        assert!((simple_length(8, FOOTING) - 60.0).abs() < 1e-4);
        let close = Placing { clear_spacing: Length::decimal_inches(0.9), ..FOOTING };
        assert!((simple_length(4, close) - 36.0).abs() < 1e-4);
        let shallow = Placing { cover: Length::decimal_inches(0.4), ..FOOTING };
        assert!((simple_length(4, shallow) - 36.0).abs() < 1e-4);
    }

    /// By hand: over 12 in. nothing is added, over more 1.3 x 24 = 31.2 in.
    #[test]
    fn bars_high_in_the_pour_are_longer() {
        let at = |inches| Placing { concrete_below: Length::inches(inches), ..FOOTING };
        assert!((simple_length(4, at(12)) - 24.0).abs() < 1e-4);
        assert!((simple_length(4, at(13)) - 31.2).abs() < 1e-4);
    }

    /// By hand: #5, deep and wide: 3/40 x 60,000/50 x 0.8/2.5 = 28.8 diameters, 18 in. With 0.9375 in. of cover the splitting
    /// term is 0.9375/0.625 + 0.5 = 2: 36 diameters, 22.5 in.
    #[test]
    fn by_cover_is_shorter_in_a_footing() {
        let length = |placing| {
            let bar = numbered(5).unwrap();
            by_cover(Aci318_14, bar, WEAK, GRADE_60, placing).unwrap().length.to_inches()
        };
        assert!((length(FOOTING) - 18.0).abs() < 1e-4);
        assert!((length(Placing { cover: Length::decimal_inches(0.9375), ..FOOTING }) - 22.5).abs() < 1e-4);
    }

    /// By hand: #3 of grade 40 in 10,000 psi is 40,000 / (25 x 100) = 16 diameters, 6 in.: 12 in. is the least.
    #[test]
    fn never_less_than_a_foot() {
        let found =
            simple(Aci318_14, numbered(3).unwrap(), Stress::ksi(10.0), Stress::ksi(40.0), FOOTING).unwrap();
        assert_eq!(found.length, Length::inches(12));
    }

    #[test]
    fn strong_bars_are_longer_in_the_later_edition() {
        let factor = |code, ksi| {
            simple(code, numbered(4).unwrap(), WEAK, Stress::ksi(ksi), FOOTING)
                .map(|found| found.grade_factor)
        };
        assert!((factor(Aci318_19, 60.0).unwrap() - 1.0).abs() < 1e-12);
        assert!((factor(Aci318_19, 80.0).unwrap() - 1.15).abs() < 1e-12);
        assert!((factor(Aci318_19, 100.0).unwrap() - 1.3).abs() < 1e-12);
        assert!((factor(Aci318_14, 80.0).unwrap() - 1.0).abs() < 1e-12);
        assert!(factor(Aci318_14, 81.0).is_err() && factor(Aci318_19, 101.0).is_err());
        assert!(factor(Aci318_19, 39.0).is_err() && factor(Aci318_19, f64::NAN).is_err());
        let near = Placing { clear_spacing: Length::inches(4), ..FOOTING };
        assert!(simple(Aci318_19, numbered(4).unwrap(), WEAK, Stress::ksi(80.0), near).is_err());
    }
}
