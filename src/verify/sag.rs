//! How far a spanning member sags: under live load, under all load in the long run, and whether a floor feels firm.

use crate::design::wood::Stuff as Kind;
use crate::design::wood::deflection::{Moisture, creep_factor};
use crate::model::stuff::Values;
use crate::profiles::OneIn;
use crate::statics::continuous::Response;
use crate::statics::stiffness;
use crate::units::Length;
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::demands::Demand;
use crate::verify::limit_state::LimitState;
use crate::verify::spanning::{Acting, Outcomes, Role, Span, governing};
use crate::verify::wood_values::{Adjusting, kind_of, read};

/// Sag under live and all load; of a floor, the firmness that a good one has, too.
pub fn of(acting: &Acting<'_>) -> Outcomes {
    let spanning = acting.spanning;
    let limits = spanning.role.limits(acting.limits);
    let softness = match softness(acting) {
        Ok(softness) => softness,
        Err(why) => {
            let states = [LimitState::LiveDeflection, LimitState::TotalDeflection];
            return states.map(|state| (state, Err(why.clone()))).to_vec();
        }
    };
    let live = |limit: OneIn, clause: &'static str| {
        let demands = acting.demands.iter();
        governing(demands.flat_map(move |demand| {
            let sags = acting.spans.iter().map(move |span| down(&demand.variable, span, softness.share));
            acting
                .spans
                .iter()
                .zip(sags)
                .map(move |(span, sag)| Ok(check(demand, span, sag, limit, clause, Vec::new())))
        }))
    };
    let total = governing(acting.demands.iter().flat_map(|demand| {
        let grown = Response::sum(&[(softness.creep, &demand.lasting), (1.0, &demand.variable)]);
        acting.spans.iter().map(move |span| {
            let sag = down(&grown, span, softness.share);
            let lasting = down(&demand.lasting, span, softness.share).0;
            let variable = down(&demand.variable, span, softness.share).0;
            let steps = vec![
                read("sag-D", lasting, "statics: under load that stays"),
                read("sag-L", variable, "statics: under load that goes"),
                Step {
                    symbol: "sag",
                    formula: "Kcr sag-D + sag-L",
                    values: vec![
                        ("Kcr", softness.creep.into()),
                        ("sag-D", lasting.into()),
                        ("sag-L", variable.into()),
                    ],
                    result: sag.0.into(),
                    source: "NDS 2018 Eq. 3.5-1; Kcr of 3.5.2, from memory",
                },
            ];
            Ok(check(demand, span, sag, limits.total.0, limits.total.1, steps))
        })
    }));
    let target = match spanning.role {
        Role::Floor => live(limits.target, "common practice"),
        Role::Rafter | Role::Other => None,
    };
    let live = live(limits.live.0, limits.live.1);
    let states = [LimitState::LiveDeflection, LimitState::TotalDeflection, LimitState::Bounce];
    states.into_iter().zip([live, total, target]).filter_map(|(state, it)| Some((state, it?))).collect()
}

/// How much more a member sags than its dry, new self.
#[derive(Clone, Copy)]
struct Softness {
    /// What service leaves of its modulus.
    share: f64,
    /// How the sag of lasting load grows.
    creep: f64,
}

fn softness(acting: &Acting<'_>) -> Result<Softness, NotVerified> {
    let stuff = acting.spanning.stuff;
    let (share, kind, moisture) = match &stuff.values {
        Values::Wood(wood) => {
            let adjusting = Adjusting::of(acting.model, stuff, wood)?;
            adjusting.reference(wood.modulus, "E")?;
            let moisture = if adjusting.is_wet() { Moisture::WetOrUnseasoned } else { Moisture::Dry };
            (adjusting.share_of_modulus(), kind_of(wood.kind), moisture)
        }
        Values::IJoist(_) => (1.0, Kind::IJoist, Moisture::Dry),
        Values::Rolled(_) | Values::DeclaredSteel(_) | Values::FilledPipe(_) => {
            return Err(NotVerified::NoForces("this is no wooden member".into()));
        }
    };
    if stiffness::of_stuff(stuff, acting.spanning.is_laid_flat).is_none() {
        return Err(NotVerified::NoForces("its stiffness is not known".into()));
    }
    Ok(Softness { share, creep: creep_factor(kind, moisture)? })
}

fn down(response: &Response, span: &Span, share: f64) -> (Length, Length) {
    let (sag, at) = response.extremes_between(span.from, span.to).down;
    (sag.scaled(1.0 / share), at)
}

fn check(
    demand: &Demand,
    span: &Span,
    (sag, at): (Length, Length),
    limit: OneIn,
    clause: &'static str,
    mut steps: Vec<Step>,
) -> Check {
    let allowed = span.for_limit().scaled(1.0 / f64::from(limit.0));
    steps.push(read(
        "l",
        span.for_limit(),
        if span.is_overhang() { "twice the overhang" } else { "the span" },
    ));
    Check {
        demand: sag.into(),
        capacity: allowed.into(),
        combination: demand.combination.name,
        pattern: demand.pattern.clone(),
        at: Some(at),
        clause,
        steps,
        assumed: Vec::new(),
    }
}
