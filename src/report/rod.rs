//! The rod list: every surface of the foundation and the floors, from the lowest up, as the crew shoots it.

mod as_built;

use std::io::{self, Write};

use crate::geometry::sum::{Derived, Unknown};
use crate::geometry::surfaces::Surface;
use crate::geometry::tolerances::tolerance_of;
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::field::Field;
use crate::report::{CAUTION, Palette, printable};
use crate::units::Length;

pub use as_built::write_rod_as_built;

/// Writes the rod list of a house.
///
/// # Errors
/// What the stream says.
pub fn write_rod(house: &House, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let project = house.model.project.as_ref();
    let title = project.map(|project| project.common.name.to_string()).unwrap_or_default();
    writeln!(out, "{} {}", palette.strong("Rod list"), printable(&title))?;
    let benchmark = project.and_then(|project| project.benchmark.value());
    match benchmark {
        Some(benchmark) => {
            writeln!(out, "benchmark: {} at {}", printable(&benchmark.words), benchmark.elevation.in_feet())?;
            writeln!(
                out,
                "`down` and `up` are inches from the benchmark; `~` marks a number rounded to 1/16\"\n"
            )?;
        }
        None => {
            writeln!(
                out,
                "no benchmark: the project can name one, as in `benchmark \"nail in a post\" at 97'-6\"`\n"
            )?;
        }
    }
    let cells: Vec<_> =
        rows_from_below(house).iter().map(|row| row.cells(benchmark.map(|it| it.elevation))).collect();
    write_table(&HEADS, &cells, palette, out)?;
    writeln!(out, "\n{CAUTION}")
}

fn rows_from_below(house: &House) -> Vec<Row> {
    let mut rows = rows_of(house);
    rows.sort_by(|a, b| a.height().cmp(&b.height()).then_with(|| a.surface.cmp(&b.surface)));
    rows
}

/// A surface of the house.
#[derive(Clone, Debug)]
struct Row {
    surface: String,
    of: ElementId,
    /// What a shot of it says; `None` for a place along the element.
    fact: Option<String>,
    elevation: Result<Length, Unknown>,
    is_stated: bool,
    within: Option<Length>,
    shot: Option<Length>,
    missing: String,
}

const HEADS: [&str; 6] = ["surface", "elevation", "rod", "within", "number is", "shot"];
const TO_FILL_IN: &str = "__________";

impl Row {
    /// Unknown heights stand at the end.
    fn height(&self) -> (bool, Option<Length>) {
        (self.elevation.is_err(), self.elevation.ok())
    }

    fn cells(&self, benchmark: Option<Length>) -> [String; 6] {
        let (elevation, rod) = match self.elevation {
            Ok(elevation) => {
                (elevation.in_feet().to_string(), benchmark.map(|nail| rod_reading(nail, elevation)))
            }
            Err(_) => (format!("not known: {}", self.missing), None),
        };
        [
            self.surface.clone(),
            elevation,
            rod.unwrap_or_else(|| "-".to_owned()),
            self.within.map_or_else(|| "-".to_owned(), |within| within.to_string()),
            if self.is_stated { "stated" } else { "derived" }.to_owned(),
            self.shot.map_or_else(|| TO_FILL_IN.to_owned(), |shot| shot.in_feet().to_string()),
        ]
    }
}

fn rod_reading(nail: Length, elevation: Length) -> String {
    let down = nail - elevation;
    match (down.is_negative(), down.is_positive()) {
        (true, _) => format!("up {}", down.abs().in_inches()),
        (false, true) => format!("down {}", down.in_inches()),
        (false, false) => "at the nail".to_owned(),
    }
}

fn rows_of(house: &House) -> Vec<Row> {
    let (model, geometry) = (&house.model, &house.geometry);
    let mut list = List { house, rows: Vec::new() };
    for footing in &model.footings {
        let common = &footing.common;
        list.add(common, "bottom", Surface::Bottom, false);
        list.add(common, "top", Surface::Top, footing.top.stated().is_some());
        for (surface, fact) in [(Surface::Top, "top"), (Surface::Bottom, "bottom")] {
            let mut derived = geometry.surfaces.of(common.id, surface);
            for step in &footing.steps {
                let (down, station) = step.value;
                derived = derived.map(|sum| sum.less(down, "step", common.id, Some(step.span)));
                let place = format!("{fact} past {}", house.text_at(station.span));
                list.add_derived(common, &place, fact, &derived, false);
            }
        }
        if footing.pedestal.value().is_some() {
            let pedestal = geometry.surfaces.of(common.id, Surface::Bearing);
            list.add_derived(common, "pedestal top", "top", &pedestal, false);
        }
    }
    for slab in &model.slabs {
        list.add(&slab.common, "top", Surface::Top, slab.top.stated().is_some());
    }
    for wall in &model.walls {
        list.add(&wall.common, "top", Surface::Top, wall.top.stated().is_some());
        for (top, station) in &wall.raked {
            let place = format!("top at {}", house.text_at(station.span));
            list.put(&wall.common, &place, "top", Ok(*top), true);
        }
    }
    for shelf in &model.shelves {
        list.add(&shelf.common, "top", Surface::Top, shelf.top.stated().is_some());
    }
    for pocket in &model.pockets {
        list.add(&pocket.common, "seat", Surface::Seat, pocket.seat.stated().is_some());
    }
    for beam in &model.beams {
        list.add(&beam.common, "top", Surface::Top, false);
    }
    for (floor, levels) in model.floors.iter().zip(&geometry.floors) {
        let of = |field: &Field<Length>| field.stated().is_some();
        let common = &floor.common;
        list.add_derived(common, "subfloor", "subfloor", &levels.subfloor, of(&floor.subfloor));
        list.add_derived(common, "finish", "finish", &levels.finish, of(&floor.finish_at));
    }
    list.rows
}

struct List<'a> {
    house: &'a House,
    rows: Vec<Row>,
}

impl List<'_> {
    fn add(&mut self, common: &Common, fact: &str, surface: Surface, is_stated: bool) {
        let derived = self.house.geometry.surfaces.of(common.id, surface);
        self.add_derived(common, fact, fact, &derived, is_stated);
    }

    fn add_derived(&mut self, common: &Common, place: &str, fact: &str, derived: &Derived, is_stated: bool) {
        let elevation = derived.as_ref().map(|sum| sum.total()).map_err(|unknown| *unknown);
        self.put(common, place, fact, elevation, is_stated);
    }

    fn put(
        &mut self,
        common: &Common,
        place: &str,
        fact: &str,
        elevation: Result<Length, Unknown>,
        is_stated: bool,
    ) {
        let (model, limits) = (&self.house.model, &self.house.limits);
        // Nobody forms to an underside, and a finish lies as its deck does.
        let is_built_to = !matches!(fact, "bottom" | "finish");
        let within = is_built_to.then(|| limits.of(tolerance_of(model, common.id, fact)).value);
        // A place along the element has its own shots, which this list cannot tell apart: the crew fills them in.
        let shots =
            common.shots.iter().filter(|shot| shot.at.is_none() && *shot.fact == *fact && place == fact);
        self.rows.push(Row {
            surface: printable(&format!("{} {place}", common.label())).into_owned(),
            of: common.id,
            fact: (place == fact).then(|| fact.to_owned()),
            elevation,
            is_stated,
            within,
            shot: shots.max_by_key(|shot| shot.on).map(|shot| shot.value),
            missing: elevation.err().map(|unknown| self.words_for(unknown)).unwrap_or_default(),
        });
    }

    fn words_for(&self, unknown: Unknown) -> String {
        let label = |id: ElementId| self.house.model.common(id).map(Common::label);
        match unknown.of.and_then(label) {
            Some(of) => format!("`{}` of {}", unknown.fact, printable(&of)),
            None => format!("`{}`", unknown.fact),
        }
    }
}

fn write_table<const N: usize>(
    heads: &[&str; N],
    rows: &[[String; N]],
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<()> {
    let mut widths = heads.map(|head| head.chars().count());
    for row in rows {
        for (width, cell) in widths.iter_mut().zip(row) {
            *width = (*width).max(cell.chars().count());
        }
    }
    let line = |cells: &[String; N]| {
        let padded = cells.iter().zip(widths).map(|(cell, width)| format!("{cell:<width$}"));
        padded.collect::<Vec<_>>().join("  ").trim_end().to_owned()
    };
    writeln!(out, "{}", palette.strong(&line(&heads.map(str::to_owned))))?;
    for row in rows {
        writeln!(out, "{}", line(row))?;
    }
    Ok(())
}
