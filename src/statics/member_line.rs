//! One piece of a member, or one strip of a field: its supports, what pushes it, what it hands on.

use crate::model::element::ElementId;
use crate::model::plan::Axis;
use crate::statics::action::{Acting, Handed, Lost, Receiver, Spot};
use crate::statics::cases::{ByCase, Case};
use crate::statics::continuous::{Hold, Line, Prepared, Prop, Push, Response, Stretch, Unstable};
use crate::units::{FlexuralRigidity, Force, Length, LineLoad};

/// How far a piece may run past the strip of its last support without being taken for an overhang: a rim, a facing.
/// Common practice.
const PAST_SUPPORT: Length = Length::inches(2);

/// Loads are followed on a strip of a field one foot wide.
pub const STRIP: Length = Length::feet(1);

/// A place where a piece is held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// What holds it.
    pub on: Receiver,
    /// Which of the member's support lines says so.
    pub support: usize,
    /// The place from which the span counts, on the member's axis.
    pub station: Length,
    /// The stretch of the member that lies on it or beside it.
    pub strip: (Length, Length),
    /// Where what it carries is handed on: the middle of what holds it.
    pub handed_at: Length,
}

/// Which part of a member a line is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Part {
    /// A piece, counted from the member's lower end, from 0.
    Piece(usize),
    /// A strip of a field one foot wide, which stands for all between these two coordinates across the joists.
    Strip(Length, Length),
    /// One joist of a field that carries more than the area: its coordinate across.
    Lane(Length),
}

/// One straight piece with its supports, loads and forces.
#[derive(Clone, Debug)]
pub struct MemberLine {
    /// The member.
    pub of: ElementId,
    /// Which part of it.
    pub part: Part,
    /// The axis it runs along.
    pub axis: Axis,
    /// Its coordinate across.
    pub across: Length,
    /// The plan coordinate of its beginning.
    pub begins: Length,
    /// What holds it, in order.
    pub seats: Vec<Seat>,
    /// What each seat takes without bending the piece: the load right over it.
    pub direct: Vec<ByCase<Force>>,
    /// What pushes it, places counted from its beginning.
    pub pushes: ByCase<Vec<Push>>,
    /// The member, ready to be solved for any other load.
    pub prepared: Prepared,
    /// Its forces in each case; nothing where the case has no load.
    pub responses: ByCase<Option<Response>>,
}

impl MemberLine {
    /// What it presses on one of its seats.
    pub fn reaction(&self, seat: usize) -> ByCase<Force> {
        let mut sum = self.direct.get(seat).copied().unwrap_or_default();
        for case in Case::ALL {
            if let Some(response) = self.responses.of(case) {
                *sum.of_mut(case) += response.reactions.get(seat).copied().unwrap_or(Force::ZERO);
            }
        }
        sum
    }
}

impl MemberLine {
    /// It solved again for what pushes it now; `None` when it can't be.
    pub fn resolved(&self) -> Option<Self> {
        let mut line = self.clone();
        for case in Case::ALL {
            let pushes = self.pushes.of(case);
            let response = if pushes.is_empty() { None } else { Some(self.prepared.response(pushes).ok()?) };
            *line.responses.of_mut(case) = response;
        }
        Some(line)
    }

    /// It with another stiffness, solved again; `None` when it can't be.
    pub fn with_stiffness(&self, stiffness: Stiffness) -> Option<Self> {
        let length = self.prepared.length();
        let stations = self.seats.iter().map(|seat| seat.station - self.begins);
        let line = Line {
            length,
            stretches: vec![Stretch {
                to: length,
                rigidity: stiffness.rigidity,
                shear_rigidity: stiffness.shear_rigidity,
            }],
            props: stations.map(|at| Prop { at, hold: Hold::Pinned, settlement: Length::ZERO }).collect(),
            hinges: Vec::new(),
        };
        Self { prepared: line.prepare().ok()?, ..self.clone() }.resolved()
    }
}

/// How stiff a member is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stiffness {
    /// EI.
    pub rigidity: FlexuralRigidity,
    /// Against shear, where the product publishes it.
    pub shear_rigidity: Option<Force>,
}

/// The stiffness to take where the member's own is not known: of one stiffness all along, it does not change the forces.
pub const REFERENCE: Stiffness = Stiffness { rigidity: FlexuralRigidity::lb_in2(1e9), shear_rigidity: None };

/// A piece to be solved.
#[derive(Clone, Copy, Debug)]
pub struct Piece<'a> {
    /// The member.
    pub of: ElementId,
    /// Which part of it.
    pub part: Part,
    /// The axis it runs along.
    pub axis: Axis,
    /// Its coordinate across.
    pub across: Length,
    /// From where to where it takes load.
    pub reach: (Length, Length),
    /// What holds it, in order.
    pub seats: &'a [Seat],
    /// How stiff it is.
    pub stiffness: Stiffness,
}

/// A solved piece and what it hands on.
#[derive(Clone, Debug, Default)]
pub struct Solved {
    /// The piece; nothing when it can't stand.
    pub line: Option<MemberLine>,
    /// What it hands on.
    pub handed: Vec<Handed>,
    /// Why it can't stand.
    pub unstable: Option<Unstable>,
}

/// Solves a piece. Loads past its first and last seat, where it does not reach out beyond their strips, press on the seat
/// alone. A piece that can't stand loses its load.
pub fn solve(piece: &Piece<'_>, actings: &[Acting]) -> Solved {
    let (Some(first), Some(last)) = (piece.seats.first(), piece.seats.last()) else {
        return lost(actings, Lost::NotReached);
    };
    let reaches_out_low = piece.reach.0 + PAST_SUPPORT < first.strip.0;
    let reaches_out_high = piece.reach.1 > last.strip.1 + PAST_SUPPORT;
    let begins = if reaches_out_low { piece.reach.0 } else { first.station };
    let ends = if reaches_out_high { piece.reach.1 } else { last.station };
    let line = Line {
        length: ends - begins,
        stretches: vec![Stretch {
            to: ends - begins,
            rigidity: piece.stiffness.rigidity,
            shear_rigidity: piece.stiffness.shear_rigidity,
        }],
        props: piece
            .seats
            .iter()
            .map(|seat| Prop { at: seat.station - begins, hold: Hold::Pinned, settlement: Length::ZERO })
            .collect(),
        hinges: Vec::new(),
    };
    let prepared = match line.prepare() {
        Ok(prepared) => prepared,
        Err(unstable) => return Solved { unstable: Some(unstable), ..lost(actings, Lost::Unstable) },
    };
    let mut pushes: ByCase<Vec<Push>> = ByCase::default();
    let mut direct = vec![ByCase::<Force>::default(); piece.seats.len()];
    for acting in actings {
        if let Some(low) = acting.below(piece.axis, begins) {
            add(direct.first_mut(), low.total());
        }
        if let Some(high) = acting.above(piece.axis, ends) {
            add(direct.last_mut(), high.total());
        }
        push(acting, piece, (begins, ends), &mut pushes);
    }
    let mut responses: ByCase<Option<Response>> = ByCase::default();
    for case in Case::ALL {
        if pushes.of(case).is_empty() {
            continue;
        }
        match prepared.response(pushes.of(case)) {
            Ok(response) => *responses.of_mut(case) = Some(response),
            Err(unstable) => return Solved { unstable: Some(unstable), ..lost(actings, Lost::Unstable) },
        }
    }
    let line = MemberLine {
        of: piece.of,
        part: piece.part,
        axis: piece.axis,
        across: piece.across,
        begins,
        seats: piece.seats.to_vec(),
        direct,
        pushes,
        prepared,
        responses,
    };
    let handed = piece.seats.iter().enumerate().map(|(at, seat)| hand_on(&line, at, seat)).collect();
    Solved { line: Some(line), handed, unstable: None }
}

fn lost(actings: &[Acting], why: Lost) -> Solved {
    let to = Receiver::Nothing(why);
    Solved {
        handed: actings.iter().map(|acting| Handed { to, acting: *acting }).collect(),
        ..Solved::default()
    }
}

fn add(seat: Option<&mut ByCase<Force>>, force: ByCase<Force>) {
    if let Some(seat) = seat {
        *seat += force;
    }
}

/// Turns what of a load lies on a piece into pushes, case by case.
fn push(
    acting: &Acting,
    piece: &Piece<'_>,
    (begins, ends): (Length, Length),
    pushes: &mut ByCase<Vec<Push>>,
) {
    let (from, to) = acting.reach(piece.axis);
    if from == to {
        if begins <= from && from <= ends {
            let total = acting.total();
            for case in Case::ALL {
                let force = *total.of(case);
                if force != Force::ZERO {
                    pushes.of_mut(case).push(Push::Point { at: from - begins, force });
                }
            }
        }
        return;
    }
    let (from, to) = (from.max(begins), to.min(ends));
    if from >= to {
        return;
    }
    // An area is turned into strips before ([`on_strip`]).
    let Acting::Spread { load, .. } = acting else { return };
    for case in Case::ALL {
        let load = *load.of(case);
        if load != LineLoad::ZERO {
            pushes.of_mut(case).push(Push::Spread {
                from: from - begins,
                to: to - begins,
                start: load,
                end: load,
            });
        }
    }
}

fn hand_on(line: &MemberLine, at: usize, seat: &Seat) -> Handed {
    let force = line.reaction(at);
    let acting = match line.part {
        Part::Strip(from, to) => Acting::Spread {
            axis: line.axis.across(),
            across: seat.handed_at,
            from,
            to,
            load: force.map(|force| force / STRIP),
        },
        Part::Piece(_) | Part::Lane(_) => {
            Acting::Point { at: Spot::at(line.axis, seat.handed_at, line.across), force }
        }
    };
    Handed { to: seat.on, acting }
}

/// A load on an area as it lies on a strip one foot wide.
pub fn on_strip(acting: &Acting, run: Axis, middle: Length) -> Option<Acting> {
    let across = run.across();
    let (low, high) = acting.reach(across);
    if middle < low || middle >= high {
        return None;
    }
    Some(match acting {
        Acting::Area { load, .. } => {
            let (from, to) = acting.reach(run);
            Acting::Spread { axis: run, across: middle, from, to, load: load.map(|load| load * STRIP) }
        }
        Acting::Spread { across: at, load, .. } => {
            Acting::Point { at: Spot::at(run, *at, middle), force: load.map(|load| load * STRIP) }
        }
        Acting::Point { .. } => return None,
    })
}
