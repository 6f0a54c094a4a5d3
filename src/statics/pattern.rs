//! Live load span by span: every arrangement that can govern, and the envelope over them.
//!
//! Source: ASCE 7-16 4.3.3 and 4.6, partial loading (from memory): the load on part of a member counts where it is the
//! worse. Which spans make it worse follows from the response to each span alone, since responses add up.

use crate::statics::continuous::{Extremes, Prepared, Push, Response, Unstable};
use crate::units::{Force, Length, Moment};

/// The arrangements of a load that may leave any span empty.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Patterned {
    /// The spans, overhangs included, from left to right: where each begins and ends.
    pub spans: Vec<(Length, Length)>,
    /// The arrangements, no two alike; the first carries nothing, the last everything.
    pub patterns: Vec<Pattern>,
}

/// One arrangement of a load.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    /// Which spans carry the load; never true of a span that has none to carry.
    pub spans: Vec<bool>,
    /// What the member does under it.
    pub response: Response,
}

/// Every arrangement of a load that can govern: with up to six spans that carry some of it all of them, beyond that for
/// each reaction, and for moment, shear and deflection at each support and midspan, the two that make it most and least.
/// The load is cut at the supports; a force right on a support goes with the span on its right.
pub fn patterns(prepared: &Prepared, patterned: &[Push]) -> Result<Patterned, Unstable> {
    let places: Vec<Length> = prepared.supports_and_ends().collect();
    let spans: Vec<(Length, Length)> = places.iter().copied().zip(places.iter().copied().skip(1)).collect();
    // Refuses what is off the member before it is cut.
    let everything = prepared.response(patterned)?;
    let loads: Vec<Vec<Push>> = spans.iter().map(|&span| within(patterned, span, prepared)).collect();
    let n_loaded = loads.iter().filter(|pushes| !pushes.is_empty()).count();
    let alone = loads.iter().map(|pushes| match (pushes.is_empty(), n_loaded) {
        (true, _) => Ok(None),
        (false, 1) => Ok(Some(everything.clone())),
        // All cut at the same places, so that they add up fast.
        (false, _) => {
            let response = prepared.response(pushes)?;
            Ok(Some(Response::sum(&[(1.0, &response), (0.0, &everything)])))
        }
    });
    let alone: Vec<Option<Response>> = alone.collect::<Result<_, Unstable>>()?;
    let none = Response::sum(&[(0.0, &everything)]);
    let patterns = if n_loaded <= MOST_SPANS_IN_FULL {
        all_patterns(&alone, none)
    } else {
        worst_patterns(&alone, &none, &spans)
    };
    Ok(Patterned { spans, patterns })
}

/// With more loaded spans than this, only the arrangements that the influence of each span singles out.
const MOST_SPANS_IN_FULL: usize = 6;

/// Every choice among the loaded spans, from none to all.
fn all_patterns(alone: &[Option<Response>], none: Response) -> Vec<Pattern> {
    let mut patterns = vec![Pattern { spans: Vec::with_capacity(alone.len()), response: none }];
    for response in alone {
        let with: Vec<Pattern> = match response {
            None => Vec::new(),
            Some(response) => patterns.iter().map(|before| before.with_next(response)).collect(),
        };
        patterns.iter_mut().for_each(|before| before.spans.push(false));
        patterns.extend(with);
    }
    patterns
}

impl Pattern {
    /// It with one span more, loaded.
    fn with_next(&self, alone: &Response) -> Self {
        let response = if self.spans.contains(&true) {
            Response::sum(&[(1.0, &self.response), (1.0, alone)])
        } else {
            alone.clone()
        };
        Self { spans: self.spans.iter().copied().chain([true]).collect(), response }
    }
}

/// For each quantity, the spans that add to it and the spans that take from it.
fn worst_patterns(alone: &[Option<Response>], none: &Response, spans: &[(Length, Length)]) -> Vec<Pattern> {
    let influences: Vec<Vec<f64>> = alone
        .iter()
        .map(|response| response.as_ref().map_or_else(Vec::new, |response| influences_of(response, spans)))
        .collect();
    let n_quantities = influences.iter().map(Vec::len).max().unwrap_or(0);
    let quantities = (0..n_quantities).flat_map(|quantity| {
        let of_spans =
            influences.iter().map(move |influence| influence.get(quantity).copied().unwrap_or(0.0));
        [of_spans.clone().map(|value| value > 0.0).collect(), of_spans.map(|value| value < 0.0).collect()]
    });
    let all: Vec<bool> = alone.iter().map(Option::is_some).collect();
    let mut arrangements: Vec<Vec<bool>> = quantities.chain([vec![false; alone.len()], all]).collect();
    arrangements.sort_unstable();
    arrangements.dedup();
    let pattern = |spans: Vec<bool>| {
        let chosen =
            alone.iter().zip(&spans).filter_map(|(response, chosen)| response.as_ref().filter(|_| *chosen));
        let parts: Vec<(f64, &Response)> =
            chosen.map(|response| (1.0, response)).chain([(1.0, none)]).collect();
        Pattern { response: Response::sum(&parts), spans }
    };
    arrangements.into_iter().map(pattern).collect()
}

/// How a load acts on every quantity that an arrangement may govern.
fn influences_of(response: &Response, spans: &[(Length, Length)]) -> Vec<f64> {
    let mut influences: Vec<f64> = response.reactions.iter().map(|reaction| reaction.to_lb()).collect();
    for &(from, to) in spans {
        let middle = from + (to - from).half();
        for at in [from, middle, to] {
            let (left, right) = response.shear_at(at);
            influences.extend([left.to_lb(), right.to_lb(), response.moment_at(at).to_lb_in()]);
        }
        influences.extend([from, middle, to].map(|at| response.deflection_at(at).to_inches()));
    }
    influences
}

/// The part of a load that lies on a span.
fn within(pushes: &[Push], (from, to): (Length, Length), prepared: &Prepared) -> Vec<Push> {
    let holds = |at: Length| from <= at && (at < to || (at == to && to == prepared.length()));
    pushes
        .iter()
        .filter_map(|push| match *push {
            Push::Point { at, .. } | Push::Couple { at, .. } => holds(at).then_some(*push),
            Push::Spread { from: load_from, to: load_to, start, end } => {
                let value_at =
                    |at: Length| start + (end - start) * ((at - load_from) / (load_to - load_from));
                let (begin, finish) = (load_from.min(load_to).max(from), load_from.max(load_to).min(to));
                (begin < finish).then(|| Push::Spread {
                    from: begin,
                    to: finish,
                    start: value_at(begin),
                    end: value_at(finish),
                })
            }
        })
        .collect()
}

/// The worst of a steady load with every arrangement of another.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Envelope {
    /// Of each support, in the order of the member's supports.
    pub reactions: Vec<Reactions>,
    /// Over the whole member.
    pub whole: Governing,
    /// Over each span, overhangs included, from left to right.
    pub spans: Vec<Governing>,
}

/// The range of one support's reaction; up positive, so that a negative `least` pulls the support up.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reactions {
    /// The largest, and the index of its pattern.
    pub most: (Force, usize),
    /// The least, and the index of its pattern.
    pub least: (Force, usize),
}

/// The worst of each kind, with place and pattern.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Governing {
    /// The largest moment.
    pub sagging: Governed<Moment>,
    /// The least moment.
    pub hogging: Governed<Moment>,
    /// The largest shear of either sign.
    pub shear: Governed<Force>,
    /// How far it goes down the most.
    pub down: Governed<Length>,
    /// How far it goes up the most.
    pub up: Governed<Length>,
}

/// A value, its place, and the index of the pattern that brings it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Governed<T> {
    /// How much.
    pub value: T,
    /// Where.
    pub at: Length,
    /// Under which pattern of [`Patterned::patterns`].
    pub pattern: usize,
}

/// The envelope of `steady` plus `factor` times each arrangement.
pub fn envelope(steady: &Response, patterned: &Patterned, factor: f64) -> Envelope {
    let sums =
        patterned.patterns.iter().map(|pattern| Response::sum(&[(1.0, steady), (factor, &pattern.response)]));
    let sums: Vec<Response> = sums.collect();
    let spans: Vec<Governing> = patterned.spans.iter().filter_map(|&span| governing(&sums, span)).collect();
    let whole = spans.iter().copied().reduce(Governing::worse).unwrap_or_default();
    Envelope { reactions: reactions(&sums), whole, spans }
}

fn reactions(sums: &[Response]) -> Vec<Reactions> {
    let Some((first, others)) = sums.split_first() else { return Vec::new() };
    let only = |&reaction| Reactions { most: (reaction, 0), least: (reaction, 0) };
    let mut ranges: Vec<Reactions> = first.reactions.iter().map(only).collect();
    for (response, pattern) in others.iter().zip(1..) {
        for (range, &reaction) in ranges.iter_mut().zip(&response.reactions) {
            if reaction > range.most.0 {
                range.most = (reaction, pattern);
            }
            if reaction < range.least.0 {
                range.least = (reaction, pattern);
            }
        }
    }
    ranges
}

/// The worst of all sums within one span.
fn governing(sums: &[Response], (from, to): (Length, Length)) -> Option<Governing> {
    // What midspan reaches under some pattern: most of the others need no search. One unit less, for the rounding.
    let midspan = from + (to - from).half();
    let drops = || sums.iter().map(|response| response.deflection_at(midspan));
    let down = drops().max()? - Length::from_units(1);
    let up = -drops().min()? - Length::from_units(1);
    let extremes = sums.iter().map(|response| response.extremes_beyond((down, up), from, to));
    extremes.zip(0..).map(|(extremes, pattern)| Governing::of(&extremes, pattern)).reduce(Governing::worse)
}

impl Governing {
    fn of(extremes: &Extremes, pattern: usize) -> Self {
        Self {
            sagging: governed(extremes.sagging, pattern),
            hogging: governed(extremes.hogging, pattern),
            shear: governed(extremes.shear, pattern),
            down: governed(extremes.down, pattern),
            up: governed(extremes.up, pattern),
        }
    }

    /// The worse of two, each kind for itself; of equals, the first.
    fn worse(self, other: Self) -> Self {
        Self {
            sagging: if other.sagging.value > self.sagging.value { other.sagging } else { self.sagging },
            hogging: if other.hogging.value < self.hogging.value { other.hogging } else { self.hogging },
            shear: if other.shear.value.abs() > self.shear.value.abs() { other.shear } else { self.shear },
            down: if other.down.value > self.down.value { other.down } else { self.down },
            up: if other.up.value > self.up.value { other.up } else { self.up },
        }
    }
}

fn governed<T>((value, at): (T, Length), pattern: usize) -> Governed<T> {
    Governed { value, at, pattern }
}
