//! Glued lumber: composite lumber, glulam and rim boards by the sizes commonly stocked.
//!
//! Source: from memory of trade lists and, for glulam, of the standard widths of western and southern species.
//! A built size is a true size and need not be listed: these are what the next size up is looked for in.
//! Strength values are declared by a `product`.

use crate::units::{Density, Length};

/// Widths of composite lumber: one ply, then billets.
pub const COMPOSITE_WIDTHS: &[Length] =
    &[Length::sixteenths(1, 12), Length::sixteenths(3, 8), Length::sixteenths(5, 4), Length::inches(7)];

/// Depths of composite lumber.
pub const COMPOSITE_DEPTHS: &[Length] = &[
    Length::sixteenths(5, 8),
    Length::sixteenths(7, 4),
    Length::sixteenths(9, 4),
    Length::sixteenths(9, 8),
    Length::sixteenths(11, 4),
    Length::sixteenths(11, 14),
    Length::inches(14),
    Length::inches(16),
    Length::inches(18),
    Length::inches(24),
];

/// Widths of glulam; its depth is a whole number of laminations.
pub const GLULAM_WIDTHS: &[Length] = &[
    Length::sixteenths(3, 2),
    Length::sixteenths(3, 8),
    Length::sixteenths(5, 2),
    Length::sixteenths(5, 8),
    Length::sixteenths(6, 12),
    Length::sixteenths(8, 12),
];

/// Lamination of glulam: 1-1/2 in. of western species.
pub const WESTERN_LAMINATION: Length = Length::sixteenths(1, 8);

/// Lamination of glulam: 1-3/8 in. of southern pine.
pub const SOUTHERN_LAMINATION: Length = Length::sixteenths(1, 6);

/// Thicknesses of rim board.
pub const RIM_BOARDS: &[Length] = &[Length::inches(1), Length::sixteenths(1, 2), Length::sixteenths(1, 4)];

/// Weight of composite lumber where its product declares none (common practice).
pub const COMPOSITE_WEIGHT: Density = Density::pcf(42.0);

/// Weight of glulam where its product declares none (common practice).
pub const GLULAM_WEIGHT: Density = Density::pcf(36.0);
