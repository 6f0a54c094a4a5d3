//! A pad cut at what stands on it: punching, shear and bending, with its bars or without.
//!
//! A pad that holds as plain concrete needs no bars; one that doesn't relies on them, and then they must be enough.

use crate::design::concrete::critical_sections::{cantilever, moment, one_way_shear, two_way_shear};
use crate::design::concrete::one_way_shear::SizeEffect;
use crate::design::concrete::plain::{self, CastOn};
use crate::design::concrete::two_way_shear::{ColumnPlace, Punching, interior_perimeter};
use crate::design::concrete::{Section, flexure, one_way_shear as shear, two_way_shear as punching};
use crate::units::{AreaLoad, Force, Length};
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::footings::Worst;
use crate::verify::footings::bars::Laid;
use crate::verify::footings::ground::Concrete;
use crate::verify::footings::standing::Standing;
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

/// A pad under one strength combination.
#[derive(Clone, Copy, Debug)]
pub struct Cut<'a> {
    /// The combination.
    pub combination: &'static str,
    /// Along x and along y.
    pub sides: [Length; 2],
    /// Its thickness.
    pub thickness: Length,
    /// How far a plain one may reach past what stands on it.
    pub most_projection: Length,
    /// What stands on it.
    pub standing: Standing,
    /// How far that stands off its middle.
    pub off: [Length; 2],
    /// Pu.
    pub force: Force,
    /// qu, at the edge pressed most.
    pub pressure: AreaLoad,
    /// Its concrete.
    pub concrete: &'a Concrete,
    /// Its bars, when it has any.
    pub bars: Option<&'a Result<Laid, NotVerified>>,
}

/// One way across a pad.
#[derive(Clone, Copy, Debug)]
struct Way {
    /// The width that is cut.
    width: Length,
    /// How far it reaches past the cut.
    reach: Length,
    /// How far it reaches past the face of what stands on it.
    projection: Length,
}

/// Punching, shear and bending, and the bars where the pad relies on them.
pub fn checks(cut: &Cut<'_>) -> Vec<(LimitState, Result<Check, NotVerified>)> {
    let both = |check: fn(&Cut<'_>, &Way) -> Result<Check, NotVerified>| {
        let mut worst = Worst::default();
        for axis in [0, 1] {
            worst.take(way(cut, axis).and_then(|way| check(cut, &way)));
        }
        worst.outcome().unwrap_or(Err(NotVerified::NoForces("nothing to cut".into())))
    };
    let plain_bending = both(plain_bending);
    let relies_on_bars = !plain_bending.as_ref().is_ok_and(|check| check.ratio() <= 1.0);
    let mut checks = vec![
        (LimitState::Punching, easier(cut, punching_with_bars(cut), plain_punching(cut))),
        (LimitState::FootingShear, easier(cut, both(shear_with_bars), both(plain_shear))),
        (LimitState::FootingBending, easier(cut, both(bending_with_bars), plain_bending)),
    ];
    if let (true, Some(Ok(laid))) = (relies_on_bars, cut.bars) {
        checks.push((LimitState::FootingBars, laid.check(cut.concrete, cut.sides, cut.thickness)));
    }
    checks
}

/// With its bars or as if it had none, whichever bears more: bars never make concrete weaker.
fn easier(
    cut: &Cut<'_>,
    with_bars: Result<Check, NotVerified>,
    plain: Result<Check, NotVerified>,
) -> Result<Check, NotVerified> {
    if cut.bars.is_none() {
        return plain;
    }
    match (with_bars, plain) {
        (Err(why @ NotVerified::Missing(..)), _) => Err(why),
        (Ok(with_bars), Ok(plain)) if plain.ratio() < with_bars.ratio() => Ok(plain),
        (Ok(check), _) | (Err(_), Ok(check)) => Ok(check),
        (Err(why), Err(_)) => Err(why),
    }
}

fn way(cut: &Cut<'_>, axis: usize) -> Result<Way, NotVerified> {
    let pick = |[x, y]: [Length; 2]| if axis == 0 { (x, y) } else { (y, x) };
    let ((side, width), (critical, _)) = (pick(cut.sides), pick(cut.standing.critical));
    let ((face, _), (off, _)) = (pick(cut.standing.faces), pick(cut.off));
    Ok(Way { width, reach: cantilever(side, critical, off)?, projection: (side - face).half() + off.abs() })
}

fn laid<'a>(cut: &Cut<'a>) -> Result<&'a Laid, NotVerified> {
    match cut.bars {
        Some(Ok(laid)) => Ok(laid),
        Some(Err(why)) => Err(why.clone()),
        None => Err(NotVerified::NoForces("it has no bars".into())),
    }
}

fn check(
    cut: &Cut<'_>,
    (demand, capacity): (impl Into<Quantity>, impl Into<Quantity>),
    clause: &'static str,
    steps: Vec<Step>,
) -> Check {
    let of_bars = cut.bars.and_then(|bars| bars.as_ref().ok()).map(|laid| laid.assumed.iter());
    Check {
        demand: demand.into(),
        capacity: capacity.into(),
        combination: cut.combination,
        pattern: None,
        at: None,
        clause,
        steps,
        assumed: cut.concrete.assumed.iter().chain(of_bars.into_iter().flatten()).cloned().collect(),
    }
}

/// The pressure and the moment it makes at the cut.
fn bending_steps(cut: &Cut<'_>, way: &Way) -> Vec<Step> {
    let moment = moment(cut.pressure, way.width, way.reach);
    let values = vec![("qu", cut.pressure.into()), ("b", way.width.into()), ("l", way.reach.into())];
    vec![
        Step::read("Pu", cut.force, "from the takedown, without the footing"),
        Step::read("qu", cut.pressure, "where it is largest; ACI 318 13.2.6.1"),
        Step::worked("Mu", "qu b l^2 / 2", values, moment, "at the cut, ACI 318 table 13.2.7.1"),
    ]
}

fn bending_with_bars(cut: &Cut<'_>, way: &Way) -> Result<Check, NotVerified> {
    let laid = laid(cut)?;
    let depth = laid.upper_depth(cut.thickness)?;
    let held = laid.held(cut.concrete, way.width, way.reach)?;
    let section = Section {
        width: way.width,
        depth,
        steel: held.steel * held.share,
        concrete: cut.concrete.strength,
        yield_strength: laid.yield_strength,
    };
    let strength = flexure::strength(cut.concrete.code, &section)?;
    let mut steps = bending_steps(cut, way);
    steps.extend([
        Step::read("d", depth, "to the upper layer"),
        Step::read("ld", held.development, "ACI 318 25.4.2, from memory"),
        Step::read("la", held.embedment, "past the cut, less the cover"),
        Step::worked(
            "As,held",
            "As la / ld, at most As",
            vec![("As", held.steel.into()), ("la", held.embedment.into()), ("ld", held.development.into())],
            section.steel,
            "bars too short to be held count in proportion; common practice",
        ),
        Step::read("a", strength.block, "As fy / 0.85 f'c b"),
        Step::read("phi", strength.phi, "ACI 318 table 21.2.2"),
        Step::worked(
            "phi Mn",
            "phi As fy ( d - a / 2 )",
            vec![
                ("phi", strength.phi.into()),
                ("As", section.steel.into()),
                ("fy", laid.yield_strength.into()),
                ("d", depth.into()),
                ("a", strength.block.into()),
            ],
            strength.design,
            "ACI 318 22.2",
        ),
    ]);
    let demand = moment(cut.pressure, way.width, way.reach);
    Ok(check(cut, (demand, strength.design), "ACI 318 13.3, 22.2", steps))
}

/// Bending of plain concrete, and how far it reaches past what stands on it.
fn plain_bending(cut: &Cut<'_>, way: &Way) -> Result<Check, NotVerified> {
    let mut worst = Worst::default();
    worst.take(Ok(projection(cut, way)));
    worst.take(plain_moment(cut, way));
    worst.outcome().unwrap_or(Err(NotVerified::NoForces("nothing to cut".into())))
}

fn projection(cut: &Cut<'_>, way: &Way) -> Check {
    let steps = vec![
        Step::read("projection", way.projection, "past the face of what stands on it"),
        Step::read("h", cut.thickness, "the thickness"),
    ];
    let of_projection = check(cut, (way.projection, cut.most_projection), "IRC R403.1.1", steps);
    Check { combination: "any load", ..of_projection }
}

fn plain_moment(cut: &Cut<'_>, way: &Way) -> Result<Check, NotVerified> {
    let thickness = plain::footing_thickness(cut.thickness, CastOn::Soil)?;
    let strength = plain::flexure(way.width, thickness, cut.concrete.strength)?;
    let mut steps = bending_steps(cut, way);
    steps.extend([
        Step::read("h", thickness, "2 in. less on soil, ACI 318 14.5.1.7"),
        Step::read("Sm", strength.section_modulus, "b h^2 / 6"),
        Step::read("phi Mn", strength.design, "0.60 x 5 root f'c Sm, ACI 318 14.5.2.1"),
    ]);
    let demand = moment(cut.pressure, way.width, way.reach);
    Ok(check(cut, (demand, strength.design), "ACI 318 14.5.2.1", steps))
}

fn shear_steps(cut: &Cut<'_>, way: &Way, section_at: Length, source: &'static str) -> Vec<Step> {
    vec![
        Step::read("qu", cut.pressure, "where it is largest; ACI 318 13.2.6.1"),
        Step::worked(
            "Vu",
            "qu b ( l - x )",
            vec![
                ("qu", cut.pressure.into()),
                ("b", way.width.into()),
                ("l", way.reach.into()),
                ("x", section_at.into()),
            ],
            one_way_shear(cut.pressure, way.width, way.reach, section_at),
            source,
        ),
    ]
}

fn shear_with_bars(cut: &Cut<'_>, way: &Way) -> Result<Check, NotVerified> {
    let laid = laid(cut)?;
    let depth = laid.upper_depth(cut.thickness)?;
    let section = Section {
        width: way.width,
        depth,
        steel: laid.steel(),
        concrete: cut.concrete.strength,
        yield_strength: laid.yield_strength,
    };
    let strength = shear::strength(cut.concrete.code, &section, SizeEffect::Waived)?;
    let mut steps = shear_steps(cut, way, depth, "at d from the cut, nothing where that lies past the edge");
    steps.extend([
        Step::read("As / b d", strength.steel_ratio, ""),
        Step::read(
            "Vc / root f'c b d",
            strength.coefficient,
            "ACI 318 22.5.5.1; size effect waived, 13.2.6.2",
        ),
        Step::read("phi Vc", strength.design, "phi 0.75"),
    ]);
    let demand = one_way_shear(cut.pressure, way.width, way.reach, depth);
    Ok(check(cut, (demand, strength.design), "ACI 318 22.5.5.1", steps))
}

fn plain_shear(cut: &Cut<'_>, way: &Way) -> Result<Check, NotVerified> {
    let thickness = plain::footing_thickness(cut.thickness, CastOn::Soil)?;
    let strength = plain::one_way_shear(way.width, thickness, cut.concrete.strength)?;
    let mut steps =
        shear_steps(cut, way, thickness, "at h from the cut, nothing where that lies past the edge");
    steps.extend([
        Step::read("h", thickness, "2 in. less on soil, ACI 318 14.5.1.7"),
        Step::read("phi Vn", strength.design, "0.60 x 4/3 root f'c b h, ACI 318 table 14.5.5.1"),
    ]);
    let demand = one_way_shear(cut.pressure, way.width, way.reach, thickness);
    Ok(check(cut, (demand, strength.design), "ACI 318 14.5.5.1(a)", steps))
}

fn punched(cut: &Cut<'_>, depth: Length) -> Result<Force, NotVerified> {
    Ok(two_way_shear(cut.force, cut.sides, cut.standing.critical, cut.off, depth)?)
}

fn punching_steps(cut: &Cut<'_>, depth: Length, punched: Force, perimeter: Length) -> Vec<Step> {
    let [one, other] = cut.standing.critical;
    vec![
        Step::read("Pu", cut.force, "from the takedown, without the footing"),
        Step::read("c1", one, "between the cuts, ACI 318 table 13.2.7.1"),
        Step::read("c2", other, ""),
        Step::read("d", depth, "depth that counts"),
        Step::worked(
            "bo",
            "2 ( c1 + c2 + 2 d )",
            vec![("c1", one.into()), ("c2", other.into()), ("d", depth.into())],
            perimeter,
            "at half of it all round",
        ),
        Step::read("Vu", punched, "Pu less what presses inside of the perimeter"),
    ]
}

fn punching_with_bars(cut: &Cut<'_>) -> Result<Check, NotVerified> {
    let depth = laid(cut)?.mean_depth(cut.thickness)?;
    let demand = punched(cut, depth)?;
    let perimeter = interior_perimeter(cut.standing.critical, depth)?;
    let punching = Punching {
        sides: cut.standing.critical,
        place: ColumnPlace::Interior,
        perimeter,
        depth,
        concrete: cut.concrete.strength,
    };
    let strength = punching::strength(cut.concrete.code, &punching, SizeEffect::Waived)?;
    let mut steps = punching_steps(cut, depth, demand, perimeter);
    steps.extend([
        Step::read("vc", strength.stress, "ACI 318 table 22.6.5.2; size effect waived, 13.2.6.2"),
        Step::read("phi Vc", strength.design, "phi 0.75, vc bo d"),
    ]);
    Ok(check(cut, (demand, strength.design), "ACI 318 22.6.5.2", steps))
}

fn plain_punching(cut: &Cut<'_>) -> Result<Check, NotVerified> {
    let thickness = plain::footing_thickness(cut.thickness, CastOn::Soil)?;
    let demand = punched(cut, thickness)?;
    let perimeter = interior_perimeter(cut.standing.critical, thickness)?;
    let strength = plain::two_way_shear(cut.standing.critical, perimeter, thickness, cut.concrete.strength)?;
    let mut steps = punching_steps(cut, thickness, demand, perimeter);
    steps.extend([
        Step::read("Vn / root f'c bo h", strength.coefficient, "ACI 318 table 14.5.5.1"),
        Step::read("phi Vn", strength.design, "phi 0.60, on h: 2 in. less on soil"),
    ]);
    Ok(check(cut, (demand, strength.design), "ACI 318 14.5.5.1(b)", steps))
}
