//! Bending of steel beams, between the places that hold their compressed edge.

use crate::design::NotCovered;
use crate::design::steel::Strength;
use crate::design::steel::flexure;
use crate::model::framing::Beam;
use crate::statics::continuous::Response;
use crate::units::{Length, Moment, SectionModulus};
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::demands::Demand;
use crate::verify::limit_state::LimitState;
use crate::verify::steel::{Shape, Steel, read, worked};
use crate::verify::steel_beams::about;
use crate::verify::steel_beams::braces::{Braces, Segment};

/// Bending; of a shape that can twist, also whether anything holds the top of a span whose bracing the text leaves open.
pub fn of(
    beam: &Beam,
    steel: &Steel,
    braces: &Braces,
    demands: &[Demand],
) -> Vec<(LimitState, Result<Check, NotVerified>)> {
    let mut worst: Option<(f64, Bent<'_>)> = None;
    let mut loosest: Option<Bent<'_>> = None;
    for demand in demands {
        for (segments, is_hogging) in [(&braces.top, false), (&braces.bottom, true)] {
            for segment in segments {
                let bent = match bent(beam, steel, demand, segment, is_hogging) {
                    Ok(Some(bent)) => bent,
                    Ok(None) => continue,
                    Err(why) => return vec![(LimitState::Bending, Err(why.into()))],
                };
                let ratio = bent.moment / (bent.strength.moment.allowable() * steel.pieces);
                if !is_hogging
                    && segment.has_gradient
                    && loosest.as_ref().is_none_or(|most| segment.unbraced > most.segment.unbraced)
                {
                    loosest = Some(bent.clone());
                }
                if worst.as_ref().is_none_or(|(most, _)| ratio > *most || ratio.is_nan()) {
                    worst = Some((ratio, bent));
                }
            }
        }
    }
    let mut found = Vec::new();
    found.extend(worst.map(|(_, bent)| (LimitState::Bending, Ok(check(steel, &bent)))));
    if !braces.is_stated && !beam.is_laid_flat {
        found.extend(loosest.and_then(|bent| Some((LimitState::LateralSupport, Ok(support(steel, &bent)?)))));
    }
    found
}

/// The largest moment of one kind in one segment, with what the beam bears there.
#[derive(Clone)]
struct Bent<'a> {
    demand: &'a Demand,
    segment: &'a Segment,
    is_hogging: bool,
    moment: Moment,
    at: Length,
    gradient: f64,
    strength: Bending,
}

/// What a beam bears in bending, and what decides it.
#[derive(Clone)]
struct Bending {
    moment: Strength<Moment>,
    plastic_moment: Moment,
    plastic_modulus: SectionModulus,
    /// Lp and Lr, of a shape that can twist.
    lengths: Option<(Length, Length)>,
    clause: &'static str,
}

fn bent<'a>(
    beam: &Beam,
    steel: &Steel,
    demand: &'a Demand,
    segment: &'a Segment,
    is_hogging: bool,
) -> Result<Option<Bent<'a>>, NotCovered> {
    let extremes = demand.response.extremes_between(segment.from, segment.to);
    let (moment, at) = if is_hogging { extremes.hogging } else { extremes.sagging };
    let acts = if is_hogging { moment < -LEAST } else { moment > LEAST };
    if !acts {
        return Ok(None);
    }
    let gradient = gradient(&demand.response, segment)?;
    let strength = bending(beam, steel, segment.unbraced, gradient)?;
    Ok(Some(Bent { demand, segment, is_hogging, moment: moment.abs(), at, gradient, strength }))
}

/// A moment below this is rounding.
const LEAST: Moment = Moment::lb_in(1.0);

/// Cb of a segment; 1, on the safe side, where its braces or its free end leave the shape of the moments open.
fn gradient(response: &Response, segment: &Segment) -> Result<f64, NotCovered> {
    if !segment.has_gradient {
        return Ok(1.0);
    }
    let length = segment.to - segment.from;
    let quarters = [0.25, 0.5, 0.75].map(|share| response.moment_at(segment.from + length.scaled(share)));
    let extremes = response.extremes_between(segment.from, segment.to);
    let largest = quarters
        .into_iter()
        .chain([extremes.sagging.0, extremes.hogging.0])
        .fold(Moment::ZERO, |most, moment| most.max(moment.abs()));
    flexure::moment_gradient(quarters, largest)
}

fn bending(beam: &Beam, steel: &Steel, unbraced: Length, gradient: f64) -> Result<Bending, NotCovered> {
    let yield_strength = steel.yield_strength;
    Ok(match &steel.shape {
        Shape::WideFlange(shape) if beam.is_laid_flat => {
            let bending = flexure::wide_flange_about_minor(shape, yield_strength)?;
            Bending {
                moment: bending.strength,
                plastic_moment: bending.plastic_moment,
                plastic_modulus: shape.minor.plastic_modulus,
                lengths: None,
                clause: "AISC 360 F6",
            }
        }
        Shape::WideFlange(shape) => {
            let bending = flexure::wide_flange(shape, yield_strength, unbraced, gradient)?;
            let is_local = bending.flange_local.is_some_and(|local| local < bending.lateral_torsional);
            Bending {
                moment: bending.strength,
                plastic_moment: bending.plastic_moment,
                plastic_modulus: shape.major.plastic_modulus,
                lengths: Some((bending.plastic_length, bending.elastic_length)),
                clause: if is_local { "AISC 360 F3" } else { "AISC 360 F2" },
            }
        }
        Shape::Tube(tube) => {
            let bending = flexure::tube(tube, about(beam), yield_strength, unbraced, gradient)?;
            let axis = if beam.is_laid_flat { tube.minor } else { tube.major };
            Bending {
                moment: bending.strength,
                plastic_moment: bending.plastic_moment,
                plastic_modulus: axis.plastic_modulus,
                lengths: bending.twist.map(|twist| (twist.plastic_length, twist.elastic_length)),
                clause: "AISC 360 F7",
            }
        }
        Shape::Pipe(pipe) => {
            let bending = flexure::pipe(pipe, yield_strength)?;
            Bending {
                moment: bending.strength,
                plastic_moment: bending.plastic_moment,
                plastic_modulus: pipe.axis.plastic_modulus,
                lengths: None,
                clause: "AISC 360 F8",
            }
        }
    })
}

fn check(steel: &Steel, bent: &Bent<'_>) -> Check {
    let strength = &bent.strength;
    let capacity = strength.moment.allowable() * steel.pieces;
    let mut steps = vec![
        read("M", bent.moment, "statics: continuous member"),
        read("Fy", steel.yield_strength, steel.grade_source()),
        worked(
            "Mp",
            "Fy Z",
            [("Fy", steel.yield_strength.into()), ("Z", strength.plastic_modulus.into())],
            strength.plastic_moment,
            strength.clause,
        ),
    ];
    if let Some(lengths) = strength.lengths {
        steps.extend(of_twist(bent, lengths));
    }
    steps.push(read("Mn", strength.moment.nominal, strength.clause));
    steps.push(worked(
        "Ma",
        "n Mn / Ω",
        [
            ("n", steel.pieces.into()),
            ("Mn", strength.moment.nominal.into()),
            ("Ω", strength.moment.safety_factor.into()),
        ],
        capacity,
        "AISC 360 F1",
    ));
    let mut assumed = steel.assumptions();
    if strength.lengths.is_some() {
        assumed.push("at its supports the beam can't roll over".into());
    }
    Check {
        demand: bent.moment.into(),
        capacity: capacity.into(),
        combination: bent.demand.combination.name,
        pattern: bent.demand.pattern.clone(),
        at: Some(bent.at),
        clause: strength.clause,
        steps,
        assumed,
    }
}

fn of_twist(bent: &Bent<'_>, (plastic, elastic): (Length, Length)) -> [Step; 4] {
    let held_by =
        if bent.is_hogging { "bottom edge: its supports, or as stated" } else { bent.segment.held_by };
    let of_gradient = if bent.segment.has_gradient { "AISC 360 Eq. F1-1" } else { "on the safe side" };
    [
        read("Lb", bent.segment.unbraced, held_by),
        read("Lp", plastic, bent.strength.clause),
        read("Lr", elastic, bent.strength.clause),
        read("Cb", bent.gradient, of_gradient),
    ]
}

/// The length without brace against the one that leaves all of the strength; `None` of a shape that can't twist.
fn support(steel: &Steel, bent: &Bent<'_>) -> Option<Check> {
    let (plastic, elastic) = bent.strength.lengths?;
    Some(Check {
        demand: bent.segment.unbraced.into(),
        capacity: plastic.into(),
        combination: bent.demand.combination.name,
        pattern: bent.demand.pattern.clone(),
        at: Some(bent.segment.from),
        clause: bent.strength.clause,
        steps: of_twist(bent, (plastic, elastic)).to_vec(),
        assumed: steel.assumptions(),
    })
}
