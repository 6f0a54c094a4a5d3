//! What every output says that somebody might build from.

/// The caution that every list and sheet carries.
pub const CAUTION: &str = "Have it checked by a licensed professional: local codes and the products' published values govern; \
                           this list says nothing of shoring or of safety on site.";

/// The caution of findings, which may speak of strength.
pub const STRENGTH_CAUTION: &str = "strength: have it checked by a licensed professional; local codes and the products' published values govern";
