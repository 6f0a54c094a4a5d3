//! The step card: a drop between two floors, divided into risers, with what else would move.

use std::io::{self, Write};

use crate::geometry::step_divider::{FreeDrop, Step, divisions, free_drops, moves};
use crate::house::House;
use crate::profiles::stairs::RISER_HEIGHT;
use crate::report::{CAUTION, Palette, printable};
use crate::units::Length;

/// Writes how the step between two floors can be divided.
///
/// # Errors
/// What the stream says.
pub fn write_steps(house: &House, step: &Step, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let limit = house.limits.of(&RISER_HEIGHT);
    let (upper, lower) = (printable(&step.upper.name).to_string(), printable(&step.lower.name).to_string());
    writeln!(out, "{} {upper} down to {lower}", palette.strong("Step from"))?;
    for side in [&step.upper, &step.lower] {
        writeln!(
            out,
            "finish of {}: {} ({} on the deck at {})",
            printable(&side.name),
            side.finish.in_feet(),
            side.build_up(),
            side.subfloor.in_feet()
        )?;
    }
    writeln!(
        out,
        "drop: {} from finish to finish, {} from deck to deck",
        step.drop().in_inches(),
        step.subfloor_drop().in_inches()
    )?;

    writeln!(
        out,
        "\n{} (at the most {} each; treads {} thick)",
        palette.strong("Risers"),
        limit.value.in_inches(),
        step.tread_stock.in_inches()
    )?;
    let found = divisions(step, limit.value);
    if found.is_empty() {
        writeln!(out, "none: the two floors are level, or further apart than one flight goes")?;
    }
    for division in &found {
        writeln!(out, "{} of {}", division.risers, division.riser)?;
        if !division.seats.is_empty() {
            let seats: Vec<String> = division.seats.iter().map(|seat| seat.in_inches().to_string()).collect();
            writeln!(out, "    rough seats above the deck of {lower}: {}", seats.join(", "))?;
            writeln!(
                out,
                "    the last one lies {} below the deck of {upper}",
                division.below_upper.in_inches()
            )?;
        }
    }

    writeln!(
        out,
        "\n{} (the lower joists end right under the upper ones, or under a plate between them)",
        palette.strong("Drops that come free")
    )?;
    for free in free_drops(step, limit.value) {
        write_free(house, step, &free, out)?;
    }
    writeln!(out, "\n{CAUTION}")
}

fn write_free(house: &House, step: &Step, free: &FreeDrop, out: &mut impl Write) -> io::Result<()> {
    let plate =
        if free.plate.is_positive() { format!(" and a plate of {}", free.plate) } else { String::new() };
    let low = if free.is_low { ", low" } else { "" };
    writeln!(
        out,
        "{} joists{plate}: {}, {} of {}{low}",
        free.size,
        free.drop.in_inches(),
        free.risers,
        free.riser
    )?;
    // Only with the joists that the upper floor has does nothing but the lower floor move.
    if step.upper.joists != Some(free.depth) {
        return Ok(());
    }
    if free.drop == step.drop() {
        return writeln!(out, "    as it is");
    }
    for moved in moves(&house.model, &house.geometry, step, free.drop) {
        let up = moved.to - moved.from;
        let way = if up > Length::ZERO { "up" } else { "down" };
        writeln!(
            out,
            "    {}: {} {way}, from {} to {}",
            printable(&moved.what),
            up.abs().in_inches(),
            moved.from.in_feet(),
            moved.to.in_feet()
        )?;
    }
    Ok(())
}
