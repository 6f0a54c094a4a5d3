//! What is made of what: a product or a size above, the members of it below.

use crate::house::House;
use crate::ide::meaning::{Meaning, element_at, facts_of, named_at};
use crate::model::element::{Common, ElementId};
use crate::syntax::value::{Member, Section, Value};
use crate::syntax::vocabulary::{CLAIM, ElementKind};
use crate::syntax::{Chunk, Fact, Opening};
use crate::text::{FileId, LocalSpan, Span};

/// What a spec makes things of, or what is made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Made {
    /// A declared product, or an element with a member in it.
    Element(ElementId),
    /// A size that no product declares, as it is written of one piece: `2x10 SPF No.2`.
    Size(Box<str>),
}

/// A product, a size or an element, with its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MadeItem {
    /// What it is.
    pub what: Made,
    /// Its name: `product LV14`, `2x10 SPF No.2`, `beam B1`.
    pub label: String,
    /// Of an element the facts that name what it is made of; of a size how many elements have it.
    pub detail: String,
    /// What the cursor is put on; of a size the first place where it is written.
    pub name: Span,
    /// All that belongs to it. Invariant: holds `name`.
    pub whole: Span,
}

/// The product, size or element at a place: a size where one is written, else what the name there means.
///
/// `None` also for an element that is made of nothing with a size.
pub fn made_at(house: &House, file: FileId, offset: u32) -> Option<MadeItem> {
    let chunk = house.trees.get(file.0 as usize)?.chunk_at(offset)?;
    if let Some(size) = sizes_in(house, file, chunk).find(|size| size.place.touches(offset)) {
        return item_of(house, &stuff_of(house, &size));
    }
    match named_at(house, file, offset)?.meaning {
        Meaning::Element(id) => item_of(house, &Made::Element(id)),
        Meaning::GridLine(..) | Meaning::Rule(_) | Meaning::Include(_) => None,
    }
}

/// A product, size or element with its place; `None` when the spec has none of it.
pub fn item_of(house: &House, what: &Made) -> Option<MadeItem> {
    match what {
        Made::Element(id) => {
            let common = house.model.common(*id)?;
            let detail = match id.kind {
                ElementKind::Product => common.title.as_deref().unwrap_or_default().to_owned(),
                _ => phrases_with(house, *id, |_| true)?,
            };
            Some(MadeItem { detail, ..element_item(common) })
        }
        Made::Size(text) => {
            let sizes = all_of(house, what);
            let name = sizes.first()?.place;
            let mut elements: Vec<ElementId> = sizes.iter().map(|size| size.element).collect();
            elements.dedup();
            let noun = if elements.len() == 1 { "element" } else { "elements" };
            Some(MadeItem {
                what: what.clone(),
                label: text.to_string(),
                detail: format!("in {} {noun}", elements.len()),
                name,
                whole: house.line_of(name),
            })
        }
    }
}

/// The products and sizes that an element is made of, in the order of its text. A product or a size is made of nothing
/// that a spec says.
pub fn makings_of(house: &House, what: &Made) -> Vec<MadeItem> {
    let Made::Element(id) = what else { return Vec::new() };
    let mut found: Vec<Made> = Vec::new();
    for size in sizes_of(house, *id) {
        let stuff = stuff_of(house, &size);
        if !found.contains(&stuff) {
            found.push(stuff);
        }
    }
    found.iter().filter_map(|stuff| item_of(house, stuff)).collect()
}

/// Every element that is made of a product or a size, in all files of the spec.
pub fn made_of(house: &House, what: &Made) -> Vec<MadeItem> {
    let mut items: Vec<MadeItem> = Vec::new();
    for size in all_of(house, what) {
        if items.last().is_some_and(|item| item.what == Made::Element(size.element)) {
            continue;
        }
        let Some(common) = house.model.common(size.element) else { continue };
        let is_same = |other: &Member| is_same_stuff(other, size.member);
        let detail = phrases_with(house, size.element, is_same).unwrap_or_default();
        items.push(MadeItem { detail, ..element_item(common) });
    }
    items
}

/// A size as it stands in an element.
struct Size<'a> {
    element: ElementId,
    phrase: &'static str,
    member: &'a Member,
    place: Span,
}

/// Every place where a size is written, or that has the product, in the order of the text; of an element that is no
/// product none.
fn all_of<'a>(house: &'a House, what: &Made) -> Vec<Size<'a>> {
    let all = || {
        house.files().flat_map(move |file| {
            let chunks = house.trees.get(file.0 as usize).into_iter().flat_map(|tree| &tree.chunks);
            chunks.flat_map(move |chunk| sizes_in(house, file, chunk))
        })
    };
    match what {
        Made::Element(id) => all().filter(|size| product_of(house, size.member) == Some(*id)).collect(),
        Made::Size(text) => {
            let is_named = |size: &Size<'_>| {
                product_of(house, size.member).is_none() && piece_text(house, size) == **text
            };
            let Some(first) = all().find(is_named) else { return Vec::new() };
            all().filter(|size| is_same_stuff(size.member, first.member)).collect()
        }
    }
}

fn sizes_in<'a>(house: &'a House, file: FileId, chunk: &'a Chunk) -> impl Iterator<Item = Size<'a>> {
    let keyword = match &chunk.body.opening {
        Opening::Element(heading) if heading.kind != ElementKind::Product => Some(heading.keyword),
        Opening::Element(_) | Opening::Nothing | Opening::Include(_) | Opening::Unknown(..) => None,
    };
    let has_sizes = chunk.body.facts.iter().any(|fact| members_in(fact).next().is_some());
    let start = keyword.filter(|_| has_sizes).map(|keyword| keyword.within(file, chunk.start).start);
    let element = start.and_then(|start| element_at(house, file, start));
    element.into_iter().flat_map(move |element| {
        chunk.body.facts.iter().flat_map(move |fact| {
            members_in(fact).map(move |(member, span)| Size {
                element,
                phrase: fact.spec.phrase,
                member,
                place: span.within(file, chunk.start),
            })
        })
    })
}

fn sizes_of(house: &House, element: ElementId) -> Vec<Size<'_>> {
    let mut found = Vec::new();
    for (fact, place) in facts_of(house, element).filter(|_| element.kind != ElementKind::Product) {
        // Places inside of a fact count from the chunk's first byte, as the fact's own does.
        let chunk = place.start.saturating_sub(fact.span.start);
        found.extend(members_in(fact).map(|(member, span)| Size {
            element,
            phrase: fact.spec.phrase,
            member,
            place: span.within(place.file, chunk),
        }));
    }
    found
}

/// The sizes of a fact. A claim says what a size should be, not what it is.
fn members_in(fact: &Fact) -> impl Iterator<Item = (&Member, LocalSpan)> {
    let is_claim = fact.spec.phrase == CLAIM.phrase;
    fact.parts.iter().filter(move |_| !is_claim).filter_map(|part| match &part.value {
        Value::Member(member) => Some((&**member, part.span)),
        _ => None,
    })
}

fn stuff_of(house: &House, size: &Size<'_>) -> Made {
    match product_of(house, size.member) {
        Some(product) => Made::Element(product),
        None => Made::Size(piece_text(house, size).into()),
    }
}

fn product_of(house: &House, member: &Member) -> Option<ElementId> {
    let Section::Product(name) = &member.section else { return None };
    house.model.named(name).filter(|id| id.kind == ElementKind::Product)
}

/// True when two sizes differ in nothing but how many pieces there are.
fn is_same_stuff(one: &Member, other: &Member) -> bool {
    one.section == other.section
        && one.make == other.make
        && one.species == other.species
        && one.grade == other.grade
        && one.is_treated == other.is_treated
}

/// A size as it is written, without the number of pieces: `2x10 SPF No.2` of `3-ply 2x10  SPF No.2`.
fn piece_text(house: &House, size: &Size<'_>) -> String {
    let text = house.text_at(size.place);
    let words: Vec<&str> = text.split_whitespace().collect();
    let plies = size.member.plies;
    let piece = match words.as_slice() {
        [first, "of", rest @ ..] if *first == plies.to_string() => rest,
        [first, rest @ ..] if *first == format!("{plies}-ply") || *first == format!("({plies})") => rest,
        all => all,
    };
    piece.join(" ")
}

/// The facts of an element that name a size of this sort: `studs, plates`.
fn phrases_with(house: &House, element: ElementId, is_wanted: impl Fn(&Member) -> bool) -> Option<String> {
    let mut phrases: Vec<&str> = Vec::new();
    for size in sizes_of(house, element) {
        if is_wanted(size.member) && !phrases.contains(&size.phrase) {
            phrases.push(size.phrase);
        }
    }
    (!phrases.is_empty()).then(|| phrases.join(", "))
}

fn element_item(common: &Common) -> MadeItem {
    MadeItem {
        what: Made::Element(common.id),
        label: common.label(),
        detail: String::new(),
        name: common.name_span,
        whole: common.span,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, snapshot_of, text_around};

    const SPEC: &str = "project\nproduct LV \"Laminated veneer\"\n  kind  composite lumber 1-3/4 x 14\nbeam B1\n  size  3-ply LV\nbeam B2\n  size  2 of 2x10 SPF No.2\njoists J1\n  size  2x10  SPF No.2\n  rim   LV\nwall W1\n  studs  2x6 SPF No.2 at 16\"\n  plates  2 of 2x6 SPF No.2\n  sole  1 of 2x6 SPF treated\ncolumn C1\n  size  HSS 4 x 4 x 3/16\ninclude \"more.framing\"\n-- file more.framing\njoists J2\n  size  2x10 SPF No.2\nheader H1\n  size  2-ply LV\n";

    fn labels(items: &[MadeItem]) -> Vec<String> {
        let tell = |item: &MadeItem| match item.detail.as_str() {
            "" => item.label.clone(),
            detail => format!("{}: {detail}", item.label),
        };
        items.iter().map(tell).collect()
    }

    /// What stands at the cursor, what it is made of, and what is made of it.
    fn check(piece: &str, at: &str, above: &[&str], below: &[&str]) {
        let plain = piece.replace("$0", "");
        assert!(SPEC.contains(&plain), "{plain}");
        let (snapshot, file, offset) = at_cursor(&SPEC.replacen(&plain, piece, 1));
        let house = &snapshot.house;
        let item = made_at(house, file, offset).unwrap();
        assert_eq!(labels(std::slice::from_ref(&item)), [at]);
        assert_eq!(labels(&makings_of(house, &item.what)), above);
        assert_eq!(labels(&made_of(house, &item.what)), below);
    }

    #[test]
    fn of_a_product_are_its_members_in_every_file() {
        let members = ["beam B1: size", "joists J1: rim", "header H1: size"];
        for piece in ["product L$0V \"", "beam B1\n  size  3-ply L$0V", "beam B1\n  size  3-$0ply LV"] {
            check(piece, "product LV: Laminated veneer", &[], &members);
        }
    }

    #[test]
    fn of_a_size_are_all_members_with_however_many_plies() {
        let members = ["beam B2: size", "joists J1: size", "joists J2: size"];
        for piece in ["2 of 2x$010 SPF No.2", "size  $02x10  SPF No.2"] {
            check(piece, "2x10 SPF No.2: in 3 elements", &[], &members);
        }
        check("HSS 4 x$0 4 x 3/16", "HSS 4 x 4 x 3/16: in 1 element", &[], &["column C1: size"]);
        check("2x6 SPF No.2$0 at", "2x6 SPF No.2: in 1 element", &[], &["wall W1: studs, plates"]);
    }

    #[test]
    fn over_a_member_is_what_it_is_made_of() {
        check(
            "joists J$01",
            "joists J1: size, rim",
            &["2x10 SPF No.2: in 3 elements", "product LV: Laminated veneer"],
            &[],
        );
        check(
            "wall $0W1",
            "wall W1: studs, plates, sole",
            &["2x6 SPF No.2: in 1 element", "2x6 SPF treated: in 1 element"],
            &[],
        );
    }

    #[test]
    fn a_size_is_declared_where_it_stands_first() {
        let (snapshot, file, offset) =
            at_cursor(&SPEC.replace("joists J2\n  size  2x10", "joists J2\n  size  2x$010"));
        let item = made_at(&snapshot.house, file, offset).unwrap();
        assert_eq!(text_around(&snapshot.house, item.name), "size  [2 of 2x10 SPF No.2]");
    }

    #[test]
    fn what_has_no_size_is_made_of_nothing() {
        for spec in ["project\nfloor ma$0in\n", "project\nbeam B$01\n  size  what?\n", "project\nfrost$0\n"] {
            let (snapshot, file, offset) = at_cursor(spec);
            assert_eq!(made_at(&snapshot.house, file, offset), None, "{spec}");
        }
    }

    /// Every size and name of every sample: what is over it has it below, and the other way round.
    #[test]
    fn both_directions_tell_of_the_same() {
        for sample in [
            include_str!("../../grammar/samples/first.framing"),
            include_str!("../../grammar/samples/alley-house.framing"),
            include_str!("../../grammar/samples/hill-studio.framing"),
            include_str!("../../grammar/samples/hop-barn.framing"),
            include_str!("../../grammar/samples/loon-cove.framing"),
        ] {
            let snapshot = snapshot_of(sample);
            let house = &snapshot.house;
            for common in house.model.commons() {
                let member = Made::Element(common.id);
                for stuff in makings_of(house, &member) {
                    let below = made_of(house, &stuff.what);
                    assert!(below.iter().any(|item| item.what == member), "{stuff:?}");
                    assert!(stuff.whole.start <= stuff.name.start && stuff.name.end <= stuff.whole.end);
                }
                for below in made_of(house, &member) {
                    let above = makings_of(house, &below.what);
                    assert!(above.iter().any(|item| item.what == member), "{below:?}");
                }
            }
        }
    }
}
