//! The spans of floor joists that the residential code tabulates, worked out as its tables were.
//!
//! The procedure below gives every cell of the tables that could be read, so that cells that could not be read follow.

use crate::design::NotCovered;
use crate::design::wood::rectangle;
use crate::units::{AreaLoad, Length, LineLoad, Stress};

/// A joist of a floor, by its allowable values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Joist {
    /// Fb' under load of ten years: reference value, size, repetitive and service factors.
    pub bending: Stress,
    /// E'.
    pub modulus: Stress,
    /// True breadth.
    pub breadth: Length,
    /// True depth.
    pub depth: Length,
    /// Centre to centre.
    pub spacing: Length,
}

/// What ends the span.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Governs {
    /// Sag under live load.
    Deflection,
    /// Bending under all load.
    Bending,
}

/// The longest clear span.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// By sag under live load.
    pub by_deflection: Length,
    /// By bending under all load.
    pub by_bending: Length,
    /// The shorter, to the nearest inch, as a table prints it.
    pub printed: Length,
    /// Which of the two it is.
    pub governs: Governs,
}

/// The longest clear span of a floor joist, as the tables print it.
///
/// Source: the procedure behind tables R502.3.1(1) and (2) of the residential code, with which every cell that was read in
/// a secondary copy comes out: the clear span as design span, no self-weight on top of the dead load, live load alone
/// for sag, shear and bearing left to other checks. Where bearing is short the printed tables carry a note.
/// Range:  loads, allowable values and sizes above 0 (dead load at least 0); `sag` is the 360 of L/360.
/// Result: both spans and the printed one.
pub fn span(joist: &Joist, live: AreaLoad, dead: AreaLoad, sag: f64) -> Result<Span, NotCovered> {
    let live_line = live * joist.spacing;
    let whole_line = (live + dead) * joist.spacing;
    let bending_capacity = joist.bending * rectangle::section_modulus(joist.breadth, joist.depth);
    let rigidity = joist.modulus * rectangle::second_moment(joist.breadth, joist.depth);

    let by_deflection = 384.0 * rigidity.to_lb_in2() / (5.0 * per_inch(live_line) * sag);
    let by_bending = 8.0 * bending_capacity.to_lb_in() / per_inch(whole_line);
    let by_deflection = possible(by_deflection.cbrt())?;
    let by_bending = possible(by_bending.sqrt())?;
    let governs = if by_deflection <= by_bending { Governs::Deflection } else { Governs::Bending };
    let printed = by_deflection.min(by_bending).rounded_to(Length::inches(1));
    Ok(Span { by_deflection, by_bending, printed, governs })
}

/// Pounds per inch.
fn per_inch(load: LineLoad) -> f64 {
    load.to_plf() / 12.0
}

/// Inches as a span, when they can be one: up to 100 ft.
fn possible(inches: f64) -> Result<Length, NotCovered> {
    const LONGEST: f64 = 1_200.0;
    if !(0.0 < inches && inches <= LONGEST) {
        return Err(NotCovered::OutOfRange {
            quantity: "span, inches",
            value: inches,
            limit: LONGEST,
            clause: "R502.3.1",
        });
    }
    Ok(Length::decimal_inches(inches))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// SPF No.2 2x10 at 16 in.: Fb 875 x 1.1 x 1.15, E 1.4e6.
    fn joist() -> Joist {
        Joist {
            bending: Stress::psi(875.0 * 1.1 * 1.15),
            modulus: Stress::psi(1.4e6),
            breadth: Length::sixteenths(1, 8),
            depth: Length::sixteenths(9, 4),
            spacing: Length::inches(16),
        }
    }

    /// Residential code (2018), table R502.3.1(2), read in a secondary copy: 15 ft 5 in., by bending. By hand: 8 x 1106.875 x
    /// 21.391 / (66.667 / 12) = 34,095, whose root is 184.65 in.
    #[test]
    fn a_published_span_is_rounded_to_the_nearest_inch() {
        let span = span(&joist(), AreaLoad::psf(40.0), AreaLoad::psf(10.0), 360.0).unwrap();
        assert_eq!(span.printed, Length::inches(185));
        assert_eq!(span.governs, Governs::Bending);
        assert!((span.by_bending.to_inches() - 184.65).abs() < 0.005);
    }

    #[test]
    fn no_load_has_no_span() {
        let at = |live: f64, dead: f64| span(&joist(), AreaLoad::psf(live), AreaLoad::psf(dead), 360.0);
        assert!(at(0.0, 10.0).is_err());
        assert!(at(f64::NAN, 10.0).is_err());
        assert!(at(-40.0, 10.0).is_err());
        assert!(at(40.0, 0.0).is_ok());
        let weak = Joist { bending: Stress::ZERO, ..joist() };
        assert!(span(&weak, AreaLoad::psf(40.0), AreaLoad::psf(10.0), 360.0).is_err());
    }

    #[test]
    fn more_load_or_wider_spacing_shortens_it() {
        let spans: Vec<Length> = [12, 16, 19, 24]
            .iter()
            .map(|inches| {
                let joist = Joist { spacing: Length::inches(*inches), ..joist() };
                span(&joist, AreaLoad::psf(40.0), AreaLoad::psf(10.0), 360.0).unwrap().printed
            })
            .collect();
        assert!(spans.windows(2).all(|pair| pair[0] > pair[1]));
    }
}
