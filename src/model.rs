//! The house as written: every element with its facts as typed values, each with its place in the text.
//!
//! Nothing is derived here. A name is resolved to the element it means, a grid reference to its coordinates, a size to
//! its true dimensions. What the author did not give is `Missing`, what could not be read `Broken`, and what a default
//! decided `Assumed`, with the reason: see [`field::Field`].

pub mod element;
pub mod field;
pub mod foundation;
pub mod framing;
mod lower;
pub mod member;
pub mod openings;
pub mod plan;
pub mod problem;
pub mod promises;
pub mod site;
pub mod stairs;
pub mod stuff;
pub mod support;

use std::collections::HashMap;

use crate::model::element::{Common, ElementId, Mention};
use crate::model::foundation::{Footing, Ledger, Pocket, Shelf, Slab, Wall};
use crate::model::framing::{Beam, Column, Joists, Product};
use crate::model::openings::{Door, Drain, Duct, Header, Hole, Jacks, Notch, Opening, Squash, Window};
use crate::model::problem::ModelProblem;
use crate::model::promises::{HoldPoint, Intent, Sheet};
use crate::model::site::{Area, Floor, Grid, Load, Moisture, Project, Roof};
use crate::model::stairs::{Landing, Stair, Stoop};
use crate::profiles::{Limits, Percent};
use crate::syntax::vocabulary::ElementKind;

/// The house as written.
#[derive(Debug, Default)]
pub struct Model {
    /// The house itself. `None` when the spec has no `project`, or it can't be read.
    pub project: Option<Project>,
    /// The named lines in plan.
    pub grid: Grid,
    /// Declared products.
    pub products: Vec<Product>,
    /// Floors.
    pub floors: Vec<Floor>,
    /// Parts of floors.
    pub areas: Vec<Area>,
    /// Fields of joists.
    pub joists: Vec<Joists>,
    /// Openings in floors and walls.
    pub openings: Vec<Opening>,
    /// Walls.
    pub walls: Vec<Wall>,
    /// Shelves.
    pub shelves: Vec<Shelf>,
    /// Beam pockets.
    pub pockets: Vec<Pocket>,
    /// Ledgers.
    pub ledgers: Vec<Ledger>,
    /// Beams.
    pub beams: Vec<Beam>,
    /// Columns and posts.
    pub columns: Vec<Column>,
    /// Footings.
    pub footings: Vec<Footing>,
    /// Slabs.
    pub slabs: Vec<Slab>,
    /// Stairs.
    pub stairs: Vec<Stair>,
    /// Landings.
    pub landings: Vec<Landing>,
    /// Outdoor landings at doors.
    pub stoops: Vec<Stoop>,
    /// Doors.
    pub doors: Vec<Door>,
    /// Windows.
    pub windows: Vec<Window>,
    /// Headers.
    pub headers: Vec<Header>,
    /// Jack studs.
    pub jacks: Vec<Jacks>,
    /// Squash blocks.
    pub squashes: Vec<Squash>,
    /// Roofs.
    pub roofs: Vec<Roof>,
    /// Loads of their own.
    pub loads: Vec<Load>,
    /// Drains.
    pub drains: Vec<Drain>,
    /// Holes.
    pub holes: Vec<Hole>,
    /// Notches.
    pub notches: Vec<Notch>,
    /// Ducts.
    pub ducts: Vec<Duct>,
    /// Promises of the design.
    pub intents: Vec<Intent>,
    /// Drawing sheets.
    pub sheets: Vec<Sheet>,
    /// Points where the work waits.
    pub hold_points: Vec<HoldPoint>,
    /// Every named element by its name; of two with one name the first.
    pub by_name: HashMap<Box<str>, ElementId>,
    /// Every name of the spec as it stands in the text, where it is given and where it is used, by place.
    pub mentions: Vec<Mention>,
    /// What could not be made sense of.
    pub problems: Vec<ModelProblem>,
}

impl Model {
    /// The element of this name.
    pub fn named(&self, name: &str) -> Option<ElementId> {
        self.by_name.get(name).copied()
    }

    /// What all elements have, of one element.
    pub fn common(&self, id: ElementId) -> Option<&Common> {
        let at = id.index as usize;
        match id.kind {
            ElementKind::Project => self.project.as_ref().map(|it| &it.common),
            ElementKind::Grid => self.grid.common.as_ref(),
            ElementKind::Product => self.products.get(at).map(|it| &it.common),
            ElementKind::Floor => self.floors.get(at).map(|it| &it.common),
            ElementKind::Area => self.areas.get(at).map(|it| &it.common),
            ElementKind::Joists => self.joists.get(at).map(|it| &it.common),
            ElementKind::Opening => self.openings.get(at).map(|it| &it.common),
            ElementKind::Wall => self.walls.get(at).map(|it| &it.common),
            ElementKind::Shelf => self.shelves.get(at).map(|it| &it.common),
            ElementKind::Pocket => self.pockets.get(at).map(|it| &it.common),
            ElementKind::Ledger => self.ledgers.get(at).map(|it| &it.common),
            ElementKind::Beam => self.beams.get(at).map(|it| &it.common),
            ElementKind::Column => self.columns.get(at).map(|it| &it.common),
            ElementKind::Footing => self.footings.get(at).map(|it| &it.common),
            ElementKind::Slab => self.slabs.get(at).map(|it| &it.common),
            ElementKind::Stair => self.stairs.get(at).map(|it| &it.common),
            ElementKind::Landing => self.landings.get(at).map(|it| &it.common),
            ElementKind::Stoop => self.stoops.get(at).map(|it| &it.common),
            ElementKind::Door => self.doors.get(at).map(|it| &it.common),
            ElementKind::Window => self.windows.get(at).map(|it| &it.common),
            ElementKind::Header => self.headers.get(at).map(|it| &it.common),
            ElementKind::Jacks => self.jacks.get(at).map(|it| &it.common),
            ElementKind::Squash => self.squashes.get(at).map(|it| &it.common),
            ElementKind::Roof => self.roofs.get(at).map(|it| &it.common),
            ElementKind::Load => self.loads.get(at).map(|it| &it.common),
            ElementKind::Drain => self.drains.get(at).map(|it| &it.common),
            ElementKind::Hole => self.holes.get(at).map(|it| &it.common),
            ElementKind::Notch => self.notches.get(at).map(|it| &it.common),
            ElementKind::Duct => self.ducts.get(at).map(|it| &it.common),
            ElementKind::Intent => self.intents.get(at).map(|it| &it.common),
            ElementKind::Sheet => self.sheets.get(at).map(|it| &it.common),
            ElementKind::HoldPoint => self.hold_points.get(at).map(|it| &it.common),
        }
    }

    /// The moisture that wood loses from when it is set to when the house is lived in; `None` where the line that says it
    /// can't be read.
    pub fn moisture_lost(&self) -> Option<Percent> {
        let moisture = match &self.project {
            Some(project) => project.moisture.get()?,
            None => Moisture::presumed(&self.limits()),
        };
        Some(Percent(moisture.install.0 - moisture.service.0))
    }

    /// The limits that hold: the project's own, or the newest profile's without one.
    pub fn limits(&self) -> Limits {
        self.project.as_ref().map_or_else(Limits::newest, |project| project.limits.clone())
    }

    /// What all elements have, of every element: kind by kind, each in the order of the text.
    pub fn commons(&self) -> impl Iterator<Item = &Common> {
        let house = self.project.iter().map(|it| &it.common).chain(&self.grid.common);
        house
            .chain(self.products.iter().map(|it| &it.common))
            .chain(self.floors.iter().map(|it| &it.common))
            .chain(self.areas.iter().map(|it| &it.common))
            .chain(self.joists.iter().map(|it| &it.common))
            .chain(self.openings.iter().map(|it| &it.common))
            .chain(self.walls.iter().map(|it| &it.common))
            .chain(self.shelves.iter().map(|it| &it.common))
            .chain(self.pockets.iter().map(|it| &it.common))
            .chain(self.ledgers.iter().map(|it| &it.common))
            .chain(self.beams.iter().map(|it| &it.common))
            .chain(self.columns.iter().map(|it| &it.common))
            .chain(self.footings.iter().map(|it| &it.common))
            .chain(self.slabs.iter().map(|it| &it.common))
            .chain(self.stairs.iter().map(|it| &it.common))
            .chain(self.landings.iter().map(|it| &it.common))
            .chain(self.stoops.iter().map(|it| &it.common))
            .chain(self.doors.iter().map(|it| &it.common))
            .chain(self.windows.iter().map(|it| &it.common))
            .chain(self.headers.iter().map(|it| &it.common))
            .chain(self.jacks.iter().map(|it| &it.common))
            .chain(self.squashes.iter().map(|it| &it.common))
            .chain(self.roofs.iter().map(|it| &it.common))
            .chain(self.loads.iter().map(|it| &it.common))
            .chain(self.drains.iter().map(|it| &it.common))
            .chain(self.holes.iter().map(|it| &it.common))
            .chain(self.notches.iter().map(|it| &it.common))
            .chain(self.ducts.iter().map(|it| &it.common))
            .chain(self.intents.iter().map(|it| &it.common))
            .chain(self.sheets.iter().map(|it| &it.common))
            .chain(self.hold_points.iter().map(|it| &it.common))
    }

    /// The floor an id means.
    pub fn floor(&self, id: ElementId) -> Option<&Floor> {
        if id.kind == ElementKind::Floor { self.floors.get(id.index as usize) } else { None }
    }

    /// The field of joists an id means.
    pub fn joists_of(&self, id: ElementId) -> Option<&Joists> {
        if id.kind == ElementKind::Joists { self.joists.get(id.index as usize) } else { None }
    }

    /// The wall an id means.
    pub fn wall(&self, id: ElementId) -> Option<&Wall> {
        if id.kind == ElementKind::Wall { self.walls.get(id.index as usize) } else { None }
    }

    /// The shelf an id means.
    pub fn shelf(&self, id: ElementId) -> Option<&Shelf> {
        if id.kind == ElementKind::Shelf { self.shelves.get(id.index as usize) } else { None }
    }

    /// The pocket an id means.
    pub fn pocket(&self, id: ElementId) -> Option<&Pocket> {
        if id.kind == ElementKind::Pocket { self.pockets.get(id.index as usize) } else { None }
    }

    /// The ledger an id means.
    pub fn ledger(&self, id: ElementId) -> Option<&Ledger> {
        if id.kind == ElementKind::Ledger { self.ledgers.get(id.index as usize) } else { None }
    }

    /// The beam an id means.
    pub fn beam(&self, id: ElementId) -> Option<&Beam> {
        if id.kind == ElementKind::Beam { self.beams.get(id.index as usize) } else { None }
    }

    /// The column an id means.
    pub fn column(&self, id: ElementId) -> Option<&Column> {
        if id.kind == ElementKind::Column { self.columns.get(id.index as usize) } else { None }
    }

    /// The footing an id means.
    pub fn footing(&self, id: ElementId) -> Option<&Footing> {
        if id.kind == ElementKind::Footing { self.footings.get(id.index as usize) } else { None }
    }

    /// The slab an id means.
    pub fn slab(&self, id: ElementId) -> Option<&Slab> {
        if id.kind == ElementKind::Slab { self.slabs.get(id.index as usize) } else { None }
    }

    /// The opening an id means.
    pub fn opening(&self, id: ElementId) -> Option<&Opening> {
        if id.kind == ElementKind::Opening { self.openings.get(id.index as usize) } else { None }
    }

    /// The door an id means.
    pub fn door(&self, id: ElementId) -> Option<&Door> {
        if id.kind == ElementKind::Door { self.doors.get(id.index as usize) } else { None }
    }

    /// The stair an id means.
    pub fn stair(&self, id: ElementId) -> Option<&Stair> {
        if id.kind == ElementKind::Stair { self.stairs.get(id.index as usize) } else { None }
    }

    /// The pack of jack studs an id means.
    pub fn jacks_of(&self, id: ElementId) -> Option<&Jacks> {
        if id.kind == ElementKind::Jacks { self.jacks.get(id.index as usize) } else { None }
    }
}
