//! Storyrod: the framing of a house as text, checked.
//!
//! Data flows one way, and a module uses only what stands before it (`DEVELOPERS.md` has the table, a test keeps it):
//!
//! ```text
//! units  text ─ syntax ─ model ─ geometry ─ statics ─ verify ─ house ─ facts ─ rules ─ snapshot ─ compare ─ report  ide
//!                          │                            │                                                          │
//!             products  profiles                     design                                      workspace ─ server  cli
//! ```
//!
//! `syntax` turns text into a tree that keeps every byte; `model` is the house as written; `geometry` derives where
//! everything is, `statics` what everything carries, `verify` whether it holds by the clauses of `design`; `rules` turn a house into findings; `snapshot::analyse` runs it all on one state of the files.

pub mod cli;
pub mod compare;
pub mod design;
pub mod diagnostic;
pub mod facts;
pub mod geometry;
pub mod house;
pub mod ide;
pub mod inputs;
pub mod model;
pub mod products;
pub mod profiles;
pub mod report;
pub mod rules;
pub mod server;
pub mod snapshot;
pub mod statics;
pub mod syntax;
#[cfg(test)]
mod testing;
pub mod text;
pub mod units;
pub mod verify;
pub mod workspace;
