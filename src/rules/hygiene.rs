//! What a spec should say, so that others can rely on it.

pub mod assumed_value;
pub mod check_not_run;
pub mod declared_without_source;
pub mod element_unreferenced;
