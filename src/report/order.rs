//! The order of files in a report.

use std::path::PathBuf;

use crate::report::junit::allowed;

/// Where a file stands among others: by its folders, then by its name, as every format can show them. A result that is
/// put together from several has the order of one that was written at once.
pub fn place_in_order(name: &str) -> PathBuf {
    PathBuf::from(allowed(name))
}
