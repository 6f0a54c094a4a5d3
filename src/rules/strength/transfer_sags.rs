//! Transfer beams that hold, and sag under the post they take aside.

use crate::house::House;
use crate::rules::strength::{BEAMS, failing, sag_in_words, size_of};
use crate::rules::wording::decided_by;
use crate::rules::{Findings, rule};
use crate::verify::limit_state::LimitState;

rule! {
    /// A beam that takes a post aside sags more than a post stands well on.
    ///
    /// The code's limit for floors lets such a beam sag under the post, and all that stands on it goes down with it. This asks
    /// for more, as advice.
    ///
    /// ## Why
    /// The roof dips at the post, walls crack above it, doors upstairs bind.
    ///
    /// ## Source
    /// Common practice: the limit `deflection-transfer`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 8', C 20'
    ///   y           1 0'
    /// column P1
    ///   at          B/1
    ///   size        6x6 DF-L No.1
    ///   length      8'-0"
    ///   stands on   B1
    ///   load        9500 lb live
    /// beam B1
    ///   size        W10x33
    ///   from        A/1 to C/1
    ///   span        by grid
    ///   braced      at 2'
    ///   transfers   P1 to C1
    ///   bears on    C1
    ///   bears on    C2
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// column C2
    ///   at          C/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 8', C 20'
    ///   y           1 0'
    /// column P1
    ///   at          B/1
    ///   size        6x6 DF-L No.1
    ///   length      8'-0"
    ///   stands on   B1
    ///   load        5000 lb live
    /// beam B1
    ///   size        W10x33
    ///   from        A/1 to C/1
    ///   span        by grid
    ///   braced      at 2'
    ///   transfers   P1 to C1
    ///   bears on    C1
    ///   bears on    C2
    /// column C1
    ///   at          A/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// column C2
    ///   at          C/1
    ///   size        HSS 4 x 4 x 1/4
    ///   stands on   outside "pier"
    /// ```
    "transfer-sags", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (verification, check) in failing(house, BEAMS, &[LimitState::Bounce]) {
        let Some(common) = house.model.common(verification.of) else { continue };
        let finding = findings.about(
            common.id,
            size_of(house, common.id).unwrap_or(common.name_span),
            format!(
                "{} takes a post aside and sags {}",
                common.label(),
                sag_in_words(verification, check).unwrap_or_default()
            ),
        );
        finding.note(decided_by(verification, check));
        finding.suspects(common.id, "size");
        finding.basis(check.clause);
    }
}
