//! Sizes of members: those the spec uses, declared products, and what is sold.

use std::collections::BTreeMap;

use crate::house::House;
use crate::ide::completion::values::Wanted;
use crate::ide::completion::{Completion, CompletionKind, Place, passing};
use crate::products::grades::glulam::LAYUPS;
use crate::products::rolled::{self, Outline, Rolled};
use crate::products::section::bare;
use crate::products::species::SPECIES;
use crate::products::{i_joist, lumber};
use crate::syntax::names::may_name;
use crate::syntax::value::Value;
use crate::syntax::vocabulary::ElementKind;

/// The grade that is meant where none is said.
const GRADE: &str = "No.2";

/// Sizes for the member under the cursor.
pub(super) fn members(place: &Place<'_>, wanted: &Wanted<'_>, items: &mut Vec<Completion>) {
    let line = place.cursor.line;
    let typed = line.get(wanted.from..place.cursor.at).unwrap_or("");
    let plies = plies_before(typed);
    let from = wanted.from + plies;
    let has_plies = plies > 0;
    let begins = typed.get(plies..).unwrap_or("").to_lowercase();
    let mut offer = |size: String, detail: String, subject: Option<String>| {
        if size.to_lowercase().starts_with(&begins) {
            let item = place.item_from(from, size, CompletionKind::Size).detail(detail);
            items.push(Completion { subject, ..item });
        }
    };
    let kind = place.cursor.element().map_or(ElementKind::Beam, |spec| spec.kind);
    let is_size = matches!(wanted.reading.fact.phrase, "size");
    if is_size && !has_plies {
        for found in passing::members(place) {
            offer(found.size, found.detail, Some("passing".to_owned()));
        }
    }
    let (used, species) = place.house().map(|house| used(house, kind)).unwrap_or_default();
    for (size, count) in used {
        if !has_plies || !size.contains("-ply") {
            let often = if count == 1 { "once".to_owned() } else { format!("{count} times") };
            offer(size, format!("stands {often} in this spec"), None);
        }
    }
    if let Some(house) = place.house() {
        for product in &house.model.products {
            let name = product.common.name.to_string();
            offer(name.clone(), "declared product".to_owned(), Some(format!("element {name}")));
        }
    }
    let species = species.unwrap_or_else(|| "SPF".to_owned());
    catalogue(kind, &species, &begins, &mut offer);
}

/// The size of a footing under which the soil holds, when the one that stands does not.
pub(super) fn footings(place: &Place<'_>, wanted: &Wanted<'_>, items: &mut Vec<Completion>) {
    let typed = place.cursor.line.get(wanted.from..place.cursor.at).unwrap_or("");
    if let Some(found) = passing::footing(place).filter(|found| found.size.starts_with(typed)) {
        let item = place.item_from(wanted.from, found.size, CompletionKind::Size);
        items.push(item.detail(found.detail).about("passing"));
    }
}

/// Is a word of what a member is made of asked for behind what stands of it? Steel and products take none, and nominal
/// sizes are sawn.
pub(super) fn takes_stuff(place: &Place<'_>, wanted: &Wanted<'_>, words: &str) -> bool {
    let typed = place.cursor.line.get(wanted.from..place.cursor.typed_from).unwrap_or("");
    let size = typed.get(plies_before(typed)..).unwrap_or("").trim();
    let first = size.split(' ').next().unwrap_or("");
    let is_sawn = first.split_once('x').is_some_and(|(width, depth)| {
        [width, depth].iter().all(|side| !side.is_empty() && side.chars().all(|sign| sign.is_ascii_digit()))
    });
    let is_steel = matches!(first, "HSS" | "pipe" | "filled") || rolled::by_mark(first).is_some();
    let is_product = may_name(first) && first.starts_with(char::is_alphabetic);
    let is_make = words.starts_with(['I', 'g', 'L', 'P', 'r']);
    !(is_steel || is_product || is_sawn && is_make)
}

/// How many bytes say how many pieces there are: `3-ply `, `2 of `, `(2) `.
fn plies_before(typed: &str) -> usize {
    let digits = |text: &str| text.len() - text.trim_start_matches(|sign: char| sign.is_ascii_digit()).len();
    let opened = typed.strip_prefix('(').map_or(0, |_| 1);
    let number = digits(typed.get(opened..).unwrap_or(""));
    let rest = typed.get(opened + number..).unwrap_or("");
    let mark = ["-ply ", " of ", ") "].into_iter().find(|mark| number > 0 && rest.starts_with(mark));
    mark.map_or(0, |mark| opened + number + mark.len())
}

/// The sizes that elements of a kind have, the most frequent first, and the species that is named most.
fn used(house: &House, kind: ElementKind) -> (Vec<(String, u32)>, Option<String>) {
    let mut sizes: BTreeMap<String, u32> = BTreeMap::new();
    let mut species: BTreeMap<String, u32> = BTreeMap::new();
    for chunk in house.trees.iter().flat_map(|tree| &tree.chunks) {
        let of = match &chunk.body.opening {
            crate::syntax::Opening::Element(heading) => heading.kind,
            _ => continue,
        };
        for fact in &chunk.body.facts {
            let Some(Value::Member(member)) = fact.part("member").map(|part| &part.value) else { continue };
            if let Some(stamp) = &member.species {
                *species.entry(stamp.to_string()).or_default() += 1;
            }
            if of == kind && fact.spec.phrase == "size" {
                *sizes.entry(written(member)).or_default() += 1;
            }
        }
    }
    let mut sizes: Vec<_> = sizes.into_iter().filter(|(size, _)| !size.is_empty()).collect();
    sizes.sort_by_key(|(_, count)| std::cmp::Reverse(*count));
    let species = species.into_iter().max_by_key(|(_, count)| *count).map(|(stamp, _)| stamp);
    (sizes, species)
}

/// A member as it is written.
fn written(member: &crate::syntax::value::Member) -> String {
    use crate::syntax::value::Section;
    let size = match &member.section {
        Section::Nominal(width, depth) => format!("{width}x{depth}"),
        Section::Built(width, depth) => format!("{} x {}", bare(*width), bare(*depth)),
        Section::Depth(depth) => bare(*depth),
        Section::Rolled(mark) => {
            rolled::by_mark(mark).map_or_else(String::new, |shape| shape.mark.to_owned())
        }
        Section::Tube(one, other, wall) => format!("HSS {} x {} x {}", bare(*one), bare(*other), bare(*wall)),
        Section::Pipe(..) => return String::new(),
        Section::FilledPipe(outside) => format!("filled pipe {}", bare(*outside)),
        Section::Product(name) => name.to_string(),
    };
    if size.is_empty() {
        return size;
    }
    let mut text = if member.plies > 1 { format!("{}-ply {size}", member.plies) } else { size };
    for word in [&member.make, &member.species, &member.grade].into_iter().flatten() {
        text.push(' ');
        text.push_str(word);
    }
    if member.is_treated {
        text.push_str(" treated");
    }
    text
}

/// What is sold. Steel and sizes of columns come where they are used; elsewhere only what is begun to be typed.
fn catalogue(
    kind: ElementKind,
    species: &str,
    begins: &str,
    offer: &mut impl FnMut(String, String, Option<String>),
) {
    let is_column = kind == ElementKind::Column;
    let is_beam = matches!(kind, ElementKind::Beam | ElementKind::Header);
    if is_column || begins.starts_with('h') || begins.starts_with('p') {
        let hollow = rolled::all().filter(|shape| !matches!(shape.outline, Outline::WideFlange { .. }));
        hollow.filter(|shape| shape.mark.starts_with("HSS")).for_each(|shape| steel(shape, offer));
    }
    if is_beam || begins.starts_with('w') {
        let flanged = rolled::all().filter(|shape| matches!(shape.outline, Outline::WideFlange { .. }));
        flanged.for_each(|shape| steel(shape, offer));
    }
    let sawn = lumber::sizes().filter(|(thickness, width)| match kind {
        ElementKind::Column => *thickness >= 4 && width >= thickness && *width <= 10,
        ElementKind::Beam | ElementKind::Header => *thickness >= 2 && *width >= 6 && width >= thickness,
        ElementKind::Wall => *thickness == 2 && (4..=8).contains(width),
        _ => *thickness == 2 && *width >= 4,
    });
    for (thickness, width) in sawn {
        if let Some(dressed) = lumber::dressed(thickness, width) {
            let detail = format!("{} x {} dressed", dressed.thickness, dressed.width);
            offer(format!("{thickness}x{width} {species} {GRADE}"), detail, None);
        }
    }
    if matches!(kind, ElementKind::Joists | ElementKind::Roof) {
        for joist in i_joist::all() {
            let size = format!("{} I-joist PRI-{}", bare(joist.depth), joist.series);
            offer(size, format!("{} deep, flange {} wide", joist.depth, joist.flange_width), None);
        }
    }
    if is_beam {
        for layup in LAYUPS {
            for size in ["3-1/8 x 12", "5-1/8 x 12", "5-1/8 x 15"] {
                offer(format!("{size} glulam {}", layup.name), "glued-laminated".to_owned(), None);
            }
        }
        for depth in ["9-1/2", "11-7/8", "14", "16"] {
            offer(format!("1-3/4 x {depth} LVL 2.0E"), "laminated veneer, one ply".to_owned(), None);
        }
    }
    if matches!(kind, ElementKind::Ledger | ElementKind::Wall) {
        for group in SPECIES {
            offer(format!("2x6 {} treated", group.name), group.meaning.to_owned(), None);
        }
    }
}

fn steel(shape: &Rolled, offer: &mut impl FnMut(String, String, Option<String>)) {
    let detail = format!("{} deep, {:.1} plf", shape.depth(), shape.weight.to_plf());
    offer(shape.mark.to_owned(), detail, None);
}
