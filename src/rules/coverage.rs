//! What a house has that nothing here works out.

pub mod lateral_not_covered;
pub mod roof_drift_not_covered;
