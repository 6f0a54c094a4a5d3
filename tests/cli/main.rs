//! The program as a person or a build runs it: arguments in; output, exit code and files out.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // helpers of tests

mod baseline;
mod changed_since;
mod changes;
mod configuration;
mod day;
#[path = "../support/dice.rs"]
mod dice;
mod exit_codes;
mod explain;
mod facts;
mod findings;
mod format;
mod git;
mod help;
#[path = "../support/houses.rs"]
mod houses;
mod inputs;
#[path = "../support/many.rs"]
mod many;
mod many_projects;
mod program;
mod repository;
mod revisions;
mod shapes;
mod shards;
mod sheets;
mod start;
mod working_folder;
