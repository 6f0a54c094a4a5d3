//! Foundation walls, sills, footings and slabs.

pub mod anchor_near_edge;
pub mod anchor_too_small;
pub mod anchors_too_far_apart;
pub mod column_off_pad;
pub mod crawl_clearance;
pub mod footing_on_backfill;
pub mod footing_step_steep;
pub mod frost_depth;
pub mod pad_clash;
pub mod pad_vs_slab;
pub mod pocket_clearance;
pub mod seat_above_wall_top;
pub mod shelf_too_narrow;
pub mod short_studs_unsheathed;
pub mod sill_untreated;
pub mod soil_above_lower_floor;
pub mod step_at_wrong_station;
pub mod stoop_buries_wood;
pub mod upstand_too_thin_or_tall;
pub mod wall_thin_behind_pocket;
pub mod wall_top_unsupported;
pub mod wood_near_grade;
