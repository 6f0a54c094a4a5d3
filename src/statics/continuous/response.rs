//! What a member does under one load set: reactions, and every force and deflection along it.

use crate::statics::continuous::extremes::{Extremes, extremes_of};
use crate::units::{Force, Length, Moment};

/// What a member does under one load set.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Response {
    /// The force of each support on the member, up positive, in the order of the member's supports.
    pub reactions: Vec<Force>,
    /// The couple of each support on the member, clockwise positive; none where the support is not fixed.
    pub fixed_moments: Vec<Moment>,
    /// Invariant: from left to right, without gaps.
    pub(super) pieces: Vec<Piece>,
}

/// A length of the member on which load and stiffness run smoothly. Pounds and inches.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Piece {
    pub(super) at: Length,
    pub(super) to: Length,
    /// From `at` to `to`.
    pub(super) length: f64,
    /// The line load at its start.
    pub(super) load: f64,
    /// How the line load grows, an inch.
    pub(super) growth: f64,
    pub(super) start: State,
    /// One over the bending rigidity.
    pub(super) flex: f64,
    /// One over the shear rigidity; zero when shear deforms nothing.
    pub(super) slip: f64,
}

/// Forces and shape at one place. Pounds and inches.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct State {
    pub(super) shear: f64,
    pub(super) moment: f64,
    /// Of the cross section: how much of the deflection's slope is due to bending. Downwards to the right positive.
    pub(super) slope: f64,
    pub(super) drop: f64,
}

impl Response {
    /// The moment there; just right of a couple, zero off the member.
    pub fn moment_at(&self, at: Length) -> Moment {
        Moment::lb_in(self.state_right_of(at).or_else(|| self.state_left_of(at)).unwrap_or_default().moment)
    }

    /// The shear just left and just right of there; zero off the member.
    pub fn shear_at(&self, at: Length) -> (Force, Force) {
        let left = self.state_left_of(at).unwrap_or_default();
        let right = self.state_right_of(at).unwrap_or_default();
        (Force::lb(left.shear), Force::lb(right.shear))
    }

    /// The deflection there, down positive; zero off the member.
    pub fn deflection_at(&self, at: Length) -> Length {
        let state = self.state_left_of(at).or_else(|| self.state_right_of(at)).unwrap_or_default();
        Length::decimal_inches(state.drop)
    }

    /// The largest and least of everything along the member.
    pub fn extremes(&self) -> Extremes {
        extremes_of(self.pieces.iter().copied(), (Length::ZERO, Length::ZERO))
    }

    /// The largest and least of everything between two places.
    pub fn extremes_between(&self, from: Length, to: Length) -> Extremes {
        self.extremes_beyond((Length::ZERO, Length::ZERO), from, to)
    }

    /// The same, but deflections that stay within `known`, down and up, need not be exact.
    pub(in crate::statics) fn extremes_beyond(
        &self,
        known: (Length, Length),
        from: Length,
        to: Length,
    ) -> Extremes {
        let (from, to) = (from.min(to), from.max(to));
        let first = self.pieces.partition_point(|piece| piece.to <= from);
        let pieces = self.pieces.iter().skip(first).take_while(|piece| piece.at < to);
        extremes_of(pieces.map(|piece| piece.between(from, to)), known)
    }

    /// The sum of responses of one prepared member, each times its factor.
    pub fn sum(parts: &[(f64, &Self)]) -> Self {
        Self {
            reactions: sums(parts.iter().map(|(factor, part)| (*factor, part.reactions.as_slice()))),
            fixed_moments: sums(parts.iter().map(|(factor, part)| (*factor, part.fixed_moments.as_slice()))),
            pieces: pieces_of_sum(parts),
        }
    }

    fn state_right_of(&self, at: Length) -> Option<State> {
        let after = self.pieces.partition_point(|piece| piece.at <= at);
        let piece = self.pieces.get(after.checked_sub(1)?)?;
        (at < piece.to).then(|| piece.state_at(at))
    }

    fn state_left_of(&self, at: Length) -> Option<State> {
        let after = self.pieces.partition_point(|piece| piece.at < at);
        let piece = self.pieces.get(after.checked_sub(1)?)?;
        (at <= piece.to).then(|| piece.state_at(at))
    }
}

fn pieces_of_sum(parts: &[(f64, &Response)]) -> Vec<Piece> {
    let mut rests: Vec<(f64, &[Piece])> =
        parts.iter().map(|(factor, part)| (*factor, part.pieces.as_slice())).collect();
    let mut pieces = Vec::with_capacity(rests.iter().map(|(_, rest)| rest.len()).sum());
    let mut at = Length::ZERO;
    while let Some(to) = rests.iter().filter_map(|(_, rest)| rest.first()).map(|piece| piece.to).min() {
        let mut sum = Piece { at, to, length: (to - at).to_inches(), ..Piece::default() };
        for (factor, rest) in &mut rests {
            let Some((piece, later)) = rest.split_first() else { continue };
            sum.add(*factor, piece, at);
            if piece.to == to {
                *rest = later;
            }
        }
        pieces.push(sum);
        at = to;
    }
    pieces
}

fn sums<'a, T>(parts: impl Iterator<Item = (f64, &'a [T])>) -> Vec<T>
where
    T: Copy + std::ops::Mul<f64, Output = T> + std::ops::AddAssign + 'a,
{
    let mut total: Vec<T> = Vec::new();
    for (factor, part) in parts {
        if total.is_empty() {
            total.extend(part.iter().map(|value| *value * factor));
        } else {
            total.iter_mut().zip(part).for_each(|(sum, value)| *sum += *value * factor);
        }
    }
    total
}

impl Piece {
    pub(super) fn end(&self) -> State {
        self.state_after(self.length)
    }

    fn state_at(&self, at: Length) -> State {
        self.state_after((at - self.at).to_inches())
    }

    /// Forces and shape this many inches from its start.
    pub(super) fn state_after(&self, x: f64) -> State {
        let Self { load, growth, start: State { shear, moment, slope, drop }, flex, slip, .. } = *self;
        // Products, since quotients take several times as long.
        const SIXTH: f64 = 1.0 / 6.0;
        let loads = x * (load + x * growth * 0.5);
        let first = x * (shear - x * (load * 0.5 + x * growth * SIXTH));
        let bend = x * (moment + x * (shear * 0.5 - x * SIXTH * (load + x * growth * 0.25)));
        let bow = x * x * (moment * 0.5 + x * SIXTH * (shear - x * (load * 0.25 + x * growth * 0.05)));
        State {
            shear: shear - loads,
            moment: moment + first,
            slope: slope - flex * bend,
            drop: drop + slope * x - flex * bow + slip * first,
        }
    }

    /// The part of it between two places.
    pub(super) fn between(&self, from: Length, to: Length) -> Self {
        let (at, to) = (self.at.max(from), self.to.min(to));
        if at == self.at && to == self.to {
            return *self;
        }
        let x = (at - self.at).to_inches();
        let length = (to - at).to_inches();
        Self { at, to, length, load: self.load + self.growth * x, start: self.state_after(x), ..*self }
    }

    /// Adds another piece, which reaches over this one, from `at` on.
    fn add(&mut self, factor: f64, other: &Self, at: Length) {
        let (load, start) = if other.at == at {
            (other.load, other.start)
        } else {
            let x = (at - other.at).to_inches();
            (other.load + other.growth * x, other.state_after(x))
        };
        self.load += factor * load;
        self.growth += factor * other.growth;
        self.start.shear += factor * start.shear;
        self.start.moment += factor * start.moment;
        self.start.slope += factor * start.slope;
        self.start.drop += factor * start.drop;
        (self.flex, self.slip) = (other.flex, other.slip);
    }
}

impl State {
    /// It after jumps of shear and moment.
    pub(super) fn with_jump_of(self, jump: Self) -> Self {
        Self { shear: self.shear + jump.shear, moment: self.moment + jump.moment, ..self }
    }

    /// True of numbers that may be added up and multiplied without end.
    pub(super) fn is_sane(self) -> bool {
        [self.shear, self.moment, self.slope, self.drop].iter().all(|value| value.abs() < FAR_BEYOND)
    }
}

/// Beyond any member that can be, and far below what arithmetic can hold.
pub(super) const FAR_BEYOND: f64 = 1e100;
