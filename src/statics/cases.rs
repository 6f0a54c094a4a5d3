//! The cases of gravity load, kept apart from the roof to the soil.

use std::ops::{Add, AddAssign, Mul};

/// A case of gravity load.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Case {
    /// Weight that stays.
    Dead,
    /// What people and things bring to a floor.
    Live,
    /// What a roof bears while people work on it.
    RoofLive,
    /// Snow on a roof.
    Snow,
}

impl Case {
    /// Every case, in the order in which reports show them.
    pub const ALL: [Self; 4] = [Self::Dead, Self::Live, Self::RoofLive, Self::Snow];

    /// The word a spec and a report write.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Dead => "dead",
            Self::Live => "live",
            Self::RoofLive => "roof live",
            Self::Snow => "snow",
        }
    }

    /// The standard's symbol.
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Dead => "D",
            Self::Live => "L",
            Self::RoofLive => "Lr",
            Self::Snow => "S",
        }
    }
}

/// One amount a case.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct ByCase<T> {
    /// Dead load.
    pub dead: T,
    /// Floor live load.
    pub live: T,
    /// Roof live load.
    pub roof_live: T,
    /// Snow.
    pub snow: T,
}

impl<T> ByCase<T> {
    /// The amount of one case.
    pub const fn of(&self, case: Case) -> &T {
        match case {
            Case::Dead => &self.dead,
            Case::Live => &self.live,
            Case::RoofLive => &self.roof_live,
            Case::Snow => &self.snow,
        }
    }

    /// The amount of one case, to be changed.
    pub const fn of_mut(&mut self, case: Case) -> &mut T {
        match case {
            Case::Dead => &mut self.dead,
            Case::Live => &mut self.live,
            Case::RoofLive => &mut self.roof_live,
            Case::Snow => &mut self.snow,
        }
    }

    /// Each amount turned into something else.
    pub fn map<U>(self, mut turn: impl FnMut(T) -> U) -> ByCase<U> {
        ByCase {
            dead: turn(self.dead),
            live: turn(self.live),
            roof_live: turn(self.roof_live),
            snow: turn(self.snow),
        }
    }
}

impl<T: Default> ByCase<T> {
    /// All of it in one case.
    pub fn only(case: Case, amount: T) -> Self {
        let mut all = Self::default();
        *all.of_mut(case) = amount;
        all
    }
}

impl<T: Copy + Add<Output = T> + Mul<f64, Output = T>> ByCase<T> {
    /// The sum of all cases, each times its factor: dead, floor live, roof live, snow.
    pub fn factored(&self, [dead, live, roof_live, snow]: [f64; 4]) -> T {
        self.dead * dead + self.live * live + self.roof_live * roof_live + self.snow * snow
    }

    /// The plain sum of all cases.
    pub fn total(&self) -> T {
        self.factored([1.0; 4])
    }
}

impl<T: Add<Output = T>> Add for ByCase<T> {
    type Output = Self;
    fn add(self, rhs: Self) -> Self {
        Self {
            dead: self.dead + rhs.dead,
            live: self.live + rhs.live,
            roof_live: self.roof_live + rhs.roof_live,
            snow: self.snow + rhs.snow,
        }
    }
}

impl<T: Copy + Add<Output = T>> AddAssign for ByCase<T> {
    fn add_assign(&mut self, rhs: Self) {
        *self = *self + rhs;
    }
}

impl<T: Mul<f64, Output = T>> Mul<f64> for ByCase<T> {
    type Output = Self;
    fn mul(self, rhs: f64) -> Self {
        self.map(|amount| amount * rhs)
    }
}
