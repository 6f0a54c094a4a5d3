//! Joists that hold, and give under a step.

use crate::house::House;
use crate::rules::strength::{JOISTS, failing, sag_in_words, size_of};
use crate::rules::wording::decided_by;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// Joists that hold, and give under a step.
    ///
    /// A code's sag leaves a floor that people feel. This asks for more, as advice: the sag under live load that good practice
    /// allows.
    ///
    /// ## Why
    /// Glasses ring in the cupboard; the owner calls the builder back.
    ///
    /// ## Source
    /// Common practice: the limit `deflection-target`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 15'-6"
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   live        40 psf
    ///   dead        10 psf
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    ///   span        by grid
    ///   bears on    W1
    ///   bears on    W2
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// wall W2
    ///   kind        concrete
    ///   from        A/2 to B/2
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12'
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    ///   live        40 psf
    ///   dead        10 psf
    /// joists J1
    ///   floor       main
    ///   size        2x12 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    ///   span        by grid
    ///   bears on    W1
    ///   bears on    W2
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// wall W2
    ///   kind        concrete
    ///   from        A/2 to B/2
    ///   line        centre
    ///   thick       8"
    ///   stands on   outside "rock"
    /// ```
    "joist-bounce", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (verification, check) in failing(house, JOISTS, &[LimitState::Bounce]) {
        let Some(common) = house.model.common(verification.of) else { continue };
        let finding = findings.about(
            common.id,
            size_of(house, common.id).unwrap_or(common.name_span),
            format!(
                "{} sag {}: a lively floor",
                common.label(),
                sag_in_words(verification, check).unwrap_or_default()
            ),
        );
        finding.note(decided_by(verification, check));
        finding.suspects(common.id, "size");
        finding.basis(check.clause);
    }
}
