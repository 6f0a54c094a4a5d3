//! Beams that take a post aside: how far they may sag under it.

use crate::profiles::framing::DEFLECTION_TRANSFER;
use crate::verify::Known;
use crate::verify::check::{Check, Verification};
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

/// Measures the sag under live load of each beam that transfers a post against the closer limit for such beams.
pub fn of(known: &Known<'_>, verified: &[Verification]) -> Vec<Verification> {
    let limit = known.limits.of(&DEFLECTION_TRANSFER);
    let transfers = known.model.beams.iter().filter(|beam| !beam.transfers.is_empty());
    transfers
        .flat_map(|beam| {
            let sags = verified.iter().filter(|verification| {
                verification.of == beam.common.id && verification.limit_state == LimitState::LiveDeflection
            });
            sags.filter_map(|sag| {
                let check = sag.outcome.as_ref().ok()?;
                let span = check.steps.iter().find(|step| step.symbol == "l")?;
                let Quantity::Length(span) = span.result else { return None };
                let check = Check {
                    capacity: span.scaled(1.0 / f64::from(limit.value.0)).into(),
                    clause: "common practice",
                    ..check.clone()
                };
                Some(Verification { limit_state: LimitState::Bounce, outcome: Ok(check), ..sag.clone() })
            })
        })
        .collect()
}
