//! Where everything is: the plan and the vertical stack, both exact.
//!
//! Elevations flow outward from the datum along supports. Where the author states one, the derived number is compared
//! with it (a [`Closure`]) and the flow goes on from the stated one: a wrong number shows once, where its loop closes.

pub mod alignment;
pub mod anchors;
pub mod backfill;
pub mod band;
pub mod bearing;
pub mod carried;
pub mod columns;
pub mod cuts;
pub mod deck_edges;
pub mod dimension_string;
pub mod doorways;
pub mod drain_runs;
pub mod drops;
pub mod drying;
pub mod enclosure;
pub mod extents;
pub mod flights;
pub mod floor_openings;
pub mod footing_steps;
pub mod hold_downs;
pub mod hung;
pub mod joist_space;
pub mod layout;
pub mod level_steps;
pub mod levels;
pub mod load_path;
pub mod opening_cuts;
pub mod overhangs;
pub mod pads;
pub mod partitions;
pub mod passages;
pub mod plan_contacts;
pub mod plate_lines;
pub mod roof_steps;
pub mod rooms;
pub mod stack;
pub mod stair_plan;
pub mod step_divider;
pub mod step_edges;
pub mod sum;
pub mod surfaces;
pub mod thrust;
pub mod tolerances;
pub mod wall_face;
pub mod wall_lines;
pub mod wood;

use crate::geometry::carried::Carried;
use crate::geometry::columns::ColumnStack;
use crate::geometry::flights::Flight;
use crate::geometry::levels::FloorLevels;
use crate::geometry::load_path::LoadPath;
use crate::geometry::plan_contacts::Contacts;
use crate::geometry::stack::Closure;
use crate::geometry::surfaces::Surfaces;
use crate::model::Model;

/// Where everything is.
#[derive(Debug)]
pub struct Geometry {
    /// Subfloor, finish, joist top and so on of each floor, in the model's order.
    pub floors: Vec<FloorLevels>,
    /// Tops and bottoms of every other element.
    pub surfaces: Surfaces,
    /// Every place where a stated number meets a derived one, or two derived ones meet.
    pub closures: Vec<Closure>,
    /// What each joist field, beam, column and wall really meets in plan.
    pub contacts: Contacts,
    /// Cap, foot and cut of each column, in the model's order.
    pub columns: Vec<ColumnStack>,
    /// Each stair's rise and risers, in the model's order.
    pub flights: Vec<Flight>,
    /// Who carries whom, down to the soil.
    pub load_path: LoadPath,
}

impl Geometry {
    /// Derives the geometry of a house.
    pub fn of(model: &Model) -> Self {
        let carried = Carried::of(model);
        let floors = levels::of(model, &carried);
        let mut closures = levels::closures(model, &floors);
        let surfaces = surfaces::of(model, &floors, &carried);
        closures.extend(stack::closures(model, &floors, &surfaces, &carried));
        let contacts = plan_contacts::of(model);
        let columns = columns::of(model, &floors, &surfaces, &carried);
        let flights = flights::of(model, &floors);
        let load_path = load_path::of(model, &carried);
        Self { floors, surfaces, closures, contacts, columns, flights, load_path }
    }
}
