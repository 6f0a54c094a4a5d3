//! One load set laid on a prepared member, which is cut wherever load or stiffness changes.

use std::iter::Peekable;
use std::slice::Iter;

use crate::statics::continuous::prepared::{Joint, Prepared};
use crate::statics::continuous::response::{Piece, State};
use crate::statics::continuous::{Push, Unstable};
use crate::units::Length;

/// A member under one load set, cut wherever load or stiffness changes.
pub(super) struct Loaded {
    /// Shear and moment at the start of each are the jumps there.
    pub(super) pieces: Vec<Piece>,
    pub(super) fields: Vec<LoadedField>,
    pub(super) nodes: Vec<LoadedNode>,
}

/// A field's pieces, and what its loads do at its end while its start stays level, still and free of force.
pub(super) struct LoadedField {
    pub(super) n_pieces: usize,
    pub(super) end: State,
}

/// The loads that act right on a node.
#[derive(Clone, Copy)]
pub(super) struct LoadedNode {
    pub(super) force: f64,
    pub(super) couple: f64,
}

pub(super) fn loaded(prepared: &Prepared, pushes: &[Push]) -> Result<Loaded, Unstable> {
    let events = events_of(pushes, prepared.length)?;
    let n_fields = prepared.fields.len();
    let mut pieces = Vec::with_capacity(n_fields + prepared.slices.len() + events.len());
    let mut fields = Vec::with_capacity(n_fields);
    let mut nodes = Vec::with_capacity(prepared.nodes.len());
    let mut events = events.iter().peekable();
    let mut slices = prepared.slices.iter().peekable();
    let mut running = Running::default();
    let mut following = prepared.nodes.iter();
    following.next();

    for node in &prepared.nodes {
        let (force, couple) = running.take_in(&mut events, node.at);
        if couple != 0.0 && node.joint == Joint::Hinge {
            return Err(Unstable::CoupleOnHinge { at: node.at });
        }
        nodes.push(LoadedNode { force, couple });
        let Some(next) = following.next() else { break };

        let (mut at, mut end, mut n_pieces) = (node.at, State::default(), 0);
        while at < next.at {
            let (force, couple) = running.take_in(&mut events, at);
            while slices.next_if(|slice| slice.to <= at).is_some() {}
            let Some(slice) = slices.peek() else { break };
            let to = events.peek().map_or(next.at, |event| event.at).min(slice.to).min(next.at);
            let piece = Piece {
                at,
                to,
                length: (to - at).to_inches(),
                load: running.load,
                growth: running.growth,
                start: State { shear: -force, moment: couple, ..State::default() },
                flex: slice.flex,
                slip: slice.slip,
            };
            end = Piece { start: end.with_jump_of(piece.start), ..piece }.end();
            running.load += running.growth * piece.length;
            pieces.push(piece);
            n_pieces += 1;
            at = to;
        }
        fields.push(LoadedField { n_pieces, end });
    }
    Ok(Loaded { pieces, fields, nodes })
}

type Events<'a> = Peekable<Iter<'a, Event>>;

/// What changes at one place.
#[derive(Clone, Copy, Debug)]
struct Event {
    at: Length,
    /// The line load, pounds an inch, and its growth an inch.
    load: f64,
    growth: f64,
    force: f64,
    couple: f64,
    /// How many line loads begin here, less those that end.
    begins: i32,
}

const NO_EVENT: Event =
    Event { at: Length::ZERO, load: 0.0, growth: 0.0, force: 0.0, couple: 0.0, begins: 0 };

fn events_of(pushes: &[Push], length: Length) -> Result<Vec<Event>, Unstable> {
    let on_member = |at: Length| {
        if at.is_negative() || at > length {
            Err(Unstable::Off { what: "the load", at, length })
        } else {
            Ok(at)
        }
    };
    let number =
        |value: f64, at: Length| if value.is_finite() { Ok(value) } else { Err(Unstable::NotANumber { at }) };
    let mut events = Vec::with_capacity(2 * pushes.len());
    for push in pushes {
        match *push {
            Push::Spread { from, to, start, end } => {
                let (from, to, start, end) =
                    if from <= to { (from, to, start, end) } else { (to, from, end, start) };
                on_member(from)?;
                on_member(to)?;
                let start = number(start.to_plf() / 12.0, from)?;
                let end = number(end.to_plf() / 12.0, to)?;
                if from == to {
                    continue;
                }
                let growth = (end - start) / (to - from).to_inches();
                events.push(Event { at: from, load: start, growth, begins: 1, ..NO_EVENT });
                events.push(Event { at: to, load: -end, growth: -growth, begins: -1, ..NO_EVENT });
            }
            Push::Point { at, force } => {
                let force = number(force.to_lb(), on_member(at)?)?;
                events.push(Event { at, force, ..NO_EVENT });
            }
            Push::Couple { at, moment } => {
                let couple = number(moment.to_lb_in(), on_member(at)?)?;
                events.push(Event { at, couple, ..NO_EVENT });
            }
        }
    }
    events.sort_unstable_by_key(|event| event.at);
    Ok(events)
}

/// The line load at the place that a walk from left to right has reached.
#[derive(Default)]
struct Running {
    load: f64,
    growth: f64,
    n_active: i32,
}

impl Running {
    /// Takes in all events at the place, and tells the force and the couple there.
    fn take_in(&mut self, events: &mut Events, at: Length) -> (f64, f64) {
        let (mut force, mut couple) = (0.0, 0.0);
        while let Some(event) = events.next_if(|event| event.at == at) {
            self.load += event.load;
            self.growth += event.growth;
            self.n_active += event.begins;
            force += event.force;
            couple += event.couple;
        }
        if self.n_active == 0 {
            // Not what rounding leaves of loads that have ended.
            (self.load, self.growth) = (0.0, 0.0);
        }
        (force, couple)
    }
}
