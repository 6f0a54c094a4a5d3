//! The largest and least of everything along a member, with the places.

use crate::statics::continuous::response::{Piece, State};
use crate::statics::continuous::roots::{quadratic_roots, root_between};
use crate::units::{Force, Length, Moment};

/// The largest and least of everything along a member, each with its place; of equals, the first.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Extremes {
    /// The largest moment; negative where all of the length hogs.
    pub sagging: (Moment, Length),
    /// The least moment: hogging is negative.
    pub hogging: (Moment, Length),
    /// The largest shear of either sign.
    pub shear: (Force, Length),
    /// How far it goes down the most; zero where it nowhere does.
    pub down: (Length, Length),
    /// How far it goes up the most; zero where it nowhere does.
    pub up: (Length, Length),
}

/// `known` are the deflections, down and up, that are reached elsewhere: smaller ones need not be found exactly.
pub(super) fn extremes_of(pieces: impl Iterator<Item = Piece> + Clone, known: (Length, Length)) -> Extremes {
    let Some(first) = pieces.clone().next() else { return Extremes::default() };
    let mut found = Found::at_start_of(&first);
    found.reached = (known.0.to_inches(), known.1.to_inches());
    for piece in pieces.clone() {
        found.take_in(&piece);
    }
    for piece in pieces {
        found.take_in_bows(&piece);
    }
    found.extremes()
}

/// The largest so far of one quantity.
#[derive(Clone, Copy)]
struct Largest {
    value: f64,
    /// The start of its piece, and inches from there.
    at: (Length, f64),
}

impl Largest {
    /// `noise` keeps what differs by rounding alone from moving the place.
    fn take_in(&mut self, value: f64, noise: f64, at: (Length, f64)) {
        if value > self.value + noise {
            *self = Self { value, at };
        }
    }

    fn place(self) -> Length {
        self.at.0 + Length::decimal_inches(self.at.1)
    }
}

struct Found {
    sagging: Largest,
    /// Of the moment with its sign turned.
    hogging: Largest,
    shear: Largest,
    shear_is_negative: bool,
    down: Largest,
    /// Of the deflection with its sign turned.
    up: Largest,
    /// Deflections that are surely reached somewhere: down at the most, up at the most.
    reached: (f64, f64),
}

impl Found {
    fn at_start_of(piece: &Piece) -> Self {
        let at = (piece.at, 0.0);
        let State { shear, moment, .. } = piece.start;
        Self {
            sagging: Largest { value: moment, at },
            hogging: Largest { value: -moment, at },
            shear: Largest { value: shear.abs(), at },
            shear_is_negative: shear < 0.0,
            down: Largest { value: 0.0, at },
            up: Largest { value: 0.0, at },
            reached: (0.0, 0.0),
        }
    }

    /// Everything but deflections between the ends of the piece.
    fn take_in(&mut self, piece: &Piece) {
        let end = piece.end();
        self.take_in_shear(piece.start.shear, (piece.at, 0.0));
        self.take_in_shear(end.shear, (piece.to, 0.0));
        self.take_in_moment(piece.start.moment, (piece.at, 0.0));
        self.take_in_moment(end.moment, (piece.to, 0.0));
        self.take_in_drop(piece.start.drop, (piece.at, 0.0));
        self.take_in_drop(end.drop, (piece.to, 0.0));
        let midway = piece.state_after(piece.length / 2.0).drop;
        self.reached = (self.reached.0.max(midway), self.reached.1.max(-midway));

        // The load passes through zero: the shear has an extreme there, and may be zero twice.
        let load_turns = (piece.load < 0.0) != (piece.load + piece.growth * piece.length < 0.0);
        if load_turns {
            let flat = -piece.load / piece.growth;
            self.take_in_shear(piece.state_after(flat).shear, (piece.at, flat));
        }
        if load_turns || (piece.start.shear < 0.0) != (end.shear < 0.0) {
            for x in quadratic_roots(piece.start.shear, -piece.load, -piece.growth / 2.0) {
                if 0.0 < x && x < piece.length {
                    self.take_in_moment(piece.state_after(x).moment, (piece.at, x));
                }
            }
        }
    }

    fn take_in_shear(&mut self, shear: f64, at: (Length, f64)) {
        let before = self.shear.value;
        self.shear.take_in(shear.abs(), ROUNDING * before, at);
        if self.shear.value > before {
            self.shear_is_negative = shear < 0.0;
        }
    }

    fn take_in_moment(&mut self, moment: f64, at: (Length, f64)) {
        let noise = ROUNDING * self.sagging.value.abs().max(self.hogging.value.abs());
        self.sagging.take_in(moment, noise, at);
        self.hogging.take_in(-moment, noise, at);
    }

    fn take_in_drop(&mut self, drop: f64, at: (Length, f64)) {
        let noise = ROUNDING * self.down.value.max(self.up.value);
        self.down.take_in(drop, noise, at);
        self.up.take_in(-drop, noise, at);
    }

    /// The deflections between the ends of the piece, unless they surely stay within what is reached elsewhere.
    fn take_in_bows(&mut self, piece: &Piece) {
        let (start, end) = (&piece.start, piece.end());
        let end_load = piece.load + piece.growth * piece.length;
        let (least_load, most_load) = (piece.load.min(end_load), piece.load.max(end_load));
        // A curve stays within its ends and the bow that its sharpest bend alone would give it.
        let bow = piece.length * piece.length / 8.0;
        let least_moment = start.moment.min(end.moment) + bow * least_load.min(0.0);
        let most_moment = start.moment.max(end.moment) + bow * most_load.max(0.0);
        let least_bend = piece.flex * least_moment + piece.slip * least_load;
        let most_bend = piece.flex * most_moment + piece.slip * most_load;
        let lowest = start.drop.max(end.drop) + bow * most_bend.max(0.0);
        let highest = start.drop.min(end.drop) + bow * least_bend.min(0.0);
        // Not `<=`: an even bend reaches its bound.
        let stays_above = lowest < self.down.value.max(self.reached.0) * SURELY;
        let stays_below = -highest < self.up.value.max(self.reached.1) * SURELY;
        if stays_above && stays_below {
            return;
        }
        let slope = Slope::of(piece);
        let bends_both_ways = least_bend < 0.0 && most_bend > 0.0;
        let straight_places = if bends_both_ways { slope.straight_places() } else { [f64::NAN; 3] };
        // Between places without bend the slope goes one way.
        let (mut from, mut slope_from) = (0.0, slope.at(0.0).0);
        for to in straight_places.into_iter().chain([piece.length]) {
            if !(from < to && to <= piece.length) {
                continue;
            }
            let slope_to = slope.at(to).0;
            let may_govern = if slope_from > 0.0 { !stays_above } else { !stays_below };
            if may_govern && let Some(x) = root_between((from, slope_from), (to, slope_to), |x| slope.at(x)) {
                self.take_in_drop(piece.state_after(x).drop, (piece.at, x));
            }
            (from, slope_from) = (to, slope_to);
        }
    }

    fn extremes(self) -> Extremes {
        let shear = if self.shear_is_negative { -self.shear.value } else { self.shear.value };
        Extremes {
            sagging: (Moment::lb_in(self.sagging.value), self.sagging.place()),
            hogging: (Moment::lb_in(-self.hogging.value), self.hogging.place()),
            shear: (Force::lb(shear), self.shear.place()),
            down: (Length::decimal_inches(self.down.value), self.down.place()),
            up: (Length::decimal_inches(self.up.value), self.up.place()),
        }
    }
}

/// What rounding may do, as a share of the largest value.
const ROUNDING: f64 = 1e-12;

/// What two ways of working out one bound may differ by.
const SURELY: f64 = 1.0 - 1e-9;

/// The slope of a piece's deflection: a polynomial of the inches from its start.
struct Slope {
    terms: [f64; 5],
    length: f64,
}

impl Slope {
    fn of(piece: &Piece) -> Self {
        let Piece { length, load, growth, start, flex, slip, .. } = *piece;
        let terms = [
            start.slope + slip * start.shear,
            -flex * start.moment - slip * load,
            -(flex * start.shear + slip * growth) / 2.0,
            flex * load / 6.0,
            flex * growth / 24.0,
        ];
        Self { terms, length }
    }

    /// The slope and how it changes.
    fn at(&self, x: f64) -> (f64, f64) {
        let [a, b, c, d, e] = self.terms;
        (a + x * (b + x * (c + x * (d + x * e))), b + x * (2.0 * c + x * (3.0 * d + x * 4.0 * e)))
    }

    /// Where it does not change, from left to right: three places at the most, `NaN` for none.
    fn straight_places(&self) -> [f64; 3] {
        let [_, b, c, d, e] = self.terms;
        if e.abs() * self.length <= f64::EPSILON * d.abs() {
            let [one, other] = quadratic_roots(b, 2.0 * c, 3.0 * d);
            return [one, other, f64::NAN];
        }
        let bend = |x: f64| {
            (b + x * (2.0 * c + x * (3.0 * d + x * 4.0 * e)), 2.0 * c + x * (6.0 * d + x * 12.0 * e))
        };
        let mut places = [f64::NAN; 3];
        let (mut from, mut bend_from) = (0.0, b);
        let turns = quadratic_roots(2.0 * c, 6.0 * d, 12.0 * e);
        for (place, to) in places.iter_mut().zip(turns.into_iter().chain([self.length])) {
            let to = to.min(self.length);
            if from < to {
                let bend_to = bend(to).0;
                *place = root_between((from, bend_from), (to, bend_to), bend).unwrap_or(f64::NAN);
                (from, bend_from) = (to, bend_to);
            }
        }
        places
    }
}
