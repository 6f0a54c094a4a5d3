//! What walls, beams and ledgers cover in plan: upright strips.

use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::{LinePlace, Sill, SillPlace, Wall};
use crate::model::framing::Beam;
use crate::model::plan::{Axis, PlanLine};
use crate::syntax::value::Side;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// A strip of the plan along one axis.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Band {
    /// The axis it runs along.
    pub axis: Axis,
    /// From where to where along that axis.
    pub along: (Length, Length),
    /// From where to where across it.
    pub across: (Length, Length),
}

impl Band {
    /// Its middle, across.
    pub fn centre(&self) -> Length {
        (self.across.0 + self.across.1).half()
    }

    /// How wide it is.
    pub fn width(&self) -> Length {
        self.across.1 - self.across.0
    }

    /// Its extent on an axis.
    pub fn on(&self, axis: Axis) -> (Length, Length) {
        if axis == self.axis { self.along } else { self.across }
    }
}

/// The strip of an element that members lie on or hang from: the whole wall, beam, shelf or ledger.
/// `None` for a skew line or a size that isn't known.
pub fn of(model: &Model, element: ElementId) -> Option<Band> {
    match element.kind {
        ElementKind::Wall => of_wall(model.wall(element)?),
        ElementKind::Beam => of_beam(model.beam(element)?),
        ElementKind::Ledger => {
            let ledger = model.ledger(element)?;
            let thickness = ledger.size.value()?.thickness()?;
            centred(ledger.from.value()?, thickness.times(2))
        }
        ElementKind::Shelf => {
            let shelf = model.shelf(element)?;
            let wall = of_wall(model.wall(shelf.wall.value()?.target?)?)?;
            let width = shelf.width.get()?;
            let (low, high) = wall.across;
            let across =
                if is_high_side(shelf.side?, wall.axis)? { (high - width, high) } else { (low, low + width) };
            let along = match shelf.reach {
                Some((from, to)) => (from.at.min(to.at), from.at.max(to.at)),
                None => wall.along,
            };
            Some(Band { axis: wall.axis, along, across })
        }
        _ => None,
    }
}

/// The strip of wood or bare concrete that joists really lie on: the sill, the plates, the nailer, the flange.
pub fn bearing_surface(model: &Model, element: ElementId) -> Option<Band> {
    let whole = of(model, element)?;
    match element.kind {
        ElementKind::Wall => {
            let wall = model.wall(element)?;
            match wall.sill.value() {
                Some(sill) => of_sill(sill, whole),
                None => Some(whole),
            }
        }
        ElementKind::Shelf => match model.shelf(element)?.sill.value() {
            Some(sill) => of_sill(sill, whole),
            None => Some(whole),
        },
        ElementKind::Beam => {
            let beam = model.beam(element)?;
            match beam.nailer.value() {
                Some(nailer) => centred(beam.from.value()?, nailer.member.depth()?),
                None => Some(whole),
            }
        }
        _ => Some(whole),
    }
}

/// A wall's strip. Corners close by themselves: each end runs on by the wall's own thickness.
pub fn of_wall(wall: &Wall) -> Option<Band> {
    let line = wall.from.value()?;
    let axis = line.axis()?;
    let thick = wall.thick.get()?;
    let at = line.from.on(axis.across());
    let across = match wall.line.get()? {
        LinePlace::Centre => (at - thick.half(), at - thick.half() + thick),
        LinePlace::Face(side, held) => {
            if is_high_side(hand_to_side(side, line)?, axis)? {
                (at - held - thick, at - held)
            } else {
                (at + held, at + held + thick)
            }
        }
    };
    let (low, high) = line.on(axis);
    Some(Band { axis, along: (low - thick, high + thick), across })
}

fn of_beam(beam: &Beam) -> Option<Band> {
    let size = beam.size.value()?;
    let width = if beam.is_laid_flat { size.depth() } else { size.width() };
    centred(beam.from.value()?, width?)
}

fn centred(line: &PlanLine, width: Length) -> Option<Band> {
    let axis = line.axis()?;
    let at = line.from.on(axis.across());
    Some(Band { axis, along: line.on(axis), across: (at - width.half(), at - width.half() + width) })
}

fn of_sill(sill: &Sill, on: Band) -> Option<Band> {
    let width = sill.width()?;
    let (low, high) = on.across;
    let across = match sill.place {
        SillPlace::Centred => {
            let from = on.centre() - width.half();
            (from, from + width)
        }
        SillPlace::HeldIn(held, side) => {
            if is_high_side(side, on.axis)? {
                (high - held - width, high - held)
            } else {
                (low + held, low + held + width)
            }
        }
    };
    Some(Band { across, ..on })
}

/// True when a side is the larger coordinate across a line that runs along `axis`; `None` when it is an end of the
/// line, or a hand.
pub fn is_high_side(side: Side, axis: Axis) -> Option<bool> {
    match (axis, side) {
        (Axis::X, Side::North) | (Axis::Y, Side::East) => Some(true),
        (Axis::X, Side::South) | (Axis::Y, Side::West) => Some(false),
        (Axis::X, Side::East | Side::West | Side::Left | Side::Right)
        | (Axis::Y, Side::North | Side::South | Side::Left | Side::Right) => None,
    }
}

/// The compass side that a hand means for someone who walks the line; a side of the compass is itself.
pub fn hand_to_side(side: Side, line: &PlanLine) -> Option<Side> {
    let is_left = match side {
        Side::Left => true,
        Side::Right => false,
        Side::North | Side::South | Side::East | Side::West => return Some(side),
    };
    let axis = line.axis()?;
    let walks_up = line.to.on(axis) > line.from.on(axis);
    Some(match (axis, walks_up == is_left) {
        (Axis::X, true) => Side::North,
        (Axis::X, false) => Side::South,
        (Axis::Y, true) => Side::West,
        (Axis::Y, false) => Side::East,
    })
}
