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
    let loaded: Vec<bool> = loads.iter().map(|pushes| !pushes.is_empty()).collect();

    let arrangements = if loaded.iter().filter(|&&is_loaded| is_loaded).count() <= MOST_SPANS_IN_FULL {
        all_arrangements(&loaded)
    } else {
        worst_arrangements(prepared, &spans, &loads)?
    };
    let mut patterns = Vec::with_capacity(arrangements.len());
    for arrangement in arrangements {
        let response = if arrangement == loaded {
            everything.clone()
        } else {
            let chosen = loads.iter().zip(&arrangement).filter(|(_, is_loaded)| **is_loaded);
            let pushes: Vec<Push> = chosen.flat_map(|(pushes, _)| pushes.iter().copied()).collect();
            prepared.response(&pushes)?
        };
        patterns.push(Pattern { spans: arrangement, response });
    }
    Ok(Patterned { spans, patterns })
}

/// With more loaded spans than this, only the arrangements that the influence of each span singles out.
const MOST_SPANS_IN_FULL: usize = 6;

/// Every choice among the loaded spans, from none to all.
fn all_arrangements(loaded: &[bool]) -> Vec<Vec<bool>> {
    let mut arrangements = vec![Vec::with_capacity(loaded.len())];
    for &is_loaded in loaded {
        let with: Vec<Vec<bool>> = if is_loaded {
            arrangements.iter().map(|before| before.iter().copied().chain([true]).collect()).collect()
        } else {
            Vec::new()
        };
        arrangements.iter_mut().for_each(|before| before.push(false));
        arrangements.extend(with);
    }
    arrangements
}

/// For each quantity, the spans that add to it and the spans that take from it.
fn worst_arrangements(
    prepared: &Prepared,
    spans: &[(Length, Length)],
    loads: &[Vec<Push>],
) -> Result<Vec<Vec<bool>>, Unstable> {
    let mut influences: Vec<Vec<f64>> = Vec::with_capacity(loads.len());
    for pushes in loads {
        influences.push(influences_of(&prepared.response(pushes)?, spans));
    }
    let n_quantities = influences.first().map_or(0, Vec::len);
    let quantities = (0..n_quantities).flat_map(|quantity| {
        let of_spans =
            influences.iter().map(move |influence| influence.get(quantity).copied().unwrap_or(0.0));
        [of_spans.clone().map(|value| value > 0.0).collect(), of_spans.map(|value| value < 0.0).collect()]
    });
    let all: Vec<bool> = loads.iter().map(|pushes| !pushes.is_empty()).collect();
    let none = vec![false; loads.len()];
    let mut arrangements: Vec<Vec<bool>> =
        quantities.filter(|spans| *spans != all && *spans != none).collect();
    arrangements.sort_unstable();
    arrangements.dedup();
    arrangements.insert(0, none);
    arrangements.push(all);
    Ok(arrangements)
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
    let holds = |at: Length| from <= at && (at < to || at == prepared.length());
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
    let mut envelope = Envelope::default();
    for (index, pattern) in patterned.patterns.iter().enumerate() {
        let response = Response::sum(&[(1.0, steady), (factor, &pattern.response)]);
        let spans = patterned.spans.iter().map(|&(from, to)| response.extremes_between(from, to));
        if index == 0 {
            envelope.reactions = response
                .reactions
                .iter()
                .map(|&reaction| Reactions { most: (reaction, index), least: (reaction, index) })
                .collect();
            envelope.spans = spans.map(|extremes| Governing::of(&extremes, index)).collect();
            continue;
        }
        for (range, &reaction) in envelope.reactions.iter_mut().zip(&response.reactions) {
            if reaction > range.most.0 {
                range.most = (reaction, index);
            }
            if reaction < range.least.0 {
                range.least = (reaction, index);
            }
        }
        for (governing, extremes) in envelope.spans.iter_mut().zip(spans) {
            governing.take_in(&Governing::of(&extremes, index));
        }
    }
    let mut spans = envelope.spans.iter();
    envelope.whole = spans.next().copied().unwrap_or_default();
    spans.for_each(|span| envelope.whole.take_in(span));
    envelope
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

    fn take_in(&mut self, other: &Self) {
        keep(&mut self.sagging, &other.sagging, |one, other| one > other);
        keep(&mut self.hogging, &other.hogging, |one, other| one < other);
        keep(&mut self.shear, &other.shear, |one, other| one.abs() > other.abs());
        keep(&mut self.down, &other.down, |one, other| one > other);
        keep(&mut self.up, &other.up, |one, other| one > other);
    }
}

fn governed<T>((value, at): (T, Length), pattern: usize) -> Governed<T> {
    Governed { value, at, pattern }
}

fn keep<T: Copy>(kept: &mut Governed<T>, other: &Governed<T>, is_worse: impl Fn(T, T) -> bool) {
    if is_worse(other.value, kept.value) {
        *kept = *other;
    }
}
