//! Limits of foundations: walls and shelves, sills and anchors, grade, footings, soil, columns and their bases.
//!
//! Sources: the residential code, sections R317 and R401 to R407; each row says in what copy it was read, if in any.

use crate::profiles::Status::{CommonPractice, Confirmed, FromMemory, LowGradeCopy};
use crate::profiles::{Count, Factor, Limit, LimitValue, OneIn};
use crate::units::{AreaLoad, Density, Force, Length, Stress};

const COPY: &str = "read in a secondary copy";
const LATER: &str = "2024 text, read in a secondary copy";
const LOW: &str = "read in a copy of low grade";

limits! {
    /// Air between a shelf's sill and the concrete beside it.
    SHELF_GAP: Length = Length::sixteenths(0, 8), "shelf-gap", "R317.1, by analogy with beam pockets", CommonPractice;
    /// Concrete left outside a shelf or a pocket is no thinner without design.
    UPSTAND_THICKNESS: Length = Length::sixteenths(3, 8), "upstand-thickness", "Ontario building code 9.15.4.7, a foreign code by analogy", CommonPractice;
    /// Concrete left outside a shelf stands no taller without design.
    UPSTAND_HEIGHT: Length = Length::sixteenths(13, 12), "upstand-height", "Ontario building code 9.15.4.7, a foreign code by analogy", CommonPractice;
    /// Air at the top, sides and end of a wood beam in concrete.
    POCKET_AIR_GAP: Length = Length::sixteenths(0, 8), "pocket-air-gap", "R317.1", Confirmed(COPY);
    /// A wall steps within this of the edge of the floor it steps for.
    STEP_STATION: Length = Length::sixteenths(0, 8), "step-station", "-", CommonPractice;
    /// Earth stands no higher against a wall that nothing holds at its top.
    UNBALANCED_FILL: Length = Length::inches(48), "unbalanced-fill", "R404.1", LowGradeCopy("2003 text, read in a copy of low grade");
    /// Ground on a wall that no floor holds at its top is no higher.
    FILL_WITHOUT_TOP_SUPPORT: Length = Length::feet(4), "fill-without-top-support", "R404.1", FromMemory;
    /// A floor opening leaves a wall top without support for no longer.
    UNSUPPORTED_WALL_TOP: Length = Length::feet(4), "unsupported-wall-top", "Ontario building code, a foreign code by analogy", CommonPractice;
    /// A floor opening leaves no greater share of a wall's length without support.
    UNSUPPORTED_WALL_SHARE: OneIn = OneIn(4), "unsupported-wall-share", "Ontario building code, a foreign code by analogy", CommonPractice;
    /// A floor opening nearer to a wall leaves no floor between that holds it.
    OPENING_BESIDE_WALL: Length = Length::inches(12), "opening-beside-wall", "-", CommonPractice;
    /// A wood sill or rim clears the grade outside.
    SILL_ABOVE_GRADE: Length = Length::inches(8), "sill-above-grade", "R317.1", Confirmed(COPY);
    /// Wood siding clears the grade outside.
    SIDING_ABOVE_GRADE: Length = Length::inches(6), "siding-above-grade", "R317.1", Confirmed(COPY);
    /// Concrete stands above the grade outside.
    CONCRETE_ABOVE_GRADE: Length = Length::inches(6), "concrete-above-grade", "R404.1.6", Confirmed(COPY);
    /// Concrete stands above the grade outside where masonry veneer covers it.
    CONCRETE_ABOVE_GRADE_VENEER: Length = Length::inches(4), "concrete-above-grade-veneer", "R404.1.6", Confirmed(COPY);
    /// A stoop that is open-jointed from the wood beside it stands off by this.
    STOOP_GAP: Length = Length::inches(2), "stoop-gap", "-", CommonPractice;
    /// Untreated joists clear the ground of a crawl space.
    CRAWL_CLEARANCE_JOISTS: Length = Length::inches(18), "crawl-clearance-joists", "R317.1", Confirmed(COPY);
    /// Untreated girders clear the ground of a crawl space.
    CRAWL_CLEARANCE_GIRDERS: Length = Length::inches(12), "crawl-clearance-girders", "R317.1", Confirmed(COPY);
    /// Anchor bolts stand no further apart.
    ANCHOR_SPACING: Length = Length::feet(6), "anchor-spacing", "R403.1.6", LowGradeCopy(LOW);
    /// Each piece of sill has an anchor bolt this near each end.
    ANCHOR_END_FURTHEST: Length = Length::inches(12), "anchor-end-furthest", "R403.1.6", LowGradeCopy(LOW);
    /// An anchor bolt stands this many of its diameters from the end of a piece of sill.
    ANCHOR_END_DIAMETERS: Count = Count(7), "anchor-end-diameters", "R403.1.6", FromMemory;
    /// Each piece of sill has this many anchor bolts.
    ANCHORS_A_PIECE: Count = Count(2), "anchors-a-piece", "R403.1.6", LowGradeCopy(LOW);
    /// An anchor bolt is no thinner.
    ANCHOR_DIAMETER: Length = Length::sixteenths(0, 8), "anchor-diameter", "R403.1.6", LowGradeCopy(LOW);
    /// An anchor bolt reaches into the concrete.
    ANCHOR_EMBEDMENT: Length = Length::inches(7), "anchor-embedment", "R403.1.6", LowGradeCopy(LOW);
    /// An anchor bolt reaches past the sills for washer and nut.
    ANCHOR_PROJECTION: Length = Length::inches(1), "anchor-projection", "-", CommonPractice;
    /// From the middle of an anchor bolt to the edge of the concrete: the nose of a shelf, a face of the wall.
    ANCHOR_EDGE: Length = Length::sixteenths(1, 12), "anchor-edge", "-", CommonPractice;
    /// Studs on a foundation wall that are shorter are sheathed or solid blocking.
    CRIPPLE_HEIGHT: Length = Length::inches(14), "cripple-height", "R602.9", FromMemory;
    /// Studs on a foundation wall that are longer are sized as a storey.
    CRIPPLE_AS_STOREY: Length = Length::feet(4), "cripple-as-storey", "R602.9", FromMemory;
    /// A footing is no narrower.
    FOOTING_WIDTH: Length = Length::inches(12), "footing-width", "R403.1.1", Confirmed(LATER);
    /// A footing is no thinner.
    FOOTING_THICKNESS: Length = Length::inches(6), "footing-thickness", "R403.1.1", Confirmed(LATER);
    /// A footing projects no less past what stands on it.
    FOOTING_PROJECTION: Length = Length::inches(2), "footing-projection", "R403.1.1", Confirmed(LATER);
    /// A plain footing projects no more than this times its thickness.
    FOOTING_PROJECTION_PER_THICKNESS: Factor = Factor(1.0), "footing-projection-per-thickness", "R403.1.1", Confirmed(LATER);
    /// A footing's bottom lies below undisturbed ground, and below frost.
    FOOTING_DEPTH: Length = Length::inches(12), "footing-depth", "R403.1.4", Confirmed(LATER);
    /// A footing's bottom slopes no more; beyond that it steps.
    FOOTING_SLOPE: OneIn = OneIn(10), "footing-slope", "R403.1.5", FromMemory;
    /// A footing beside a basement keeps above the line that falls one in this many towards the basement's footing.
    BACKFILL_SLOPE: OneIn = OneIn(1), "backfill-slope", "-", CommonPractice;
    /// Ground dug out and filled again beside a basement wall.
    DIG_OUT_WIDTH: Length = Length::feet(3), "dig-out-width", "-", CommonPractice;
    /// Soil pressure allowed without tests, where nothing is known of the soil.
    PRESUMPTIVE_BEARING: AreaLoad = AreaLoad::psf(1500.0), "presumptive-bearing", "R401.4.1", Confirmed(COPY);
    /// A greater point load on a strip footing is spread or gets a pad of its own.
    POINT_LOAD_ON_STRIP: Force = Force::lb(8000.0), "point-load-on-strip", "-", CommonPractice;
    /// A column stands off its pad's centre by no more.
    PAD_ECCENTRICITY: Length = Length::inches(2), "pad-eccentricity", "-", CommonPractice;
    /// A column off its pad's centre by more than this share of the pad lifts the far edge.
    PAD_ECCENTRICITY_SHARE: OneIn = OneIn(6), "pad-eccentricity-share", "-", CommonPractice;
    /// A slab on ground is no thinner, over a pad either.
    SLAB_THICKNESS: Length = Length::sixteenths(3, 8), "slab-thickness", "R506.1", FromMemory;
    /// Concrete strength where none is stated.
    CONCRETE_STRENGTH: Stress = Stress::psi(2500.0), "concrete-strength", "R402.2", FromMemory;
    /// Edition of ACI 318 by its year: 2014 or 2019.
    CONCRETE_CODE: Count = Count(2019), "concrete-code", "-", CommonPractice;
    /// Weight of concrete where none is stated.
    CONCRETE_WEIGHT: Density = Density::pcf(150.0), "concrete-weight", "-", CommonPractice;
    /// Untreated wood posts stand above a concrete floor.
    WOOD_POST_ABOVE_CONCRETE: Length = Length::inches(1), "wood-post-above-concrete", "R317.1.4", FromMemory;
    /// Untreated wood posts stand above earth.
    WOOD_POST_ABOVE_EARTH: Length = Length::inches(8), "wood-post-above-earth", "R317.1", Confirmed(COPY);
    /// True side of the least wood column, 4x4 nominal.
    WOOD_COLUMN_SIDE: Length = Length::sixteenths(3, 8), "wood-column-side", "R407.3", FromMemory;
    /// Nominal diameter of the least steel column, a Schedule 40 pipe.
    STEEL_COLUMN_DIAMETER: Length = Length::inches(3), "steel-column-diameter", "R407.3", LowGradeCopy(LOW);
    /// Grout under a steel plate is no thinner.
    GROUT_LEAST: Length = Length::sixteenths(0, 12), "grout-least", "-", CommonPractice;
    /// Grout under a steel plate is no thicker.
    GROUT_MOST: Length = Length::sixteenths(1, 8), "grout-most", "-", CommonPractice;
    /// Packing under a beam is no thicker.
    SHIM_MOST: Length = Length::sixteenths(0, 8), "shim-most", "-", CommonPractice;
    /// Nuts and bolt ends above a base plate.
    BASE_NUTS: Length = Length::sixteenths(1, 4), "base-nuts", "-", CommonPractice;
    /// Concrete over a buried base plate with its nuts.
    BASE_COVER: Length = Length::sixteenths(0, 8), "base-cover", "-", CommonPractice;
}

#[cfg(test)]
mod tests {
    use super::*;

    /// IRC R317.1, read in a secondary copy: an untreated joist 17 in. above the soil of a crawl space fails and one 18 in.
    /// above passes; a girder 11-1/2 in. above fails; 3/8 in. beside a girder in a pocket fails, 1/2 is needed.
    #[test]
    fn wood_near_the_ground_agrees_with_the_published_cases() {
        assert!(Length::inches(17) < CRAWL_CLEARANCE_JOISTS.value);
        assert!(Length::inches(18) >= CRAWL_CLEARANCE_JOISTS.value);
        assert!(Length::decimal_inches(11.5) < CRAWL_CLEARANCE_GIRDERS.value);
        assert!(Length::decimal_inches(0.375) < POCKET_AIR_GAP.value);
        assert_eq!(POCKET_AIR_GAP.value, Length::decimal_inches(0.5));
    }

    /// IRC 2024 R403.1.1 and R403.1.4, read in a secondary copy: width 12, thickness 6, projection 2 up to the thickness,
    /// 12 in. below undisturbed ground.
    #[test]
    fn footings_agree_with_the_published_case() {
        assert_eq!(FOOTING_WIDTH.value, Length::inches(12));
        assert_eq!(FOOTING_THICKNESS.value, Length::inches(6));
        assert_eq!(FOOTING_PROJECTION.value, Length::inches(2));
        assert_eq!(FOOTING_PROJECTION_PER_THICKNESS.value, Factor(1.0));
        assert_eq!(FOOTING_DEPTH.value, Length::inches(12));
    }

    /// IRC Table R401.4.1 and IBC Table 1806.2, read in secondary copies: 1,500 psf for clay is the least of the classes.
    #[test]
    fn soil_agrees_with_the_published_case() {
        let classes = [12_000.0, 4_000.0, 3_000.0, 2_000.0, 1_500.0];
        let least = classes.into_iter().fold(f64::INFINITY, f64::min);
        assert_eq!(PRESUMPTIVE_BEARING.value, AreaLoad::psf(least));
    }

    /// Public exam text on IRC R403.1.6, a copy of low grade: two sills of 11 ft take 6 bolts. 12 in. from each end leaves
    /// 9 ft, more than one spacing of 6 ft, so each piece takes 3.
    #[test]
    fn anchors_agree_with_the_published_case() {
        let between = Length::feet(11) - ANCHOR_END_FURTHEST.value * 2;
        assert!(between > ANCHOR_SPACING.value && between <= ANCHOR_SPACING.value * 2);
    }
}
