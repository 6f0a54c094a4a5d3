//! Hangers, clips and the fastening of ledgers against what hangs on them.

use crate::design::NotCovered;
use crate::model::element::ElementId;
use crate::model::support::{Connector, Contact, Support};
use crate::statics::member_line::MemberLine;
use crate::syntax::value::Load;
use crate::units::LineLoad;
use crate::verify::Known;
use crate::verify::bearings::members::{most_on, seats_of, strips_of_joist};
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::demands::{acting, combinations, combined};
use crate::verify::footings::Worst;
use crate::verify::limit_state::LimitState;

/// Verifies every connector of joists and beams, and every ledger's fastening.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut all = Vec::new();
    for joists in &known.model.joists {
        let share = |line: &MemberLine| strips_of_joist(joists, line);
        all.extend(hanging(known, joists.common.id, &joists.supports, share));
    }
    for beam in &known.model.beams {
        all.extend(hanging(known, beam.common.id, &beam.supports, |_| Ok(1.0)));
    }
    for ledger in &known.model.ledgers {
        all.extend(fastened(known, ledger.common.id));
    }
    all
}

fn hanging(
    known: &Known<'_>,
    of: ElementId,
    supports: &[Support],
    share: impl Fn(&MemberLine) -> Result<f64, NotVerified>,
) -> Vec<Verification> {
    let lines = known.forces.lines_of(of);
    let hung = supports.iter().enumerate().filter_map(|(at, support)| {
        let Contact::Hangs(connector) = &support.by else { return None };
        let capacity = match connector {
            Connector::Hanger { capacity, .. } | Connector::Clip { capacity, .. } => *capacity,
            // A ledger is verified by itself; that none is named is another fault.
            Connector::Ledger(_) | Connector::None => return None,
        };
        let on = support.on.reference().and_then(|on| on.target);
        let mut worst = Worst::default();
        for (line, seat) in seats_of(lines, at) {
            match share(line).and_then(|share| most_on(line, seat, share)) {
                Ok(None) => {}
                Ok(Some(pressing)) => worst.take_at(
                    capacity
                        .map(|capacity| Check {
                            demand: pressing.force.into(),
                            capacity: capacity.into(),
                            combination: pressing.combination,
                            pattern: pressing.pattern,
                            at: None,
                            clause: "declared",
                            steps: vec![
                                Step::read("R", pressing.force, "takedown"),
                                Step::read("capacity", capacity, "declared"),
                            ],
                            assumed: Vec::new(),
                        })
                        .ok_or(undeclared()),
                    None,
                    on,
                ),
                Err(why) => worst.take_at(Err(why), None, on),
            }
        }
        worst.verification(of, LimitState::Connector)
    });
    hung.collect()
}

fn undeclared() -> NotVerified {
    NotCovered::NoRule { what: "a connector that declares no capacity", clause: "the maker's values" }.into()
}

/// The heaviest foot of a ledger.
fn fastened(known: &Known<'_>, of: ElementId) -> Option<Verification> {
    let ledger = known.model.ledger(of)?;
    let axis = ledger.from.value()?.axis()?;
    let load = known.forces.heaviest_line(of, axis);
    let of_foot =
        combinations(acting(&load)).map(|combination| (combination.name, combined(combination, &load)));
    let (combination, foot) = of_foot.max_by(|one, other| one.1.to_plf().total_cmp(&other.1.to_plf()))?;
    if foot <= LineLoad::ZERO {
        return None;
    }
    let fastening = ledger.fastened.value();
    let outcome = match fastening.and_then(|fastening| fastening.capacity.as_ref()) {
        Some(Load::Line(capacity)) => Ok(Check {
            demand: foot.into(),
            capacity: (*capacity).into(),
            combination,
            pattern: None,
            at: None,
            clause: "declared",
            steps: vec![
                Step::read("w", foot, "takedown, the heaviest foot"),
                Step::read("capacity", *capacity, "declared"),
            ],
            assumed: Vec::new(),
        }),
        Some(Load::Area(_) | Load::Point(_) | Load::Volume(_)) | None if ledger.fastened.is_broken() => {
            Err(NotVerified::Missing(of, "fastened"))
        }
        Some(Load::Area(_) | Load::Point(_) | Load::Volume(_)) | None => Err(undeclared()),
    };
    let against = ledger.on.value().and_then(|on| on.target);
    Some(Verification { of, part: None, against, limit_state: LimitState::Connector, outcome })
}
