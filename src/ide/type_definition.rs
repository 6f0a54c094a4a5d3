//! What a thing is made of, or part of.

use crate::house::House;
use crate::ide::jump::{Jump, elements, jump};
use crate::ide::meaning::{Meaning, facts_of, mentions_in, named_at};
use crate::syntax::value::Value;
use crate::syntax::vocabulary::ElementKind;
use crate::text::FileId;

/// What the element named at a place is made of or part of: a member's declared product, the floor of joists and areas,
/// the member that has the hole, the wall that has the door, the opening that has the header.
pub fn type_definition(house: &House, file: FileId, offset: u32) -> Option<Jump> {
    let named = named_at(house, file, offset)?;
    let Meaning::Element(id) = named.meaning else { return None };
    let says_it = facts_of(house, id).filter(|(fact, _)| {
        let is_member = fact.parts.iter().any(|part| matches!(part.value, Value::Member(_)));
        is_member || whole_of(id.kind).contains(&fact.spec.phrase)
    });
    let names = says_it.flat_map(|(_, place)| mentions_in(house, place));
    jump(named.span, elements(house, names.map(|mention| mention.target)))
}

/// The facts that say what an element of this kind is part of.
const fn whole_of(kind: ElementKind) -> &'static [&'static str] {
    match kind {
        ElementKind::Joists | ElementKind::Drain | ElementKind::Duct => &["floor"],
        ElementKind::Opening => &["floor", "in"],
        ElementKind::Area
        | ElementKind::Shelf
        | ElementKind::Pocket
        | ElementKind::Door
        | ElementKind::Window
        | ElementKind::Hole
        | ElementKind::Notch => &["in"],
        ElementKind::Beam => &["set"],
        ElementKind::Header => &["over"],
        ElementKind::Jacks | ElementKind::Landing | ElementKind::Stoop => &["at"],
        ElementKind::Squash => &["under"],
        ElementKind::Floor | ElementKind::Ledger | ElementKind::Load => &["on"],
        ElementKind::Stair => &["opening"],
        ElementKind::Project
        | ElementKind::Grid
        | ElementKind::Product
        | ElementKind::Wall
        | ElementKind::Column
        | ElementKind::Footing
        | ElementKind::Slab
        | ElementKind::Roof
        | ElementKind::Intent
        | ElementKind::Sheet
        | ElementKind::HoldPoint => &[],
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, text_around};

    fn check(fixture: &str, expected: &[&str]) {
        let (snapshot, file, offset) = at_cursor(fixture);
        let jump = type_definition(&snapshot.house, file, offset);
        let targets = jump.into_iter().flat_map(|jump| jump.to);
        let places: Vec<_> = targets.map(|target| text_around(&snapshot.house, target.name)).collect();
        assert_eq!(places, expected);
    }

    #[test]
    fn a_member_is_made_of_its_product() {
        let spec = "project\nproduct LV\nbeam B1\n  size 3-ply LV\n  bears on W1\nwall W1\n";
        check(&format!("{spec}sheet A-1\n  schedules B$01\n"), &["product [LV]"]);
        check(
            "project\nproduct LV\nproduct RB\njoists J1\n  size LV\n  rim RB\njoists J2\n  size 2x10\nsheet A-1\n  schedules J$01\n",
            &["product [LV]", "product [RB]"],
        );
        check("project\nbeam $0B1\n  size 3-ply 2x10\n", &[]);
    }

    #[test]
    fn a_part_leads_to_its_whole() {
        check("project\nfloor main\nj$0oists J1\n  floor main\n", &["floor [main]"]);
        check("project\nfloor main\narea $0K1\n  in main\n", &["floor [main]"]);
        check("project\nhole H1$0\n  in J1\njoists J1\n", &["joists [J1]"]);
        check("project\nheader HD$01\n  over D1\ndoor D1\n", &["door [D1]"]);
        check("project\nfloor ma$0in\n  on SL1\nslab SL1\n", &["slab [SL1]"]);
        check("project\nfooting F$01\n  under W1\nwall W1\n", &[]);
        check("project\ngrid\n  x A$0 0', B 1'\n", &[]);
    }
}
