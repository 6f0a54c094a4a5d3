//! Does it hold: for each member and limit state one [`Verification`], with every number on the way.
//!
//! This is where a member's size, its forces and the clauses of `design` meet. A check that could not run is a
//! verification too, and says why: it never counts as passed.

pub mod check;
pub mod limit_state;
pub mod quantity;
