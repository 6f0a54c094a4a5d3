//! Pads and piers: each of the places of one mark, and the worst of them.

use crate::design::loads::{Combination, STRENGTH};
use crate::design::soil::pressure::{
    Basis, ContactPressure, contact_pressure, round_contact_pressure, square_of_equal_area,
};
use crate::model::element::ElementId;
use crate::model::foundation::{Footing, FootingSize};
use crate::profiles::foundations::FOOTING_PROJECTION_PER_THICKNESS;
use crate::statics::action::Source;
use crate::statics::applied::{pad_weight, pedestal_weight};
use crate::statics::carried_load::by_place;
use crate::statics::cases::{ByCase, Case};
use crate::units::{AreaLoad, Force, Length};
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::demands::{acting, combinations, combined};
use crate::verify::footings::ground::{self, Ground};
use crate::verify::footings::section::{self, Cut};
use crate::verify::footings::standing::on_footing;
use crate::verify::footings::{Worst, bars};
use crate::verify::limit_state::LimitState;

/// What acts on one pad, its own weight left out.
#[derive(Clone, Debug, Default)]
pub struct PadLoad {
    /// Each load with how far it stands from the middle, along x and along y.
    loads: Vec<([Length; 2], ByCase<Force>)>,
    /// What brings it.
    stands: Vec<ElementId>,
}

/// Verifies a pad or a pier; nothing for a strip, or where nothing stands on any of its places.
pub fn of(known: &Known<'_>, footing: &Footing) -> Vec<Verification> {
    let id = footing.common.id;
    let Some(size @ (FootingSize::Pad(..) | FootingSize::Round(..))) = footing.size.get() else {
        return Vec::new();
    };
    if footing.common.may_say("at") {
        return vec![Verification {
            of: id,
            part: None,
            against: None,
            limit_state: LimitState::SoilPressure,
            outcome: Err(NotVerified::Missing(id, "at")),
        }];
    }
    let places = loads_at(known, footing);
    let n_places = places.len();
    let ground = ground::under(known, footing);
    let mut worst: [(LimitState, Worst); 5] = [
        LimitState::SoilPressure,
        LimitState::Punching,
        LimitState::FootingShear,
        LimitState::FootingBending,
        LimitState::FootingBars,
    ]
    .map(|limit_state| (limit_state, Worst::default()));
    for (at, load) in places.iter().enumerate().filter(|(_, load)| !load.loads.is_empty()) {
        let part = || (n_places > 1).then(|| format!("place {} of {n_places}", at.saturating_add(1)).into());
        let against = load.stands.first().copied();
        let mut take = |limit_state, outcome| {
            if let Some((_, worst)) = worst.iter_mut().find(|(of, _)| *of == limit_state) {
                worst.take_at(outcome, part(), against);
            }
        };
        let soil = ground.clone().and_then(|ground| {
            let own = pad_weight(&size).zip(pedestal_weight(known.geometry, footing));
            let (pad, pedestal) = own.ok_or(NotVerified::Missing(id, "pedestal"))?;
            soil_pressure(&size, pad + pedestal, load, &ground)
        });
        take(LimitState::SoilPressure, soil);
        for (limit_state, outcome) in concrete_checks(known, footing, &size, load) {
            take(limit_state, outcome);
        }
    }
    worst.into_iter().filter_map(|(limit_state, worst)| worst.verification(id, limit_state)).collect()
}

/// What acts at each place of a footing: each load goes to the nearest. Where live load on some spans only brings more than
/// on all, that counts.
pub fn loads_at(known: &Known<'_>, footing: &Footing) -> Vec<PadLoad> {
    let id = footing.common.id;
    let places = by_place(known.model, known.forces, id).into_iter();
    places
        .map(|place| {
            let mut load = PadLoad::default();
            for action in place.actions {
                let brings = match action.source {
                    Source::Weight => continue,
                    Source::From(element) | Source::Load(element) | Source::AreaOf(element) => Some(element),
                    Source::Declared(_) => None,
                };
                let spot = action.acting.middle();
                let off = [spot.x - place.at.x, spot.y - place.at.y];
                load.loads.push((off, action.acting.total()));
                if let Some(element) = brings.filter(|element| !load.stands.contains(element)) {
                    let more = known.forces.partial.from_to(element, id);
                    if more > Force::ZERO {
                        load.loads.push((off, ByCase::only(Case::Live, more)));
                    }
                    load.stands.push(element);
                }
            }
            load
        })
        .collect()
}

impl PadLoad {
    /// All of it, case by case.
    pub fn total(&self) -> ByCase<Force> {
        self.loads.iter().fold(ByCase::default(), |sum, (_, force)| sum + *force)
    }

    /// The load of a combination, and how far its resultant stands from the middle.
    fn combined(&self, combination: &Combination) -> (Force, [Length; 2]) {
        let sum: Force = self.loads.iter().map(|(_, force)| combined(combination, force)).sum();
        let turns = |pick: fn(&[Length; 2]) -> Length| {
            let turning = self.loads.iter().map(|(off, force)| combined(combination, force) * pick(off));
            let off = turning.fold(0.0, |sum, moment| sum + moment.to_lb_in()) / sum.to_lb();
            Length::decimal_inches(if sum == Force::ZERO { 0.0 } else { off })
        };
        (sum, [turns(|[x, _]| *x), turns(|[_, y]| *y)])
    }
}

/// The pressure under a pad or a pier of this size.
fn pressure(
    size: &FootingSize,
    basis: Basis,
    load: Force,
    own: Force,
    off: [Length; 2],
) -> Result<ContactPressure, NotVerified> {
    match size {
        FootingSize::Round(diameter, _) => {
            let [x, y] = off.map(Length::to_inches);
            let off = Length::decimal_inches(x.hypot(y));
            Ok(round_contact_pressure(basis, load, own, *diameter, off)?)
        }
        FootingSize::Pad(..) | FootingSize::Strip(..) => {
            Ok(contact_pressure(basis, load, own, sides_of(size), off)?)
        }
    }
}

/// The two sides in plan; of a round pier those of the square of its area.
fn sides_of(size: &FootingSize) -> [Length; 2] {
    match size {
        FootingSize::Pad(one, other, _) => [*one, *other],
        FootingSize::Round(diameter, _) => [square_of_equal_area(*diameter); 2],
        FootingSize::Strip(width, _) => [*width; 2],
    }
}

fn soil_pressure(
    size: &FootingSize,
    own: Force,
    load: &PadLoad,
    ground: &Ground,
) -> Result<Check, NotVerified> {
    let acts = acting(&(load.total() + ByCase::only(Case::Dead, own)));
    let mut worst = Worst::default();
    for combination in combinations(acts) {
        let (force, off) = load.combined(combination);
        if force == Force::ZERO {
            continue;
        }
        worst.take(pressure(size, ground.basis, force, own, off).map(|found| Check {
            demand: found.largest.into(),
            capacity: ground.allowable.into(),
            combination: combination.name,
            pattern: None,
            at: None,
            clause: "IRC R401.4; soil as stated",
            steps: soil_steps(size, ground, (force, own, off), &found),
            assumed: ground.assumed.clone(),
        }));
    }
    worst.outcome().unwrap_or(Err(NotVerified::NoForces("nothing stands on it".into())))
}

fn soil_steps(
    size: &FootingSize,
    ground: &Ground,
    (force, own, off): (Force, Force, [Length; 2]),
    found: &ContactPressure,
) -> Vec<Step> {
    let [one, other] = sides_of(size);
    let area = one * other;
    let mut steps = vec![Step::read("P", force, "from the takedown, without the footing")];
    match ground.basis {
        Basis::Gross => {
            let values = vec![("P", force.into()), ("W", own.into()), ("A", area.into())];
            steps.extend([
                Step::read("W", own, "the footing's own weight, 150 pcf"),
                Step::worked("q", "( P + W ) / A", values, found.mean, "gross"),
            ]);
        }
        Basis::Net => {
            let values = vec![("P", force.into()), ("A", area.into())];
            steps.push(Step::worked("q", "P / A", values, found.mean, "net"));
        }
    }
    for (symbol, off) in ["ex", "ey"].into_iter().zip(off) {
        if off != Length::ZERO {
            steps.push(Step::read(symbol, off, "how far the load stands off the middle"));
        }
    }
    if off != [Length::ZERO; 2] {
        steps.push(Step::read("qmax", found.largest, "at the edge pressed most, statics of a footing"));
    }
    steps
}

/// The strength of the concrete, by every strength combination.
fn concrete_checks(
    known: &Known<'_>,
    footing: &Footing,
    size: &FootingSize,
    load: &PadLoad,
) -> Vec<(LimitState, Result<Check, NotVerified>)> {
    let states =
        [LimitState::Punching, LimitState::FootingShear, LimitState::FootingBending, LimitState::FootingBars];
    let made = ground::concrete(known, footing.common.id, &footing.concrete);
    let ready = made.and_then(|concrete| Ok((concrete, on_footing(known, footing, &load.stands)?)));
    let (concrete, standing) = match ready {
        Ok(ready) => ready,
        Err(why) => return states.into_iter().take(3).map(|state| (state, Err(why.clone()))).collect(),
    };
    let laid = bars::of(footing);
    let most_projection = known.limits.of(&FOOTING_PROJECTION_PER_THICKNESS).value.0;
    let mut worst = states.map(|state| (state, Worst::default()));
    for combination in STRENGTH {
        let (force, off) = load.combined(combination);
        if force == Force::ZERO {
            continue;
        }
        let sides = sides_of(size);
        let pushed = pressure(size, Basis::Net, force, Force::ZERO, off).map(|found| found.largest);
        let checks = pushed.map(|pressure: AreaLoad| {
            let cut = Cut {
                combination: combination.name,
                sides,
                thickness: size.thickness(),
                most_projection: size.thickness().scaled(most_projection),
                standing,
                off,
                force,
                pressure,
                concrete: &concrete,
                bars: laid.as_ref(),
            };
            section::checks(&cut)
        });
        match checks {
            Ok(checks) => {
                for (state, outcome) in checks {
                    if let Some((_, worst)) = worst.iter_mut().find(|(of, _)| *of == state) {
                        worst.take(outcome);
                    }
                }
            }
            Err(why) => worst.iter_mut().take(3).for_each(|(_, worst)| {
                worst.take(Err(why.clone()));
            }),
        }
    }
    worst.into_iter().filter_map(|(state, worst)| Some((state, worst.outcome()?))).collect()
}
