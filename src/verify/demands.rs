//! What a piece of a member has to bear: each combination of load, with live load on the spans that make it worst.

use std::ops::{Add, Mul};

use crate::design::loads::{ALLOWABLE, Combination, duration_factor};
use crate::statics::cases::{ByCase, Case};
use crate::statics::continuous::{Response, Unstable};
use crate::statics::member_line::MemberLine;
use crate::statics::pattern::{self, Patterned};
use crate::units::Force;

/// One combination of load on one piece, with live load on some of its spans.
#[derive(Clone, Debug)]
pub struct Demand {
    /// The combination.
    pub combination: &'static Combination,
    /// Which spans carry live load, when not all that could: `live load on spans 1 and 3`.
    pub pattern: Option<Box<str>>,
    /// Live load lies on every span.
    pub is_everywhere: bool,
    /// What the piece does under all of it.
    pub response: Response,
    /// What it does under all but the dead load.
    pub variable: Response,
    /// What it does under the dead load.
    pub lasting: Response,
    /// The load duration factor of wood.
    pub duration: f64,
}

impl Demand {
    /// What the piece presses on one of its seats, the load right over it with it.
    pub fn reaction(&self, line: &MemberLine, seat: usize) -> Force {
        let direct = line.direct.get(seat).map_or(Force::ZERO, |force| combined(self.combination, force));
        self.response.reactions.get(seat).copied().unwrap_or(Force::ZERO) + direct
    }
}

/// The sum of all cases by a combination.
pub fn combined<T>(combination: &Combination, amount: &ByCase<T>) -> T
where
    T: Copy + Add<Output = T> + Mul<f64, Output = T>,
{
    amount.factored([combination.dead, combination.live, combination.roof_live, combination.snow])
}

/// The allowable stress combinations that can govern where only some cases act: each names no case that isn't there.
pub fn combinations(acts: [bool; 4]) -> impl Iterator<Item = &'static Combination> {
    ALLOWABLE.iter().filter(move |combination| {
        let named = [combination.dead, combination.live, combination.roof_live, combination.snow];
        named.iter().zip(acts).skip(1).all(|(factor, acts)| acts || *factor <= 0.0)
    })
}

/// Which cases act at all, of dead, floor live, roof live and snow.
pub fn acting<T: Default + PartialEq>(amount: &ByCase<T>) -> [bool; 4] {
    Case::ALL.map(|case| *amount.of(case) != T::default())
}

/// Every combination and arrangement that can govern a piece.
///
/// # Errors
/// Why the piece can't be solved for a part of its load.
pub fn of(line: &MemberLine) -> Result<Vec<Demand>, Unstable> {
    let direct = line.direct.iter().fold(ByCase::default(), |sum, force| sum + *force);
    let mut acts = acting(&direct);
    for (acts, case) in acts.iter_mut().zip(Case::ALL) {
        *acts |= line.responses.of(case).is_some();
    }
    let nothing = line.prepared.response(&[])?;
    let dead = line.responses.dead.as_ref().unwrap_or(&nothing);
    let roof_live = line.responses.roof_live.as_ref().unwrap_or(&nothing);
    let snow = line.responses.snow.as_ref().unwrap_or(&nothing);
    let live = match line.pushes.live.is_empty() {
        true => Patterned::default(),
        false => pattern::patterns(&line.prepared, &line.pushes.live)?,
    };
    let mut demands = Vec::new();
    for combination in combinations(acts) {
        let lasting = Response::sum(&[(combination.dead, dead)]);
        let above = Response::sum(&[(combination.roof_live, roof_live), (combination.snow, snow)]);
        let duration = duration_factor(combination, acts);
        let mut add = |pattern: Option<Box<str>>, is_everywhere: bool, variable: Response| {
            let response = Response::sum(&[(1.0, &lasting), (1.0, &variable)]);
            let lasting = lasting.clone();
            demands.push(Demand {
                combination,
                pattern,
                is_everywhere,
                response,
                variable,
                lasting,
                duration,
            });
        };
        if combination.live <= 0.0 || live.patterns.is_empty() {
            add(None, true, above);
            continue;
        }
        let last = live.patterns.len().saturating_sub(1);
        // The first arrangement carries nothing: another combination has it.
        for (at, arrangement) in live.patterns.iter().enumerate().skip(1) {
            let variable = Response::sum(&[(1.0, &above), (combination.live, &arrangement.response)]);
            let words = if at == last { None } else { Some(spans_in_words(&arrangement.spans)) };
            add(words, at == last, variable);
        }
    }
    Ok(demands)
}

fn spans_in_words(spans: &[bool]) -> Box<str> {
    let loaded: Vec<String> =
        spans.iter().enumerate().filter(|(_, is)| **is).map(|(at, _)| (at + 1).to_string()).collect();
    let (spans, noun) = (loaded.join(" and "), if loaded.len() == 1 { "span" } else { "spans" });
    format!("live load on {noun} {spans}").into()
}
