//! A foot of strip cut at its wall: shear and bending across it, as plain concrete. Bars along it do nothing across it.

use crate::design::concrete::critical_sections::{
    Support, cantilever, critical_width, moment, one_way_shear,
};
use crate::design::concrete::plain::{self, CastOn};
use crate::model::foundation::{Wall, WallKind};
use crate::profiles::foundations::FOOTING_PROJECTION_PER_THICKNESS;
use crate::units::{AreaLoad, Length};
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::footings::Worst;
use crate::verify::footings::ground::Concrete;
use crate::verify::quantity::Quantity;

/// A foot of strip.
#[derive(Clone, Copy, Debug)]
pub struct StripCut<'a> {
    /// Its width there.
    pub zone_width: Length,
    /// Its thickness there.
    pub thickness: Length,
    /// How far the wall stands off its middle.
    pub off: Length,
    /// The wall.
    pub wall: &'a Wall,
    /// Where, from the beginning of the run.
    pub at: Length,
    /// Its concrete.
    pub concrete: &'a Concrete,
}

const FOOT: Length = Length::feet(1);

fn thickness_of(wall: &Wall) -> Result<Length, NotVerified> {
    wall.thick.get().ok_or(NotVerified::Missing(wall.common.id, "thick"))
}

/// How far the strip reaches past the cut; a wall of wood is cut like masonry, halfway to its middle, on the safe side.
fn reach(cut: &StripCut<'_>) -> Result<Length, NotVerified> {
    let width = thickness_of(cut.wall)?;
    let kind = cut.wall.kind.get().ok_or(NotVerified::Missing(cut.wall.common.id, "kind"))?;
    let support = match kind {
        WallKind::Concrete => Support::Concrete { width },
        WallKind::Masonry | WallKind::Framed | WallKind::Pony => Support::Masonry { width },
    };
    Ok(cantilever(cut.zone_width, critical_width(support)?, cut.off)?)
}

/// Shear across the strip.
pub fn shear(
    cut: &StripCut<'_>,
    combination: &'static str,
    pressure: AreaLoad,
) -> Result<Check, NotVerified> {
    let reach = reach(cut)?;
    let thickness = plain::footing_thickness(cut.thickness, CastOn::Soil)?;
    let strength = plain::one_way_shear(FOOT, thickness, cut.concrete.strength)?;
    let demand = one_way_shear(pressure, FOOT, reach, thickness);
    let steps = vec![
        Step::read("qu", pressure, "without the footing's own weight"),
        Step::read("l", reach, "past the cut, ACI 318 table 13.2.7.1"),
        Step::read("h", thickness, "2 in. less on soil, ACI 318 14.5.1.7"),
        Step::read("Vu", demand, "qu (l - h) of a foot; nothing where h lies past the edge"),
        Step::read("phi Vn", strength.design, "0.60 x 4/3 root f'c b h"),
    ];
    Ok(check(cut, combination, (demand, strength.design), "ACI 318 14.5.5.1(a)", steps))
}

/// Bending across the strip, and how far it reaches past the wall; thinner than the concrete code knows, only that.
pub fn bending(
    known: &Known<'_>,
    cut: &StripCut<'_>,
    combination: &'static str,
    pressure: AreaLoad,
) -> Result<Check, NotVerified> {
    let factor = known.limits.of(&FOOTING_PROJECTION_PER_THICKNESS).value.0;
    let projection = (cut.zone_width - thickness_of(cut.wall)?).half() + cut.off.abs();
    let steps = vec![
        Step::read("projection", projection, "past the face of the wall"),
        Step::read("h", cut.thickness, "the thickness"),
    ];
    let most = cut.thickness.scaled(factor);
    let mut worst = Worst::default();
    worst.take(Ok(check(cut, "any load", (projection, most), "IRC R403.1.1", steps)));
    if let Ok(thickness) = plain::footing_thickness(cut.thickness, CastOn::Soil) {
        let reach = reach(cut)?;
        let strength = plain::flexure(FOOT, thickness, cut.concrete.strength)?;
        let demand = moment(pressure, FOOT, reach);
        let steps = vec![
            Step::read("qu", pressure, "without the footing's own weight"),
            Step::read("l", reach, "past the cut, ACI 318 table 13.2.7.1"),
            Step::worked(
                "Mu",
                "qu b l^2 / 2",
                vec![("qu", pressure.into()), ("b", FOOT.into()), ("l", reach.into())],
                demand,
                "of a foot",
            ),
            Step::read("h", thickness, "2 in. less on soil, ACI 318 14.5.1.7"),
            Step::read("Sm", strength.section_modulus, "b h^2 / 6"),
            Step::read("phi Mn", strength.design, "0.60 x 5 root f'c Sm, ACI 318 14.5.2.1"),
        ];
        worst.take(Ok(check(cut, combination, (demand, strength.design), "ACI 318 14.5.2.1", steps)));
    }
    worst.outcome().unwrap_or(Err(NotVerified::NoForces("nothing to cut".into())))
}

fn check(
    cut: &StripCut<'_>,
    combination: &'static str,
    (demand, capacity): (impl Into<Quantity>, impl Into<Quantity>),
    clause: &'static str,
    steps: Vec<Step>,
) -> Check {
    Check {
        demand: demand.into(),
        capacity: capacity.into(),
        combination,
        pattern: None,
        at: Some(cut.at),
        clause,
        steps,
        assumed: cut.concrete.assumed.clone(),
    }
}
