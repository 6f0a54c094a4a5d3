//! Whether a member can stand: its numbers make sense, and no part of it moves without bending.

use crate::statics::continuous::{Hold, Line, Unstable};
use crate::units::Length;

/// Refuses a member that has no answer.
pub(super) fn check(line: &Line) -> Result<(), Unstable> {
    if !line.length.is_positive() {
        return Err(Unstable::NoLength);
    }
    if line.length > Length::LONGEST_WRITTEN {
        return Err(Unstable::BeyondArithmetic);
    }
    check_stiffness(line)?;
    check_places(line)?;
    if line.props.is_empty() {
        return Err(Unstable::NoSupport);
    }
    check_motions(line)
}

fn check_stiffness(line: &Line) -> Result<(), Unstable> {
    let length = line.length;
    let mut reached = Length::ZERO;
    for stretch in &line.stretches {
        if stretch.to <= reached || stretch.to > length {
            return Err(Unstable::Stretches { to: stretch.to, length });
        }
        let shear = stretch.shear_rigidity.map_or(1.0, |rigidity| rigidity.to_lb());
        if !is_positive(stretch.rigidity.to_lb_in2()) || !is_positive(shear) {
            return Err(Unstable::NoRigidity { at: stretch.to });
        }
        reached = stretch.to;
    }
    if reached == length { Ok(()) } else { Err(Unstable::Stretches { to: reached, length }) }
}

fn is_positive(value: f64) -> bool {
    value > 0.0 && value.is_finite() && (1.0 / value).is_finite()
}

fn check_places(line: &Line) -> Result<(), Unstable> {
    let length = line.length;
    let off = |at: Length| at.is_negative() || at > length;
    if let Some(&at) = line.hinges.iter().find(|&&at| off(at)) {
        return Err(Unstable::Off { what: "the joint", at, length });
    }
    for prop in &line.props {
        if off(prop.at) {
            return Err(Unstable::Off { what: "the support", at: prop.at, length });
        }
        if let Hold::Spring(rate) = prop.hold
            && !is_positive(rate.to_lb_per_in())
        {
            return Err(Unstable::NoRigidity { at: prop.at });
        }
    }
    let mut places: Vec<Length> = line.props.iter().map(|prop| prop.at).collect();
    places.sort_unstable();
    match places.windows(2).find(|pair| pair.first() == pair.last()) {
        Some(pair) => Err(Unstable::SamePlace { at: pair.first().copied().unwrap_or_default() }),
        None => Ok(()),
    }
}

/// Joints cut the member into stiff bodies, each of which could shift and turn. From left to right, each body is held
/// by its supports and by the joint on its left, once that one is held. One that only turns about its left may yet be
/// held by the next.
fn check_motions(line: &Line) -> Result<(), Unstable> {
    let mut joints: Vec<Length> = line.hinges.iter().copied().filter(|&at| inside(line, at)).collect();
    joints.sort_unstable();
    joints.dedup();
    let (mut from, mut joint_is_held, mut turning_from) = (Length::ZERO, false, None);
    for to in joints.into_iter().chain([line.length]) {
        let mut places = line.props.iter().filter(|prop| from <= prop.at && prop.at <= to);
        let own_places = places.clone().filter(|prop| prop.at != from).count();
        let held_places =
            own_places + usize::from(joint_is_held || line.props.iter().any(|prop| prop.at == from));
        let is_clamped =
            places.clone().any(|prop| prop.hold == Hold::Fixed && !line.hinges.contains(&prop.at));
        let end_is_held = places.any(|prop| prop.at == to);
        joint_is_held = is_clamped || held_places >= 2;
        let may_turn = held_places == 1 && !end_is_held && to != line.length;
        if joint_is_held {
            turning_from = None;
        } else if may_turn {
            turning_from.get_or_insert(from);
        } else {
            return Err(Unstable::Mechanism { from: turning_from.unwrap_or(from), to });
        }
        from = to;
    }
    Ok(())
}

fn inside(line: &Line, at: Length) -> bool {
    at.is_positive() && at < line.length
}
