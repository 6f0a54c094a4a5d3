//! Strips under walls: where walls follow one another in one line, all of it is one run.
//!
//! Line loads press where they lie; a point load spreads one in one down through a wall of concrete or masonry, and through
//! the footing itself where nothing solid is between. A local pad widens the strip where it lies. Across the strip a wall
//! off its middle presses one edge more. Along it the wall is stiff enough to even out what it brings (common practice).

use crate::design::loads::STRENGTH;
use crate::design::soil::pressure::{Basis, contact_pressure, point_spread};
use crate::geometry::band;
use crate::geometry::pads::{Strip, strips_of};
use crate::geometry::surfaces::Surface;
use crate::model::element::ElementId;
use crate::model::foundation::{Footing, FootingSize, Wall, WallKind};
use crate::model::plan::Axis;
use crate::profiles::foundations::POINT_LOAD_ON_STRIP;
use crate::statics::action::{Acting, Action, Source};
use crate::statics::applied::CONCRETE;
use crate::statics::cases::{ByCase, Case};
use crate::units::{Force, Length, LineLoad};
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::demands::{acting, combinations, combined};
use crate::verify::footings::Worst;
use crate::verify::footings::ground::{self, Concrete, Ground};
use crate::verify::footings::standing;
use crate::verify::footings::strip_section::{self, StripCut};
use crate::verify::limit_state::LimitState;

/// Walls in one line on one strip.
#[derive(Clone, Debug)]
struct Run<'a> {
    axis: Axis,
    across: (Length, Length),
    along: (Length, Length),
    /// One of its walls.
    wall: &'a Wall,
    walls: Vec<&'a Wall>,
    /// The ends of the walls' own lines.
    ends: (Length, Length),
}

impl Run<'_> {
    fn has(&self, wall: ElementId) -> bool {
        self.walls.iter().any(|own| own.common.id == wall)
    }
}

/// A stretch of a run on which a load lies evenly.
#[derive(Clone, Copy, Debug)]
struct Stretch {
    from: Length,
    to: Length,
    load: ByCase<LineLoad>,
}

/// A point load on a run.
#[derive(Clone, Copy, Debug)]
struct Point {
    at: Length,
    force: ByCase<Force>,
    /// What brings it to the wall, or stands on the strip itself.
    from: Option<ElementId>,
}

/// Part of a run with one width and thickness: the strip itself, or a wider place of it.
#[derive(Clone, Copy, Debug)]
struct Zone {
    /// Which local pad; none of the strip itself.
    pad: Option<usize>,
    along: (Length, Length),
    width: Length,
    thickness: Length,
    centre: Length,
}

/// Verifies a strip; nothing for pads.
pub fn of(known: &Known<'_>, footing: &Footing) -> Vec<Verification> {
    let Some(FootingSize::Strip(..)) = footing.size.get() else { return Vec::new() };
    if let Some(fact) = ["under", "offset", "local pad"].into_iter().find(|fact| footing.common.may_say(fact))
    {
        return vec![Verification {
            of: footing.common.id,
            part: None,
            against: None,
            limit_state: LimitState::SoilPressure,
            outcome: Err(NotVerified::Missing(footing.common.id, fact)),
        }];
    }
    let runs = runs_of(known, footing);
    let shares = shared(known, footing, &runs);
    let mut all: Vec<Verification> = nowhere(known, footing, &runs).collect();
    for (run, actions) in runs.iter().zip(shares) {
        all.extend(run_checks(known, footing, run, &actions));
    }
    all
}

/// Walls on the strip whose place in plan is not known: what they bring can't be put anywhere.
fn nowhere<'k>(known: &Known<'k>, footing: &Footing, runs: &[Run<'_>]) -> impl Iterator<Item = Verification> {
    let of = footing.common.id;
    let walls = footing.under.iter().filter_map(|wall| known.model.wall(wall.target?));
    let unplaced = walls.filter(|wall| !runs.iter().any(|run| run.has(wall.common.id)));
    unplaced.map(move |wall| Verification {
        of,
        part: Some(format!("under {}", wall.common.name).into()),
        against: None,
        limit_state: LimitState::SoilPressure,
        outcome: Err(missing(wall, "from")),
    })
}

fn runs_of<'a>(known: &Known<'a>, footing: &Footing) -> Vec<Run<'a>> {
    let mut runs: Vec<Run<'a>> = Vec::new();
    for Strip { wall, band, .. } in strips_of(known.model, footing) {
        let Some(wall) = known.model.wall(wall) else { continue };
        let Some(ends) = wall.from.value().map(|line| line.on(band.axis)) else { continue };
        let mut run =
            Run { axis: band.axis, across: band.across, along: band.along, wall, walls: vec![wall], ends };
        let follows = |other: &Run<'_>| {
            other.axis == run.axis
                && other.across == run.across
                && other.along.0 <= run.along.1
                && run.along.0 <= other.along.1
        };
        let (joined, apart): (Vec<_>, Vec<_>) = runs.into_iter().partition(follows);
        for other in joined.into_iter().rev() {
            run.along = (run.along.0.min(other.along.0), run.along.1.max(other.along.1));
            run.ends = (run.ends.0.min(other.ends.0), run.ends.1.max(other.ends.1));
            run.walls.splice(0..0, other.walls);
        }
        runs = apart;
        runs.push(run);
    }
    runs
}

/// What acts on each run, the footing's own weight left out: what a wall brings goes to its run, the rest to the nearest.
fn shared<'k>(known: &Known<'k>, footing: &Footing, runs: &[Run<'_>]) -> Vec<Vec<&'k Action>> {
    let mut shares = vec![Vec::new(); runs.len()];
    let under = |wall: ElementId| footing.under.iter().any(|under| under.target == Some(wall));
    for action in known.forces.on(footing.common.id) {
        if action.source == Source::Weight {
            continue;
        }
        let own = runs.iter().position(|run| matches!(action.source, Source::From(wall) if run.has(wall)));
        if own.is_none() && matches!(action.source, Source::From(wall) if under(wall)) {
            continue;
        }
        let nearest = || {
            let distances = runs.iter().map(|run| distance(&action.acting, run)).enumerate();
            distances.min_by_key(|(_, distance)| *distance).map(|(at, _)| at)
        };
        if let Some(share) = own.or_else(nearest).and_then(|at| shares.get_mut(at)) {
            share.push(action);
        }
    }
    shares
}

/// How far a load lies from a run, both ways together.
fn distance(acting: &Acting, run: &Run<'_>) -> Length {
    let past = |(from, to): (Length, Length), (low, high): (Length, Length)| {
        let middle = (from + to).half();
        (low - middle).max(middle - high).max(Length::ZERO)
    };
    past(acting.reach(run.axis), run.along) + past(acting.reach(run.axis.across()), run.across)
}

fn run_checks(known: &Known<'_>, footing: &Footing, run: &Run<'_>, actions: &[&Action]) -> Vec<Verification> {
    let of = footing.common.id;
    let (mut stretches, points) = parted(known, run, actions);
    let zones = zones(footing, run);
    let under = run.walls.iter().map(|wall| &*wall.common.name).collect::<Vec<_>>().join(" and ");
    let mut all = point_checks(known, of, &points, &zones, &under);
    for point in &points {
        match spread(known, footing, run, point) {
            Ok(stretch) => stretches.push(stretch),
            Err(why) => {
                let part = Some(format!("under {under}").into());
                let limit_state = LimitState::SoilPressure;
                all.push(Verification { of, part, against: point.from, limit_state, outcome: Err(why) });
                return all;
            }
        }
    }
    if stretches.is_empty() {
        return all;
    }
    let ground = ground::under(known, footing);
    let concrete = ground::concrete(known, of, &footing.concrete);
    for (at, zone) in zones.iter().enumerate() {
        let covering = zones.get(at.saturating_add(1)..).unwrap_or_default();
        let part: Box<str> = match zone.pad {
            Some(pad) => format!("local pad {} under {under}", pad.saturating_add(1)).into(),
            None => format!("under {under}").into(),
        };
        for (limit_state, worst) in zone_checks(known, run, zone, covering, &stretches, &ground, &concrete) {
            let verification = worst.verification(of, limit_state);
            all.extend(verification.map(|found| Verification { part: Some(part.clone()), ..found }));
        }
    }
    all
}

/// Loads along the run, and loads at a point of it: those at one place together.
fn parted(known: &Known<'_>, run: &Run<'_>, actions: &[&Action]) -> (Vec<Stretch>, Vec<Point>) {
    let (mut stretches, mut points) = (Vec::new(), Vec::<Point>::new());
    for action in actions {
        let (from, to) = action.acting.reach(run.axis);
        let force = action.acting.total();
        if from < to {
            stretches.push(Stretch { from, to, load: force.map(|force| force / (to - from)) });
            continue;
        }
        match points.iter_mut().find(|point| point.at == from) {
            Some(point) => point.force += force,
            None => points.push(Point { at: from, force, from: brought_by(known, action) }),
        }
    }
    (stretches, points)
}

/// What brings a point load: the element itself where it stands on the strip, else what stands on the wall there.
fn brought_by(known: &Known<'_>, action: &Action) -> Option<ElementId> {
    let Source::From(above) = action.source else { return None };
    let Acting::Point { at, .. } = action.acting else { return Some(above) };
    let on_wall = known.forces.on(above).iter().filter_map(|action| match (action.source, action.acting) {
        (Source::From(element) | Source::Load(element), Acting::Point { at: there, force })
            if there == at =>
        {
            Some((element, force.total()))
        }
        _ => None,
    });
    let most = on_wall.max_by(|one, other| one.1.to_lb().total_cmp(&other.1.to_lb()));
    Some(most.map_or(above, |(element, _)| element))
}

/// The strip itself, then its local pads.
fn zones(footing: &Footing, run: &Run<'_>) -> Vec<Zone> {
    let Some(FootingSize::Strip(width, thickness)) = footing.size.get() else { return Vec::new() };
    let centre = (run.across.0 + run.across.1).half();
    let mut zones = vec![Zone { pad: None, along: run.ends, width, thickness, centre }];
    for (at, pad) in footing.local_pads.iter().enumerate() {
        let [x, y, thickness] = pad.size;
        let (length, width) = if run.axis == Axis::X { (x, y) } else { (y, x) };
        let (middle, centre) = (pad.at.on(run.axis), pad.at.on(run.axis.across()));
        let along = (middle - length.half(), middle - length.half() + length);
        let touches = centre - width.half() < run.across.1 && run.across.0 < centre + width.half();
        if touches && along.0 < run.ends.1 && run.ends.0 < along.1 {
            zones.push(Zone { pad: Some(at), along, width, thickness, centre });
        }
    }
    zones
}

/// Point loads against what a strip takes without a pad of its own: each that is too large, else the largest.
fn point_checks(
    known: &Known<'_>,
    of: ElementId,
    points: &[Point],
    zones: &[Zone],
    under: &str,
) -> Vec<Verification> {
    let limit = known.limits.of(&POINT_LOAD_ON_STRIP).value;
    let on_pad = |point: &Point| {
        let mut pads = zones.iter().filter(|zone| zone.pad.is_some());
        pads.any(|zone| zone.along.0 <= point.at && point.at <= zone.along.1)
    };
    let bare = points.iter().filter(|point| !on_pad(point));
    let (heavy, light): (Vec<&Point>, Vec<&Point>) = bare.partition(|point| point.force.total() > limit);
    let largest = light
        .into_iter()
        .max_by(|one, other| one.force.total().to_lb().total_cmp(&other.force.total().to_lb()));
    let told = if heavy.is_empty() { largest.into_iter().collect() } else { heavy };
    told.into_iter()
        .map(|point| Verification {
            of,
            part: Some(format!("under {under}").into()),
            against: point.from,
            limit_state: LimitState::StripPointLoad,
            outcome: Ok(Check {
                demand: point.force.total().into(),
                capacity: limit.into(),
                combination: "D + L + Lr + S",
                pattern: None,
                at: None,
                clause: "common practice",
                steps: Case::ALL
                    .into_iter()
                    .filter(|case| *point.force.of(*case) != Force::ZERO)
                    .map(|case| Step::read(case.symbol(), *point.force.of(case), "from the takedown"))
                    .collect(),
                assumed: Vec::new(),
            }),
        })
        .collect()
}

/// The stretch of strip that a point load presses on.
fn spread(
    known: &Known<'_>,
    footing: &Footing,
    run: &Run<'_>,
    point: &Point,
) -> Result<Stretch, NotVerified> {
    let thickness = footing.size.get().map_or(Length::ZERO, |size| size.thickness());
    let wall = wall_at(run, point.at);
    let height = match wall.kind.get().ok_or(missing(wall, "kind"))? {
        WallKind::Concrete | WallKind::Masonry => {
            let level = |surface| known.geometry.surfaces.of(wall.common.id, surface);
            let top = level(Surface::Top).map_err(|why| missing(wall, why.fact))?;
            let bottom = level(Surface::Bottom).map_err(|why| missing(wall, why.fact))?;
            (top.total() - bottom.total()).max(thickness)
        }
        WallKind::Framed | WallKind::Pony => thickness,
    };
    // Only what stands on the strip itself says how long it bears; on top of a wall that is small beside its height.
    let bearing = point.from.and_then(|from| standing::alone(known, from).ok());
    let bearing = bearing.map_or(Length::ZERO, |standing| standing.faces[0]);
    let (from, to) = point_spread(point.at, bearing, height, run.ends)?;
    Ok(Stretch { from, to, load: point.force.map(|force| force / (to - from)) })
}

fn missing(wall: &Wall, fact: &'static str) -> NotVerified {
    NotVerified::Missing(wall.common.id, fact)
}

/// The wall over a place of a run, the first of two that meet there.
fn wall_at<'a>(run: &Run<'a>, at: Length) -> &'a Wall {
    let covers = |wall: &&&Wall| {
        let ends = wall.from.value().map(|line| line.on(run.axis));
        ends.is_some_and(|(low, high)| low <= at && at <= high)
    };
    run.walls.iter().find(covers).copied().unwrap_or(run.wall)
}

/// Soil, shear and bending of one zone, at the worst of its places that no later zone covers.
fn zone_checks(
    known: &Known<'_>,
    run: &Run<'_>,
    zone: &Zone,
    covering: &[Zone],
    stretches: &[Stretch],
    ground: &Result<Ground, NotVerified>,
    concrete: &Result<Concrete, NotVerified>,
) -> [(LimitState, Worst); 3] {
    let mut soil = Worst::default();
    let (mut shear, mut bending) = (Worst::default(), Worst::default());
    for (from, to) in intervals(zone, covering, stretches) {
        let middle = (from + to).half();
        let load = stretches
            .iter()
            .filter(|stretch| stretch.from < to && from < stretch.to)
            .fold(ByCase::default(), |sum, stretch| sum + stretch.load);
        if load == ByCase::default() {
            continue;
        }
        let wall = wall_at(run, middle);
        let Some(off) = band::of_wall(wall).map(|band| zone.centre - band.centre()) else {
            soil.take(Err(missing(wall, "thick")));
            continue;
        };
        let at = from - run.ends.0;
        match ground {
            Ok(ground) => take_soil(zone, load, off, at, ground, &mut soil),
            Err(why) => {
                soil.take(Err(why.clone()));
            }
        }
        match concrete {
            Ok(concrete) => {
                let cut =
                    StripCut { zone_width: zone.width, thickness: zone.thickness, off, wall, at, concrete };
                take_strength(known, &cut, load, &mut shear, &mut bending);
            }
            Err(why) => {
                bending.take(Err(why.clone()));
            }
        }
    }
    [
        (LimitState::SoilPressure, soil),
        (LimitState::FootingShear, shear),
        (LimitState::FootingBending, bending),
    ]
}

/// The stretches of a zone on which everything is the same.
fn intervals(zone: &Zone, covering: &[Zone], stretches: &[Stretch]) -> Vec<(Length, Length)> {
    let (low, high) = zone.along;
    let loads = stretches.iter().flat_map(|stretch| [stretch.from, stretch.to]);
    let pads = covering.iter().flat_map(|pad| [pad.along.0, pad.along.1]);
    let mut ends: Vec<Length> = loads.chain(pads).chain([low, high]).collect();
    ends.retain(|end| low <= *end && *end <= high);
    ends.sort_unstable();
    ends.dedup();
    let starts = ends.iter().copied();
    let free = |(from, to): &(Length, Length)| {
        !covering.iter().any(|pad| pad.along.0 <= *from && *to <= pad.along.1)
    };
    starts.zip(ends.iter().copied().skip(1)).filter(free).collect()
}

/// A foot of strip: pressures are worked out on it.
const FOOT: Length = Length::feet(1);

fn take_soil(
    zone: &Zone,
    load: ByCase<LineLoad>,
    off: Length,
    at: Length,
    ground: &Ground,
    worst: &mut Worst,
) {
    let own = CONCRETE * (zone.width * zone.thickness) * FOOT;
    let force = load.map(|load| load * FOOT);
    let acts = acting(&(force + ByCase::only(Case::Dead, own)));
    for combination in combinations(acts) {
        let (force, line) = (combined(combination, &force), combined(combination, &load));
        if force == Force::ZERO {
            continue;
        }
        let found = contact_pressure(ground.basis, force, own, [zone.width, FOOT], [off, Length::ZERO]);
        let outcome = found.map_err(NotVerified::from).map(|found| {
            let mut steps = vec![Step::read("w", line, "from the takedown, point loads spread")];
            if ground.basis == Basis::Gross {
                steps.push(Step::read("W", own / FOOT, "the footing's own weight, 150 pcf"));
            }
            steps.push(Step::read("B", zone.width, "its width there"));
            steps.push(Step::read("q", found.mean, ground::words(ground.basis)));
            if off != Length::ZERO {
                steps.push(Step::read("e", off, "how far the wall stands off its middle"));
                steps.push(Step::read("qmax", found.largest, "at the edge pressed most"));
            }
            Check {
                demand: found.largest.into(),
                capacity: ground.allowable.into(),
                combination: combination.name,
                pattern: None,
                at: Some(at),
                clause: "IRC R401.4; soil as stated",
                steps,
                assumed: ground.assumed.clone(),
            }
        });
        worst.take(outcome);
    }
}

fn take_strength(
    known: &Known<'_>,
    cut: &StripCut<'_>,
    load: ByCase<LineLoad>,
    shear: &mut Worst,
    bending: &mut Worst,
) {
    for combination in STRENGTH {
        let force = combined(combination, &load) * FOOT;
        if force == Force::ZERO {
            continue;
        }
        let pressure =
            contact_pressure(Basis::Net, force, Force::ZERO, [cut.zone_width, FOOT], [cut.off, Length::ZERO]);
        match pressure {
            Ok(found) => {
                shear.take(strip_section::shear(cut, combination.name, found.largest));
                bending.take(strip_section::bending(known, cut, combination.name, found.largest));
            }
            Err(why) => {
                bending.take(Err(why.into()));
            }
        }
    }
}
