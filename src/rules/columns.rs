//! Columns and posts.

pub mod base_not_buried;
pub mod cap_turned;
pub mod cap_unbalanced;
pub mod column_in_the_way;
pub mod column_length_does_not_close;
pub mod column_minimum;
pub mod column_overload;
pub mod grout_range;
pub mod post_off_line;
pub mod wood_post_on_concrete;
