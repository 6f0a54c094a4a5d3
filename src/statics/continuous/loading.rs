//! One load set on a prepared member: the loads cut into pieces, the equations solved, the pieces integrated.

use std::iter::Peekable;
use std::slice::Iter;

use crate::statics::continuous::prepared::{Drop, Field, Joint, Prepared};
use crate::statics::continuous::response::{Piece, Response, State};
use crate::statics::continuous::{Push, Unstable};
use crate::units::{Force, Length, Moment};

/// The response to `pushes`, with `settled` times the settlement of the supports.
pub(super) fn solved(prepared: &Prepared, pushes: &[Push], settled: f64) -> Result<Response, Unstable> {
    let events = events_of(pushes, prepared.length)?;
    let cut = cut(prepared, &events)?;
    let ends = solved_ends(prepared, &cut, settled);
    response_of(prepared, cut, &ends)
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

/// The member cut wherever load or stiffness changes.
struct Cut {
    /// Shear and moment at the start of a piece are, until it is integrated, the jumps there.
    pieces: Vec<Piece>,
    fields: Vec<LoadedField>,
    nodes: Vec<LoadedNode>,
}

/// A field's pieces, and what its loads do at its end while its start stays level, still and free of force.
struct LoadedField {
    n_pieces: usize,
    end: State,
}

/// The loads that act right on a node.
struct LoadedNode {
    force: f64,
    couple: f64,
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

fn cut(prepared: &Prepared, events: &[Event]) -> Result<Cut, Unstable> {
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
    Ok(Cut { pieces, fields, nodes })
}

/// Moments and deflection at a node.
struct End {
    left_moment: f64,
    right_moment: f64,
    drop: f64,
}

/// What is known of moments and deflection at each node before anything is solved.
fn known_ends(prepared: &Prepared, cut: &Cut, settled: f64) -> Vec<End> {
    let nodes = prepared.nodes.iter().zip(&cut.nodes);
    nodes
        .map(|(node, loads)| {
            let (left_moment, right_moment) = match node.joint {
                Joint::Through(_) => (0.0, loads.couple),
                Joint::End => (-loads.couple, loads.couple),
                Joint::Hinge | Joint::Clamped { .. } | Joint::ClampedStart(_) | Joint::ClampedEnd(_) => {
                    (0.0, 0.0)
                }
            };
            let drop = match node.drop {
                Drop::Held(settlement) => settlement * settled,
                Drop::Sprung { .. } | Drop::Loose(_) => 0.0,
            };
            End { left_moment, right_moment, drop }
        })
        .collect()
}

/// Moments and deflection at each node.
fn solved_ends(prepared: &Prepared, cut: &Cut, settled: f64) -> Vec<End> {
    let mut ends = known_ends(prepared, cut, settled);
    let units = prepared.units;
    let mut values = vec![0.0; prepared.n_unknowns];
    let mut add = |unknown: Option<usize>, amount: f64| {
        if let Some(value) = unknown.and_then(|unknown| values.get_mut(unknown)) {
            *value += amount;
        }
    };
    for (node, loads) in prepared.nodes.iter().zip(&cut.nodes) {
        let from_foot = match node.drop {
            Drop::Sprung { rate, settlement, .. } => rate * settlement * settled,
            Drop::Held(_) | Drop::Loose(_) => 0.0,
        };
        add(node.drop(), -(loads.force + from_foot) / units.force);
    }
    let sides = prepared.nodes.windows(2).zip(ends.windows(2));
    for ((field, loaded), (nodes, ends)) in prepared.fields.iter().zip(&cut.fields).zip(sides) {
        let ([left, right], [start, end]) = (nodes, ends) else { continue };
        let known = [
            start.right_moment / units.moment,
            end.left_moment / units.moment,
            start.drop / units.drop,
            end.drop / units.drop,
        ];
        let (slope_at_start, slope_at_end) = loaded.slopes(field);
        let shear = loaded.end.moment / field.length;
        let loads =
            [-slope_at_start, slope_at_end, shear / units.force, (loaded.end.shear - shear) / units.force];
        let unknowns = [left.right_moment(), right.left_moment(), left.drop(), right.drop()];
        for ((unknown, load), coefficients) in unknowns.into_iter().zip(loads).zip(field.coefficients(units))
        {
            let of_known: f64 = coefficients.iter().zip(known).map(|(one, other)| one * other).sum();
            add(unknown, load - of_known);
        }
    }
    prepared.factored.solve(&mut values);
    let value =
        |unknown: Option<usize>| unknown.and_then(|unknown| values.get(unknown)).copied().unwrap_or(0.0);
    for (node, end) in prepared.nodes.iter().zip(&mut ends) {
        end.left_moment += value(node.left_moment()) * units.moment;
        end.right_moment += value(node.right_moment()) * units.moment;
        end.drop += value(node.drop()) * units.drop;
    }
    ends
}

impl LoadedField {
    /// The slopes that its loads give its ends while the ends neither sink nor bear a moment.
    fn slopes(&self, field: &Field) -> (f64, f64) {
        let at_start = -self.end.moment * field.across - self.end.drop / field.length;
        (at_start, at_start + self.end.moment * field.turn / field.length + self.end.slope)
    }
}

fn response_of(prepared: &Prepared, mut cut: Cut, ends: &[End]) -> Result<Response, Unstable> {
    let shears = integrate(prepared, &mut cut, ends)?;
    let mut reactions = vec![Force::ZERO; prepared.n_props];
    let mut fixed_moments = vec![Moment::ZERO; prepared.n_props];
    let (mut largest, mut astray) = (0.0_f64, 0.0_f64);
    let mut left_shear = 0.0;
    let right_shears = shears.iter().map(|(start, _)| *start).chain([0.0]);
    let left_shears = shears.iter().map(|(_, end)| *end).chain([0.0]);
    let nodes = prepared.nodes.iter().zip(&cut.nodes).zip(ends);
    for (((node, loads), end), (right_shear, next_left)) in nodes.zip(right_shears.zip(left_shears)) {
        let reaction = right_shear - left_shear + loads.force;
        // A member that only follows its supports is as good as free of force: there, what bending so far would take.
        let bending = end.drop.abs() / prepared.units.drop * prepared.units.force;
        largest = largest.max(right_shear.abs()).max(left_shear.abs()).max(loads.force.abs()).max(bending);
        match node.prop {
            None => astray = astray.max(reaction.abs()),
            Some(prop) => {
                if let Some(place) = reactions.get_mut(prop) {
                    *place = Force::lb(reaction);
                }
                let moment = match node.joint {
                    Joint::Clamped { .. } | Joint::ClampedStart(_) | Joint::ClampedEnd(_) => {
                        end.right_moment - end.left_moment - loads.couple
                    }
                    Joint::Through(_) | Joint::Hinge | Joint::End => 0.0,
                };
                if let Some(place) = fixed_moments.get_mut(prop) {
                    *place = Moment::lb_in(moment);
                }
            }
        }
        left_shear = next_left;
    }
    let is_finite = reactions.iter().all(|reaction| reaction.is_finite())
        && fixed_moments.iter().all(|moment| moment.is_finite());
    // A place that nothing holds takes no force; what is left there is what rounding did.
    if is_finite && astray <= LOST * largest {
        Ok(Response { reactions, fixed_moments, pieces: cut.pieces })
    } else {
        Err(Unstable::BeyondArithmetic)
    }
}

/// The share of the largest force that rounding may lose.
const LOST: f64 = 1e-7;

/// Gives each piece the shear, moment, slope and deflection at its start; tells the shears at the ends of each field.
fn integrate(prepared: &Prepared, cut: &mut Cut, ends: &[End]) -> Result<Vec<(f64, f64)>, Unstable> {
    let mut pieces = cut.pieces.iter_mut();
    let mut shears = Vec::with_capacity(prepared.fields.len());
    for ((field, loaded), sides) in prepared.fields.iter().zip(&cut.fields).zip(ends.windows(2)) {
        let [start, end] = sides else { continue };
        let (from, to) = (start.right_moment, end.left_moment);
        let shear = (to - from - loaded.end.moment) / field.length;
        let slope = (end.drop - start.drop) / field.length
            + field.at_start * from
            + field.across * to
            + loaded.slopes(field).0;
        let mut state = State { shear, moment: from, slope, drop: start.drop };
        for piece in pieces.by_ref().take(loaded.n_pieces) {
            piece.start = state.with_jump_of(piece.start);
            state = piece.end();
        }
        // What is no number stays none to the end of the field.
        if !state.is_finite() {
            return Err(Unstable::BeyondArithmetic);
        }
        shears.push((shear, shear + loaded.end.shear));
    }
    Ok(shears)
}
