//! Bars of a footing: where they lie, how many there must be, how far apart.

use crate::design::NotCovered;
use crate::design::concrete::bars::Bar;
use crate::design::concrete::{ConcreteCode, positive, within};
use crate::units::{Area, Length, Stress};

/// Which of two crossing layers of bottom bars.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layer {
    /// Next to the soil.
    Lower,
    /// On the lower one.
    Upper,
}

/// From the top of a footing to the middle of its bottom bars.
///
/// Source: geometry; ACI 318 §13.3.1.2: 6 in. at least, read in a secondary copy.
/// Range:  6 in. or more.
/// Result: d. Both layers are of the same bar; punching takes the mean of the two.
pub fn effective_depth(
    thickness: Length,
    cover: Length,
    bar: Bar,
    layer: Layer,
) -> Result<Length, NotCovered> {
    const LEAST: Length = Length::inches(6);
    let below = match layer {
        Layer::Lower => cover + bar.diameter.half(),
        Layer::Upper => cover + bar.diameter + bar.diameter.half(),
    };
    let depth = thickness - below;
    if depth < LEAST {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "d of bottom bars",
            value: depth,
            limit: LEAST,
            clause: "ACI 318 13.3.1.2",
        });
    }
    Ok(depth)
}

/// The least area of bars one way.
///
/// Source: 318-19 §7.6.1.1 and 24.4.3.2: 0.0018 of the section whatever the grade, read in a secondary copy. 318-14 table 7.6.1.1:
///         0.0020 below 60 ksi, from there 0.0018 x 60,000/fy and at least 0.0014; the first two read in a secondary copy for
///         an older edition, the rest from memory.
/// Range:  40 ksi ≤ fy ≤ 80 ksi (318-14) or 100 ksi (318-19).
/// Result: of the whole width, on the gross thickness. What §8.6.1.2 of 318-19 adds near a heavily punched column is not
///         counted.
pub fn least_steel(
    code: ConcreteCode,
    yield_strength: Stress,
    width: Length,
    thickness: Length,
) -> Result<Area, NotCovered> {
    const CLAUSE: &str = "ACI 318 7.6.1.1";
    positive("b", width, CLAUSE)?;
    positive("h", thickness, CLAUSE)?;
    let most = match code {
        ConcreteCode::Aci318_14 => 80_000.0,
        ConcreteCode::Aci318_19 => 100_000.0,
    };
    let psi = within("fy in psi", yield_strength.to_psi(), [40_000.0, most], CLAUSE)?;
    let ratio = match code {
        ConcreteCode::Aci318_19 => 0.0018,
        ConcreteCode::Aci318_14 if psi < 60_000.0 => 0.0020,
        ConcreteCode::Aci318_14 => (0.0018 * 60_000.0 / psi).max(0.0014),
    };
    Ok(width * thickness * ratio)
}

/// The furthest that bars may lie apart, middle to middle.
///
/// Source: ACI 318 §7.7.2.3: three times the thickness and 18 in., from memory. The spacing that §24.3 asks for against cracks
///         is not counted.
/// Range:  none.
/// Result: s.
pub fn widest_spacing(thickness: Length) -> Length {
    (thickness * 3).min(Length::inches(18))
}

/// The least clear distance between neighbouring bars.
///
/// Source: ACI 318 §25.2.1: 1 in. and the bar's diameter, from memory. Four thirds of the stone in the mix, which nobody states,
///         is not counted.
/// Range:  none.
/// Result: clear distance.
pub fn least_clear_spacing(bar: Bar) -> Length {
    bar.diameter.max(Length::inches(1))
}

/// How far bars laid evenly across a width are apart, middle to middle.
///
/// Source: geometry.
/// Range:  two bars or more, and room for them.
/// Result: s; the clear distance is a diameter less.
pub fn spacing(width: Length, side_cover: Length, bar: Bar, count: u32) -> Result<Length, NotCovered> {
    let between = width - side_cover * 2 - bar.diameter;
    positive("width between the outer bars", between, "geometry of the bars")?;
    let gaps = count.checked_sub(1).and_then(|gaps| between.shared_by(gaps));
    gaps.map(|spacing| spacing.rounded()).ok_or(NotCovered::OutOfRange {
        quantity: "number of bars",
        value: f64::from(count),
        limit: 2.0,
        clause: "geometry of the bars",
    })
}

/// The share of the short bars of an oblong pad that lie in the band under the column.
///
/// Source: ACI 318 §13.3.3.3: 2/(β + 1) of them, in a band as wide as the short side; read in a secondary copy.
/// Range:  positive sides.
/// Result: dimensionless, 1 for a square pad.
pub fn central_band_share(sides: [Length; 2]) -> Result<f64, NotCovered> {
    let [one, other] = sides;
    positive("side of the footing", one.min(other), "ACI 318 13.3.3.3")?;
    let aspect = one.max(other) / one.min(other);
    Ok(2.0 / (aspect + 1.0))
}

/// Where the face of the concrete is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// Poured against earth.
    AgainstEarth,
    /// Poured in forms, and outside or in touch with the ground.
    FormedOutside,
    /// Poured in forms, and inside: walls and slabs.
    FormedInside,
}

/// The least concrete over a bar.
///
/// Source: IRC 2024 R403.1.3.5.3, read in a secondary copy.
/// Range:  bars of the table.
/// Result: clear cover.
pub fn least_cover(face: Face, bar: Bar) -> Length {
    match face {
        Face::AgainstEarth => Length::inches(3),
        Face::FormedOutside if bar.number <= 5 => Length::sixteenths(1, 8),
        Face::FormedOutside => Length::inches(2),
        Face::FormedInside => Length::sixteenths(0, 12),
    }
}

#[cfg(test)]
mod tests {
    use super::ConcreteCode::{Aci318_14, Aci318_19};
    use super::*;
    use crate::design::concrete::bars::numbered;

    fn no_5() -> Bar {
        numbered(5).unwrap()
    }

    /// By hand: 12 less 3 less 0.3125 is 8.6875; a bar higher 8.0625. 9 in. thick leaves 5.6875, too little.
    #[test]
    fn the_upper_layer_has_less_depth() {
        let depth =
            |thickness, layer| effective_depth(Length::inches(thickness), Length::inches(3), no_5(), layer);
        assert_eq!(depth(12, Layer::Lower), Ok(Length::decimal_inches(8.6875)));
        assert_eq!(depth(12, Layer::Upper), Ok(Length::decimal_inches(8.0625)));
        assert!(depth(9, Layer::Lower).is_err());
    }

    /// By hand: 48 by 12 in.: 0.0018 x 576 = 1.0368; grade 40 in 318-14 0.0020 x 576 = 1.152; 80 ksi 0.0014 x 576 = 0.8064
    /// (0.0018 x 60/80 = 0.00135 is less).
    #[test]
    fn the_editions_differ_for_other_grades() {
        let least = |code, ksi| {
            least_steel(code, Stress::ksi(ksi), Length::inches(48), Length::inches(12))
                .map(|area| area.to_sq_in())
        };
        for (code, ksi, area) in [
            (Aci318_19, 40.0, 1.0368),
            (Aci318_19, 60.0, 1.0368),
            (Aci318_14, 40.0, 1.152),
            (Aci318_14, 60.0, 1.0368),
            (Aci318_14, 80.0, 0.8064),
        ] {
            assert!((least(code, ksi).unwrap() - area).abs() < 1e-9, "{code:?} {ksi}");
        }
        assert!(least(Aci318_14, 81.0).is_err() && least(Aci318_19, 101.0).is_err());
        assert!(least(Aci318_14, 39.0).is_err() && least(Aci318_14, f64::NAN).is_err());
    }

    /// By hand: 4 #5 in 48 in. with 3 in. at the sides: (48 - 6 - 0.625)/3 = 13.79 in., below 18.
    #[test]
    fn bars_lie_evenly() {
        let apart = |count| spacing(Length::inches(48), Length::inches(3), no_5(), count);
        assert!((apart(4).unwrap().to_inches() - 13.791_666).abs() < 1e-4);
        assert!(apart(1).is_err() && apart(0).is_err());
        assert!(spacing(Length::inches(6), Length::inches(3), no_5(), 2).is_err());
        assert_eq!(widest_spacing(Length::inches(12)), Length::inches(18));
        assert_eq!(widest_spacing(Length::inches(5)), Length::inches(15));
        assert_eq!(least_clear_spacing(no_5()), Length::inches(1));
        assert_eq!(least_clear_spacing(numbered(11).unwrap()), Length::decimal_inches(1.41));
    }

    /// By hand: 6 by 4 ft: β 1.5, 2/2.5 = 0.8; a square 1.
    #[test]
    fn oblong_pads_gather_their_short_bars() {
        let share = |one, other| central_band_share([Length::feet(one), Length::feet(other)]);
        assert!((share(6, 4).unwrap() - 0.8).abs() < 1e-12);
        assert!((share(4, 6).unwrap() - 0.8).abs() < 1e-12);
        assert!((share(4, 4).unwrap() - 1.0).abs() < 1e-12);
        assert!(share(0, 4).is_err());
    }
}
