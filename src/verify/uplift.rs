//! Seats that a member presses up on, not down: what would have to hold it there.

use crate::model::Model;
use crate::statics::member_line::MemberLine;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Force;
use crate::verify::check::{Check, Verification};
use crate::verify::demands::Demand;
use crate::verify::limit_state::LimitState;

/// A pull below this is rounding, or what the nails of any end hold (common practice).
const LEAST: Force = Force::lb(50.0);

/// The seat of a piece that would have to pull the most, against the ties at the head of a column there.
pub fn of(model: &Model, line: &MemberLine, demands: &[Demand], part: Option<&str>) -> Option<Verification> {
    let mut worst: Option<(Force, usize, &Demand)> = None;
    for demand in demands {
        for seat in 0..line.seats.len() {
            let pull = -demand.reaction(line, seat);
            if pull > LEAST && worst.is_none_or(|(most, ..)| pull > most) {
                worst = Some((pull, seat, demand));
            }
        }
    }
    let (pull, at, demand) = worst?;
    let seat = line.seats.get(at)?;
    let column = seat.on.element().filter(|on| on.kind == ElementKind::Column);
    let ties = column.and_then(|on| model.column(on)).map_or(&[][..], |column| &column.ties);
    let held: Force = ties.iter().filter(|tie| tie.is_top).filter_map(|tie| tie.capacity).sum();
    Some(Verification {
        of: line.of,
        part: part.map(Box::from),
        against: seat.on.element(),
        limit_state: LimitState::Uplift,
        outcome: Ok(Check {
            demand: pull.into(),
            capacity: held.into(),
            combination: demand.combination.name,
            pattern: demand.pattern.clone(),
            at: Some(seat.station - line.begins),
            clause: "statics: equilibrium",
            steps: Vec::new(),
            assumed: Vec::new(),
        }),
    })
}
