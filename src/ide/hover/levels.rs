//! The heights and lengths that follow for an element, and its stack from the bottom up where it has one.

use crate::facts::answers::answer;
use crate::geometry::sum::Derived;
use crate::house::House;
use crate::ide::figures::unknown_in_words;
use crate::ide::hover::markdown::{block, escaped};
use crate::model::element::ElementId;
use crate::model::framing::{Base, Cap, Column};
use crate::model::site::{Below, Floor, Layer};
use crate::syntax::vocabulary::{ElementKind, spec_of};
use crate::units::Length;

/// Facts that are figures of strength, that only say again what the text says, or that need to know what is below.
const NOT_LEVELS: [&str; 10] =
    ["clear height", "size", "thick", "sills", "spacing", "load", "pressure", "utilisation", "count", "seat"];

/// Every height and length that follows for an element, and the arithmetic of one of them.
pub fn derived(house: &House, element: ElementId) -> Vec<String> {
    let has_stack = matches!(element.kind, ElementKind::Floor | ElementKind::Column | ElementKind::Stair);
    if has_stack {
        return clear_height(house, element).into_iter().collect();
    }
    let (mut values, mut longest) = (Vec::new(), None::<String>);
    let mut most_terms = 1;
    for name in spec_of(element.kind).claimable() {
        // A beam in several pieces is not cut to its length.
        let is_cut_beam = element.kind == ElementKind::Beam && name.words == "cut";
        if NOT_LEVELS.contains(&name.words) || is_cut_beam {
            continue;
        }
        let Ok(answer) = answer(house, name.words, &[element]) else { continue };
        values.push(format!("{} {}", name.words, answer.value));
        if let Some(sum) = answer.sum.filter(|sum| sum.terms().len() > most_terms) {
            most_terms = sum.terms().len();
            longest = Some(format!("- {}: {}", name.words, escaped(&sum.to_string())));
        }
    }
    let mut lines = Vec::new();
    if !values.is_empty() {
        lines.push(format!("- {}", values.join(", ")));
    }
    lines.extend(longest);
    lines
}

/// The height under a floor, where the spec says which floor is below.
fn clear_height(house: &House, element: ElementId) -> Option<String> {
    let floor = house.model.floor(element)?;
    let Some(Below::Basement(below)) = floor.over.value() else { return None };
    let clear = answer(house, "clear height", &[element]).ok()?;
    Some(format!("- clear height over {}: {}", escaped(&below.name), clear.value))
}

/// The stack of a floor or a column from the bottom up, or a stair's steps, in columns.
pub fn stack(house: &House, element: ElementId) -> Option<String> {
    let rows = match element.kind {
        ElementKind::Floor => of_floor(house, house.model.floor(element)?)?,
        ElementKind::Column => of_column(house, house.model.column(element)?)?,
        ElementKind::Stair => of_stair(house, element)?,
        _ => return None,
    };
    (!rows.is_empty()).then(|| block(&rows))
}

type Rows = Vec<[String; 3]>;

fn of_floor(house: &House, floor: &Floor) -> Option<Rows> {
    let levels = house.geometry.floors.get(floor.common.id.index as usize)?;
    let layer = |layer: &Layer| format!("{} {}", layer.thickness, layer.words).trim().to_owned();
    let finish = floor.finish.value().filter(|finish| finish.thickness.is_positive()).map(layer);
    let deck = floor.deck.get().map(|deck| format!("deck {deck}"));
    let fields: Vec<String> = house
        .model
        .joists
        .iter()
        .filter(|joists| joists.floor.value().and_then(|of| of.target) == Some(floor.common.id))
        .filter_map(|joists| Some(format!("{} {}", joists.common.name, joists.size.value()?.text)))
        .collect();
    let fields =
        if fields.len() > 2 { format!("{} fields of joists", fields.len()) } else { fields.join(", ") };
    let ceiling: Vec<String> = floor.ceiling.value().into_iter().flatten().map(layer).collect();
    let mut rows = vec![
        row(house, "finish", &levels.finish, finish.unwrap_or_default()),
        row(house, "subfloor", &levels.subfloor, deck.unwrap_or_default()),
    ];
    // A floor on a slab has no joists.
    if floor.on.stated().is_none() {
        rows.push(row(house, "joist top", &levels.joist_top, fields));
        rows.push(row(house, "joist bottom", &levels.joist_bottom, ceiling.join(", ")));
        rows.push(row(house, "ceiling", &levels.ceiling, String::new()));
    }
    Some(rows)
}

fn row(house: &House, what: &str, derived: &Derived, note: String) -> [String; 3] {
    let value = match derived {
        Ok(sum) => sum.total().in_feet().to_string(),
        Err(unknown) => return [what.to_owned(), "?".to_owned(), unknown_in_words(house, unknown)],
    };
    [what.to_owned(), value, note]
}

fn of_column(house: &House, column: &Column) -> Option<Rows> {
    let stack = house.geometry.columns.get(column.common.id.index as usize)?;
    let mut rows = Vec::new();
    for (beam, bottom) in &stack.beams {
        let name = house.model.common(*beam).map(|beam| beam.name.to_string()).unwrap_or_default();
        rows.push(row(house, &format!("bottom of {name}"), bottom, String::new()));
    }
    let shim = column.shim.get().filter(|shim| shim.is_positive()).map(|shim| format!("under shims {shim}"));
    let cap = match column.cap.value() {
        Some(Cap::Plate([width, length, thick], _)) => {
            Some(format!("under cap plate {width} x {length} x {thick}"))
        }
        Some(Cap::Seat(thick)) => Some(format!("under a seat of {thick}")),
        Some(Cap::Saddle(_, Some(thick))) => Some(format!("under a saddle of {thick}")),
        Some(Cap::Saddle(_, None) | Cap::None) | None => None,
    };
    let under: Vec<String> = [shim, cap].into_iter().flatten().collect();
    rows.push(row(house, "head", &stack.head, under.join(", ")));
    rows.push(match &stack.cut {
        Ok(cut) => ["cut".to_owned(), cut.total().to_string(), format!("or {}", cut.total().in_inches())],
        Err(unknown) => ["cut".to_owned(), "?".to_owned(), unknown_in_words(house, unknown)],
    });
    let base = match column.base.value() {
        Some(Base::Plate([width, length, thick], grout)) if grout.is_positive() => {
            format!("on base plate {width} x {length} x {thick} and {grout} of grout")
        }
        Some(Base::Plate([width, length, thick], _)) => format!("on base plate {width} x {length} x {thick}"),
        Some(Base::Standoff(height)) => format!("on a standoff of {height}"),
        Some(Base::Bare { is_through_deck: true }) => "through the deck".to_owned(),
        Some(Base::Bare { is_through_deck: false }) | None => String::new(),
    };
    rows.push(row(house, "foot", &stack.foot, base));
    let below = column.stands_on.value().map(|stand| match &stand.over {
        Some(over) => format!("{} over {}", stand.on.name(), over.name),
        None => stand.on.name().to_owned(),
    });
    rows.push(row(
        house,
        &below.unwrap_or_else(|| "what it stands on".to_owned()),
        &stack.bearing,
        String::new(),
    ));
    Some(rows)
}

fn of_stair(house: &House, element: ElementId) -> Option<Rows> {
    let stair = house.model.stair(element)?;
    let flight = house.geometry.flights.get(element.index as usize)?;
    let mut rows = Vec::new();
    let mut push = |what: &str, value: String, note: String| rows.push([what.to_owned(), value, note]);
    if let Ok(risers) = flight.risers {
        let note = match risers.spread() {
            Length::ZERO => String::new(),
            spread => format!("first {}, last {}: {spread} apart", risers.bottom, risers.top),
        };
        push("risers", format!("{} x {}", risers.count, risers.between), note);
    }
    if let Ok(rise) = flight.rise {
        push("rise", rise.to_string(), format!("or {}", rise.in_inches()));
    }
    if let (Some(tread), Ok(run)) = (stair.tread.get(), flight.run) {
        push("run", run.to_string(), format!("treads of {tread}"));
    }
    if let Ok(headroom) = flight.headroom {
        push("headroom", headroom.to_string(), format!("or {}", headroom.in_inches()));
    }
    Some(rows)
}
