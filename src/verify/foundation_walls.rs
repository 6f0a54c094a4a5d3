//! Foundation walls against the earth behind them, by the codes' tables as far as they are here.
//!
//! The statics of plain concrete stand among the steps as a second opinion: a wall is never judged by them.

use crate::design::foundation_walls::{
    HEAVIEST_EARTH, MOST_FILL, Prescribed, earth_on_wall, plain_wall, prescribed,
};
use crate::geometry::backfill;
use crate::geometry::surfaces::Surface;
use crate::model::foundation::{Wall, WallKind};
use crate::profiles::foundations::CONCRETE_STRENGTH;
use crate::units::Length;
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::limit_state::LimitState;

/// Factor of earth's pressure at strength level: load H, ASCE 7-16 2.3.1, from memory.
const EARTH_FACTOR: f64 = 1.6;

/// Verifies every wall of concrete or masonry that has ground against it.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let walls = known
        .model
        .walls
        .iter()
        .filter(|wall| wall.kind.get().is_some_and(|kind| kind.is_mineral()) && !wall.grades.is_empty());
    walls.filter_map(|wall| verification(known, wall)).collect()
}

/// Nothing where the earth inside stands as high as the earth outside.
fn verification(known: &Known<'_>, wall: &Wall) -> Option<Verification> {
    let outcome = match backfill::of_wall(known.model, wall) {
        Some(earth) if earth.unbalanced().is_positive() => check(known, wall, earth.unbalanced()),
        Some(_) => return None,
        None => Err(NotVerified::Missing(wall.common.id, "grade")),
    };
    let of = wall.common.id;
    Some(Verification { of, part: None, against: None, limit_state: LimitState::WallBackfill, outcome })
}

fn check(known: &Known<'_>, wall: &Wall, fill: Length) -> Result<Check, NotVerified> {
    let id = wall.common.id;
    let level = |surface, fact| {
        let level = known.geometry.surfaces.of(id, surface);
        level.map(|level| level.total()).map_err(|_| NotVerified::Missing(id, fact))
    };
    let height = level(Surface::Top, "top")? - level(Surface::Bottom, "stands on")?;
    let thickness = wall.thick.get().ok_or(NotVerified::Missing(id, "thick"))?;
    if wall.kind.get() != Some(WallKind::Concrete) {
        return Err(NotVerified::NotCovered(crate::design::NotCovered::NoRule {
            what: "masonry walls against earth",
            clause: "IRC R404.1: its tables are not here; see the code's table, or design",
        }));
    }
    let Prescribed::Plain = prescribed(height, fill, thickness, HEAVIEST_EARTH)?;

    let concrete = known.limits.of(&CONCRETE_STRENGTH).value;
    let earth = earth_on_wall(height, fill, HEAVIEST_EARTH)?;
    let strength = plain_wall(thickness, concrete)?;
    Ok(Check {
        demand: fill.into(),
        capacity: MOST_FILL.min(height).into(),
        combination: "earth",
        pattern: None,
        at: None,
        clause: "IBC table 1807.1.6.2, first row: plain, with the floor above fastened to it",
        steps: vec![
            Step::read("height", height, "from the footing to its top"),
            Step::read("thickness", thickness, "7-1/2 in. or more"),
            Step::read("fill", fill, "the ground outside less the ground inside"),
            Step::read("Mu", earth.moment * EARTH_FACTOR, "second opinion, on a foot: 1.6 times the earth's"),
            Step::read("phi Mn", strength.design, "second opinion, on a foot: ACI 318 14.5.2.1"),
        ],
        assumed: vec![
            format!("earth of {:.0} psf a foot of depth", HEAVIEST_EARTH.to_pcf()).into(),
            format!("concrete {:.0} psi", concrete.to_psi()).into(),
        ],
    })
}
