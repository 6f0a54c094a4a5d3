//! Columns and posts.

pub mod column_length_does_not_close;
