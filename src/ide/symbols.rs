//! What stands in a file, for an outline; and elements of whole specs, found by a few letters.

mod search;

use crate::house::House;
use crate::ide::outline::{Block, outline};
use crate::syntax::vocabulary::ElementKind;
use crate::syntax::{Body, Fact, Heading, Opening};
use crate::text::{FileId, LocalSpan, Span};

pub use search::{MOST_FOUND, symbols_like};

/// Something that an outline shows.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Symbol {
    /// As a person reads it: `beam B1 "Center girder"`, so that sorting by it brings kinds together.
    pub name: String,
    /// What tells it from others of its kind: `3-ply LV14, set flush in main`; empty when there is nothing.
    pub detail: String,
    /// What it is.
    pub kind: SymbolKind,
    /// All of it, an element with its note.
    pub span: Span,
    /// Its name, its title, or its first words: what to jump to. Invariant: inside `span`.
    pub name_span: Span,
    /// What stands in it.
    pub children: Vec<Symbol>,
}

/// What kind of thing an outline shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SymbolKind {
    /// A stretch of a file under a heading.
    Section,
    /// An include line.
    Include,
    /// An element.
    Element(ElementKind),
    /// A line of the grid.
    GridLine,
}

/// What stands in a file, in the order of the text: elements and includes under the sections of the file, grid lines
/// under their grid.
pub fn symbols(house: &House, file: FileId) -> Vec<Symbol> {
    let outline = outline(house, file);
    let of = |blocks: &[Block<'_>]| blocks.iter().filter_map(|block| symbol_of(house, block)).collect();
    let before = outline.sections.first().map_or(outline.blocks.len(), |first| first.blocks.start);
    let mut all: Vec<Symbol> = of(outline.blocks.get(..before).unwrap_or_default());
    all.extend(outline.sections.iter().map(|section| Symbol {
        name: section.title.clone(),
        detail: String::new(),
        kind: SymbolKind::Section,
        span: section.span,
        name_span: section.heading,
        children: of(outline.blocks.get(section.blocks.clone()).unwrap_or_default()),
    }));
    all
}

/// The elements of every file of a spec, without what stands in them.
pub fn spec_symbols(house: &House) -> Vec<Symbol> {
    let blocks = house.files().flat_map(|file| outline(house, file).blocks);
    let all = blocks.filter_map(|block| symbol_of(house, &block));
    all.filter(|symbol| matches!(symbol.kind, SymbolKind::Element(_)))
        .map(|symbol| Symbol { children: Vec::new(), ..symbol })
        .collect()
}

fn symbol_of(house: &House, block: &Block<'_>) -> Option<Symbol> {
    let place = |span: LocalSpan| span.within(block.span.file, block.chunk.start);
    let symbol = |name: String, kind, name_span| Symbol {
        name,
        detail: String::new(),
        kind,
        span: block.whole(),
        name_span,
        children: Vec::new(),
    };
    match &block.chunk.body.opening {
        Opening::Include(Some((path, span))) => {
            Some(symbol(format!("include \"{path}\""), SymbolKind::Include, place(*span)))
        }
        Opening::Element(heading) => {
            let called = heading.name.as_ref().or(heading.title.as_ref());
            let name_span = place(called.map_or(heading.keyword, |(_, span)| *span));
            Some(Symbol {
                detail: detail(house, block, heading.kind),
                children: if heading.kind == ElementKind::Grid { lines(house, block) } else { Vec::new() },
                ..symbol(heading_text(heading), SymbolKind::Element(heading.kind), name_span)
            })
        }
        Opening::Include(None) | Opening::Unknown(..) | Opening::Nothing => None,
    }
}

/// An element's first line as it would be written.
fn heading_text(heading: &Heading) -> String {
    let mut text = heading.kind.word().to_owned();
    text.extend(heading.name.iter().map(|(name, _)| format!(" {name}")));
    text.extend(heading.title.iter().map(|(title, _)| format!(" \"{title}\"")));
    text
}

/// The facts that tell an element from others of its kind, as they are written, and how far it has come.
fn detail(house: &House, block: &Block<'_>, kind: ElementKind) -> String {
    let body = &block.chunk.body;
    let told = telling(kind).iter().chain(&["status"]).filter_map(|phrase| fact(body, phrase));
    let words = |span: LocalSpan| {
        let text = house.text_at(span.within(block.span.file, block.chunk.start));
        text.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let all = told.filter_map(|fact| match fact.spec.phrase {
        "kind" | "size" | "profile" => Some(words(fact.value)),
        "status" => Some(words(fact.value)).filter(|status| status != "drawn"),
        _ => Some(words(fact.span)),
    });
    all.collect::<Vec<_>>().join(", ")
}

fn fact<'a>(body: &'a Body, phrase: &str) -> Option<&'a Fact> {
    body.facts.iter().find(|fact| fact.spec.phrase == phrase)
}

/// The phrases of the facts that tell elements of a kind apart.
const fn telling(kind: ElementKind) -> &'static [&'static str] {
    match kind {
        ElementKind::Project => &["profile"],
        ElementKind::Grid | ElementKind::Intent => &[],
        ElementKind::Product => &["kind"],
        ElementKind::Floor => &["subfloor", "finish at", "on"],
        ElementKind::Area => &["use", "in"],
        ElementKind::Joists | ElementKind::Duct => &["size", "floor"],
        ElementKind::Opening => &["floor", "in"],
        ElementKind::Wall => &["kind", "thick", "top", "floor"],
        ElementKind::Shelf => &["in", "top"],
        ElementKind::Pocket => &["in", "seat"],
        ElementKind::Ledger => &["size", "on"],
        ElementKind::Beam => &["size", "set"],
        ElementKind::Column => &["size", "at"],
        ElementKind::Footing => &["kind", "size", "top"],
        ElementKind::Slab => &["thick", "top"],
        ElementKind::Stair => &["from", "risers"],
        ElementKind::Landing => &["kind", "top"],
        ElementKind::Stoop => &["at", "top"],
        ElementKind::Door | ElementKind::Window | ElementKind::Hole | ElementKind::Notch => &["size", "in"],
        ElementKind::Header => &["size", "over"],
        ElementKind::Jacks => &["size", "at"],
        ElementKind::Squash => &["size", "under"],
        ElementKind::Roof => &["kind", "snow"],
        ElementKind::Load => &["amount", "on"],
        ElementKind::Drain => &["floor", "hole"],
        ElementKind::Sheet => &["checked"],
        ElementKind::HoldPoint => &["before"],
    }
}

/// The lines of a grid, each with its place.
fn lines(house: &House, block: &Block<'_>) -> Vec<Symbol> {
    let place = |span: LocalSpan| span.within(block.span.file, block.chunk.start);
    let facts = block.chunk.body.facts.iter().filter(|fact| matches!(fact.spec.phrase, "x" | "y"));
    let pairs = facts.flat_map(|fact| {
        let names = fact.parts_of("name").zip(fact.parts_of("at"));
        names.map(move |(name, at)| (fact.spec.phrase, name.span, at.span))
    });
    let symbols = pairs.map(|(axis, name, at)| Symbol {
        name: house.text_at(place(name)).to_owned(),
        detail: format!("{axis} {}", house.text_at(place(at))),
        kind: SymbolKind::GridLine,
        span: place(name.to(at)),
        name_span: place(name),
        children: Vec::new(),
    });
    symbols.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::snapshot_of;

    /// The outline as lines: two blanks for each step inwards, name and detail, and the text to jump to.
    fn drawn(house: &House, symbols: &[Symbol], inwards: usize) -> Vec<String> {
        let mut all = Vec::new();
        for symbol in symbols {
            let detail =
                if symbol.detail.is_empty() { String::new() } else { format!(" | {}", symbol.detail) };
            let jump = house.text_at(symbol.name_span);
            all.push(format!("{:inwards$}{}{detail} @ {jump}", "", symbol.name));
            all.extend(drawn(house, &symbol.children, inwards + 2));
        }
        all
    }

    const SPEC: &str = r#"project "House"
  profile       irc-2021
grid
  x             A 0', B 16'-0"
  y             1 0'

include "walls.framing"

-- floors ----------------

-- The main one.
floor main "Main floor"
  subfloor      100'-0"
  live          40 psf
girder B1 "Center   girder"
  size          3-ply  2x12 SPF
  set           flush in main
  status        ordered 2027-05-01
colum C1
  at            A/1

-- promises

intent "Level"
  keep          finish of main = 100'-0"
beam
  size          2x10
"#;

    #[test]
    fn elements_stand_under_their_sections_with_what_tells_them_apart() {
        let snapshot = snapshot_of(SPEC);
        let house = &snapshot.house;
        assert_eq!(
            drawn(house, &symbols(house, FileId(0)), 0),
            [
                "project \"House\" | irc-2021 @ House",
                "grid @ grid",
                "  A | x 0' @ A",
                "  B | x 16'-0\" @ B",
                "  1 | y 0' @ 1",
                "include \"walls.framing\" @ walls.framing",
                "floors @ -- floors ----------------",
                "  floor main \"Main floor\" | subfloor 100'-0\" @ main",
                "  beam B1 \"Center   girder\" | 3-ply 2x12 SPF, set flush in main, ordered 2027-05-01 @ B1",
                "promises @ -- promises",
                "  intent \"Level\" @ Level",
                "  beam | 2x10 @ beam",
            ]
        );
    }

    #[test]
    fn an_element_begins_with_its_note() {
        let snapshot = snapshot_of(SPEC);
        let house = &snapshot.house;
        let main = &symbols(house, FileId(0))[3].children[0];
        assert_eq!(
            house.text_at(main.span),
            "-- The main one.\nfloor main \"Main floor\"\n  subfloor      100'-0\"\n  live          40 psf"
        );
    }

    #[test]
    fn the_elements_of_every_file_are_listed() {
        let spec = "project \"House\"\ninclude \"b.framing\"\ngrid\n  x A 0'\n-- file b.framing\nbeam B1\n  size 2x10\n";
        let snapshot = snapshot_of(spec);
        let names: Vec<_> = spec_symbols(&snapshot.house)
            .into_iter()
            .map(|symbol| (symbol.name, symbol.span.file.0, symbol.children.len()))
            .collect();
        let expected = [("project \"House\"", 0), ("grid", 0), ("beam B1", 1)];
        assert_eq!(names, expected.map(|(name, file)| (name.to_owned(), file, 0)));
    }
}
