//! Base plates.

use crate::design::NotCovered;
use crate::design::steel::plates::{Column, beyond, thickness};
use crate::design::steel::{above_zero, modulus_over_yield, up_to};
use crate::units::{Force, Length, Stress};

/// How far a plate reaches beyond its column, one way after the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// m, along.
    pub along: Length,
    /// n, across.
    pub across: Length,
    /// λn', between the flanges of a W shape.
    pub between_flanges: Option<BetweenFlanges>,
}

/// The plate between the flanges of a W shape.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BetweenFlanges {
    /// X.
    pub fullness: f64,
    /// λ, at most 1.
    pub share: f64,
    /// n'.
    pub reach: Length,
}

/// A base plate under a load in its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BasePlate {
    /// fp, under the plate.
    pub pressure: Stress,
    /// How far it reaches.
    pub reach: Reach,
    /// l, the longest of the reaches.
    pub governing: Length,
    /// The thickness it needs.
    pub thickness: Length,
}

/// A service load on a plate, and what the concrete below allows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LoadOnConcrete {
    /// Pa.
    pub load: Force,
    /// Pp/Ω, of [`on_concrete`](crate::design::steel::bearing::on_concrete).
    pub allowable: Force,
}

/// A base plate of `along` by `across` under a service load.
///
/// Source: AISC Design Guide 1 and Manual part 14: m, n, λn' of a W shape; 0.95 of a tube both ways, without λn'; 0.80 D
/// of a pipe (from memory). AISC 360-16, -22 §F11, Ω 1.67.
/// Range:  the plate covers the column; 0 < Pa; for a W shape the concrete holds the load, X <= 1.
/// Result: the thickness needed; the concrete is checked apart.
pub fn base(
    column: Column,
    [along, across]: [Length; 2],
    on_concrete: LoadOnConcrete,
    yield_strength: Stress,
) -> Result<BasePlate, NotCovered> {
    const CLAUSE: &str = "AISC Design Guide 1";
    modulus_over_yield(yield_strength, CLAUSE)?;
    above_zero("Pa in kips", on_concrete.load.to_kip(), CLAUSE)?;
    let ([depth, width], [held_along, held_across]) = (column.outside(), column.held());
    let reach = Reach {
        along: beyond(along, depth, held_along, CLAUSE)?,
        across: beyond(across, width, held_across, CLAUSE)?,
        between_flanges: match column {
            Column::WideFlange { depth, flange_width } => Some(between(depth, flange_width, on_concrete)?),
            Column::Tube { .. } | Column::Pipe { .. } => None,
        },
    };
    let inner = reach.between_flanges.map_or(Length::ZERO, |inner| inner.reach.scaled(inner.share));
    let governing = reach.along.max(reach.across).max(inner);
    let pressure = on_concrete.load / (along * across);
    // A strip of one inch: M = fp l2 / 2.
    let strip = Length::inches(1);
    let moment = pressure * (strip * governing) * governing.scaled(0.5);
    Ok(BasePlate { pressure, reach, governing, thickness: thickness(moment, strip, yield_strength) })
}

/// Design Guide 1: the part between the flanges bends as a cantilever of λn'.
fn between(
    depth: Length,
    flange_width: Length,
    on_concrete: LoadOnConcrete,
) -> Result<BetweenFlanges, NotCovered> {
    let (depth, flange_width) = (depth.to_inches(), flange_width.to_inches());
    let shape = 4.0 * depth * flange_width / (depth + flange_width).powi(2);
    let used = on_concrete.load / on_concrete.allowable;
    let fullness = up_to("X", shape * used, 1.0, "AISC Design Guide 1")?;
    let share = (2.0 * fullness.sqrt() / (1.0 + (1.0 - fullness).sqrt())).min(1.0);
    let reach = Length::decimal_inches((depth * flange_width).sqrt() / 4.0);
    Ok(BetweenFlanges { fullness, share, reach })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tube(side: Length, plate: Length) -> Result<BasePlate, NotCovered> {
        let on = LoadOnConcrete { load: Force::kip(16.0), allowable: Force::kip(117.7) };
        base(Column::Tube { along: side, across: side }, [plate, plate], on, Stress::ksi(36.0))
    }

    /// By hand: 4 in. tube on 8 by 8, 16 kip: l = (8 - 3.8)/2 = 2.1 in., fp = 0.25 ksi,
    /// t = 2.1 sqrt(2 x 0.25 x 1.67 / 36) = 0.320 in.
    #[test]
    fn a_tube_by_hand() {
        let plate = tube(Length::inches(4), Length::inches(8)).unwrap();
        assert_eq!(plate.governing, Length::hundredths(210));
        assert!((plate.pressure.to_ksi() - 0.25).abs() < 1e-12);
        assert!((plate.thickness.to_inches() - 0.320).abs() < 0.0005);
    }

    #[test]
    fn a_plate_covers_its_column() {
        assert!(tube(Length::inches(8), Length::inches(8)).is_ok());
        assert!(tube(Length::inches(8), Length::inches(8) - Length::from_units(1)).is_err());
        assert!(tube(Length::ZERO, Length::inches(8)).is_err());
    }

    /// W shapes: the method has no value once the concrete is overloaded.
    #[test]
    fn an_overloaded_concrete_has_no_plate() {
        let column = Column::WideFlange { depth: Length::inches(8), flange_width: Length::inches(8) };
        let of = |load| {
            let on = LoadOnConcrete { load: Force::kip(load), allowable: Force::kip(100.0) };
            base(column, [Length::inches(12); 2], on, Stress::ksi(36.0))
        };
        assert!(of(100.0).is_ok());
        assert!(of(100.1).is_err());
        assert!(of(f64::NAN).is_err());
        assert!(of(-1.0).is_err());
    }
}
