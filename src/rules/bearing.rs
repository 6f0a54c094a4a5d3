//! Where load crosses from one member to the next: wood, plates, connectors.

pub mod base_plate_too_thin;
pub mod cap_too_short;
pub mod cap_too_thin;
pub mod concrete_crushed;
pub mod connector_overloaded;
pub mod flat_plate_in_column_line;
pub mod wood_crush;
