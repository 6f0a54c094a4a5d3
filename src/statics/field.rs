//! Fields of joists or rafters: cut into strips on which everything is the same, each solved as a continuous member.
//!
//! A line load across the joists becomes a point on each strip; a line load along them, or a point, is carried by the one
//! joist below it. Reactions go on as line loads over exactly the stretch that the strip covers.

use crate::model::element::ElementId;
use crate::model::plan::{Axis, PlanRect};
use crate::statics::action::{Acting, Handed, Lost, Receiver};
use crate::statics::continuous::Unstable;
use crate::statics::member_line::{self, MemberLine, Part, Piece, Seat, Stiffness};
use crate::units::Length;

/// How far past the end of a support the edge of a field still counts as carried by it: the thickness of a wall and its
/// facing. Common practice.
pub const END_REACH: Length = Length::inches(14);

/// A field, ready to be cut into strips.
#[derive(Clone, Debug)]
pub struct Field<'a> {
    /// The element.
    pub of: ElementId,
    /// The axis its members run along.
    pub run: Axis,
    /// Its rectangles.
    pub fill: &'a [PlanRect],
    /// What carries it.
    pub supports: Vec<FieldSupport>,
    /// Spans count between the edges of the fill and the middles of what carries it.
    pub is_span_by_grid: bool,
    /// How stiff one of its members is.
    pub stiffness: Stiffness,
}

/// Something that carries a field.
#[derive(Clone, Copy, Debug)]
pub struct FieldSupport {
    /// What.
    pub on: Receiver,
    /// Which of the field's support lines says so.
    pub support: usize,
    /// Its strip along the members: the wood they lie on, the faces they hang from.
    pub strip: (Length, Length),
    /// Its stretch across the members.
    pub reach: (Length, Length),
    /// How much of the strip a member lies on, from the inner edge.
    pub contact: Option<Length>,
    /// Members end here on both sides: they hang from it, or are jointed over it; how far from its middle each begins.
    pub parts_at: Option<Length>,
}

/// What a field does with its load.
#[derive(Clone, Debug, Default)]
pub struct Outcome {
    /// Every strip and every joist that carries more.
    pub lines: Vec<MemberLine>,
    /// What it hands on.
    pub handed: Vec<Handed>,
    /// What can't stand, and why.
    pub unstable: Vec<Unstable>,
}

impl Outcome {
    /// All of a load lost, for one reason.
    pub fn lost(actings: &[Acting], why: Lost) -> Self {
        let to = Receiver::Nothing(why);
        let handed = actings.iter().map(|acting| Handed { to, acting: *acting }).collect();
        Self { handed, ..Self::default() }
    }

    /// Takes the result of one more piece.
    pub fn add(&mut self, solved: member_line::Solved) {
        self.lines.extend(solved.line);
        self.handed.extend(solved.handed);
        self.unstable.extend(solved.unstable);
    }
}

/// Follows loads through a field.
pub fn follow(field: &Field<'_>, actings: &[Acting]) -> Outcome {
    let mut outcome = Outcome::default();
    let across = field.run.across();
    let (on_strips, on_joists): (Vec<Acting>, Vec<Acting>) =
        actings.iter().partition(|acting| acting.reach(across).0 != acting.reach(across).1);
    for (low, high) in strips(field, &on_strips) {
        let middle = (low + high).half();
        let loads: Vec<Acting> =
            on_strips.iter().filter_map(|acting| member_line::on_strip(acting, field.run, middle)).collect();
        follow_at(field, middle, &loads, Part::Strip(low, high), &mut outcome);
    }
    let mut lanes: Vec<Length> = on_joists.iter().map(|acting| acting.reach(across).0).collect();
    lanes.sort();
    lanes.dedup();
    for lane in lanes {
        let loads: Vec<Acting> =
            on_joists.iter().filter(|acting| acting.reach(across).0 == lane).copied().collect();
        follow_at(field, lane, &loads, Part::Lane(lane), &mut outcome);
    }
    outcome
}

/// The stretches across a field on which its rectangles, supports and loads are the same. They cover every load.
pub fn strips(field: &Field<'_>, actings: &[Acting]) -> Vec<(Length, Length)> {
    let across = field.run.across();
    let mut cuts: Vec<Length> = actings
        .iter()
        .map(|acting| acting.reach(across))
        .chain(field.fill.iter().map(|rect| rect.on(across)))
        .flat_map(|(low, high)| [low, high])
        .collect();
    let within =
        |at: &Length| field.fill.iter().any(|rect| rect.on(across).0 < *at && *at < rect.on(across).1);
    cuts.extend(field.supports.iter().flat_map(|support| [support.reach.0, support.reach.1]).filter(within));
    cuts.sort();
    cuts.dedup();
    let pairs = cuts.iter().zip(cuts.iter().skip(1)).map(|(low, high)| (*low, *high));
    pairs
        .filter(|(low, high)| actings.iter().any(|acting| acting.between(across, (*low, *high)).is_some()))
        .collect()
}

/// Follows what acts at one place across the field: each unbroken stretch of members there, each of its pieces.
fn follow_at(field: &Field<'_>, at: Length, loads: &[Acting], part: Part, outcome: &mut Outcome) {
    let mut here = Outcome::default();
    let mut rest: Vec<Acting> = loads.to_vec();
    for reach in stretches(field, at) {
        let seats = seats_at(field, at, reach);
        let mut begins = reach.0;
        for group in groups(&seats) {
            let is_last = group.is_last;
            let ends = if is_last { reach.1 } else { group.ends };
            // The last piece takes what lies on its very end.
            let part_of = |acting: &Acting| match is_last {
                true => acting.up_to(field.run, (begins, ends)),
                false => acting.between(field.run, (begins, ends)),
            };
            let own: Vec<Acting> = rest.iter().filter_map(part_of).collect();
            if !own.is_empty() {
                let piece = Piece {
                    of: field.of,
                    part,
                    axis: field.run,
                    across: at,
                    reach: (begins, ends),
                    seats: &group.seats,
                    stiffness: field.stiffness,
                };
                here.add(member_line::solve(&piece, &own));
            }
            begins = ends;
        }
        rest = rest.iter().flat_map(|acting| outside_of(acting, field.run, reach)).collect();
    }
    let lost = rest.into_iter().map(|acting| Handed { to: Receiver::Nothing(Lost::NotReached), acting });
    here.handed.extend(lost);
    // What a strip loses is said for its whole width, as what it hands on is.
    for handed in here.handed.iter_mut().filter(|handed| matches!(handed.to, Receiver::Nothing(_))) {
        handed.acting = over_width(&handed.acting, part);
    }
    outcome.lines.append(&mut here.lines);
    outcome.handed.append(&mut here.handed);
    outcome.unstable.append(&mut here.unstable);
}

/// A load on a strip one foot wide, over the width that the strip stands for.
fn over_width(acting: &Acting, part: Part) -> Acting {
    let Part::Strip(low, high) = part else { return *acting };
    let times = (high - low) / member_line::STRIP;
    match acting {
        Acting::Spread { axis, across, from, to, load } => {
            Acting::Spread { axis: *axis, across: *across, from: *from, to: *to, load: *load * times }
        }
        Acting::Point { at, force } => Acting::Point { at: *at, force: *force * times },
        Acting::Area { .. } => *acting,
    }
}

/// The parts of a load below and above a stretch.
fn outside_of(acting: &Acting, run: Axis, (low, high): (Length, Length)) -> Vec<Acting> {
    [acting.below(run, low), acting.above(run, high)].into_iter().flatten().collect()
}

/// The unbroken stretches of members at one place across: rectangles that touch are one.
fn stretches(field: &Field<'_>, at: Length) -> Vec<(Length, Length)> {
    let across = field.run.across();
    let mut all: Vec<(Length, Length)> = field
        .fill
        .iter()
        .filter(|rect| rect.on(across).0 <= at && at <= rect.on(across).1)
        .map(|rect| rect.on(field.run))
        .collect();
    all.sort();
    let mut joined: Vec<(Length, Length)> = Vec::new();
    for (low, high) in all {
        match joined.last_mut() {
            Some(last) if low <= last.1 => last.1 = last.1.max(high),
            _ => joined.push((low, high)),
        }
    }
    joined
}

/// A support as one stretch of members meets it.
#[derive(Clone, Copy)]
struct Met {
    below: Seat,
    above: Seat,
    is_break: bool,
}

/// What holds a stretch of members at one place across, in order. A support that ends a little before counts where no other
/// takes its place.
fn seats_at(field: &Field<'_>, at: Length, reach: (Length, Length)) -> Vec<Met> {
    let meets = |support: &&FieldSupport, slack: Length| {
        support.reach.0 - slack <= at
            && at <= support.reach.1 + slack
            && support.strip.1 >= reach.0 - END_REACH
            && support.strip.0 <= reach.1 + END_REACH
    };
    let mut found: Vec<&FieldSupport> =
        field.supports.iter().filter(|support| meets(support, Length::ZERO)).collect();
    for near in field.supports.iter().filter(|support| meets(support, END_REACH)) {
        let is_taken =
            found.iter().any(|other| (middle(other.strip) - middle(near.strip)).abs() <= END_REACH);
        if !is_taken {
            found.push(near);
        }
    }
    found.sort_by_key(|support| middle(support.strip));
    let (first, last) = (0, found.len().saturating_sub(1));
    found
        .iter()
        .enumerate()
        .map(|(index, support)| met(field, support, reach, index == first, index == last))
        .collect()
}

fn middle(strip: (Length, Length)) -> Length {
    (strip.0 + strip.1).half()
}

fn met(
    field: &Field<'_>,
    support: &FieldSupport,
    reach: (Length, Length),
    is_first: bool,
    is_last: bool,
) -> Met {
    let centre = middle(support.strip);
    let ends_low = is_first && reach.0 >= support.strip.0 - END_REACH;
    let ends_high = is_last && reach.1 <= support.strip.1 + END_REACH;
    let seat = |station: Length| Seat {
        on: support.on,
        support: support.support,
        station,
        strip: support.strip,
        handed_at: centre,
    };
    if field.is_span_by_grid {
        let station = if ends_low {
            reach.0
        } else if ends_high {
            reach.1
        } else {
            centre
        };
        let is_break = support.parts_at.is_some() && !ends_low && !ends_high;
        return Met { below: seat(station), above: seat(station), is_break };
    }
    if let Some(half) = support.parts_at {
        let is_break = !ends_low && !ends_high;
        return Met { below: seat(centre - half), above: seat(centre + half), is_break };
    }
    let contact = support.contact.unwrap_or(support.strip.1 - support.strip.0);
    let station = if ends_low {
        support.strip.1 - contact.half()
    } else if ends_high {
        support.strip.0 + contact.half()
    } else {
        centre
    };
    Met { below: seat(station), above: seat(station), is_break: false }
}

/// The seats of one piece, and where the next begins.
struct Group {
    seats: Vec<Seat>,
    ends: Length,
    is_last: bool,
}

/// Parts the supports of a stretch into pieces: where members end over a support, the one below and the one above have it.
fn groups(met: &[Met]) -> Vec<Group> {
    let mut groups = Vec::new();
    let mut seats: Vec<Seat> = Vec::new();
    for (index, support) in met.iter().enumerate() {
        // At a lower end the member lies above what holds it.
        let is_lower_end = index == 0;
        seats.push(if is_lower_end { support.above } else { support.below });
        if support.is_break {
            groups.push(Group {
                seats: std::mem::take(&mut seats),
                ends: support.below.handed_at,
                is_last: false,
            });
            seats.push(support.above);
        }
    }
    groups.push(Group { seats, ends: Length::ZERO, is_last: true });
    groups
}
