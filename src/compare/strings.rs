//! Strings of dimensions on sheets that nobody drew anew when a grid line moved.
//!
//! A string names no grid lines: that it shows how far two of them lie apart is read from its numbers, so a distance that
//! several pairs of lines have is stale only when fewer of them have it than the string shows.

use crate::compare::meaning::Renames;
use crate::compare::{Consequence, Found, Outcome, Trade};
use crate::house::House;
use crate::model::plan::Axis;
use crate::units::Length;

/// Adds a consequence for each length of a string that lay between two grid lines and does no more.
pub(super) fn stale(old: &House, new: &House, renames: &Renames, found: &mut Vec<Found>) {
    let (before, now) = (distances(old), distances(new));
    for sheet in &new.model.sheets {
        let was =
            old.model.sheets.iter().find(|was| renames.element(&was.common.name) == &*sheet.common.name);
        let Some(was) = was else { continue };
        for string in
            sheet.strings.iter().filter(|string| was.strings.iter().any(|was| was.value == string.value))
        {
            let (parts, whole) = &string.value;
            let mut shown: Vec<Length> = parts.iter().copied().chain([*whole]).collect();
            shown.sort();
            for alike in shown.chunk_by(|one, other| one == other) {
                let Some(length) = alike.first().copied() else { continue };
                let count = |of: &[Distance<'_>]| of.iter().filter(|it| it.length == length).count();
                if count(&now) >= alike.len().min(count(&before)) {
                    continue;
                }
                let moved = before.iter().filter(|it| it.length == length).find_map(|it| {
                    let lines = it.lines.map(|line| renames.grid_line(line));
                    let is = apart(new, lines);
                    (is != Some(length)).then_some((lines, is))
                });
                let Some(([from, to], is)) = moved else { continue };
                let is =
                    is.map_or("which is not there any more".to_owned(), |is| format!("which is {is} now"));
                let label = sheet.common.label();
                let message = format!("{label} still shows {length} from {from} to {to}, {is}");
                found.push(Found {
                    trade: Trade::PlanChecker,
                    of: Some(sheet.common.id),
                    consequence: Consequence {
                        element: label,
                        outcome: Outcome::Stale(message),
                        standing: None,
                        ways_out: Vec::new(),
                        also: Vec::new(),
                    },
                });
            }
        }
    }
}

/// How far two grid lines lie apart.
struct Distance<'h> {
    lines: [&'h str; 2],
    length: Length,
}

/// Between neighbours on each axis, and over all of them.
fn distances(house: &House) -> Vec<Distance<'_>> {
    let mut all = Vec::new();
    for axis in [Axis::X, Axis::Y] {
        let lines = house.model.grid.lines.iter().filter(|(_, line)| line.axis == axis);
        let mut places: Vec<(Length, &str)> = lines.map(|(name, line)| (line.at, &**name)).collect();
        places.sort();
        let neighbours = places.iter().zip(places.iter().skip(1));
        let over_all = places.first().zip(places.last()).filter(|_| places.len() > 2);
        all.extend(
            neighbours
                .chain(over_all)
                .map(|((near, from), (far, to))| Distance { lines: [*from, *to], length: *far - *near }),
        );
    }
    all
}

/// `None` when one of the lines is gone, or runs the other way now.
fn apart(house: &House, [from, to]: [&str; 2]) -> Option<Length> {
    let line = |name| house.model.grid.lines.get(name);
    let (from, to) = (line(from)?, line(to)?);
    (from.axis == to.axis).then(|| (to.at - from.at).abs())
}
