//! The takedown as a person reads it: what columns, footings and walls carry by case, the balance sheet, and the tree of
//! one element.

use std::io::{self, Write};

use crate::house::House;
use crate::model::element::ElementId;
use crate::report::{CAUTION, Palette, printable};
use crate::statics::carried_load::by_place;
use crate::statics::cases::{ByCase, Case};
use crate::statics::contributors::{self, Contribution, Contributor};
use crate::units::Force;
use crate::verify::quantity::grouped;

/// Writes what everything carries, down to the soil.
///
/// # Errors
/// What the stream says.
pub fn write_takedown(house: &House, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let project = house.model.project.as_ref();
    let title = project.map(|project| project.common.name.to_string()).unwrap_or_default();
    writeln!(out, "{} {}, in pounds", palette.strong("Takedown of"), printable(&title))?;
    let cases = cases_that_act(&house.forces.balance.applied);
    let groups = [
        ("columns, at the head", columns(house)),
        ("jacks", jacks(house)),
        ("walls, at the foot", walls(house)),
        ("pads and piers, on the soil", pads(house)),
        ("strips, on the soil", strips(house)),
    ];
    for (head, rows) in groups {
        if rows.is_empty() {
            continue;
        }
        writeln!(out)?;
        write_rows(head, &rows, &cases, palette, out)?;
    }
    write_balance(house, &cases, palette, out)?;
    write_verified(house, palette, out)?;
    writeln!(out, "\n{CAUTION}")
}

/// Writes why one element carries what it does: a tree down to the loads of the spec.
///
/// # Errors
/// What the stream says.
pub fn write_contributors(
    house: &House,
    element: ElementId,
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<()> {
    let tree = contributors::on(&house.model, &house.geometry, &house.forces, element);
    let total = tree.iter().fold(ByCase::default(), |sum, part| sum + part.force);
    let cases = cases_that_act(&total);
    writeln!(
        out,
        "{} carries {} lb: {}",
        palette.strong(&printable(&label(house, element))),
        grouped(total.total().to_lb()),
        in_cases(&total, &cases)
    )?;
    for part in &tree {
        write_branch(house, part, &cases, 1, out)?;
    }
    if tree.is_empty() {
        writeln!(out, "  nothing acts on it")?;
    }
    writeln!(out, "\n{CAUTION}")
}

fn write_branch(
    house: &House,
    part: &Contribution,
    cases: &[Case],
    depth: usize,
    out: &mut impl Write,
) -> io::Result<()> {
    let what = words_of(house, part.from);
    let indent = "  ".repeat(depth);
    writeln!(
        out,
        "{:<48} {:>9} lb   {}",
        format!("{indent}{}", printable(&what)),
        grouped(part.force.total().to_lb()),
        in_cases(&part.force, cases)
    )?;
    part.of.iter().try_for_each(|child| write_branch(house, child, cases, depth + 1, out))
}

fn words_of(house: &House, from: Contributor) -> String {
    match from {
        Contributor::Weight(element) => format!("weight of {}", label(house, element)),
        Contributor::AreaOf(area, field) if area == field => format!("load of {}", label(house, area)),
        Contributor::AreaOf(area, field) => format!("{} on {}", label(house, area), label(house, field)),
        Contributor::Declared(element, span) => {
            format!("stated on {}: {}", label(house, element), house.text_at(span).trim())
        }
        Contributor::Load(load) => label(house, load),
        Contributor::Element(element) => label(house, element),
    }
}

fn label(house: &House, element: ElementId) -> String {
    house.model.common(element).map(|common| common.label()).unwrap_or_default()
}

fn in_cases(force: &ByCase<Force>, cases: &[Case]) -> String {
    let parts = cases.iter().map(|case| format!("{} {}", case.symbol(), grouped(force.of(*case).to_lb())));
    parts.collect::<Vec<_>>().join(", ")
}

fn cases_that_act(force: &ByCase<Force>) -> Vec<Case> {
    Case::ALL.into_iter().filter(|case| *force.of(*case) != Force::ZERO).collect()
}

/// The sheet closes to a part in a billion, or the program is at fault.
const CLOSES: f64 = 1e-9;

/// A row of the table: what, and how much of each case.
type Row = (String, ByCase<Force>);

fn columns(house: &House) -> Vec<Row> {
    let columns = house.model.columns.iter();
    columns.map(|column| (column.common.name.to_string(), house.forces.load_on(column.common.id))).collect()
}

fn jacks(house: &House) -> Vec<Row> {
    let jacks = house.model.jacks.iter();
    jacks.map(|jacks| (jacks.common.name.to_string(), house.forces.load_on(jacks.common.id))).collect()
}

fn walls(house: &House) -> Vec<Row> {
    let walls = house.model.walls.iter();
    walls.map(|wall| (wall.common.name.to_string(), house.forces.handed_in_all(wall.common.id))).collect()
}

fn pads(house: &House) -> Vec<Row> {
    let mut rows = Vec::new();
    for footing in house.model.footings.iter().filter(|footing| !footing.at.is_empty()) {
        let pads = by_place(&house.model, &house.forces, footing.common.id);
        for (at, pad) in pads.iter().enumerate() {
            let name = match pads.len() {
                1 => footing.common.name.to_string(),
                _ => format!("{} ({} of {})", footing.common.name, at + 1, pads.len()),
            };
            rows.push((name, pad.total()));
        }
    }
    rows
}

fn strips(house: &House) -> Vec<Row> {
    let strips = house.model.footings.iter().filter(|footing| footing.at.is_empty());
    strips
        .map(|strip| (strip.common.name.to_string(), house.forces.weight_and_load_on(strip.common.id)))
        .collect()
}

fn write_rows(
    head: &str,
    rows: &[Row],
    cases: &[Case],
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<()> {
    write!(out, "{}", palette.strong(&format!("{head:<32}")))?;
    for case in cases {
        write!(out, "{:>11}", case.word())?;
    }
    writeln!(out, "{:>11}", "all")?;
    for (what, force) in rows {
        write!(out, "  {:<30}", printable(what).to_string())?;
        for case in cases {
            write!(out, "{:>11}", grouped(force.of(*case).to_lb()))?;
        }
        writeln!(out, "{:>11}", grouped(force.total().to_lb()))?;
    }
    Ok(())
}

fn write_balance(house: &House, cases: &[Case], palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let balance = &house.forces.balance;
    let mut rows = vec![
        ("put on the house".to_owned(), balance.applied),
        ("reached the soil".to_owned(), balance.on_soil),
    ];
    if balance.outside != ByCase::default() {
        rows.push(("went outside the spec".to_owned(), balance.outside));
    }
    for (at, _, force) in &balance.lost {
        rows.push((format!("lost at {}", label(house, *at)), *force));
    }
    writeln!(out)?;
    write_rows("balance", &rows, cases, palette, out)?;
    for (at, why, _) in &balance.lost {
        writeln!(out, "  lost at {}: {}", label(house, *at), why.words())?;
    }
    if balance.error() > CLOSES {
        writeln!(out, "  the sheet does not close: a fault of this program, please report it")?;
    }
    if !house.forces.left_out.is_empty() {
        let n = house.forces.left_out.len();
        writeln!(out, "  and {n} stated loads that are not followed down (`storyrod lint` names them)")?;
    }
    Ok(())
}

/// What was verified, what was not, and what was assumed.
fn write_verified(house: &House, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let all = house.verifications.all();
    let run = all.iter().filter(|verification| verification.outcome.is_ok()).count();
    let failing = all.iter().filter(|verification| verification.fails()).count();
    writeln!(out, "\n{} {run} checks run, {failing} of them over their limit", palette.strong("verified:"))?;
    let mut not_run: Vec<String> = Vec::new();
    let mut assumed: Vec<String> = Vec::new();
    for verification in all {
        match &verification.outcome {
            Ok(check) => assumed.extend(check.assumed.iter().map(|what| what.to_string())),
            Err(why) => {
                let words = verification.limit_state.words();
                not_run.push(format!("{} of {}: {why}", words, label(house, verification.of)));
            }
        }
    }
    not_run.dedup();
    assumed.sort();
    assumed.dedup();
    for (head, lines) in [("not run:", not_run), ("assumed:", assumed)] {
        if lines.is_empty() {
            writeln!(out, "{} nothing", palette.strong(head))?;
            continue;
        }
        writeln!(out, "{}", palette.strong(head))?;
        for line in lines {
            writeln!(out, "  {}", printable(&line))?;
        }
    }
    Ok(())
}
