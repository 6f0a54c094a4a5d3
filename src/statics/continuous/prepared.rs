//! A member ready for loads: its places of unknowns, the flexibility between them, and the equations factored.

use crate::statics::continuous::banded::{Equation, Factored, REACH, factored};
use crate::statics::continuous::response::{Piece, State};
use crate::statics::continuous::{Hold, Line, Prop, Push, Response, Unstable, solution};
use crate::units::Length;

/// A member ready for loads; several load sets share the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Prepared {
    pub(super) length: Length,
    pub(super) slices: Vec<Slice>,
    pub(super) nodes: Vec<Node>,
    pub(super) fields: Vec<Field>,
    pub(super) factored: Factored,
    pub(super) n_props: usize,
    pub(super) n_unknowns: usize,
    pub(super) units: Units,
    settling: Option<Box<Response>>,
}

/// A stretch as the integration needs it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Slice {
    pub(super) to: Length,
    /// One over the bending rigidity.
    pub(super) flex: f64,
    /// One over the shear rigidity; zero when shear deforms nothing.
    pub(super) slip: f64,
}

/// A place with unknowns, or the end of the member.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Node {
    pub(super) at: Length,
    pub(super) joint: Joint,
    pub(super) drop: Drop,
    /// Which of the member's supports stands here.
    pub(super) prop: Option<usize>,
}

/// What becomes of the moment at a node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Joint {
    /// It goes through: one unknown.
    Through(usize),
    /// A hinge: none on both sides.
    Hinge,
    /// The end of the member: whatever couple acts there.
    End,
    /// A fixed support: an unknown on each side.
    Clamped {
        left: usize,
        right: usize,
    },
    ClampedStart(usize),
    ClampedEnd(usize),
}

/// What is known of the deflection at a node.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Drop {
    /// The support's settlement, inches.
    Held(f64),
    /// Unknown; a spring of this stiffness, pounds per inch, holds against it, and its foot settles.
    Sprung { unknown: usize, rate: f64, settlement: f64 },
    /// Unknown.
    Loose(usize),
}

/// The member between two nodes. With no load, and `fall` the slope of the chord, the slopes at its ends are
/// `fall + at_start * M1 + across * M2` and `fall - across * M1 - at_end * M2`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Field {
    pub(super) length: f64,
    pub(super) at_start: f64,
    pub(super) at_end: f64,
    pub(super) across: f64,
    /// The slope lost over the field per pound of shear at its start, and no moment there.
    pub(super) turn: f64,
}

/// What one unit of an unknown stands for, so that all coefficients are of the size of one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Units {
    /// Pound-inches.
    pub(super) moment: f64,
    /// Inches.
    pub(super) drop: f64,
    /// Pounds.
    pub(super) force: f64,
}

impl Prepared {
    /// Invariant: `line` passed the check of its stability.
    pub(super) fn of(line: &Line) -> Result<Self, Unstable> {
        let slices: Vec<Slice> = line
            .stretches
            .iter()
            .map(|stretch| Slice {
                to: stretch.to,
                flex: 1.0 / stretch.rigidity.to_lb_in2(),
                slip: stretch.shear_rigidity.map_or(0.0, |rigidity| 1.0 / rigidity.to_lb()),
            })
            .collect();
        let (nodes, n_unknowns) = nodes_of(line);
        let fields = fields_of(&nodes, &slices);
        let units = units_of(&fields);
        let mut prepared = Self {
            length: line.length,
            slices,
            nodes,
            fields,
            factored: Factored::default(),
            n_props: line.props.len(),
            n_unknowns,
            units,
            settling: None,
        };
        prepared.factored = factored(&prepared.equations()).ok_or(Unstable::BeyondArithmetic)?;
        if line.props.iter().any(|prop| prop.settlement != Length::ZERO) {
            prepared.settling = Some(Box::new(solution::solved(&prepared, &[], 1.0)?));
        }
        Ok(prepared)
    }

    /// What the member does under these loads, its supports not settling.
    pub fn response(&self, pushes: &[Push]) -> Result<Response, Unstable> {
        solution::solved(self, pushes, 0.0)
    }

    /// What the member does when its supports settle and nothing loads it.
    pub fn settling(&self) -> Response {
        match &self.settling {
            Some(response) => response.as_ref().clone(),
            None => solution::solved(self, &[], 0.0).unwrap_or_default(),
        }
    }

    /// Where the member ends.
    pub const fn length(&self) -> Length {
        self.length
    }

    /// Where the member's supports and ends are, each place once, from left to right.
    pub fn supports_and_ends(&self) -> impl Iterator<Item = Length> + '_ {
        self.nodes
            .iter()
            .filter(|node| node.prop.is_some() || node.at == Length::ZERO || node.at == self.length)
            .map(|node| node.at)
    }

    fn equations(&self) -> Vec<Equation> {
        let mut equations = vec![Equation::default(); self.n_unknowns];
        for (field, ends) in self.fields.iter().zip(self.nodes.windows(2)) {
            let [left, right] = ends else { continue };
            let unknowns = [left.right_moment(), right.left_moment(), left.drop(), right.drop()];
            for (row, coefficients) in unknowns.iter().zip(field.coefficients(self.units)) {
                let Some(row) = row else { continue };
                for (column, coefficient) in unknowns.iter().zip(coefficients) {
                    add(&mut equations, *row, *column, coefficient);
                }
            }
        }
        for node in &self.nodes {
            if let Drop::Sprung { unknown, rate, .. } = node.drop {
                add(&mut equations, unknown, Some(unknown), -rate * self.units.drop / self.units.force);
            }
        }
        equations
    }
}

fn add(equations: &mut [Equation], row: usize, column: Option<usize>, coefficient: f64) {
    let place = column.and_then(|column| (column + REACH).checked_sub(row));
    debug_assert!(place.is_none_or(|place| place <= 2 * REACH), "outside the band");
    if let Some(value) = place.and_then(|place| equations.get_mut(row)?.get_mut(place)) {
        *value += coefficient;
    }
}

impl Field {
    /// How the slopes and shears at the ends depend on moments and deflections at the ends, all in `units`.
    /// Rows and columns: moment at the start, moment at the end, deflection at the start, deflection at the end.
    pub(super) fn coefficients(&self, units: Units) -> [[f64; 4]; 4] {
        let fall = units.drop / self.length;
        let [at_start, at_end, across] =
            [self.at_start, self.at_end, self.across].map(|flexibility| flexibility * units.moment);
        [
            [at_start, across, -fall, fall],
            [across, at_end, fall, -fall],
            [-fall, fall, 0.0, 0.0],
            [fall, -fall, 0.0, 0.0],
        ]
    }
}

impl Node {
    /// The unknown moment just right of it.
    pub(super) const fn right_moment(&self) -> Option<usize> {
        match self.joint {
            Joint::Through(unknown)
            | Joint::Clamped { right: unknown, .. }
            | Joint::ClampedStart(unknown) => Some(unknown),
            Joint::Hinge | Joint::End | Joint::ClampedEnd(_) => None,
        }
    }

    /// The unknown moment just left of it.
    pub(super) const fn left_moment(&self) -> Option<usize> {
        match self.joint {
            Joint::Through(unknown) | Joint::Clamped { left: unknown, .. } | Joint::ClampedEnd(unknown) => {
                Some(unknown)
            }
            Joint::Hinge | Joint::End | Joint::ClampedStart(_) => None,
        }
    }

    /// The unknown deflection.
    pub(super) const fn drop(&self) -> Option<usize> {
        match self.drop {
            Drop::Held(_) => None,
            Drop::Sprung { unknown, .. } | Drop::Loose(unknown) => Some(unknown),
        }
    }
}

/// The nodes from left to right, and how many unknowns they have.
fn nodes_of(line: &Line) -> (Vec<Node>, usize) {
    let props = line.props.iter().enumerate().map(|(index, prop)| (prop.at, Some((index, prop))));
    let hinges = line.hinges.iter().map(|&at| (at, None));
    let ends = [(Length::ZERO, None), (line.length, None)];
    let mut places: Vec<(Length, Option<(usize, &Prop)>)> = props.chain(hinges).chain(ends).collect();
    // Where several are at one place, the support comes first and stays.
    places.sort_by_key(|(at, prop)| (*at, prop.is_none()));
    places.dedup_by_key(|(at, _)| *at);

    let mut n_unknowns = 0;
    let mut next = || {
        n_unknowns += 1;
        n_unknowns - 1
    };
    let mut nodes = Vec::with_capacity(places.len());
    for (at, prop) in places {
        let is_fixed = prop.is_some_and(|(_, prop)| prop.hold == Hold::Fixed);
        let joint = if line.hinges.contains(&at) {
            Joint::Hinge
        } else if at == Length::ZERO {
            if is_fixed { Joint::ClampedStart(next()) } else { Joint::End }
        } else if at == line.length {
            if is_fixed { Joint::ClampedEnd(next()) } else { Joint::End }
        } else if is_fixed {
            Joint::Clamped { left: next(), right: next() }
        } else {
            Joint::Through(next())
        };
        let drop = match prop {
            None => Drop::Loose(next()),
            Some((_, prop)) => match prop.hold {
                Hold::Pinned | Hold::Fixed => Drop::Held(prop.settlement.to_inches()),
                Hold::Spring(rate) => Drop::Sprung {
                    unknown: next(),
                    rate: rate.to_lb_per_in(),
                    settlement: prop.settlement.to_inches(),
                },
            },
        };
        nodes.push(Node { at, joint, drop, prop: prop.map(|(index, _)| index) });
    }
    (nodes, n_unknowns)
}

/// The fields between the nodes: the deflected shapes under a unit moment and a unit shear at the start of each.
fn fields_of(nodes: &[Node], slices: &[Slice]) -> Vec<Field> {
    let mut slices = slices.iter().peekable();
    let mut fields = Vec::with_capacity(nodes.len());
    for ends in nodes.windows(2) {
        let [left, right] = ends else { continue };
        let mut from = left.at;
        let mut by_moment = State { moment: 1.0, ..State::default() };
        let mut by_shear = State { shear: 1.0, ..State::default() };
        while let Some(slice) = slices.peek() {
            let to = slice.to.min(right.at);
            let length = (to - from).to_inches();
            let piece =
                |start| Piece { length, start, flex: slice.flex, slip: slice.slip, ..Piece::default() };
            by_moment = piece(by_moment).end();
            by_shear = piece(by_shear).end();
            from = to;
            if slice.to == to {
                slices.next();
            }
            if from == right.at {
                break;
            }
        }
        let length = (right.at - left.at).to_inches();
        // With the chord kept level, the end shears are a moment over the length.
        let across = -by_shear.drop / (length * length);
        fields.push(Field {
            length,
            at_start: -by_moment.drop / length - across,
            at_end: -by_shear.slope / length - across,
            across,
            turn: -by_shear.slope,
        });
    }
    fields
}

/// From the mean field: its length, and the moment that turns it by one.
fn units_of(fields: &[Field]) -> Units {
    let n_fields = fields.len() as f64;
    let drop = fields.iter().map(|field| field.length).sum::<f64>() / n_fields;
    let moment = n_fields / fields.iter().map(|field| field.at_start + field.at_end).sum::<f64>();
    Units { moment, drop, force: moment / drop }
}
