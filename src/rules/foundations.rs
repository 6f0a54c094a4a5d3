//! Foundation walls, sills, footings and slabs.

pub mod frost_depth;
