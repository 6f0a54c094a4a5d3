//! Glued lumber: what tells a built size of composite lumber, and what glued lumber weighs.
//!
//! Source: widths from memory of trade lists. A built size is a true size and need not be listed; strength values are
//! declared by a `product`.

use crate::units::{Density, Length};

/// Widths of composite lumber: one ply, then billets.
pub const COMPOSITE_WIDTHS: &[Length] =
    &[Length::sixteenths(1, 12), Length::sixteenths(3, 8), Length::sixteenths(5, 4), Length::inches(7)];

/// Weight of composite lumber where its product declares none (common practice).
pub const COMPOSITE_WEIGHT: Density = Density::pcf(42.0);

/// Weight of glulam where its product declares none (common practice).
pub const GLULAM_WEIGHT: Density = Density::pcf(36.0);
