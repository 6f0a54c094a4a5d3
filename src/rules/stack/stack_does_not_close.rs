//! A stated level against the one that the rest of the stack gives.

use std::collections::BTreeMap;

use crate::diagnostic::{Edit, Fix, Remedy};
use crate::facts::FactValue;
use crate::geometry::stack::{Closure, Loop};
use crate::house::House;
use crate::house::lines::part_at;
use crate::model::element::{Common, ElementId};
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Finding, Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A stated level is not the one that the rest of the stack gives.
    ///
    /// Walls, shelves, ledgers, pockets and beams carry a floor only at the level that its deck, joists and sills leave
    /// for them. The same level stands on the elevation, the section and the foundation sheet; this rule adds it up.
    ///
    /// Of what is ordered, poured or set it names the ways out on site; an `accept "note" on DATE` in every such element makes
    /// it advice.
    ///
    /// ## Why
    /// The foundation is poured from the stated number. When the joists are deeper or a sill is missing, the floor
    /// stands high or low by the difference, and every stair, door and ceiling with it.
    ///
    /// ## Source
    /// Common practice: addition. Numbers agree when they differ by less than the limit `closure-tolerance`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// wall W1
    ///   kind        concrete
    ///   top         98'-4"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    W1
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0 1/2"
    ///   sill        1 of 2x6 treated
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   bears on    W1
    /// ```
    "stack-does-not-close", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    let mut same: BTreeMap<(Option<ElementId>, Length), Vec<&Closure>> = BTreeMap::new();
    for closure in house.geometry.closures.iter().filter(|closure| !closure.closes(tolerance.value)) {
        same.entry((closure.asked_by, closure.difference().abs())).or_default().push(closure);
    }
    for closures in same.values_mut() {
        closures.sort_by_key(|closure| (closure.of, closure.span));
        let Some((first, others)) = closures.split_first() else { continue };
        let finding = report(house, first, others, findings);
        finding.basis(tolerance.basis());
    }
}

/// One finding for everything that is off by the same amount under the same floor or beam: they share the suspect.
fn report<'f>(
    house: &House,
    first: &Closure,
    others: &[&Closure],
    findings: &'f mut Findings<'_>,
) -> &'f mut Finding {
    // Several walls that are off alike share their suspect: the floor on them. Seats follow from their beam, whose own
    // findings they are listed under.
    let subject = match (others, first.asked_by, first.of) {
        ([], ..) | (_, None, _) | (.., Loop::SeatUnderBeam | Loop::WallUnderBeam) => first.subject,
        (_, Some(asked_by), _) => asked_by,
    };
    let is_alike = |closure: &&&Closure| (closure.of, closure.difference()) == (first.of, first.difference());
    let alike: Vec<&Closure> = others.iter().filter(is_alike).copied().collect();
    let finding = findings.about(subject, first.span, sentence(house, first, &alike));
    for closure in others.iter().copied().chain([first]) {
        if let Some(common) = house.model.common(closure.subject) {
            finding.stands_in(common);
        }
    }
    for closure in std::iter::once(first).chain(others.iter().copied()) {
        let of = closure.subject;
        if let Some(words) = number_of(closure.of) {
            let (own, wanted) = (closure.stated, closure.derived.total());
            finding.disagrees(of, words, FactValue::Elevation(own), FactValue::Elevation(wanted));
        }
    }
    for closure in others {
        let says = match is_alike(&closure) {
            true => format!("{} says {}", label(house, closure.subject), closure.stated.in_feet()),
            false => sentence(house, closure, &[]),
        };
        finding.related(closure.span, says);
    }
    if let Some(stated) = &first.stated_sum {
        finding.note(format!("{} is at {stated}", label(house, first.subject)));
    }
    finding.note(format!("{}: {}", what_needs(house, first), first.derived));
    if first.stated_sum.is_none() && first.of != Loop::Datum {
        add_cure(house, first, others, finding);
        add_choices(house, first, others, finding);
    }
    match first.of {
        Loop::SeatUnderBeam | Loop::WallUnderBeam => {
            if let Some(beam) = first.asked_by {
                finding.follows(beam).suspects(beam, "bottom");
            }
        }
        Loop::Datum
        | Loop::WallUnderJoists
        | Loop::PlateUnderJoists
        | Loop::WallHeight
        | Loop::ShelfUnderJoists
        | Loop::LedgerAtJoists
        | Loop::BeamUnderJoists => {}
    }
    finding
}

/// What the stated number is a number of; `None` where it is no number of what stands.
const fn number_of(of: Loop) -> Option<&'static str> {
    match of {
        Loop::Datum => None,
        Loop::WallHeight => Some("height"),
        Loop::SeatUnderBeam => Some("seat"),
        Loop::WallUnderJoists
        | Loop::PlateUnderJoists
        | Loop::ShelfUnderJoists
        | Loop::LedgerAtJoists
        | Loop::BeamUnderJoists
        | Loop::WallUnderBeam => Some("top"),
    }
}

fn add_cure(house: &House, first: &Closure, others: &[&Closure], finding: &mut Finding) {
    let (wanted, off) = (first.derived.total(), first.difference().abs());
    finding.help(match finding.diagnostic.remedy {
        Remedy::OnPaper => format!("write {} there, or change what lies on it by {off}", wanted.in_feet()),
        Remedy::Ordered | Remedy::InPlace => format!("change what lies on it by {off}"),
    });
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE).value;
    let edits = std::iter::once(first).chain(others.iter().copied()).map(|closure| {
        let text = closure.one_answer(&house.geometry.closures, tolerance)?.in_feet().to_string();
        Some(Edit { span: closure.span, text })
    });
    if let Some(edits) = edits.collect() {
        let fix = Fix { title: format!("write {}", wanted.in_feet()), edits };
        match finding.diagnostic.remedy {
            // What stands is not mended by another number: a person may write it once the site is.
            Remedy::InPlace => finding.diagnostic.choices.push(fix),
            Remedy::OnPaper | Remedy::Ordered => _ = finding.fix(fix),
        }
    }
}

/// The other answers: the number of sills, where one makes the difference, and the level of the floor.
fn add_choices(house: &House, first: &Closure, others: &[&Closure], finding: &mut Finding) {
    if !others.is_empty() || first.stated_sum.is_some() {
        return;
    }
    if let Some((count, place)) = sills_that_close(house, first) {
        let (word, text) = (if count == 1 { "sill" } else { "sills" }, count.to_string());
        finding.choice(format!("write {count} {word}"), Edit { span: place, text });
    }
    let joists = first.asked_by.and_then(|asked_by| house.model.joists_of(asked_by));
    let floor = joists.and_then(|joists| house.model.floor(joists.floor.value()?.target?));
    if let Some((subfloor, span)) = floor.and_then(|floor| floor.subfloor.stated()) {
        let moved = *subfloor + first.difference();
        if moved.rounded_to(Length::sixteenths(0, 1)) == moved {
            let text = moved.in_feet().to_string();
            finding.choice(format!("move the subfloor to {text}"), Edit { span, text });
        }
    }
}

/// How many sills would make up for what is missing or too much, and where their number stands.
fn sills_that_close(house: &House, closure: &Closure) -> Option<(u32, Span)> {
    let sill = match closure.of {
        Loop::WallUnderJoists => &house.model.wall(closure.subject)?.sill,
        Loop::ShelfUnderJoists => &house.model.shelf(closure.subject)?.sill,
        Loop::Datum
        | Loop::PlateUnderJoists
        | Loop::WallHeight
        | Loop::LedgerAtJoists
        | Loop::BeamUnderJoists
        | Loop::WallUnderBeam
        | Loop::SeatUnderBeam => return None,
    };
    let (sill, span) = sill.stated()?;
    let one = sill.member.thickness()?;
    let off = closure.difference();
    let is_one = (off.abs() - one).abs() < house.limits.of(&CLOSURE_TOLERANCE).value;
    let count = if off.is_positive() { sill.count.checked_sub(1)? } else { sill.count.checked_add(1)? };
    if is_one && count > 0 { Some((count, part_at(house, span, "count")?)) } else { None }
}

fn sentence(house: &House, first: &Closure, others: &[&Closure]) -> String {
    let (off, wanted, stated) = (first.difference(), first.derived.total().in_feet(), first.stated.in_feet());
    let direction = if off.is_positive() { "high" } else { "low" };
    let subjects = subjects(house, first, others);
    let is_one = others.is_empty();
    let (stands, says) = if is_one { ("is", "says") } else { ("are", "say") };
    let (top, seat) = if is_one { ("top", "seat") } else { ("tops", "seats") };
    let needs = first.asked_by.and_then(|asked_by| house.model.common(asked_by));
    let needs = needs.map_or("needs", |common| common.verb("it needs", "they need"));
    let off = off.abs();
    let asked_by = first.asked_by.map(|asked_by| label(house, asked_by)).unwrap_or_default();
    match first.of {
        Loop::Datum => {
            format!("the datum says {stated}, but the floor itself is placed at {wanted}: {off} apart")
        }
        Loop::WallUnderJoists => {
            format!(
                "the {top} of {subjects} {stands} {off} too {direction} for {asked_by}: {says} {stated}, {needs} {wanted}"
            )
        }
        Loop::PlateUnderJoists => format!(
            "the plates of {subjects} are {off} too {direction} for {asked_by}: {says} {stated}, {needs} {wanted}"
        ),
        Loop::WallHeight => format!(
            "{subjects} {stands} said to be {} tall, but {} stand between what lies below and what lies above",
            first.stated,
            first.derived.total()
        ),
        Loop::ShelfUnderJoists => {
            format!(
                "{subjects} {stands} {off} too {direction} for {asked_by}: {says} {stated}, {needs} {wanted}"
            )
        }
        Loop::LedgerAtJoists => format!(
            "{subjects} {stands} {off} too {direction} for the tops of {asked_by}: {says} {stated}, {needs} {wanted}"
        ),
        Loop::BeamUnderJoists => format!(
            "{subjects} {stands} {off} too {direction} for {asked_by}: its top is at {stated}, they need it at {wanted}"
        ),
        Loop::WallUnderBeam => {
            format!(
                "the {top} of {subjects} {stands} {off} too {direction} for {asked_by}: {says} {stated}, {needs} {wanted}"
            )
        }
        Loop::SeatUnderBeam => format!(
            "the {seat} of {subjects} {stands} {off} too {direction} for {asked_by}: {says} {stated}, {needs} {wanted}"
        ),
    }
}

/// `wall W1`, `walls W1, W2 and W3`.
fn subjects(house: &House, first: &Closure, others: &[&Closure]) -> String {
    let name =
        |element| house.model.common(element).map(|common| common.name.to_string()).unwrap_or_default();
    let mut names = vec![name(first.subject)];
    for closure in others {
        let name = name(closure.subject);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    match names.as_slice() {
        [most @ .., last] if !most.is_empty() => {
            let kind = first.subject.kind.word();
            let kinds = if kind == "shelf" { "shelves".to_owned() } else { format!("{kind}s") };
            format!("{kinds} {} and {last}", most.join(", "))
        }
        _ => label(house, first.subject),
    }
}

fn what_needs(house: &House, closure: &Closure) -> String {
    match closure.of {
        Loop::Datum => "the floor".to_owned(),
        Loop::WallHeight => "from one to the other".to_owned(),
        Loop::WallUnderJoists
        | Loop::PlateUnderJoists
        | Loop::ShelfUnderJoists
        | Loop::LedgerAtJoists
        | Loop::BeamUnderJoists
        | Loop::WallUnderBeam
        | Loop::SeatUnderBeam => {
            let asked_by = closure.asked_by.and_then(|asked_by| house.model.common(asked_by));
            let needs = |common: &Common| format!("{} {}", common.label(), common.verb("needs", "need"));
            asked_by.map(needs).unwrap_or_default()
        }
    }
}

fn label(house: &House, element: ElementId) -> String {
    house.model.common(element).map(|common| common.label()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    const STACK: &str = "
floor main
  subfloor    100'-0\"
  deck        3/4\"
joists J1
  floor       main
  size        2x10 SPF No.2
  bears on    W1
  bears on    W2
wall W1
  kind        concrete
  sill        1 of 2x6 treated
";

    /// 100'-0" less 3/4" deck, 9-1/4" of a dressed 2x10 and one 1-1/2" sill is 99'-0 1/2".
    #[test]
    fn names_both_numbers() {
        check_rule(
            &RULE,
            &format!(
                "{STACK}  top         98'-10 1/2\"
--            ^^^^^^^^^^^ the top of wall W1 is 2\" too low for joists J1: says 98'-10 1/2\", they need 99'-0 1/2\"
-- | 100'-0\" subfloor of main − 3/4\" deck − 9-1/4\" joists J1 − 1-1/2\" sill = 99'-0 1/2\"
"
            ),
        );
    }

    /// Two walls that are wrong by the same amount share their suspect.
    #[test]
    fn folds_walls_that_are_off_alike() {
        check_rule(
            &RULE,
            &format!(
                "{STACK}  top         98'-10 1/2\"
--            ^^^^^^^^^^^ the tops of walls W1 and W2 are 2\" too low for joists J1: say 98'-10 1/2\", they need 99'-0 1/2\"
-- | wall W2 says 98'-10 1/2\"
wall W2
  kind        concrete
  sill        1 of 2x6 treated
  top         98'-10 1/2\"
"
            ),
        );
    }

    /// Less than 1/16" apart agrees; 1/16" does not (common practice).
    #[test]
    fn agrees_below_the_tolerance() {
        check_rule(&RULE, &format!("{STACK}  top         99'-0 17/32\"\n"));
        check_rule(
            &RULE,
            &format!(
                "{STACK}  top         99'-0 9/16\"
--            ^^^^^^^^^^^ the top of wall W1 is 1/16\" too high for joists J1: says 99'-0 9/16\", they need 99'-0 1/2\"
"
            ),
        );
    }
}
