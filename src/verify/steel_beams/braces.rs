//! Where a beam can't turn sideways: the lengths between its braces, of its top and of its bottom.

use crate::geometry::carried::carrying_element;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::{Beam, Bracing, Joists};
use crate::model::plan::{Axis, PlanRect};
use crate::model::support::Contact;
use crate::statics::member_line::MemberLine;
use crate::units::Length;
use crate::verify::check::NotVerified;

/// Joists no further apart than this hold what they lie on or hang from all along. Common practice.
const CLOSE: Length = Length::inches(24);

/// The edge of a joist field may lie this far from the middle of the beam that carries it. Common practice.
const BESIDE: Length = Length::inches(6);

/// A stretch of a piece with one distance between braces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Segment {
    /// Where it begins, from the beginning of the piece.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// Lb. Less than the segment where braces follow one another.
    pub unbraced: Length,
    /// What holds it.
    pub held_by: &'static str,
    /// The moments along it decide on Cb: braces stand at its ends only, and both ends are held.
    pub has_gradient: bool,
}

/// The segments of a piece.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Braces {
    /// Of its top, that sagging compresses.
    pub top: Vec<Segment>,
    /// Of its bottom, that hogging compresses: joists do not hold it.
    pub bottom: Vec<Segment>,
    /// The text says what holds the beam, or that nothing does.
    pub is_stated: bool,
}

/// What holds one piece of a beam. At its supports it can't roll over.
///
/// # Errors
/// The line that would say so can't be read.
pub fn of(model: &Model, beam: &Beam, line: &MemberLine) -> Result<Braces, NotVerified> {
    if beam.braced.is_broken() || beam.common.may_say("braced") {
        return Err(NotVerified::Missing(beam.common.id, "braced"));
    }
    let whole = (Length::ZERO, line.prepared.length());
    let (top, bottom) = match beam.braced.value() {
        Some(Bracing::At(spacing)) => {
            let all_along = Row { reach: whole, spacing: *spacing, held_by: "braced as stated" };
            (vec![all_along], vec![all_along])
        }
        Some(Bracing::By(joists)) => {
            let named = joists.target.and_then(|joists| model.joists_of(joists));
            (named.map_or(Vec::new(), |joists| rows(model, joists, line, "joists, as stated")), Vec::new())
        }
        Some(Bracing::None) => (Vec::new(), Vec::new()),
        None => (in_contact(model, beam, line)?, Vec::new()),
    };
    Ok(Braces {
        top: segments(line, top),
        bottom: segments(line, bottom),
        is_stated: beam.braced.value().is_some(),
    })
}

/// A row of braces, so far apart.
#[derive(Clone, Copy, Debug)]
struct Row {
    reach: (Length, Length),
    spacing: Length,
    held_by: &'static str,
}

/// The joists that hold the top of a beam: those that hang from it, and those that lie on its nailer.
fn in_contact(model: &Model, beam: &Beam, line: &MemberLine) -> Result<Vec<Row>, NotVerified> {
    let id: ElementId = beam.common.id;
    let mut found = Vec::new();
    for joists in &model.joists {
        // What can't be read may hold the beam.
        let unread = ["bears on", "hangs from", "spacing", "fill"]
            .into_iter()
            .find(|fact| joists.common.may_say(fact));
        if let Some(fact) = unread {
            return Err(NotVerified::Missing(joists.common.id, fact));
        }
        for support in joists.supports.iter().filter(|support| carrying_element(support) == Some(id)) {
            let held_by = match support.by {
                Contact::Hangs(_) => "joists that hang from it",
                Contact::Bears(_) if beam.nailer.value().is_some() => "joists on its nailer",
                Contact::Bears(_) if beam.nailer.is_broken() || beam.common.may_say("nailer") => {
                    return Err(NotVerified::Missing(id, "nailer"));
                }
                Contact::Bears(_) => continue,
            };
            found.extend(rows(model, joists, line, held_by).into_iter().filter(|row| row.spacing <= CLOSE));
        }
    }
    Ok(found)
}

/// Where the joists of a field meet a piece. Along an opening that reaches up to the piece, those of that side don't.
fn rows(model: &Model, joists: &Joists, line: &MemberLine, held_by: &'static str) -> Vec<Row> {
    let Some(spacing) = joists.spacing.get() else { return Vec::new() };
    let floor = joists.floor.value().and_then(|floor| floor.target);
    let holes: Vec<&PlanRect> = model
        .openings
        .iter()
        .filter(|opening| floor.is_some() && opening.floor.value().and_then(|of| of.target) == floor)
        .flat_map(|opening| &opening.fill)
        .collect();
    let across = line.axis.across();
    let mut found = Vec::new();
    for side in [-BESIDE * 2, BESIDE * 2] {
        let at = line.across + side;
        for rect in joists.fill.iter().filter(|rect| covers(rect, across, at)) {
            let mut left = vec![rect.on(line.axis)];
            for hole in holes.iter().filter(|hole| touches(hole, across, line.across, at)) {
                left = left.into_iter().flat_map(|reach| without(reach, hole.on(line.axis))).collect();
            }
            found.extend(left.into_iter().map(|(low, high)| Row {
                reach: (low - line.begins, high - line.begins),
                spacing: spacing.step,
                held_by,
            }));
        }
    }
    found
}

/// The rectangle reaches a coordinate.
fn covers(rect: &PlanRect, axis: Axis, at: Length) -> bool {
    let (low, high) = rect.on(axis);
    low <= at && at <= high
}

/// The rectangle reaches up to the line on the side of `beside`.
fn touches(rect: &PlanRect, axis: Axis, line: Length, beside: Length) -> bool {
    let (low, high) = rect.on(axis);
    low <= line.max(beside) - BESIDE && line.min(beside) + BESIDE <= high
}

fn without((low, high): (Length, Length), hole: (Length, Length)) -> Vec<(Length, Length)> {
    let parts = [(low, high.min(hole.0)), (low.max(hole.1), high)];
    parts.into_iter().filter(|(low, high)| low < high).collect()
}

/// Cuts a piece at its supports and at the ends of the rows.
fn segments(line: &MemberLine, mut rows: Vec<Row>) -> Vec<Segment> {
    rows.sort_by_key(|row| row.reach);
    let places: Vec<Length> = line.prepared.supports_and_ends().collect();
    let is_seat = |at: Length| line.seats.iter().any(|seat| seat.station - line.begins == at);
    let mut found = Vec::new();
    for (from, to) in places.iter().copied().zip(places.iter().copied().skip(1)) {
        let is_free = !is_seat(from) || !is_seat(to);
        let gap = |low: Length, high: Length, more: Length| Segment {
            from: low,
            to: high,
            unbraced: high - low + more,
            held_by: if low == from && high == to { "its supports only" } else { "past the last joist" },
            has_gradient: !is_free && more == Length::ZERO,
        };
        let mut done = from;
        let mut before: Option<Row> = None;
        for row in &rows {
            let (low, high) = (row.reach.0.max(done), row.reach.1.min(to));
            if low >= high {
                continue;
            }
            // The last joist may stand a spacing inside of its row.
            let mut begins = low;
            if low - done > row.spacing {
                found.push(gap(done, low, row.spacing + before.map_or(Length::ZERO, |row| row.spacing)));
            } else {
                begins = done;
            }
            found.push(Segment {
                from: begins,
                to: high,
                unbraced: row.spacing.min(to - from),
                held_by: row.held_by,
                has_gradient: false,
            });
            (done, before) = (high, Some(*row));
        }
        match (before, found.last_mut()) {
            (Some(row), Some(last)) if to - done <= row.spacing => last.to = to,
            (Some(row), _) => found.push(gap(done, to, row.spacing)),
            (None, _) => found.push(gap(from, to, Length::ZERO)),
        }
    }
    found
}
