//! Members on supports: against cases worked out elsewhere, formulas of the textbooks, and what must hold of every member.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

mod cases;
mod formulas;
mod oracle;
#[path = "../support/oracle_members.rs"]
mod oracle_members;
mod properties;
mod refusals;
