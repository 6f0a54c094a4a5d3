//! The moments and deflections at the nodes of a loaded member, and from them everything between.

use crate::statics::continuous::loading::{Loaded, LoadedField, LoadedNode, loaded};
use crate::statics::continuous::prepared::{Drop, Field, Joint, Node, Prepared};
use crate::statics::continuous::response::{FAR_BEYOND, Response, State};
use crate::statics::continuous::{Push, Unstable};
use crate::units::{Force, Moment};

/// The response to `pushes`, with `settled` times the settlement of the supports.
pub(super) fn solved(prepared: &Prepared, pushes: &[Push], settled: f64) -> Result<Response, Unstable> {
    let mut loaded = loaded(prepared, pushes)?;
    let ends = ends_of(prepared, &loaded, settled);
    let starts = integrate(prepared, &mut loaded, &ends)?;
    let Held { reactions, fixed_moments } = held(prepared, &loaded, &ends, &starts)?;
    Ok(Response { reactions, fixed_moments, pieces: loaded.pieces })
}

/// Moments and deflection at a node.
struct End {
    left_moment: f64,
    right_moment: f64,
    drop: f64,
}

/// Moments and deflection at each node.
fn ends_of(prepared: &Prepared, loaded: &Loaded, settled: f64) -> Vec<End> {
    let nodes = prepared.nodes.iter().zip(&loaded.nodes);
    let mut ends: Vec<End> = nodes.map(|(node, loads)| End::known(node, loads, settled)).collect();
    let mut values = right_sides(prepared, loaded, &ends, settled);
    prepared.factored.solve(&mut values);
    let units = prepared.units;
    let value =
        |unknown: Option<usize>| unknown.and_then(|unknown| values.get(unknown)).copied().unwrap_or(0.0);
    for (node, end) in prepared.nodes.iter().zip(&mut ends) {
        end.left_moment += value(node.left_moment()) * units.moment;
        end.right_moment += value(node.right_moment()) * units.moment;
        end.drop += value(node.drop()) * units.drop;
    }
    ends
}

impl End {
    /// What is known before anything is solved: settlements, and what couples add on one side.
    fn known(node: &Node, loads: &LoadedNode, settled: f64) -> Self {
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
        Self { left_moment, right_moment, drop }
    }
}

/// What the loads, and what is known at the nodes, bring to each equation.
fn right_sides(prepared: &Prepared, loaded: &Loaded, ends: &[End], settled: f64) -> Vec<f64> {
    let units = prepared.units;
    let mut values = vec![0.0; prepared.n_unknowns];
    let mut add = |unknown: Option<usize>, amount: f64| {
        if let Some(value) = unknown.and_then(|unknown| values.get_mut(unknown)) {
            *value += amount;
        }
    };
    for (node, loads) in prepared.nodes.iter().zip(&loaded.nodes) {
        let from_foot = match node.drop {
            Drop::Sprung { rate, settlement, .. } => rate * settlement * settled,
            Drop::Held(_) | Drop::Loose(_) => 0.0,
        };
        add(node.drop(), -(loads.force + from_foot) / units.force);
    }
    let sides = prepared.nodes.windows(2).zip(ends.windows(2));
    for ((field, of_loads), (nodes, ends)) in prepared.fields.iter().zip(&loaded.fields).zip(sides) {
        let ([left, right], [start, end]) = (nodes, ends) else { continue };
        let known = [
            start.right_moment / units.moment,
            end.left_moment / units.moment,
            start.drop / units.drop,
            end.drop / units.drop,
        ];
        let (slope_at_start, slope_at_end) = of_loads.slopes(field);
        let shear = of_loads.end.moment / field.length;
        let sides =
            [-slope_at_start, slope_at_end, shear / units.force, (of_loads.end.shear - shear) / units.force];
        let unknowns = [left.right_moment(), right.left_moment(), left.drop(), right.drop()];
        for ((unknown, side), row) in unknowns.into_iter().zip(sides).zip(field.coefficients(units)) {
            let of_known: f64 = row.iter().zip(known).map(|(one, other)| one * other).sum();
            add(unknown, side - of_known);
        }
    }
    values
}

impl LoadedField {
    /// The slopes that its loads give its ends while the ends neither sink nor bear a moment.
    fn slopes(&self, field: &Field) -> (f64, f64) {
        let at_start = -self.end.moment * field.across - self.end.drop / field.length;
        (at_start, at_start + self.end.moment * field.turn / field.length + self.end.slope)
    }
}

/// Gives each piece the shear, moment, slope and deflection at its start; tells the shear at the start of each field.
fn integrate(prepared: &Prepared, loaded: &mut Loaded, ends: &[End]) -> Result<Vec<f64>, Unstable> {
    let mut pieces = loaded.pieces.iter_mut();
    let mut shears = Vec::with_capacity(prepared.nodes.len());
    for ((field, of_loads), sides) in prepared.fields.iter().zip(&loaded.fields).zip(ends.windows(2)) {
        let [start, end] = sides else { continue };
        let (from, to) = (start.right_moment, end.left_moment);
        let shear = (to - from - of_loads.end.moment) / field.length;
        let slope = (end.drop - start.drop) / field.length
            + field.at_start * from
            + field.across * to
            + of_loads.slopes(field).0;
        let mut state = State { shear, moment: from, slope, drop: start.drop };
        for piece in pieces.by_ref().take(of_loads.n_pieces) {
            piece.start = state.with_jump_of(piece.start);
            state = piece.end();
        }
        // What is no number stays none to the end of the field.
        if !state.is_sane() {
            return Err(Unstable::BeyondArithmetic);
        }
        shears.push(shear);
    }
    Ok(shears)
}

/// What the supports do, in the order of the member's supports.
struct Held {
    reactions: Vec<Force>,
    fixed_moments: Vec<Moment>,
}

fn held(prepared: &Prepared, loaded: &Loaded, ends: &[End], shears: &[f64]) -> Result<Held, Unstable> {
    let units = prepared.units;
    let mut held = Held {
        reactions: vec![Force::ZERO; prepared.n_props],
        fixed_moments: vec![Moment::ZERO; prepared.n_props],
    };
    let (mut largest, mut astray) = (0.0_f64, 0.0_f64);
    let right_shears = shears.iter().copied().chain([0.0]);
    let left_shears = shears.iter().zip(&loaded.fields).map(|(shear, of_loads)| shear + of_loads.end.shear);
    let sides = [0.0].into_iter().chain(left_shears).zip(right_shears);
    let nodes = prepared.nodes.iter().zip(&loaded.nodes).zip(ends);
    for (((node, loads), end), (left_shear, right_shear)) in nodes.zip(sides) {
        let reaction = right_shear - left_shear + loads.force;
        // A member that only follows its supports is as good as free of force: there, what bending so far would take.
        let bending = end.drop.abs() / units.drop * units.force;
        largest = largest.max(right_shear.abs()).max(left_shear.abs()).max(loads.force.abs()).max(bending);
        let Some(prop) = node.prop else {
            astray = astray.max(reaction.abs());
            continue;
        };
        if let Some(place) = held.reactions.get_mut(prop) {
            *place = Force::lb(reaction);
        }
        match node.joint {
            Joint::Clamped { .. } | Joint::ClampedStart(_) | Joint::ClampedEnd(_) => {
                if let Some(place) = held.fixed_moments.get_mut(prop) {
                    *place = Moment::lb_in(end.right_moment - end.left_moment - loads.couple);
                }
            }
            Joint::Through(_) | Joint::Hinge | Joint::End => {}
        }
    }
    // A place that nothing holds takes no force; what is left there is what rounding did.
    let is_sane = largest < FAR_BEYOND && loaded.nodes.iter().all(|loads| loads.couple.abs() < FAR_BEYOND);
    if is_sane && astray <= LOST * largest { Ok(held) } else { Err(Unstable::BeyondArithmetic) }
}

/// The share of the largest force that rounding may lose.
const LOST: f64 = 1e-7;
