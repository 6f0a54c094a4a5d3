//! The least shape that the residential code asks of a footing, whatever is on it.

use crate::units::Length;

/// Least width: IRC R403.1.1, 2024 text read in a secondary copy.
pub const WIDTH: Length = Length::inches(12);
/// Least thickness: IRC R403.1.1, 2024 text read in a secondary copy.
pub const THICKNESS: Length = Length::inches(6);
/// Least projection past what stands on it: IRC R403.1.1, 2024 text read in a secondary copy.
pub const PROJECTION: Length = Length::inches(2);

/// Whether a footing has the shape that the residential code asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shape {
    /// At least 12 in. wide.
    pub is_wide_enough: bool,
    /// At least 6 in. thick.
    pub is_thick_enough: bool,
    /// At least 2 in. past what stands on it.
    pub projects_enough: bool,
    /// No further past it than it is thick: a plain footing that reaches further breaks off.
    pub projects_within_thickness: bool,
}

impl Shape {
    /// All of it.
    pub fn holds(self) -> bool {
        self.is_wide_enough && self.is_thick_enough && self.projects_enough && self.projects_within_thickness
    }
}

/// The shape of a concrete footing against the least that the residential code asks for.
///
/// Source: IRC R403.1.1, 2024 text read in a secondary copy.
/// Range:  plain footings of houses; a designed one may reach further than it is thick.
/// Result: four claims. `projection` is the longest, from what stands on the footing to its edge.
pub fn shape(width: Length, thickness: Length, projection: Length) -> Shape {
    Shape {
        is_wide_enough: width >= WIDTH,
        is_thick_enough: thickness >= THICKNESS,
        projects_enough: projection >= PROJECTION,
        projects_within_thickness: projection <= thickness,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// By hand: 16 by 8 in. under an 8 in. wall projects 4; 42 by 12 in. under an 8 in. plate projects 17.
    #[test]
    fn a_strip_holds_and_a_wide_plain_pad_does_not() {
        let inches = Length::inches;
        assert!(shape(inches(16), inches(8), inches(4)).holds());
        let pad = shape(inches(42), inches(12), inches(17));
        assert!(!pad.projects_within_thickness && !pad.holds());
        assert!(pad.is_wide_enough && pad.is_thick_enough && pad.projects_enough);
    }

    /// Each limit itself holds, and a sixteenth past it does not.
    #[test]
    fn the_ends_of_the_range() {
        let past = Length::sixteenths(0, 1);
        assert!(shape(WIDTH, THICKNESS, PROJECTION).holds());
        assert!(shape(WIDTH, THICKNESS, THICKNESS).holds());
        assert!(!shape(WIDTH - past, THICKNESS, PROJECTION).is_wide_enough);
        assert!(!shape(WIDTH, THICKNESS - past, PROJECTION).is_thick_enough);
        assert!(!shape(WIDTH, THICKNESS, PROJECTION - past).projects_enough);
        assert!(!shape(WIDTH, THICKNESS, THICKNESS + past).projects_within_thickness);
    }
}
