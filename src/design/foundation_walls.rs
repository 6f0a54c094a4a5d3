//! Foundation walls against earth: what the codes' tables say, and a second opinion by statics.

use crate::design::NotCovered;
use crate::design::concrete::plain::{PlainFlexure, flexure};
use crate::design::soil::classification::{LateralSoilLoad, SoilGroup, lateral_soil_load};
use crate::units::{Density, Length, LineLoad, Moment, Stress};

/// What a table asks of a foundation wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Prescribed {
    /// No vertical bars.
    Plain,
}

/// The most unbalanced fill of the row that is here, on a wall that is as high at least.
pub const MOST_FILL: Length = Length::feet(4);
/// The heaviest earth of that row, a foot of depth.
pub const HEAVIEST_EARTH: Density = Density::pcf(60.0);

/// What the codes' tables ask of a concrete foundation wall that is held at its top and bottom.
///
/// Source: IBC table 1807.1.6.2, first row (a wall to 5 ft with fill to 4 ft is plain in all nine cells), read in a secondary copy
///         that quotes it. The other rows, and IRC table R404.1.2(8), were read nowhere and are not here.
/// Range:  wall to 5 ft, unbalanced fill to 4 ft, 7-1/2 in. thick or more, soil to 60 psf a foot. Beyond: the table itself, or
///         design.
/// Result: for a wall with the floor above fastened to it.
pub fn prescribed(
    height: Length,
    unbalanced_fill: Length,
    thickness: Length,
    soil: Density,
) -> Result<Prescribed, NotCovered> {
    const CLAUSE: &str = "IBC table 1807.1.6.2: only its first row is here; see the code's table, or design";
    let out_of_range =
        |quantity, value, limit| Err(NotCovered::LengthOutOfRange { quantity, value, limit, clause: CLAUSE });
    let (highest, most_fill, thinnest) = (Length::feet(5), MOST_FILL, Length::sixteenths(7, 8));
    if !height.is_positive() || height > highest {
        return out_of_range("height of the wall", height, highest);
    }
    if unbalanced_fill.is_negative() || unbalanced_fill > most_fill.min(height) {
        return out_of_range("unbalanced fill", unbalanced_fill, most_fill.min(height));
    }
    if thickness < thinnest {
        return out_of_range("thickness of the wall", thickness, thinnest);
    }
    if !(soil > Density::ZERO && soil <= HEAVIEST_EARTH) {
        return Err(NotCovered::OutOfRange {
            quantity: "soil in psf a foot",
            value: soil.to_pcf(),
            limit: HEAVIEST_EARTH.to_pcf(),
            clause: CLAUSE,
        });
    }
    Ok(Prescribed::Plain)
}

/// What earth does to a wall a foot long that is held at its top and its bottom.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EarthOnWall {
    /// On the floor above, a foot of wall.
    pub top: LineLoad,
    /// On the slab or footing, a foot of wall.
    pub bottom: LineLoad,
    /// The largest moment, on a foot of wall.
    pub moment: Moment,
    /// Where it is, from the top of the wall.
    pub at: Length,
}

/// What drained earth does to a wall that is held at its top and its bottom: a second opinion only.
///
/// The codes' tables count effects that this leaves out and are more generous in marginal cells: a wall that they allow is
/// not refused for this.
///
/// Source: statics of a span under a triangular load from the fill's surface down.
/// Range:  0 < fill ≤ height; level fill, no surcharge, no water, no axial load.
/// Result: service level; at strength level 1.6 times (ASCE 7, load H).
pub fn earth_on_wall(
    height: Length,
    unbalanced_fill: Length,
    soil: Density,
) -> Result<EarthOnWall, NotCovered> {
    const CLAUSE: &str = "statics of a wall held at top and bottom";
    if !unbalanced_fill.is_positive() || unbalanced_fill > height {
        return Err(NotCovered::LengthOutOfRange {
            quantity: "unbalanced fill",
            value: unbalanced_fill,
            limit: height,
            clause: CLAUSE,
        });
    }
    if !(soil > Density::ZERO && soil.is_finite()) {
        return Err(NotCovered::OutOfRange {
            quantity: "soil in psf a foot",
            value: soil.to_pcf(),
            limit: 0.0,
            clause: CLAUSE,
        });
    }
    let at_foot = soil * unbalanced_fill;
    let total = at_foot * unbalanced_fill / 2.0;
    let top = total * (unbalanced_fill / height / 3.0);
    // The shear is nothing where the earth above has used up what the top holds: top = soil y²/2.
    let below_fill = Length::decimal_inches((2.0 * top.to_plf() / soil.to_pcf()).sqrt() * 12.0);
    let above_fill = height - unbalanced_fill;
    let arm = above_fill + below_fill.scaled(2.0 / 3.0);
    Ok(EarthOnWall {
        top,
        bottom: total - top,
        moment: top * FOOT_OF_WALL * arm,
        at: above_fill + below_fill,
    })
}

/// The moment that a foot of plain concrete wall bears: a second opinion only, beside [`earth_on_wall`].
///
/// Source: ACI 318 §14.5.2.1; nothing is deducted, because walls are poured in forms.
/// Range:  2,500 psi ≤ f'c ≤ 10,000 psi. A shelf or a pocket is a section of its own.
/// Result: of a foot of wall.
pub fn plain_wall(thickness: Length, concrete: Stress) -> Result<PlainFlexure, NotCovered> {
    flexure(FOOT_OF_WALL, thickness, concrete)
}

const FOOT_OF_WALL: Length = Length::feet(1);

/// What holds a wall at its top.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Top {
    /// Nothing: it may lean away from the earth.
    Free,
    /// A floor of wood, which gives a little.
    FlexibleFloor,
    /// Something stiff: a slab, or corners close by.
    Stiff,
}

/// The load of drained earth to take for a wall.
///
/// Source: IBC §1610.1, read in a secondary copy: at rest against a wall held at its top, active against a free one, and active
///         against one that reaches no more than 8 ft below grade under a flexible floor.
/// Range:  the soils of table 1610.1.
/// Result: psf a foot of depth.
pub fn design_soil_load(group: SoilGroup, top: Top, below_grade: Length) -> Result<Density, NotCovered> {
    let LateralSoilLoad { active, at_rest, .. } = lateral_soil_load(group)?;
    Ok(match top {
        Top::Free => active,
        Top::FlexibleFloor if below_grade <= Length::feet(8) => active,
        Top::FlexibleFloor | Top::Stiff => at_rest,
    })
}

/// True when a wall thinned at its top to make a shelf takes its vertical bars by its whole thickness.
///
/// Source: IRC R404.1.5.2. The rule and its exception read in a secondary summary; the limits, 24 in. of height and 4 in. of
///         thickness lost, from memory.
/// Range:  shelves for masonry veneer at the top of a concrete wall; the thinned part is no thinner than the wall above it.
/// Result: when false, the thinned part's thickness decides.
pub fn whole_thickness_counts(lost: Length, height: Length) -> bool {
    lost <= Length::inches(4) && height <= Length::inches(24)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 9 ft of wall and of fill at 40 psf a foot: total 40 x 81/2 = 1,620 plf, a third of it at the top, 540. The shear is
    /// nothing at √(2 x 540/40) = 5.196 ft, moment 540 x 5.196 x 2/3 = 1,870.6 lb-ft.
    #[test]
    fn fill_to_the_top() {
        let found = earth_on_wall(Length::feet(9), Length::feet(9), Density::pcf(40.0)).unwrap();
        assert!((found.top.to_plf() - 540.0).abs() < 1e-9);
        assert!((found.bottom.to_plf() - 1_080.0).abs() < 1e-9);
        assert!((found.at.to_inches() / 12.0 - 27.0_f64.sqrt()).abs() < 1e-5);
        assert!((found.moment.to_lb_ft() - 1_870.615).abs() < 0.01);
    }

    #[test]
    fn no_fill_or_more_than_the_wall_has_no_value() {
        let on = |height, fill, pcf| {
            earth_on_wall(Length::feet(height), Length::feet(fill), Density::pcf(pcf)).is_ok()
        };
        assert!(on(8, 8, 30.0));
        assert!(!on(8, 9, 30.0) && !on(8, 0, 30.0) && !on(0, 0, 30.0));
        assert!(!on(8, 7, 0.0) && !on(8, 7, f64::NAN) && !on(8, 7, f64::INFINITY));
    }

    /// By hand: 12 x 7.5²/6 = 112.5 in3 x 5 x 50 = 28,125 lb-in, phi 0.60: 1,406.25 lb-ft.
    #[test]
    fn a_plain_wall_of_seven_and_a_half() {
        let found = plain_wall(Length::sixteenths(7, 8), Stress::psi(2_500.0)).unwrap();
        assert!((found.design.to_lb_ft() - 1_406.25).abs() < 1e-6);
    }

    #[test]
    fn only_the_first_row_is_here() {
        let row = |height, fill, inches, pcf| {
            let thickness = Length::decimal_inches(inches);
            prescribed(Length::feet(height), Length::feet(fill), thickness, Density::pcf(pcf)).is_ok()
        };
        assert!(row(5, 4, 7.5, 60.0));
        assert!(!row(6, 4, 7.5, 30.0) && !row(5, 5, 7.5, 30.0) && !row(5, 4, 7.4, 30.0));
        assert!(!row(5, 4, 7.5, 61.0) && !row(5, 4, 7.5, f64::NAN));
        assert!(!row(3, 4, 7.5, 30.0) && !row(0, 0, 7.5, 30.0));
    }

    /// By hand from the rows of clean gravel: 30 active, 60 at rest.
    #[test]
    fn a_wood_floor_lets_a_wall_of_eight_feet_give() {
        let load = |top, feet| {
            design_soil_load(SoilGroup::WellGradedGravel, top, Length::feet(feet)).unwrap().to_pcf()
        };
        for (top, feet, pcf) in [
            (Top::Free, 9, 30.0),
            (Top::FlexibleFloor, 8, 30.0),
            (Top::FlexibleFloor, 9, 60.0),
            (Top::Stiff, 8, 60.0),
        ] {
            assert!((load(top, feet) - pcf).abs() < 1e-12, "{top:?} {feet}");
        }
        assert!(design_soil_load(SoilGroup::Organic, Top::Free, Length::feet(4)).is_err());
    }
}
