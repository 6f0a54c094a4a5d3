//! Members that share their load.

use crate::design::wood::Stuff;
use crate::units::Length;

/// Members side by side, as far as they can share a load.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Row {
    /// How many.
    pub members: u32,
    /// Centre to centre; plies in contact are apart by their thickness.
    pub spacing: Length,
    /// Something joins them that can carry load across: a deck, or nails and bolts between plies.
    pub is_joined: bool,
}

/// The repetitive member factor, C_r, on bending alone.
///
/// Source: NDS 2018 §4.3.9, 1.15 for dimension lumber (borne out by published span tables); §8.3.7, 1.04 for composite
/// lumber, from memory; 1 for timbers, glulam and I-joists (§7.3.6, from memory).
/// Range:  any row; fewer than three members, wider spacing than 24 in., or nothing to join them: 1.
/// Result: 1, 1.04 or 1.15.
pub fn repetitive_member_factor(stuff: Stuff, row: Row) -> f64 {
    let shares = row.members >= LEAST_MEMBERS && row.spacing <= WIDEST_SPACING && row.is_joined;
    match stuff {
        Stuff::Dimension if shares => 1.15,
        Stuff::Composite if shares => 1.04,
        Stuff::Dimension | Stuff::Composite | Stuff::Timber | Stuff::Glulam | Stuff::IJoist => 1.0,
    }
}

/// NDS 2018 §4.3.9.
const LEAST_MEMBERS: u32 = 3;

/// NDS 2018 §4.3.9.
const WIDEST_SPACING: Length = Length::inches(24);

#[cfg(test)]
mod tests {
    use super::*;

    fn factor(members: u32, spacing: Length, is_joined: bool) -> f64 {
        repetitive_member_factor(Stuff::Dimension, Row { members, spacing, is_joined })
    }

    /// NDS §4.3.9: three or more, 24 in. or nearer, joined.
    #[test]
    fn two_plies_share_nothing() {
        let ply = Length::sixteenths(1, 8);
        assert!((factor(2, ply, true) - 1.0).abs() < 1e-9);
        assert!((factor(3, ply, true) - 1.15).abs() < 1e-9);
        assert!((factor(9, Length::inches(24), true) - 1.15).abs() < 1e-9);
        assert!((factor(9, Length::sixteenths(24, 1), true) - 1.0).abs() < 1e-9);
        assert!((factor(9, Length::inches(16), false) - 1.0).abs() < 1e-9);
        let joists = Row { members: 9, spacing: Length::inches(16), is_joined: true };
        assert!((repetitive_member_factor(Stuff::IJoist, joists) - 1.0).abs() < 1e-9);
        assert!((repetitive_member_factor(Stuff::Composite, joists) - 1.04).abs() < 1e-9);
    }
}
