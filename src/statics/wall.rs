//! Walls: what stands on them goes straight down, but over an opening with a header it goes to the header, and through its
//! jacks to what they stand on.

use crate::geometry::Geometry;
use crate::geometry::surfaces::Surface;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::Wall;
use crate::model::openings::{Header, Jacks};
use crate::model::plan::{Axis, PlanPoint};
use crate::statics::action::{Acting, Action, Handed, Receiver, Spot};
use crate::statics::beam;
use crate::statics::field::{END_REACH, Outcome};
use crate::statics::member_line::{self, Part, Piece, Seat, Stiffness};
use crate::syntax::value::Side;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// A header in its wall.
#[derive(Clone, Debug)]
pub struct HeaderSpan {
    /// The header.
    pub header: ElementId,
    /// The wall it stands in.
    pub wall: ElementId,
    /// The axis of the wall.
    pub axis: Axis,
    /// The wall's line, across.
    pub across: Length,
    /// The middles of its two packs of jacks, on the axis of the wall: its span.
    pub between: (Length, Length),
    /// Half of each pack.
    pub half_packs: (Length, Length),
    /// The jacks under its lower and its higher end.
    pub jacks: (ElementId, ElementId),
    /// The share of the wall's own weight that stands on it.
    pub weight_share: f64,
}

/// Every header whose opening, wall and jacks are known.
pub fn headers(model: &Model, geometry: &Geometry) -> Vec<HeaderSpan> {
    model.headers.iter().filter_map(|header| header_span(model, geometry, header)).collect()
}

fn header_span(model: &Model, geometry: &Geometry, header: &Header) -> Option<HeaderSpan> {
    let over = header.over.value()?.target?;
    let (wall, at, width) = hole_in_wall(model, over)?;
    let line = model.wall(wall)?.from.value()?;
    let axis = line.axis()?;
    let packs: Vec<&Jacks> = header
        .supports
        .iter()
        .filter_map(|support| model.jacks_of(support.on.reference()?.target?))
        .collect();
    let low = packs.iter().find(|pack| stands_low(pack, axis).unwrap_or(true))?;
    let high = packs.iter().rev().find(|pack| !stands_low(pack, axis).unwrap_or(false))?;
    let (low_half, high_half) = (pack_width(low)?.half(), pack_width(high)?.half());
    let centre = at.on(axis);
    Some(HeaderSpan {
        header: header.common.id,
        wall,
        axis,
        across: line.from.on(axis.across()),
        between: (centre - width.half() - low_half, centre + width.half() + high_half),
        half_packs: (low_half, high_half),
        jacks: (low.common.id, high.common.id),
        weight_share: weight_share(model, geometry, header, wall).unwrap_or(1.0),
    })
}

/// The wall that a door, a window or an opening is in, its middle and its width.
pub fn hole_in_wall(model: &Model, hole: ElementId) -> Option<(ElementId, PlanPoint, Length)> {
    let at = hole.index as usize;
    let (wall, point, size) = match hole.kind {
        ElementKind::Door => {
            let door = model.door(hole)?;
            (&door.wall, &door.at, &door.size)
        }
        ElementKind::Window => {
            let window = model.windows.get(at)?;
            (&window.wall, &window.at, &window.size)
        }
        ElementKind::Opening => {
            let opening = model.opening(hole)?;
            (&opening.wall, &opening.at, &opening.size)
        }
        _ => return None,
    };
    let [width, _] = size.get()?;
    Some((wall.value()?.target?, point.get()?, width))
}

/// How wide a pack of jacks is along its wall.
pub fn pack_width(jacks: &Jacks) -> Option<Length> {
    let (count, member) = jacks.size.value()?;
    Some(member.thickness()?.times(i64::from(*count)))
}

/// True of jacks on the lower side of an opening, false on the higher; `None` of jacks on both sides.
fn stands_low(jacks: &Jacks, axis: Axis) -> Option<bool> {
    match (jacks.side?, axis) {
        (Side::West, Axis::X) | (Side::South, Axis::Y) => Some(true),
        (Side::East, Axis::X) | (Side::North, Axis::Y) => Some(false),
        (Side::North | Side::South, Axis::X) | (Side::East | Side::West, Axis::Y) => None,
        _ => None,
    }
}

/// The share of a wall's weight above the header: none when the header lies right under the plates.
fn weight_share(model: &Model, geometry: &Geometry, header: &Header, wall: ElementId) -> Option<f64> {
    let surface = |surface| geometry.surfaces.of(wall, surface).ok().map(|sum| sum.total());
    let (top, bottom) = (surface(Surface::Top)?, surface(Surface::Bottom)?);
    let plates = model.wall(wall)?.plates.value()?.height()?;
    let header_top = match header.top.get() {
        Some(top) => top,
        None => {
            bottom + height_of_hole(model, header.over.value()?.target?)? + header.size.value()?.depth()?
        }
    };
    let height = top - bottom;
    height.is_positive().then(|| ((top - plates - header_top) / height).clamp(0.0, 1.0))
}

/// How high a door or opening is above what its wall stands on; `None` of a window, whose sill is not stated.
fn height_of_hole(model: &Model, hole: ElementId) -> Option<Length> {
    let size = match hole.kind {
        ElementKind::Door => &model.door(hole)?.size,
        ElementKind::Opening => &model.opening(hole)?.size,
        _ => return None,
    };
    let [_, height] = size.get()?;
    Some(height)
}

/// Follows loads through a wall.
pub fn follow(wall: &Wall, to: Receiver, headers: &[HeaderSpan], actions: &[Action]) -> Vec<Handed> {
    let mut handed = Vec::new();
    let Some(axis) = wall.from.value().and_then(|line| line.axis()) else {
        return actions.iter().map(|action| Handed { to, acting: action.acting }).collect();
    };
    let own: Vec<&HeaderSpan> =
        headers.iter().filter(|header| header.wall == wall.common.id && header.axis == axis).collect();
    let ends = wall.from.value().map_or((Length::ZERO, Length::ZERO), |line| line.on(axis));
    for action in actions {
        let mut rest = within_ends(&action.acting, axis, ends);
        for header in &own {
            let (low, high) = header.between;
            let over = rest.iter().filter_map(|acting| acting.between(axis, (low, high)));
            let to = Receiver::Element(header.header);
            handed.extend(over.map(|acting| Handed { to, acting }));
            rest = rest
                .iter()
                .flat_map(|acting| {
                    let below = acting.below(axis, low);
                    let above = acting.between(axis, (high, Length::from_units(i64::MAX)));
                    below.into_iter().chain(above)
                })
                .collect();
        }
        handed.extend(rest.into_iter().map(|acting| Handed { to, acting }));
    }
    handed
}

/// A load on a wall; what lies a little past its end, over the corner or a gable's overhang, comes down at its end.
fn within_ends(acting: &Acting, axis: Axis, (low, high): (Length, Length)) -> Vec<Acting> {
    let mut parts: Vec<Acting> = acting.up_to(axis, (low, high)).into_iter().collect();
    for (part, end) in [(acting.below(axis, low), low), (acting.above(axis, high), high)] {
        let Some(part) = part else { continue };
        let (from, to) = part.reach(axis);
        parts.push(match low - END_REACH <= from && to <= high + END_REACH {
            true => {
                Acting::Point { at: Spot::at(axis, end, part.reach(axis.across()).0), force: part.total() }
            }
            false => part,
        });
    }
    parts
}

/// Follows loads through a header onto its jacks.
pub fn through_header(span: &HeaderSpan, stiffness: Stiffness, actings: &[Acting]) -> Outcome {
    let mut outcome = Outcome::default();
    let (low, high) = span.between;
    let mut own = Vec::new();
    for acting in actings {
        own.extend(beam::onto(acting, span.axis, span.across, (low, high), &mut outcome.handed));
    }
    let seat = |jacks: ElementId, support: usize, at: Length, half: Length| Seat {
        on: Receiver::Element(jacks),
        support,
        station: at,
        strip: (at - half, at + half),
        handed_at: at,
    };
    let seats = [
        seat(span.jacks.0, 0, low, span.half_packs.0),
        seat(span.jacks.1, usize::from(span.jacks.0 != span.jacks.1), high, span.half_packs.1),
    ];
    let piece = Piece {
        of: span.header,
        part: Part::Piece(0),
        axis: span.axis,
        across: span.across,
        reach: (low, high),
        seats: &seats,
        stiffness,
    };
    outcome.add(member_line::solve(&piece, &own));
    outcome
}
