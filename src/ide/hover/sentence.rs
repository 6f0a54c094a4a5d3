//! An element in one sentence, as a framer would say it.

use crate::facts::answers::answer;
use crate::house::House;
use crate::ide::figures::listed;
use crate::ide::hover::markdown::escaped;
use crate::model::element::{Common, ElementId};
use crate::model::foundation::{Footing, Wall, WallKind};
use crate::model::framing::{Beam, Column, Joists};
use crate::model::stairs::{Foot, Stair};
use crate::model::support::{Carrier, Contact, Stand, Support};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;

/// So many things are named one by one.
const MOST_NAMED: usize = 5;

/// So many facts stand for an element that has no sentence of its own.
const MOST_FACTS: usize = 4;

/// The element in one sentence: of what, from where to where, on what.
pub fn sentence(house: &House, element: ElementId) -> Option<String> {
    let model = &house.model;
    let common = model.common(element)?;
    let parts = match element.kind {
        ElementKind::Beam => of_beam(house, model.beam(element)?),
        ElementKind::Column => of_column(house, model.column(element)?),
        ElementKind::Joists => of_joists(house, model.joists_of(element)?),
        ElementKind::Wall => of_wall(house, model.wall(element)?),
        ElementKind::Footing => of_footing(house, model.footing(element)?),
        ElementKind::Stair => of_stair(model.stair(element)?),
        _ => of_its_facts(house, common),
    };
    let parts: Vec<String> = parts.into_iter().flatten().filter(|part| !part.is_empty()).collect();
    (!parts.is_empty()).then(|| parts.join(", "))
}

type Parts = Vec<Option<String>>;

fn of_beam(house: &House, beam: &Beam) -> Parts {
    vec![
        beam.size.value().map(|size| escaped(&size.text)),
        length(house, beam.common.id),
        beam.from.span().map(|span| format!("from {}", text(house, span))),
        beam.set.span().map(|span| text(house, span)),
        on_supports(house, &beam.supports, "bears", "hangs"),
    ]
}

fn of_column(house: &House, column: &Column) -> Parts {
    vec![
        column.size.value().map(|size| escaped(&size.text)),
        value(house, column.common.id, "cut").map(|cut| format!("{cut} cut")),
        column.at.span().map(|span| format!("at {}", text(house, span))),
        stands_on(house, column.stands_on.value()),
        carries(house, column.common.id),
    ]
}

fn of_joists(house: &House, joists: &Joists) -> Parts {
    let floor = joists.floor.value().map(|floor| format!("in floor {}", escaped(&floor.name)));
    vec![
        joists.size.value().map(|size| escaped(&size.text)),
        joists.spacing.get().map(|spacing| format!("{} on centre", spacing.step.in_inches())),
        floor,
        value(house, joists.common.id, "span").map(|span| format!("spanning {span}")),
        on_supports(house, &joists.supports, "bear", "hang"),
    ]
}

fn of_wall(house: &House, wall: &Wall) -> Parts {
    let kind = wall.kind.get().map(|kind| match kind {
        WallKind::Concrete => "concrete",
        WallKind::Masonry => "masonry",
        WallKind::Framed => "framed",
        WallKind::Pony => "framed, short",
    });
    vec![
        kind.map(str::to_owned),
        wall.studs.value().map(|studs| format!("studs {}", escaped(&studs.member.text))),
        wall.thick.get().map(|thick| format!("{} thick", thick.in_inches())),
        length(house, wall.common.id),
        wall.from.span().map(|span| format!("from {}", text(house, span))),
        stands_on(house, wall.stands_on.value()),
        carries(house, wall.common.id),
    ]
}

fn of_footing(house: &House, footing: &Footing) -> Parts {
    let places = match footing.at.as_slice() {
        [] => None,
        [only] => Some(format!("at {}", text(house, only.span))),
        more => Some(format!("at {} places", more.len())),
    };
    let under: Vec<String> = footing.under.iter().map(|wall| escaped(&wall.name)).collect();
    vec![
        footing.kind.span().map(|span| text(house, span)),
        footing.size.span().map(|span| text(house, span)),
        places,
        (!under.is_empty()).then(|| format!("under {}", listed(&under, MOST_NAMED))),
        carries(house, footing.common.id).filter(|_| under.is_empty()),
    ]
}

fn of_stair(stair: &Stair) -> Parts {
    let from = match stair.from.value() {
        Some(Foot::Floor(floor)) => Some(format!("from {}", escaped(&floor.name))),
        Some(Foot::Grade) => Some("from the ground".to_owned()),
        None => None,
    };
    let to = stair.to.value().map(|floor| format!("to {}", escaped(&floor.name)));
    let way = [from, to].into_iter().flatten().collect::<Vec<_>>().join(" ");
    vec![
        Some(way),
        stair.climbs.get().map(|side| format!("climbing {}", side.word())),
        stair.width.get().map(|width| format!("{} wide", width.in_feet())),
        stair.tread.get().map(|tread| format!("treads of {}", tread.in_inches())),
    ]
}

/// The first facts as they stand.
fn of_its_facts(house: &House, common: &Common) -> Parts {
    let place = common.name_span;
    let chunk = house.trees.get(place.file.0 as usize).and_then(|tree| tree.chunk_at(place.start));
    let Some(chunk) = chunk else { return Vec::new() };
    let span_of = |span: crate::text::LocalSpan| span.within(place.file, chunk.start);
    let facts = chunk.body.facts.iter().take(MOST_FACTS);
    facts.map(|fact| Some(format!("{} {}", fact.spec.phrase, text(house, span_of(fact.value))))).collect()
}

fn text(house: &House, span: Span) -> String {
    escaped(house.text_at(span).trim())
}

fn value(house: &House, element: ElementId, fact: &str) -> Option<String> {
    Some(answer(house, fact, &[element]).ok()?.value.to_string())
}

fn length(house: &House, element: ElementId) -> Option<String> {
    value(house, element, "length").map(|length| format!("{length} long"))
}

fn on_supports(house: &House, supports: &[Support], bears: &str, hangs: &str) -> Option<String> {
    let names = |is_bearing: bool| -> Vec<String> {
        let of_kind = supports.iter().filter(|support| matches!(support.by, Contact::Bears(_)) == is_bearing);
        of_kind.map(|support| carrier(house, &support.on)).collect()
    };
    let (bearing, hanging) = (names(true), names(false));
    let mut parts = Vec::new();
    if !bearing.is_empty() {
        parts.push(format!("{bears} on {}", listed(&bearing, MOST_NAMED)));
    }
    if !hanging.is_empty() {
        parts.push(format!("{hangs} from {}", listed(&hanging, MOST_NAMED)));
    }
    (!parts.is_empty()).then(|| parts.join(", "))
}

/// `C1`, `the pocket PK1 in W3`, `outside: existing frame`.
fn carrier(house: &House, carrier: &Carrier) -> String {
    match carrier {
        Carrier::Outside(words) => format!("outside: {}", escaped(words)),
        Carrier::Element(reference) => {
            let name = escaped(&reference.name);
            let pocket = reference.target.and_then(|target| house.model.pocket(target));
            match pocket.and_then(|pocket| pocket.wall.value()) {
                Some(wall) => format!("the pocket {name} in {}", escaped(&wall.name)),
                None => name,
            }
        }
    }
}

fn stands_on(house: &House, stand: Option<&Stand>) -> Option<String> {
    let stand = stand?;
    let over = stand.over.as_ref().map(|over| format!(" over {}", escaped(&over.name))).unwrap_or_default();
    Some(format!("stands on {}{over}", carrier(house, &stand.on)))
}

fn carries(house: &House, element: ElementId) -> Option<String> {
    let carried = house.geometry.load_path.carried_by(element);
    let names: Vec<String> =
        carried.iter().filter_map(|id| house.model.common(*id)).map(|common| escaped(&common.name)).collect();
    (!names.is_empty()).then(|| format!("carries {}", listed(&names, MOST_NAMED)))
}
