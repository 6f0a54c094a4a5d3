//! Columns beside the middle of their pads.

use crate::diagnostic::Severity;
use crate::house::House;
use crate::model::foundation::FootingSize;
use crate::profiles::foundations::{PAD_ECCENTRICITY, PAD_ECCENTRICITY_SHARE};
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A column stands off the middle of its pad.
    ///
    /// Beyond the limit `pad-eccentricity` it is a warning. Beyond `pad-eccentricity-share` of the pad its far edge lifts
    /// off, and it is an error.
    ///
    /// ## Why
    /// A load off the middle presses one edge of the pad harder than the other; the pad tilts and takes the column along.
    ///
    /// ## Source
    /// Common practice: the middle third of statics. A building code of Canada (9.17.2) wants footings centred.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// footing F1
    ///   kind        pad
    ///   at          A/1
    ///   size        2'-6" x 2'-6" x 12"
    /// column C1
    ///   at          A plus 3" / 1
    ///   stands on   F1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// footing F1
    ///   kind        pad
    ///   at          A/1
    ///   size        2'-6" x 2'-6" x 12"
    /// column C1
    ///   at          A plus 2" / 1
    ///   stands on   F1
    /// ```
    "column-off-pad", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let (most, share) = (house.limits.of(&PAD_ECCENTRICITY), house.limits.of(&PAD_ECCENTRICITY_SHARE));
    for (column, foothold) in house.model.columns.iter().zip(&house.geometry.contacts.columns) {
        let on = column.stands_on.value().and_then(|stand| stand.on.reference()).and_then(|on| on.target);
        let Some(footing) = on.and_then(|on| house.model.footing(on)) else { continue };
        if footing.common.may_say("at")
            || !matches!(footing.size.get(), Some(FootingSize::Pad(..) | FootingSize::Round(..)))
        {
            continue;
        }
        let Ok(foothold) = foothold else { continue };
        let third = foothold.width.shared_by(share.value.0).map(|part| part.rounded()).unwrap_or_default();
        let allowed = most.value.min(third);
        if foothold.off_centre <= allowed {
            continue;
        }
        let lifts = foothold.off_centre > third;
        let how = if foothold.outside > Length::ZERO {
            format!("{} past its edge", foothold.outside)
        } else if lifts {
            format!("its far edge lifts off beyond {third}")
        } else {
            format!("{allowed} at the most")
        };
        let finding = findings.about(
            column.common.id,
            column.at.span().unwrap_or(column.common.name_span),
            format!(
                "{} stands {} off the middle of {}: {how}",
                column.common.label(),
                foothold.off_centre,
                footing.common.label()
            ),
        );
        if lifts {
            finding.severity(Severity::Error);
        }
        finding.suspects(column.common.id, "plan");
        for at in footing.at.iter().take(3) {
            finding.related(at.span, "the middle of a pad");
        }
        finding.help("move the pad under the column, or make it larger to that side");
        finding.basis(most.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::diagnostic::Severity;
    use crate::testing::rule_check::{check_rule, found};

    fn house(off: &str) -> String {
        format!(
            "
grid
  x           A 0'
  y           1 0'
footing F1
  kind        pad
  at          A/1
  size        2'-6\" x 2'-6\" x 12\"
column C1
  at          A/1 plus {off}
  stands on   F1
"
        )
    }

    /// A sixth of 30" is 5": 2-1/16" is off, 5-1/16" lifts the far edge, 1'-4" is past the edge by 1".
    #[test]
    fn grows_with_the_offset() {
        check_rule(&RULE, &house("2\""));
        for (off, severity, says) in [
            ("2-1/16\"", Severity::Warning, "2-1/16\" off the middle of footing F1: 2\" at the most"),
            ("5\"", Severity::Warning, "5\" off the middle of footing F1: 2\" at the most"),
            ("5-1/16\"", Severity::Error, "its far edge lifts off beyond 5\""),
            ("16\"", Severity::Error, "1'-4\" off the middle of footing F1: 1\" past its edge"),
        ] {
            let found = found(&RULE, &house(off));
            let [only] = found.as_slice() else { panic!("{off}: {found:?}") };
            assert!(only.message.contains(says), "{off}: {}", only.message);
            assert_eq!(only.severity, severity, "{off}");
        }
    }
}
