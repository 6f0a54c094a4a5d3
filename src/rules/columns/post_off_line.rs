//! Posts beside the centre line of their beam.

use crate::geometry::plan_contacts::{BESIDE, BeamContact};
use crate::house::House;
use crate::profiles::framing::{POST_OFF_LINE, POST_OFF_LINE_SHARE};
use crate::rules::{Findings, rule};

rule! {
    /// A post stands off the centre line of the beam it carries.
    ///
    /// By how much may be read off the two places. The limit is `post-off-line`, or `post-off-line-share` of the beam's
    /// width when that is less.
    ///
    /// ## Why
    /// The load comes down beside the post's middle and bends it. Post, cap and pad were sized for a load in the middle.
    ///
    /// ## Source
    /// Common practice. A building code of Canada (9.17.2) wants columns centred.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0'
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    ///   bears on    P1
    /// post P1
    ///   at          A plus 6' / 1 plus 1"
    ///   size        6x6 DF No.1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0'
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    ///   bears on    P1
    /// post P1
    ///   at          A plus 6' / 1 plus 1/2"
    ///   size        6x6 DF No.1
    /// ```
    "post-off-line", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let (most, share) = (house.limits.of(&POST_OFF_LINE), house.limits.of(&POST_OFF_LINE_SHARE));
    for (beam, contacts) in house.model.beams.iter().zip(&house.geometry.contacts.beams) {
        let width = beam.size.value().and_then(|size| size.width());
        let allowed = width
            .and_then(|width| width.shared_by(share.value.0))
            .map_or(most.value, |part| part.rounded().min(most.value));
        for (support, contact) in beam.supports.iter().zip(&contacts.supports) {
            let column = support.on.reference().and_then(|on| house.model.column(on.target?));
            let (Some(column), Ok(BeamContact::Meets { off_line, .. })) = (column, contact) else { continue };
            // Further away it carries nothing at all, and is reported so.
            if *off_line <= allowed || *off_line > BESIDE {
                continue;
            }
            findings
                .about(
                    column.common.id,
                    column.at.span().unwrap_or(column.common.name_span),
                    format!(
                        "{} stands {off_line} off the centre line of {}: {allowed} at the most",
                        column.common.label(),
                        beam.common.label()
                    ),
                )
                .related(beam.from.span().unwrap_or(beam.common.name_span), "the beam's line")
                .suspects(column.common.id, "plan")
                .help("move one of the two, or have the post designed for the moment")
                .basis(most.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// A sixth of 1-1/2" is 1/4", less than 1/2" (common practice).
    #[test]
    fn a_thin_beam_allows_less() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0'
beam B1
  size        2x10 SPF No.2
  from        A/1 to B/1
  bears on    P1
  bears on    P2
post P1
  at          A plus 6' / 1 plus 1/4\"
  size        4x4 SPF No.2
post P2
  size        4x4 SPF No.2
  at          A plus 9' / 1 less 5/16\"
--            ^^^^^^^^^^^^^^^^^^^^^^^^ column P2 stands 5/16\" off the centre line of beam B1: 1/4\" at the most
",
        );
    }
}
