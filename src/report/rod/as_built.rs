//! The rod list with what was measured, and what follows from it.

use std::io::{self, Write};

use crate::compare::{Change, Outcome, compare};
use crate::geometry::stack::Loop;
use crate::geometry::tolerances::tolerance_of;
use crate::house::House;
use crate::house::as_built::{AsBuilt, Gap, Measured};
use crate::model::element::ElementId;
use crate::report::rod::{Row, TO_FILL_IN, rows_from_below, write_table};
use crate::report::{CAUTION, Palette, ShownChange, ShownChanges, printable, write_change_text};
use crate::rules::built::{asks_of_what_stands, looks_at_shots};
use crate::rules::rule_named;
use crate::snapshot::Snapshot;
use crate::snapshot::edited::as_built;

const HEADS: [&str; 6] = ["surface", "drawn", "measured", "off", "within", "fits"];

/// Writes each surface as drawn and as measured, what nothing follows from, the gaps to pack, and what the house as built
/// has otherwise, by trade.
///
/// # Errors
/// What the stream says.
pub fn write_rod_as_built(snapshot: &Snapshot, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let house = &snapshot.house;
    let title = house.model.project.as_ref().map(|project| project.common.name.to_string());
    let title = title.unwrap_or_default();
    writeln!(out, "{} {}\n", palette.strong("Rod list as built"), printable(&title))?;
    let (Some(built), Some(after)) = (house.as_built(), as_built(snapshot)) else {
        writeln!(
            out,
            "nothing was measured: an element says so, as in `shot top 99'-0 3/8\" on 2027-04-03`\n"
        )?;
        return writeln!(out, "{CAUTION}");
    };
    write_table(&HEADS, &cells(house, built), palette, out)?;
    write_not_followed(house, built, palette, out)?;
    write_gaps(house, built, palette, out)?;
    let change = what_follows(snapshot, &after);
    if change.is_empty() {
        writeln!(out, "\nnothing else follows from what was measured")?;
        return writeln!(out, "{CAUTION}");
    }
    writeln!(out, "\n{}\n", palette.strong("what follows"))?;
    let shown = ShownChange { spec: "", change: &change, places: &[] };
    write_change_text(&ShownChanges { specs: &[shown], n_same: None }, palette, out)
}

fn cells(house: &House, built: &AsBuilt) -> Vec<[String; 6]> {
    let mut shown: Vec<*const Measured> = Vec::new();
    let mut cells = Vec::new();
    for row in rows_from_below(house) {
        let shot = built
            .measured
            .iter()
            .find(|shot| shot.at.is_none() && shot.of == row.of && row.fact.as_deref() == Some(&*shot.fact));
        shown.extend(shot.map(std::ptr::from_ref));
        cells.push(of_row(house, &row, shot));
    }
    // What the list of levels does not hold: places along a wall, lengths.
    let others = built.measured.iter().filter(|shot| !shown.contains(&std::ptr::from_ref(*shot)));
    cells.extend(others.map(|shot| {
        let place = shot.at.map(|at| format!(" at {}", house.text_at(at))).unwrap_or_default();
        let surface = format!("{} {}{place}", label(house, shot.of), shot.fact);
        let drawn = shot.drawn.map_or_else(|| "-".to_owned(), |drawn| drawn.in_feet().to_string());
        measured(house, printable(&surface).into_owned(), drawn, shot)
    }));
    cells
}

fn of_row(house: &House, row: &Row, shot: Option<&Measured>) -> [String; 6] {
    let drawn = match row.elevation {
        Ok(elevation) => elevation.in_feet().to_string(),
        Err(_) => format!("not known: {}", row.missing),
    };
    match shot {
        Some(shot) => measured(house, row.surface.clone(), drawn, shot),
        None => {
            let within = row.within.map_or_else(|| "-".to_owned(), |within| within.to_string());
            [row.surface.clone(), drawn, TO_FILL_IN.to_owned(), "-".to_owned(), within, "-".to_owned()]
        }
    }
}

fn measured(house: &House, surface: String, drawn: String, shot: &Measured) -> [String; 6] {
    let within = house.limits.of(tolerance_of(&house.model, shot.of, &shot.fact)).value;
    let is_length = &*shot.fact == "length";
    let (off, fits) = match shot.by() {
        Some(by) => {
            let way = match (is_length, by.is_negative(), by.is_positive()) {
                (_, false, false) => "",
                (true, true, _) => " short",
                (true, false, _) => " long",
                (false, true, _) => " low",
                (false, false, _) => " high",
            };
            (format!("{}{way}", by.abs()), if by.abs() > within { "no" } else { "yes" })
        }
        None => ("-".to_owned(), "-"),
    };
    let value = if is_length { shot.value.to_string() } else { shot.value.in_feet().to_string() };
    [surface, drawn, value, off, within.to_string(), fits.to_owned()]
}

fn write_not_followed(
    house: &House,
    built: &AsBuilt,
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<()> {
    let shots = built.measured.iter().filter_map(|shot| Some((shot.of, shot.span, shot.not_followed?)));
    let in_plan = built.in_plan.iter().map(|(of, span)| (*of, *span, "it is a place in plan"));
    let all: Vec<_> = shots.chain(in_plan).collect();
    if all.is_empty() {
        return Ok(());
    }
    writeln!(out, "\n{}", palette.strong("not followed"))?;
    for (of, span, why) in all {
        let line = house.text_at(span).split_whitespace().collect::<Vec<_>>().join(" ");
        writeln!(out, "  {}  {}: {why}", printable(&label(house, of)), printable(&line))?;
    }
    Ok(())
}

fn write_gaps(house: &House, built: &AsBuilt, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let gaps = built.gaps(house);
    if gaps.is_empty() && built.grouts.is_empty() {
        return Ok(());
    }
    writeln!(out, "\n{}", palette.strong("to take up on site"))?;
    for gap in &gaps {
        writeln!(out, "  {}  {}", printable(&label(house, gap.of)), printable(&way(house, gap)))?;
    }
    for grout in &built.grouts {
        let (wanted, drawn) = (grout.wanted, grout.drawn);
        let words = match (grout.is_taken_up, wanted.is_positive()) {
            (true, _) => format!("grout {wanted} instead of {drawn}"),
            (false, true) => format!("grout can't take it up: it would be {wanted}, {drawn} as drawn"),
            (false, false) => format!("grout can't take it up: there is no room, {drawn} as drawn"),
        };
        writeln!(out, "  {}  {words}", printable(&label(house, grout.of)))?;
    }
    Ok(())
}

fn way(house: &House, gap: &Gap) -> String {
    let off = gap.by.abs();
    let on_it = gap.asked_by.map_or_else(|| "what lies on it".to_owned(), |of| label(house, of));
    match (gap.at, gap.by.is_negative()) {
        (Loop::WallHeight, true) => format!("{off} shorter than the room it stands in"),
        (Loop::WallHeight, false) => format!("{off} taller than the room it stands in"),
        (_, true) => format!("pack {off} between it and {on_it}"),
        (_, false) => format!("{off} too high for {on_it}: cut it down, or let {on_it} give way"),
    }
}

fn label(house: &House, of: ElementId) -> String {
    house.model.common(of).map(|common| common.label()).unwrap_or_default()
}

/// What the house as built has otherwise, without the measured lines themselves and what only drawings are asked.
fn what_follows(drawn: &Snapshot, built: &Snapshot) -> Change {
    let mut change = compare(drawn, built);
    change.stated.clear();
    for trade in &mut change.trades {
        trade.consequences.retain(|consequence| match &consequence.outcome {
            Outcome::Fails(finding) | Outcome::StillFails(_, finding) | Outcome::Waived(finding) => {
                rule_named(finding.rule).is_some_and(asks_of_what_stands)
            }
            Outcome::Passes(finding) => rule_named(finding.rule)
                .is_some_and(|rule| asks_of_what_stands(rule) && !looks_at_shots(rule)),
            // A drawing.
            Outcome::Stale(_) => false,
            Outcome::Moved(..) => true,
        });
    }
    change
}
