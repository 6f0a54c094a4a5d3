//! From the trees of a spec to its model.
//!
//! First every element gets its id and its name; then the project, the grid and the declared products are read,
//! because all others need them; then all others, in the order of the text.

mod every;
mod foundation;
mod framing;
mod members;
mod names;
mod openings;
mod plan;
mod promises;
mod reader;
mod site;
mod stairs;
mod supports;

use crate::model::Model;
use crate::model::lower::names::{Entry, Lowering};
use crate::model::lower::reader::Reader;
use crate::syntax::Tree;
use crate::syntax::vocabulary::ElementKind;

impl Model {
    /// The house that the trees of a spec describe. A tree's place in the slice is its file's number; the root file
    /// comes first.
    pub fn of(trees: &[Tree]) -> Self {
        let (mut lowering, entries) = Lowering::of(trees);
        let (first, rest): (Vec<_>, Vec<_>) =
            entries.into_iter().partition(|entry| is_read_first(entry.id.kind));
        let mut first = first;
        first.sort_by_key(|entry| entry.id);
        for entry in first.iter().chain(&rest) {
            lower(&mut lowering, entry);
        }
        lowering.finished()
    }
}

/// True for what other elements' facts are read by.
const fn is_read_first(kind: ElementKind) -> bool {
    matches!(kind, ElementKind::Project | ElementKind::Grid | ElementKind::Product)
}

fn lower<'t>(lowering: &mut Lowering<'t>, entry: &Entry<'t>) {
    let reader = &mut Reader::new(lowering, entry);
    match entry.id.kind {
        ElementKind::Project => {
            let project = site::project(reader);
            lowering.model.project = Some(project);
        }
        ElementKind::Grid => plan::read_grid(reader),
        ElementKind::Product => {
            let product = framing::product(reader);
            lowering.model.products.push(product);
        }
        ElementKind::Floor => {
            let floor = site::floor(reader);
            lowering.model.floors.push(floor);
        }
        ElementKind::Area => {
            let area = site::area(reader);
            lowering.model.areas.push(area);
        }
        ElementKind::Joists => {
            let joists = framing::joists(reader);
            lowering.model.joists.push(joists);
        }
        ElementKind::Opening => {
            let opening = openings::opening(reader);
            lowering.model.openings.push(opening);
        }
        ElementKind::Wall => {
            let wall = foundation::wall(reader);
            lowering.model.walls.push(wall);
        }
        ElementKind::Shelf => {
            let shelf = foundation::shelf(reader);
            lowering.model.shelves.push(shelf);
        }
        ElementKind::Pocket => {
            let pocket = foundation::pocket(reader);
            lowering.model.pockets.push(pocket);
        }
        ElementKind::Ledger => {
            let ledger = foundation::ledger(reader);
            lowering.model.ledgers.push(ledger);
        }
        ElementKind::Beam => {
            let beam = framing::beam(reader);
            lowering.model.beams.push(beam);
        }
        ElementKind::Column => {
            let column = framing::column(reader);
            lowering.model.columns.push(column);
        }
        ElementKind::Footing => {
            let footing = foundation::footing(reader);
            lowering.model.footings.push(footing);
        }
        ElementKind::Slab => {
            let slab = foundation::slab(reader);
            lowering.model.slabs.push(slab);
        }
        ElementKind::Stair => {
            let stair = stairs::stair(reader);
            lowering.model.stairs.push(stair);
        }
        ElementKind::Landing => {
            let landing = stairs::landing(reader);
            lowering.model.landings.push(landing);
        }
        ElementKind::Stoop => {
            let stoop = stairs::stoop(reader);
            lowering.model.stoops.push(stoop);
        }
        ElementKind::Door => {
            let door = openings::door(reader);
            lowering.model.doors.push(door);
        }
        ElementKind::Window => {
            let window = openings::window(reader);
            lowering.model.windows.push(window);
        }
        ElementKind::Header => {
            let header = openings::header(reader);
            lowering.model.headers.push(header);
        }
        ElementKind::Jacks => {
            let jacks = openings::jacks(reader);
            lowering.model.jacks.push(jacks);
        }
        ElementKind::Squash => {
            let squash = openings::squash(reader);
            lowering.model.squashes.push(squash);
        }
        ElementKind::Roof => {
            let roof = site::roof(reader);
            lowering.model.roofs.push(roof);
        }
        ElementKind::Load => {
            let load = site::load(reader);
            lowering.model.loads.push(load);
        }
        ElementKind::Drain => {
            let drain = openings::drain(reader);
            lowering.model.drains.push(drain);
        }
        ElementKind::Hole => {
            let hole = openings::hole(reader);
            lowering.model.holes.push(hole);
        }
        ElementKind::Notch => {
            let notch = openings::notch(reader);
            lowering.model.notches.push(notch);
        }
        ElementKind::Duct => {
            let duct = openings::duct(reader);
            lowering.model.ducts.push(duct);
        }
        ElementKind::Intent => {
            let intent = promises::intent(reader);
            lowering.model.intents.push(intent);
        }
        ElementKind::Sheet => {
            let sheet = promises::sheet(reader);
            lowering.model.sheets.push(sheet);
        }
        ElementKind::HoldPoint => {
            let hold_point = promises::hold_point(reader);
            lowering.model.hold_points.push(hold_point);
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::model::Model;
    use crate::syntax::parse_fresh;

    /// The samples that the reference shows are whole houses without a mistake.
    #[test]
    fn the_samples_make_sense() {
        for name in ["first", "loon-cove", "hop-barn"] {
            let path = format!("{}/grammar/samples/{name}.framing", env!("CARGO_MANIFEST_DIR"));
            let text = std::fs::read_to_string(path).unwrap();
            let model = Model::of(&[parse_fresh(&text)]);
            let problems: Vec<_> = model
                .problems
                .iter()
                .map(|problem| (&text[problem.span.start as usize..problem.span.end as usize], &problem.kind))
                .collect();
            assert!(problems.is_empty(), "{name}: {problems:#?}");
            assert_eq!(model.commons().count(), model.by_name.len() + 2 + model.intents.len());
        }
    }
}
