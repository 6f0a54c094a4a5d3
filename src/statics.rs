//! Forces: what acts on each element, what it hands on to what carries it, down to the soil.
//!
//! Cases stay apart all the way ([`cases::ByCase`]). Every action keeps where it is from, so that a reaction can be
//! taken apart down to the loads of the spec. What comes down equals what went on; what reaches nothing is named.

pub mod action;
pub mod applied;
pub mod balance;
pub mod beam;
pub mod carried_load;
pub mod cases;
pub mod continuous;
pub mod contributors;
pub mod field;
pub mod joists;
pub mod member_line;
pub mod partial_load;
pub mod pattern;
pub mod roof;
pub mod stiffness;
pub mod takedown;
pub mod wall;
