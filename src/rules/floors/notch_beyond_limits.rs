//! Notches in joists and beams.

use crate::geometry::cuts::{CutPlace, Cuttable, cuttable, flange_of, member_of, middle_part, place_of};
use crate::house::House;
use crate::model::openings::Notch;
use crate::profiles::framing::{END_NOTCH_DEPTH, NOTCH_DEPTH, NOTCH_FREE_MIDDLE, NOTCH_LENGTH};
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A notch takes too much out of a joist or beam, or stands where none may.
    ///
    /// In sawn lumber a notch is shallow and short, and the middle part of a span has none; over an end support it may
    /// be deeper. Engineered members are not notched unless their `source` says so.
    ///
    /// ## Why
    /// At midspan the edges carry the most, and a split begins at the corner of a notch.
    ///
    /// ## Source
    /// Residential code R502.8.1 for sawn lumber, R502.8.2 (from memory) for engineered members; the limits
    /// `notch-depth`, `notch-length`, `notch-free-middle` and `end-notch-depth`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// joists J1
    ///   size          2x8 SPF No.2
    /// notch NT1
    ///   in            J1
    ///   size          2" x 1-1/4"
    /// ```
    /// ```framing,passes
    /// joists J1
    ///   size          2x8 SPF No.2
    /// notch NT1
    ///   in            J1
    ///   size          2" x 1-3/16"
    /// ```
    "notch-beyond-limits", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for notch in &house.model.notches {
        let Some(on) = notch.member.value().and_then(|member| member.target) else { continue };
        let Some(member) = member_of(&house.model, on) else { continue };
        let (Some(kind), Some(depth), Some(([length, cut], span))) =
            (cuttable(member), member.depth(), notch.size.stated())
        else {
            continue;
        };
        if kind != Cuttable::Sawn {
            // A notch in an I-joist is in its flange, which is another rule's.
            if notch.common.source.value().is_none() && flange_of(&house.model, on).is_none() {
                findings
                    .about(
                        notch.common.id,
                        span,
                        format!("{} cuts into {}", notch.common.label(), member.text),
                    )
                    .help("leave it out; a notch that the maker allows names its `source`")
                    .basis("R502.8.2 (from memory)");
            }
            continue;
        }
        let place =
            notch.at.get().and_then(|station| place_of(&house.model, &house.geometry.contacts, on, &station));
        let is_at_end = place == Some(CutPlace::End);
        let share = house.limits.of(if is_at_end { &END_NOTCH_DEPTH } else { &NOTCH_DEPTH });
        if let Some(most) = depth.shared_by(share.value.0).filter(|most| *most < *cut) {
            let over = if is_at_end { " over its end" } else { "" };
            findings
                .about(
                    notch.common.id,
                    span,
                    format!(
                        "{} is {cut} deep, in {}{over}: {most} at the most",
                        notch.common.label(),
                        member.text
                    ),
                )
                .note(format!("a depth of {depth}, 1/{} of it", share.value.0))
                .help("cut it shallower, or move what needs it")
                .basis(share.basis());
            continue;
        }
        let share = house.limits.of(&NOTCH_LENGTH);
        if let Some(most) = depth.shared_by(share.value.0).filter(|most| *most < *length) {
            findings
                .about(
                    notch.common.id,
                    span,
                    format!(
                        "{} is {length} long, in {}: {most} at the most",
                        notch.common.label(),
                        member.text
                    ),
                )
                .note(format!("a depth of {depth}, 1/{} of it", share.value.0))
                .help("cut it shorter, or move what needs it")
                .basis(share.basis());
            continue;
        }
        if let Some(CutPlace::Span { from, to }) = place {
            in_the_middle(house, notch, *length, (from, to), findings);
        }
    }
}

fn in_the_middle(
    house: &House,
    notch: &Notch,
    length: Length,
    (from, to): (Length, Length),
    findings: &mut Findings<'_>,
) {
    let free = house.limits.of(&NOTCH_FREE_MIDDLE);
    let (Some((station, span)), Some((low, high))) = (notch.at.stated(), middle_part(from, to, free.value.0))
    else {
        return;
    };
    let (start, end) = (station.at - length.half(), station.at + length.half());
    if end <= low || start >= high {
        return;
    }
    let part = if free.value.0 == 3 { "third".to_owned() } else { format!("1/{}", free.value.0) };
    findings
        .about(
            notch.common.id,
            span,
            format!(
                "{} is {} from the support, in the middle {part} of a span of {}",
                notch.common.label(),
                station.at - from,
                to - from
            ),
        )
        .note(format!("no notch between {} and {} from the support", low - from, high - from))
        .help("move it nearer to a support")
        .basis(free.basis());
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn notch(at: &str, size: &str, mark_at: &str, mark_size: &str) -> String {
        format!(
            "
grid
  x             A 0', B 12'
  y             1 0', 2 9'
wall W1
  kind          framed
  from          A/1 to B/1
  line          centre
  thick         6\"
wall W2
  kind          framed
  from          A/2 to B/2
  line          centre
  thick         6\"
joists J1
  size          2x10 SPF No.2
  fill          A to B by 1 to 2
  run           along y
  bears on      W1
  bears on      W2
notch NT1
  in            J1
  at            {at}
{mark_at}  size          {size}
{mark_size}"
        )
    }

    /// R502.8.1, the row of a 2x10 printed in a copy of low grade: a notch of 1.542\" by 3.083\", 2.3125\" deep at the
    /// end.
    #[test]
    fn at_the_published_row() {
        check_rule(&RULE, &notch("1 plus 1'", "3\" x 1-1/2\"", "", ""));
        check_rule(
            &RULE,
            &notch(
                "1 plus 1'",
                "3\" x 1-5/8\"",
                "",
                "--              ^^^^^^^^^^^ notch NT1 is 1-5/8\" deep, in 2x10 SPF No.2: 1-9/16\"~ at the most\n",
            ),
        );
        check_rule(
            &RULE,
            &notch(
                "1 plus 1'",
                "3-1/8\" x 1\"",
                "",
                "--              ^^^^^^^^^^^ notch NT1 is 3-1/8\" long, in 2x10 SPF No.2: 3-1/16\"~ at the most\n",
            ),
        );
        check_rule(&RULE, &notch("1", "3\" x 2-5/16\"", "", ""));
        check_rule(
            &RULE,
            &notch(
                "1",
                "3\" x 2-3/8\"",
                "",
                "--              ^^^^^^^^^^^ notch NT1 is 2-3/8\" deep, in 2x10 SPF No.2 over its end: 2-5/16\" at the most\n",
            ),
        );
    }

    /// Of 9'-0\" the middle third is 3'-0\" to 6'-0\"; a notch of 2\" with its middle at 2'-11\" just ends there.
    #[test]
    fn keeps_the_middle_free() {
        check_rule(&RULE, &notch("1 plus 2'-11\"", "2\" x 1\"", "", ""));
        check_rule(
            &RULE,
            &notch(
                "1 plus 3'-0\"",
                "2\" x 1\"",
                "--              ^^^^^^^^^^^^ notch NT1 is 3'-0\" from the support, in the middle third of a span of 9'-0\"\n",
                "",
            ),
        );
    }
}
