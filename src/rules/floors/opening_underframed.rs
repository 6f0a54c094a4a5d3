//! What frames a floor opening, against its size.

use crate::diagnostic::{Edit, Fix};
use crate::geometry::carried::Carried;
use crate::geometry::floor_openings::{FramedOpening, framed};
use crate::house::House;
use crate::house::lines::part_at;
use crate::model::member::Member;
use crate::model::openings::Opening;
use crate::profiles::framing::{HEADER_SINGLE, HEADER_WITHOUT_HANGER, TAIL_WITHOUT_HANGER, TRIMMER_SINGLE};
use crate::rules::Finding;
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A floor opening is framed with fewer pieces, or held by less, than its size asks.
    ///
    /// Headers lie across the joists, trimmers along them; tails are the joists that were cut. Up to `header-single` one
    /// header will do, and one trimmer each side where the header is no further than `trimmer-single` from the trimmer's
    /// support. Longer headers, and the trimmers beside them, are doubled; from `header-without-hanger` on headers hang in
    /// hangers, and tails from `tail-without-hanger` on.
    ///
    /// ## Why
    /// A header takes the loads of all the joists that it cuts short and hands them to two trimmers.
    ///
    /// ## Source
    /// Residential code R502.10: single headers read in a secondary copy, the rest from memory. Meeting it sizes nothing.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 14'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    /// opening O1
    ///   floor       main
    ///   fill        A plus 4' to A plus 9' by 1 plus 2' to 1 plus 5'
    ///   trimmers    2 of 2x10 SPF No.2 each side
    ///   headers     1 of 2x10 SPF No.2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 14'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    /// opening O1
    ///   floor       main
    ///   fill        A plus 4' to A plus 9' by 1 plus 2' to 1 plus 5'
    ///   trimmers    2 of 2x10 SPF No.2 each side
    ///   headers     2 of 2x10 SPF No.2
    /// ```
    "opening-underframed", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for opening in &house.model.openings {
        let Some(framed) = framed(&house.geometry.contacts, &carried, opening) else { continue };
        check_headers(house, opening, &framed, findings);
        check_trimmers(house, opening, &framed, findings);
        check_tails(house, opening, &framed, findings);
    }
}

fn check_headers(house: &House, opening: &Opening, framed: &FramedOpening<'_>, findings: &mut Findings<'_>) {
    let Some((headers, span)) = opening.headers.stated() else { return };
    // What no list has the size of may not be a size at all.
    if headers.member.section.is_none() {
        return;
    }
    let (single, unhung) = (house.limits.of(&HEADER_SINGLE), house.limits.of(&HEADER_WITHOUT_HANGER));
    let label = opening.common.label();
    if framed.header > single.value && is_single(framed, headers.count, &headers.member) {
        let message = format!(
            "the headers of {label} span {} and are single: beyond {} they are doubled",
            framed.header, single.value
        );
        let finding = findings.about(opening.common.id, span, message);
        double(house, framed, &headers.member, span, finding);
        finding.basis(single.basis());
    }
    if framed.header > unhung.value && headers.by.is_none() {
        let message = format!(
            "the headers of {label} span {} and hang from nothing: beyond {} they hang in hangers",
            framed.header, unhung.value
        );
        findings
            .about(opening.common.id, span, message)
            .help("write `by hanger LOAD \"words\" source \"…\"` behind them")
            .basis(unhung.basis());
    }
}

fn check_trimmers(house: &House, opening: &Opening, framed: &FramedOpening<'_>, findings: &mut Findings<'_>) {
    let Some(((count, member), span)) = opening.trimmers.stated() else { return };
    if !is_single(framed, *count, member) {
        return;
    }
    let (header, near) = (house.limits.of(&HEADER_SINGLE), house.limits.of(&TRIMMER_SINGLE));
    let label = opening.common.label();
    if framed.header > header.value {
        let message = format!(
            "the trimmers of {label} are single beside headers that span {}: beyond {} both are doubled",
            framed.header, header.value
        );
        let finding = findings.about(opening.common.id, span, message);
        double(house, framed, member, span, finding);
        finding.basis(header.basis());
        return;
    }
    if let Some(tail) = framed.longest_tail().filter(|tail| *tail > near.value) {
        let message = format!(
            "the trimmers of {label} are single, and a header stands {tail} from their support: {} at the most",
            near.value
        );
        let finding = findings.about(opening.common.id, span, message);
        double(house, framed, member, span, finding);
        finding.help("double the trimmers").basis(near.basis());
    }
}

fn check_tails(house: &House, opening: &Opening, framed: &FramedOpening<'_>, findings: &mut Findings<'_>) {
    let limit = house.limits.of(&TAIL_WITHOUT_HANGER);
    let Some(tail) = framed.longest_tail().filter(|tail| *tail > limit.value) else { return };
    if !opening.tails.is_missing() || opening.common.may_say("tails") {
        return;
    }
    let message = format!(
        "the joists that {} cuts are still {tail} long and hang from nothing at its header: beyond {} they hang in hangers",
        opening.common.label(),
        limit.value
    );
    findings
        .about(opening.common.id, opening.common.name_span, message)
        .help("write `tails by hanger LOAD \"words\" source \"…\"`")
        .basis(limit.basis());
}

/// Writes two of what is single, where its own two are as wide as two joists.
fn double(house: &House, framed: &FramedOpening<'_>, member: &Member, span: Span, finding: &mut Finding) {
    if is_single(framed, 2, member) {
        return;
    }
    if let Some(count) = part_at(house, span, "count") {
        finding.write(count, "2");
    } else if let Some(written) = part_at(house, span, "member") {
        let edit = Edit { span: Span { end: written.start, ..written }, text: "2 of ".to_owned() };
        finding.fix(Fix { title: format!("write `2 of {}`", member.text), edits: vec![edit] });
    }
}

/// Narrower than two of the joists side by side.
fn is_single(framed: &FramedOpening<'_>, count: u32, member: &Member) -> bool {
    let thickness = |member: &Member| member.width().map(Length::to_units);
    let two = framed.joists.size.value().and_then(thickness).map(|one| 2 * one);
    let width = thickness(member).map(|one| one.saturating_mul(i64::from(count)));
    width.zip(two).is_some_and(|(width, two)| width < two)
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(fill: &str, frame: &str) -> String {
        format!(
            "
grid
  x           A 0', B 30'
  y           1 0', 2 20'
floor main
  subfloor    100'-0\"
joists J1
  floor       main
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  bears on    B1
  bears on    B2
beam B1
  size        3-ply 2x10 SPF No.2
  from        A/1 to B/1
beam B2
  size        3-ply 2x10 SPF No.2
  from        A/2 to B/2
opening O1
  floor       main
  fill        {fill}
{frame}"
        )
    }

    /// R502.10 (from memory): up to 4'-0" one header and one trimmer will do, but only 3'-0" from a support. Here the upper
    /// header is 15'-0" less 3'-0" from its own.
    #[test]
    fn a_small_opening_near_one_support_is_far_from_the_other() {
        check_rule(
            &RULE,
            &house(
                "A plus 4' to A plus 8' by 1 plus 3' to 1 plus 8'",
                "  trimmers    1 of 2x10 SPF No.2 each side
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the trimmers of opening O1 are single, and a header stands 12'-0\" from their support: 3'-0\" at the most
  headers     1 of 2x10 SPF No.2
",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "A plus 4' to A plus 8' by 1 plus 3' to 2 less 3'",
                "  trimmers    1 of 2x10 SPF No.2 each side
  headers     1 of 2x10 SPF No.2
",
            ),
        );
    }

    /// R502.10 (from memory): beyond 6'-0" headers hang, beyond 12'-0" tails do.
    #[test]
    fn a_large_opening_hangs_in_hangers() {
        check_rule(
            &RULE,
            &house(
                "A plus 4' to A plus 10'-1\" by 1 plus 3' to 1 plus 7'-11\"",
                "  trimmers    2 of 2x10 SPF No.2 each side
  headers     2 of 2x10 SPF No.2
--            ^^^^^^^^^^^^^^^^^^ the headers of opening O1 span 6'-1\" and hang from nothing: beyond 6'-0\" they hang in hangers
",
            )
            .replace(
                "opening O1\n",
                "opening O1
--      ^^ the joists that opening O1 cuts are still 12'-1\" long and hang from nothing at its header: beyond 12'-0\" they hang in hangers
",
            ),
        );
    }
}
