//! The way of every load down to the soil.

pub mod bearing_wall_along_joists;
pub mod bearing_wall_unloaded;
pub mod circular_support;
pub mod footing_missing;
pub mod load_left_out;
pub mod load_reaches_nothing;
pub mod member_unstable;
pub mod partition_loaded;
pub mod point_load_dropped;
pub mod post_untied;
pub mod squash_block_missing;
pub mod squash_block_short;
pub mod stack_broken;
pub mod transfer_web_unstiffened;
pub mod wall_off_support;
