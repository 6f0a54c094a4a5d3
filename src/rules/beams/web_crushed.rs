//! Webs of steel beams that a force across them crushes.

use crate::house::House;
use crate::rules::wording::decided_by;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// The web of a steel beam bears less than its seat presses up, or a post presses down.
    ///
    /// Over each seat that a W shape lies on, and under each post or beam that stands on it: the web yields, or crumples.
    /// The length of the contact counts, and how far it is from the beam's end.
    ///
    /// ## Why
    /// A beam that is strong enough in bending can still fold over its own support.
    ///
    /// ## Source
    /// AISC 360-16, -22 J10.2 and J10.3, the forces near an end from memory.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 10'
    ///   y           1 0'
    /// beam B1
    ///   size        W6x8.5
    ///   from        A/1 to B/1
    ///   bears on    C1
    ///   bears on    C2 for 20"
    ///   load        6000 plf live
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 1/2"
    /// column C2
    ///   at          B/1
    ///   size        HSS 6 x 6 x 1/4
    ///   cap         plate 6" x 40" x 1/2", long side along B1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 10'
    ///   y           1 0'
    /// beam B1
    ///   size        W8x31
    ///   from        A/1 to B/1
    ///   bears on    C1
    ///   bears on    C2 for 20"
    ///   load        6000 plf live
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   cap         plate 6" x 6" x 1/2"
    /// column C2
    ///   at          B/1
    ///   size        HSS 6 x 6 x 1/4
    ///   cap         plate 6" x 40" x 1/2", long side along B1
    /// ```
    "web-crushed", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let failing = house.verifications.on(LimitState::Web).filter(|verification| verification.fails());
    for verification in failing {
        let (Ok(check), Some(beam)) = (&verification.outcome, house.model.beam(verification.of)) else {
            continue;
        };
        let with = verification.against.and_then(|against| house.model.common(against));
        let place = with.map_or(String::new(), |with| format!(" at {}", with.label()));
        let finding = findings.about(
            beam.common.id,
            beam.size.span().unwrap_or(beam.common.name_span),
            format!(
                "the web of {} takes {} across it{place}, it bears {}",
                beam.common.label(),
                check.demand,
                check.capacity
            ),
        );
        if let Some(with) = with {
            finding.related(with.name_span, "here").follows(with.id);
        }
        finding.note(decided_by(verification, check));
        for assumed in &check.assumed {
            finding.note(format!("assumed: {assumed}"));
        }
        finding.help("a longer bearing, a thicker web, or stiffeners by an engineer's sizes");
        finding.basis(check.clause);
    }
}
