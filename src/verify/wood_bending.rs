//! Bending of solid and glued wood that spans, its lateral stability with it.

use crate::design::wood::bending::bending_stress;
use crate::design::wood::rectangle::section_modulus;
use crate::design::wood::size::volume_factor;
use crate::design::wood::stability::{Loading, beam_stability, effective_length};
use crate::model::stuff::{Wood, WoodKind};
use crate::statics::continuous::Response;
use crate::units::{Length, Moment, Stress};
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::demands::Demand;
use crate::verify::limit_state::LimitState;
use crate::verify::spanning::{Acting, Edge, Outcomes, governing};
use crate::verify::wood_values::{Adjusting, read};

/// Bending, and lateral support where nothing holds the compressed edge all along.
pub fn of(acting: &Acting<'_>, wood: &Wood) -> Outcomes {
    let mut lateral: Vec<Result<Check, NotVerified>> = Vec::new();
    let bending = match Adjusting::of(acting.model, acting.spanning.stuff, wood) {
        Ok(adjusting) => {
            let checks = acting.demands.iter().flat_map(|demand| {
                let extremes = demand.response.extremes();
                [(extremes.sagging, false), (extremes.hogging, true)].map(|((moment, at), is_hogging)| {
                    let acts = if is_hogging { moment < Moment::ZERO } else { moment > Moment::ZERO };
                    acts.then(|| one(acting, &adjusting, demand, Bent { moment, at, is_hogging }))
                })
            });
            let mut bending = Vec::new();
            for (check, slenderness) in checks.flatten() {
                bending.push(check);
                lateral.extend(slenderness.map(Ok));
            }
            governing(bending.into_iter())
        }
        Err(why) => Some(Err(why)),
    };
    let bending = bending.map(|outcome| (LimitState::Bending, outcome));
    let lateral = governing(lateral.into_iter()).map(|outcome| (LimitState::LateralSupport, outcome));
    bending.into_iter().chain(lateral).collect()
}

/// A moment with its place.
#[derive(Clone, Copy)]
struct Bent {
    moment: Moment,
    at: Length,
    is_hogging: bool,
}

/// One moment against what the member bears there; with it the slenderness, where the member can roll.
fn one(
    acting: &Acting<'_>,
    adjusting: &Adjusting<'_>,
    demand: &Demand,
    bent: Bent,
) -> (Result<Check, NotVerified>, Option<Check>) {
    let mut slenderness = None;
    let check = checked(acting, adjusting, demand, bent, &mut slenderness);
    (check, slenderness)
}

fn checked(
    acting: &Acting<'_>,
    adjusting: &Adjusting<'_>,
    demand: &Demand,
    bent: Bent,
    slenderness: &mut Option<Check>,
) -> Result<Check, NotVerified> {
    let spanning = acting.spanning;
    let section = &spanning.stuff.section;
    let pieces = f64::from(section.pieces);
    let (breadth, depth) = match spanning.is_laid_flat {
        true => (section.depth, section.piece_width),
        false => (section.width(), section.depth),
    };
    // Flat plies slip on one another: each bends by itself.
    let modulus = section_modulus(breadth, depth) * if spanning.is_laid_flat { pieces } else { 1.0 };
    let moment = bent.moment.abs();
    let stress = bending_stress(moment, modulus);
    let mut steps = vec![
        read("M", moment, "statics: continuous member"),
        Step {
            symbol: "S",
            formula: "b d^2 / 6",
            values: vec![("b", breadth.into()), ("d", depth.into())],
            result: modulus.into(),
            source: "NDS 2018 3.3.2.1",
        },
        Step {
            symbol: "fb",
            formula: "M / S",
            values: vec![("M", moment.into()), ("S", modulus.into())],
            result: stress.into(),
            source: "NDS 2018 3.3.2.1",
        },
    ];
    let starred = adjusting.bending(demand.duration, spanning.row, spanning.is_laid_flat, bent.is_hogging)?;
    let crushing = starred.value;
    steps.push(starred.step);
    let mut share = 1.0;
    if depth > breadth
        && let Some((length, loading)) = unsupported(acting, demand, &bent)
    {
        let modulus = adjusting.modulus_for_stability(false)?;
        let effective = effective_length(loading, length, depth)?;
        let stability = beam_stability(crushing, modulus.value, effective, breadth, depth);
        let ratio = (effective.to_inches() * depth.to_inches() / breadth.to_inches().powi(2)).sqrt();
        steps.push(read("lu", length, "from what holds the compressed edge"));
        steps.push(read("le", effective, "NDS 2018 table 3.3.3, from memory"));
        steps.push(modulus.step);
        let rb = Step {
            symbol: "RB",
            formula: "sqrt( le d / b^2 )",
            values: vec![("le", effective.into()), ("d", depth.into()), ("b", breadth.into())],
            result: ratio.into(),
            source: "NDS 2018 3.3.3.6",
        };
        *slenderness = Some(Check {
            demand: ratio.into(),
            capacity: MAX_SLENDERNESS.into(),
            combination: demand.combination.name,
            pattern: demand.pattern.clone(),
            at: Some(bent.at),
            clause: "NDS 2018 3.3.3.7",
            steps: vec![read("lu", length, "from what holds the compressed edge"), rb.clone()],
            assumed: Vec::new(),
        });
        steps.push(rb);
        let stability = stability?;
        steps.push(read("FbE", stability.critical_buckling, "NDS 2018 3.3.3.8, 1.20 Emin' / RB^2"));
        steps.push(read("CL", stability.factor, "NDS 2018 Eq. 3.3-6"));
        share = stability.factor;
    }
    if let WoodKind::Glulam { volume_exponent } = adjusting.wood.kind {
        // The whole span stands for the length between points of zero moment: it is no shorter.
        let longest = acting.spans.iter().map(|span| span.to - span.from).max().unwrap_or_default();
        let volume = volume_factor(longest, depth, breadth, volume_exponent)?;
        steps.push(read("CV", volume, "NDS 2018 5.3.6; the smaller of CV and CL counts"));
        share = share.min(volume);
    }
    let allowable: Stress = crushing * share;
    steps.push(Step {
        symbol: "Fb'",
        formula: "Fb* C",
        values: vec![("Fb*", crushing.into()), ("C", share.into())],
        result: allowable.into(),
        source: "NDS 2018 3.3.3 and 5.3.6",
    });
    Ok(Check {
        demand: stress.into(),
        capacity: allowable.into(),
        combination: demand.combination.name,
        pattern: demand.pattern.clone(),
        at: Some(bent.at),
        clause: "NDS 2018 3.3.1",
        steps,
        assumed: adjusting.assumed.clone(),
    })
}

/// NDS 2018 3.3.3.7.
const MAX_SLENDERNESS: f64 = 50.0;

/// The length over which nothing holds the compressed edge, and how it is loaded there; `None` where it is held all along.
fn unsupported(acting: &Acting<'_>, demand: &Demand, bent: &Bent) -> Option<(Length, Loading)> {
    let span = acting.spans.iter().find(|span| span.from <= bent.at && bent.at <= span.to)?;
    if !bent.is_hogging {
        return match acting.spanning.top {
            Edge::Held => None,
            Edge::Every(step) => Some((step.min(span.to - span.from), Loading::Any)),
            Edge::Free => Some((span.to - span.from, Loading::Any)),
        };
    }
    // The bottom is compressed from inflection to inflection; supports hold it.
    let sides = acting.spans.iter().filter(|span| span.from <= bent.at && bent.at <= span.to);
    sides
        .map(|span| {
            if span.is_overhang() {
                return (span.to - span.from, Loading::CantileverUniform);
            }
            (hogging_length(&demand.response, (span.from, span.to), bent.at), Loading::Any)
        })
        .filter(|(length, _)| length.is_positive())
        .max_by_key(|(length, _)| *length)
}

/// How far from a place the moment stays below zero within a span, to a 64th of the span.
fn hogging_length(response: &Response, (from, to): (Length, Length), at: Length) -> Length {
    let step = (to - from).scaled(1.0 / 64.0);
    let direction = if at - from <= to - at { step } else { -step };
    let mut place = at;
    while from <= place && place <= to {
        place += direction;
        if response.moment_at(place) >= Moment::ZERO {
            break;
        }
    }
    (place.min(to).max(from) - at).abs()
}
