//! The steel behind a member: its shape as the clauses ask for it, and its grade.

use crate::design::NotCovered;
use crate::design::steel::grades::{self, Family, Grade};
use crate::design::steel::sections::{Axis, Pipe, Tube, WideFlange};
use crate::model::member::Member;
use crate::products::rolled::{self, Outline, Rolled};
use crate::units::Stress;
use crate::verify::check::{NotVerified, Step};
use crate::verify::quantity::Quantity;

/// A rolled member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Steel {
    /// Its shape.
    pub shape: Shape,
    /// How many side by side, each with its share of the load.
    pub pieces: f64,
    /// Fy.
    pub yield_strength: Stress,
    /// The grade in words, when nobody stated it.
    pub assumed: Option<&'static str>,
}

/// A shape with the numbers that the clauses ask for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// A W shape.
    WideFlange(WideFlange),
    /// A square or rectangular tube.
    Tube(Tube),
    /// A pipe.
    Pipe(Pipe),
}

/// The steel of a member of a listed shape.
///
/// # Errors
/// The member names a grade that is none of those known.
pub fn of(member: &Member, rolled: &Rolled) -> Result<Steel, NotVerified> {
    let shape = shape_of(rolled);
    let usual = grades::usual(shape.family());
    let (grade, assumed): (Grade, _) = match member.grade.as_deref() {
        None => (usual.grade, Some(usual.assumption)),
        Some(words) => {
            let what = "a steel of this grade";
            let named = grades::named(shape.family(), words);
            (named.ok_or(NotCovered::NoRule { what, clause: "AISC 360 A3.1" })?, None)
        }
    };
    Ok(Steel { shape, pieces: f64::from(member.plies), yield_strength: grade.yield_strength, assumed })
}

/// What the clauses ask of a listed shape.
pub fn shape_of(rolled: &Rolled) -> Shape {
    let (area, torsion) = (rolled.area, rolled.torsion);
    let (major, minor) = (axis(rolled.major), axis(rolled.minor));
    match rolled.outline {
        Outline::WideFlange {
            depth,
            flange_width,
            flange,
            web,
            fillet,
            effective_radius,
            flange_distance,
        } => Shape::WideFlange(WideFlange {
            area,
            depth,
            flange_width,
            flange,
            web,
            fillet,
            effective_radius,
            flange_distance,
            torsion,
            major,
            minor,
        }),
        Outline::Tube { depth, width, design_wall: wall, .. } => {
            Shape::Tube(Tube { area, depth, width, wall, torsion, major, minor })
        }
        Outline::Pipe { outside, design_wall: wall, .. } => {
            Shape::Pipe(Pipe { area, outside, wall, axis: major })
        }
    }
}

const fn axis(axis: rolled::Axis) -> Axis {
    Axis {
        second_moment: axis.second_moment,
        elastic_modulus: axis.elastic_modulus,
        plastic_modulus: axis.plastic_modulus,
        radius: axis.radius,
    }
}

impl Steel {
    /// What nobody stated.
    pub fn assumptions(&self) -> Vec<Box<str>> {
        self.assumed.into_iter().map(Box::from).collect()
    }

    /// Where its yield strength is from.
    pub const fn grade_source(&self) -> &'static str {
        if self.assumed.is_some() { "the usual grade, assumed" } else { "the grade stated" }
    }
}

impl Shape {
    /// The family that its usual grade goes by.
    pub const fn family(&self) -> Family {
        match self {
            Self::WideFlange(_) => Family::WideFlange,
            Self::Tube(_) => Family::Tube,
            Self::Pipe(_) => Family::Pipe,
        }
    }

    /// What it brings to bending about its weaker axis; about any of a square tube or a pipe.
    pub const fn weaker_axis(&self) -> Axis {
        match self {
            Self::WideFlange(shape) => shape.minor,
            Self::Tube(tube) => tube.minor,
            Self::Pipe(pipe) => pipe.axis,
        }
    }

    /// True when it resists bending about every axis, or about both of its sides, alike.
    pub fn is_alike_both_ways(&self) -> bool {
        match self {
            Self::WideFlange(_) => false,
            Self::Tube(tube) => tube.depth == tube.width,
            Self::Pipe(_) => true,
        }
    }
}

/// A value that is read, not worked out here.
pub fn read(symbol: &'static str, value: impl Into<Quantity>, source: &'static str) -> Step {
    Step { symbol, formula: "", values: Vec::new(), result: value.into(), source }
}

/// A value that is worked out.
pub fn worked<const N: usize>(
    symbol: &'static str,
    formula: &'static str,
    values: [(&'static str, Quantity); N],
    result: impl Into<Quantity>,
    source: &'static str,
) -> Step {
    Step { symbol, formula, values: values.into(), result: result.into(), source }
}
