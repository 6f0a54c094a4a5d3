//! A grid line, a point, a line or a rectangle in plan: where it is.

use crate::house::House;
use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::{Piece, Worth};
use crate::ide::meaning::{Meaning, Named, named_at, places_of};
use crate::model::plan::Axis;
use crate::syntax::value::{GridRef, Point, Value};
use crate::units::Length;

/// The grid line at the cursor, and the place in plan that its value is.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    let house = cursor.house();
    let place = cursor.part.and_then(|part| Some((cursor.span(part.span), place(house, &part.value)?)));
    let line = named_at(house, cursor.file, cursor.offset).and_then(|named| {
        let Meaning::GridLine(axis, name) = &named.meaning else { return None };
        Some((named.span, grid_line(house, &named, *axis, name)?))
    });
    let (span, text) = match (line, place) {
        (Some((span, line)), Some((_, place))) => (span, format!("{line}\n\n{place}")),
        (Some(only), None) | (None, Some(only)) => only,
        (None, None) => return None,
    };
    Some(Piece { span, worth: Worth::Much, text, has_figures: false })
}

fn grid_line(house: &House, named: &Named, axis: Axis, name: &str) -> Option<String> {
    let line = house.model.grid.lines.get(name)?;
    let note = line.note.as_ref().map(|note| format!(", {}", escaped(note))).unwrap_or_default();
    let mut parts = vec![format!("**grid line {}**{note}: {}", escaped(name), off_origin(axis, line.at))];
    let of_axis = house.model.grid.lines.iter().filter(|(_, other)| other.axis == axis);
    let (mut before, mut behind) = (None, None);
    for (other, at) in of_axis.map(|(name, line)| (&**name, line.at)) {
        if at < line.at && before.is_none_or(|(_, last)| at > last) {
            before = Some((other, at));
        }
        if at > line.at && behind.is_none_or(|(_, next)| at < next) {
            behind = Some((other, at));
        }
    }
    let away =
        |(name, at): (&str, Length)| format!("{} from {}", (at - line.at).abs().in_feet(), escaped(name));
    let neighbours: Vec<String> = [before, behind].into_iter().flatten().map(away).collect();
    if !neighbours.is_empty() {
        parts.push(format!("- {}", neighbours.join(", ")));
    }
    let uses = places_of(house, &named.meaning);
    let mut elements: Vec<(u32, u32)> = uses
        .iter()
        .filter(|place| !place.is_declaration)
        .filter_map(|place| {
            let chunk = house.trees.get(place.span.file.0 as usize)?.chunk_at(place.span.start)?;
            Some((place.span.file.0, chunk.start))
        })
        .collect();
    elements.dedup();
    parts.push(match elements.len() {
        0 => "- nothing stands on it".to_owned(),
        1 => "- 1 element is placed by it".to_owned(),
        more => format!("- {more} elements are placed by it"),
    });
    Some(parts.join("\n"))
}

fn off_origin(axis: Axis, at: Length) -> String {
    let way = match (axis, at.is_negative()) {
        (Axis::X, false) => "east",
        (Axis::X, true) => "west",
        (Axis::Y, false) => "north",
        (Axis::Y, true) => "south",
    };
    format!("{} {way} of the origin", at.abs().in_feet())
}

/// Where a value is in plan; `None` for a value that is no place, or whose grid lines are not there.
fn place(house: &House, value: &Value) -> Option<String> {
    match value {
        Value::GridRef(line) => {
            let (axis, at) = coordinate(house, line)?;
            Some(format!("at {}", off_origin(axis, at)))
        }
        Value::Point(at) => Some(format!("at {}", point(house, at)?)),
        Value::Line(line) => {
            let (from, to) = (&line.from, &line.to);
            let apart = |one: &GridRef, other: &GridRef| {
                Some((coordinate(house, other)?.1 - coordinate(house, one)?.1).abs())
            };
            let (x, y) = (apart(&from.x, &to.x)?, apart(&from.y, &to.y)?);
            let length = match (x.is_positive(), y.is_positive()) {
                (true, false) => format!(", {} long, along x", x.in_feet()),
                (false, true) => format!(", {} long, along y", y.in_feet()),
                (true, true) | (false, false) => String::new(),
            };
            Some(format!("from {} to {}{length}", point(house, from)?, point(house, to)?))
        }
        Value::Rect(rect) => {
            let span = |one: &GridRef, other: &GridRef| {
                let (one, other) = (coordinate(house, one)?.1, coordinate(house, other)?.1);
                Some((one.min(other), one.max(other)))
            };
            let (x, y) = (span(&rect.x_from, &rect.x_to)?, span(&rect.y_from, &rect.y_to)?);
            Some(format!(
                "{} along x (from {} to {}) by {} along y (from {} to {})",
                (x.1 - x.0).in_feet(),
                x.0.in_feet(),
                x.1.in_feet(),
                (y.1 - y.0).in_feet(),
                y.0.in_feet(),
                y.1.in_feet()
            ))
        }
        _ => None,
    }
}

fn point(house: &House, at: &Point) -> Option<String> {
    let (x, y) = (coordinate(house, &at.x)?.1, coordinate(house, &at.y)?.1);
    Some(format!("x {}, y {}", x.in_feet(), y.in_feet()))
}

fn coordinate(house: &House, at: &GridRef) -> Option<(Axis, Length)> {
    let line = house.model.grid.lines.get(&at.line)?;
    Some((line.axis, line.at + at.offset))
}

#[cfg(test)]
mod tests {
    use crate::ide::hover::tests::{LOON_COVE, check};

    #[test]
    fn a_grid_line_says_where_it_is_and_how_far_from_its_neighbours() {
        check(
            LOON_COVE,
            "C 18'-0\", $0D 26'-0\"",
            "D",
            &["**grid line D**: 26'-0\" east of the origin", "8'-0\" from C, 10'-0\" from E"],
        );
        check(
            LOON_COVE,
            "from          A plus 3\" / $03 to E less 3\" / 3",
            "3",
            &[
                "**grid line 3**, centre of B1: 26'-0\" north of the origin",
                "14'-0\" from 2, 14'-0\" from 4",
                "elements are placed by it",
                "from x 0'-3\", y 26'-0\" to x 35'-9\", y 26'-0\", 35'-6\" long, along x",
            ],
        );
    }

    /// By hand: fourteen feet of joists less 2-3/4" at either side of the girder's two bays.
    #[test]
    fn a_rectangle_says_its_sides() {
        check(
            LOON_COVE,
            "fill          A to E b$0y 2 plus 2-3/4\"",
            "A to E by 2 plus 2-3/4\" to 4 less 2-3/4\"",
            &[
                "36'-0\" along x (from 0'-0\" to 36'-0\") by 27'-6 1/2\" along y (from 12'-2 3/4\" to 39'-9 1/4\")",
            ],
        );
    }
}
