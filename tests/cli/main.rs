//! The program as a person or a build runs it: arguments in; output, exit code and files out.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // helpers of tests

mod changes;
mod day;
mod explain;
mod findings;
mod format;
mod inputs;
mod program;
mod shapes;
mod sheets;
