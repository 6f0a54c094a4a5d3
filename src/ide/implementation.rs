//! What carries a thing out: holds it up, makes it, or is meant by it.

use crate::house::House;
use crate::ide::jump::{Jump, elements, jump};
use crate::ide::meaning::{Meaning, element_at, facts_of, mentions_in, named_at, places_of};
use crate::model::element::ElementId;
use crate::syntax::vocabulary::ElementKind;
use crate::text::FileId;

/// What carries out the element named at a place: its supports; a floor's joists, or its slab; what is made of a
/// product; what an intent, a sheet or a hold point is about.
pub fn implementation(house: &House, file: FileId, offset: u32) -> Option<Jump> {
    let named = named_at(house, file, offset)?;
    let Meaning::Element(id) = named.meaning else { return None };
    let ids = match id.kind {
        ElementKind::Floor => joists_of(house, id).chain(named_by(house, id, &["on"])).collect(),
        ElementKind::Product => made_of(house, id),
        ElementKind::Intent | ElementKind::Sheet | ElementKind::HoldPoint => all_named_by(house, id),
        kind => named_by(house, id, supports(kind)),
    };
    jump(named.span, elements(house, ids))
}

/// The facts that say what holds an element of this kind up.
pub const fn supports(kind: ElementKind) -> &'static [&'static str] {
    match kind {
        ElementKind::Joists
        | ElementKind::Wall
        | ElementKind::Beam
        | ElementKind::Column
        | ElementKind::Header
        | ElementKind::Jacks
        | ElementKind::Squash
        | ElementKind::Roof
        | ElementKind::Landing
        | ElementKind::Stoop => &["bears on", "hangs from", "stands on"],
        ElementKind::Stair => &["from"],
        ElementKind::Ledger | ElementKind::Load => &["on"],
        ElementKind::Shelf
        | ElementKind::Pocket
        | ElementKind::Door
        | ElementKind::Window
        | ElementKind::Hole
        | ElementKind::Notch => &["in"],
        ElementKind::Project
        | ElementKind::Grid
        | ElementKind::Product
        | ElementKind::Floor
        | ElementKind::Area
        | ElementKind::Opening
        | ElementKind::Footing
        | ElementKind::Slab
        | ElementKind::Drain
        | ElementKind::Duct
        | ElementKind::Intent
        | ElementKind::Sheet
        | ElementKind::HoldPoint => &[],
    }
}

fn named_by(house: &House, id: ElementId, phrases: &[&str]) -> Vec<ElementId> {
    let facts = facts_of(house, id).filter(|(fact, _)| phrases.contains(&fact.spec.phrase));
    let names = facts.flat_map(|(_, place)| mentions_in(house, place));
    names.map(|mention| mention.target).collect()
}

fn joists_of(house: &House, floor: ElementId) -> impl Iterator<Item = ElementId> {
    let joists = house.model.joists.iter();
    let is_its_own = move |floor_named: Option<ElementId>| floor_named == Some(floor);
    joists
        .filter(move |joists| is_its_own(joists.floor.value().and_then(|reference| reference.target)))
        .map(|joists| joists.common.id)
}

/// What names a product as its size, or that of one of its parts.
fn made_of(house: &House, product: ElementId) -> Vec<ElementId> {
    let uses = places_of(house, &Meaning::Element(product)).into_iter().filter(|place| !place.is_declaration);
    uses.filter_map(|place| element_at(house, place.span.file, place.span.start)).collect()
}

fn all_named_by(house: &House, id: ElementId) -> Vec<ElementId> {
    let names = facts_of(house, id).flat_map(|(_, place)| mentions_in(house, place));
    names.map(|mention| mention.target).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, text_around};

    fn check(fixture: &str, expected: &[&str]) {
        let (snapshot, file, offset) = at_cursor(fixture);
        let jump = implementation(&snapshot.house, file, offset);
        let targets = jump.into_iter().flat_map(|jump| jump.to);
        let places: Vec<_> = targets.map(|target| text_around(&snapshot.house, target.name)).collect();
        assert_eq!(places, expected);
    }

    #[test]
    fn a_member_is_held_up_by_its_supports() {
        let spec = "project\nbeam B1\n  bears on PK1 for 7\"\n  bears on C1\n  joint over C1\npocket PK1\n  in W1 from east face\nwall W1\ncolumn C1\n  stands on main over F1\nfooting F1\nfloor main\n";
        check(&format!("{spec}sheet A-1\n  schedules B$01\n"), &["pocket [PK1]", "column [C1]"]);
        check(&format!("{spec}sheet A-1\n  schedules C$01\n"), &["floor [main]", "footing [F1]"]);
        check(&format!("{spec}sheet A-1\n  schedules PK$01\n"), &["wall [W1]"]);
        check(&format!("{spec}sheet A-1\n  schedules F$01\n"), &[]);
    }

    #[test]
    fn a_floor_is_framed_by_its_joists() {
        let spec = "project\nfloor ma$0in\nfloor den\njoists J1\n  floor main\njoists J2\n  floor den\njoists J3\n  floor main\n";
        check(spec, &["joists [J1]", "joists [J3]"]);
    }

    #[test]
    fn a_product_is_built_in_where_it_is_a_size() {
        let spec = "project\nproduct L$0V\nbeam B1\n  size 3-ply LV\ninclude \"b.framing\"\n-- file b.framing\nbeam B2\n  size LV\n";
        check(spec, &["beam [B1]", "beam [B2]"]);
    }

    #[test]
    fn a_promise_and_a_sheet_are_about_elements() {
        let spec = "project\nfloor main\nbeam B1\nwall W1\nin$0tent \"Flush\"\n  keep bottom of B1 >= ceiling of main\n  keep W1 over B1\n";
        check(spec, &["beam [B1]", "floor [main]", "wall [W1]"]);
        check("project\nwall W1\nsheet A$0-1\n  shows top of W1 = 9'\n", &["wall [W1]"]);
    }
}
