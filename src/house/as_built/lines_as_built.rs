//! The lines of the house as built.

use crate::diagnostic::Edit;
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::house::as_built::measured::{Measured, surface};
use crate::house::lines::{part_at, removed};
use crate::house::wish::saying;
use crate::model::element::{Common, ElementId, Stage};
use crate::model::foundation::{Pedestal, TopPlace};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

const NOT_STATED: &str = "no line states it";
const OF_ONE_PLACE: &str = "it is the level of one place";
const SLOPES: &str = "the drawn one slopes";
const UNCLEAR: &str = "the line that states it can't be told";

/// The edits that put a measurement in place of what is drawn.
///
/// # Errors
/// Why that can't be done.
pub fn of(house: &House, all: &[Measured], shot: &Measured) -> Result<Vec<Edit>, &'static str> {
    if shot.at.is_some() {
        return Err(OF_ONE_PLACE);
    }
    let common = house.model.common(shot.of).ok_or(NOT_STATED)?;
    let value = written(house, shot);
    let say = |line: String| Ok(vec![saying(house, common, &line).map_err(|_| UNCLEAR)?]);
    match (shot.of.kind, surface(shot.of.kind, &shot.fact)) {
        (ElementKind::Wall, "top") if house.model.wall(shot.of).is_some_and(|it| !it.raked.is_empty()) => {
            Err(SLOPES)
        }
        (ElementKind::Footing, "top") if has_several_tops(house, shot.of) => Err(SLOPES),
        (
            ElementKind::Wall
            | ElementKind::Footing
            | ElementKind::Slab
            | ElementKind::Shelf
            | ElementKind::Ledger
            | ElementKind::Stoop
            | ElementKind::Landing
            | ElementKind::Header,
            "top",
        ) => say(format!("top {value}")),
        (ElementKind::Pocket, "seat") => say(format!("seat {value}")),
        (ElementKind::Squash, "length") => say(format!("length {value}")),
        (ElementKind::Beam, "top") => say(format!("set top {value}")),
        (ElementKind::Beam, "bottom") if of_surface(all, shot.of, "top").is_none() => {
            let top = top_above_bottom(house, shot).ok_or(NOT_STATED)?;
            say(format!("set top {}", exactly(top)))
        }
        (ElementKind::Column, "length") => column_length(house, common, &value),
        (ElementKind::Floor, "subfloor") => subfloor(house, common, &value),
        (ElementKind::Floor, "finish") => finish(house, all, shot, common, &value),
        _ => Err(NOT_STATED),
    }
}

/// The edits that keep what stands, and was not measured, where it was drawn: its line names something that was measured.
pub fn of_what_stands(house: &House, all: &[Measured]) -> Vec<Edit> {
    let mut edits = Vec::new();
    let is_up = |common: &Common| {
        matches!(common.status.value().map(|status| status.stage), Some(Stage::Poured | Stage::Set))
    };
    let mut keep = |common: &Common, line: String| edits.extend(saying(house, common, &line));
    for footing in house.model.footings.iter().filter(|footing| is_up(&footing.common)) {
        let id = footing.common.id;
        let elevation = |place: &TopPlace, surface| match place {
            TopPlace::BelowSlab(_, slab) | TopPlace::AboveSlab(_, slab) => {
                let slab = slab.target?;
                of_surface(all, slab, "top")?;
                Some(exactly(house.geometry.surfaces.of(id, surface).ok()?.total()))
            }
            TopPlace::At(_) => None,
        };
        let top = footing.top.value().and_then(|top| elevation(top, Surface::Top));
        if let Some(top) = top.filter(|_| of_surface(all, id, "top").is_none()) {
            keep(&footing.common, format!("top {top}"));
        }
        if let Some(Pedestal { top: place, size }) = footing.pedestal.value()
            && let Some(top) = elevation(place, Surface::Bearing)
        {
            let [one, other] = size.map(exactly);
            keep(&footing.common, format!("pedestal {one} x {other}, top {top}"));
        }
    }
    for (floor, levels) in house.model.floors.iter().zip(&house.geometry.floors) {
        let by_steps = floor.subfloor.is_missing() && floor.finish_at.is_missing() && floor.on.is_missing();
        let is_measured =
            ["subfloor", "finish"].iter().any(|it| of_surface(all, floor.common.id, it).is_some());
        if let Ok(subfloor) = &levels.subfloor
            && by_steps
            && is_up(&floor.common)
            && !is_measured
        {
            keep(&floor.common, format!("subfloor {}", exactly(subfloor.total())));
        }
    }
    edits
}

/// A length that the format reads back as exactly this one.
pub fn exactly(length: Length) -> String {
    let sixteenth = Length::sixteenths(0, 1);
    if length.rounded_to(sixteenth) == length {
        return length.in_inches().to_string();
    }
    // An exact unit is a whole number of 1/8000 mm.
    let (units, sign) = (length.to_units().unsigned_abs(), if length.is_negative() { "-" } else { "" });
    let per_mm = Length::UNITS_PER_MM.unsigned_abs();
    format!("{sign}{}.{:06} mm", units / per_mm, units % per_mm * (1_000_000 / per_mm))
}

fn written(house: &House, shot: &Measured) -> String {
    let place = part_at(house, shot.span, "value");
    place.map_or_else(|| exactly(shot.value), |place| house.text_at(place).to_owned())
}

/// What was measured of a surface, everywhere.
fn of_surface<'m>(all: &'m [Measured], of: ElementId, wanted: &str) -> Option<&'m Measured> {
    all.iter().find(|shot| shot.of == of && shot.at.is_none() && surface(of.kind, &shot.fact) == wanted)
}

fn has_several_tops(house: &House, footing: ElementId) -> bool {
    let top = house.model.footing(footing).and_then(|footing| footing.top.span());
    top.is_some_and(|top| part_at(house, top, "at").is_some())
}

/// The top of a beam whose underside was measured.
fn top_above_bottom(house: &House, shot: &Measured) -> Option<Length> {
    let drawn = |surface| house.geometry.surfaces.of(shot.of, surface).ok().map(|sum| sum.total());
    Some(drawn(Surface::Top)? + shot.value - drawn(Surface::Bottom)?)
}

/// The cut that a column has: what the author says of it otherwise is gone.
fn column_length(house: &House, common: &Common, value: &str) -> Result<Vec<Edit>, &'static str> {
    let line = format!("cut should be {value}");
    let mut said = common.claims.iter().filter(|claim| &*claim.fact == "cut");
    match (said.next(), said.next()) {
        (None, _) => Ok(vec![saying(house, common, &line).map_err(|_| UNCLEAR)?]),
        (Some(claim), None) => Ok(vec![Edit { span: claim.value_span, text: value.to_owned() }]),
        (Some(_), Some(_)) => Err(UNCLEAR),
    }
}

fn subfloor(house: &House, common: &Common, value: &str) -> Result<Vec<Edit>, &'static str> {
    let floor = house.model.floor(common.id).ok_or(NOT_STATED)?;
    if !floor.on.is_missing() {
        return Err("the floor is a slab: its top is what can be measured");
    }
    let mut edits = vec![saying(house, common, &format!("subfloor {value}")).map_err(|_| UNCLEAR)?];
    if let Some(span) = floor.finish_at.span() {
        edits.push(removed(house, span));
    }
    Ok(edits)
}

/// The finish: where it places the floor, its line; else what lies on the deck makes up the difference.
fn finish(
    house: &House,
    all: &[Measured],
    shot: &Measured,
    common: &Common,
    value: &str,
) -> Result<Vec<Edit>, &'static str> {
    let floor = house.model.floor(common.id).ok_or(NOT_STATED)?;
    // What was measured of a slab's deck is not followed.
    let deck = of_surface(all, common.id, "subfloor").filter(|_| floor.on.is_missing());
    if !floor.finish_at.is_missing() && deck.is_none() {
        return Ok(vec![saying(house, common, &format!("finish at {value}")).map_err(|_| UNCLEAR)?]);
    }
    let slab = floor.on.value().and_then(|slab| of_surface(all, slab.target?, "top"));
    let drawn = || {
        let levels = house.geometry.floors.get(common.id.index as usize)?;
        Some(levels.subfloor.as_ref().ok()?.total())
    };
    let base = deck.or(slab).map(|shot| shot.value).or_else(drawn).ok_or(NOT_STATED)?;
    let thick = shot.value - base;
    if thick.is_negative() {
        return Err("the covering would lie below the deck");
    }
    let place = floor.finish.span().and_then(|span| part_at(house, span, "value"));
    Ok(vec![match place {
        Some(span) => Edit { span, text: exactly(thick) },
        None => saying(house, common, &format!("finish {}", exactly(thick))).map_err(|_| UNCLEAR)?,
    }])
}

#[cfg(test)]
mod tests {
    use super::exactly;
    use crate::testing::rule_check::house;
    use crate::units::Length;

    /// Read back by the format's own reader.
    #[test]
    fn a_length_is_written_so_that_it_reads_back_exactly() {
        for units in [1, 7, 203_199, 203_200, 12_700, 99_999_937, 19_913_600] {
            let length = Length::from_units(units);
            let read = house(&format!("footing F1\n  top {}\n", exactly(length)));
            let id = read.model.named("F1").unwrap();
            let top = read.geometry.surfaces.of(id, crate::geometry::surfaces::Surface::Top);
            assert_eq!(top.unwrap().total(), length, "{}", exactly(length));
        }
    }
}
