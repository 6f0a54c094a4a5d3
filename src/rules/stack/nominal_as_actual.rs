//! Nominal sizes that got into a level.

use crate::house::House;
use crate::model::element::ElementId;
use crate::model::member::Member;
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};
use crate::syntax::value::Section;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

rule! {
    /// A stated level is off by what a member's name and its true size differ by.
    ///
    /// Looks only where the stack does not close: when the nominal depth of one member in it, or the nominal thickness of
    /// its sills, would close it, that is most likely how the number was found.
    ///
    /// ## Why
    /// A 2x10 is 9-1/4" deep and a W8 hardly ever 8". Who adds up names pours the wall at the wrong level.
    ///
    /// ## Source
    /// American Softwood Lumber Standard (PS 20), read in a secondary copy, and the published depths of rolled shapes.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// wall W1
    ///   kind        concrete
    ///   top         98'-11 3/4"
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
    "nominal-as-actual", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE);
    for closure in house.geometry.closures.iter().filter(|closure| !closure.closes(tolerance.value)) {
        let off = -closure.difference();
        let suspect = closure.derived.terms().iter().find_map(|term| {
            let named = named_size(house, term.of)?;
            (named.more == off).then_some((term, named))
        });
        let Some((term, named)) = suspect else { continue };
        let label = |id: ElementId| house.model.common(id).map(|common| common.label()).unwrap_or_default();
        let finding = findings.about(
            closure.subject,
            closure.span,
            format!(
                "the level of {} is right for {} {} deep, as it is called; it is {}",
                label(closure.subject),
                named.what,
                named.nominal,
                named.actual
            ),
        );
        if let Some(span) = term.span {
            finding.related(span, format!("{} is {}", named.what, named.actual));
        }
        finding
            .help(format!("write {}", closure.derived.total().in_feet()))
            .basis("PS 20 (read in a secondary copy), published depths of rolled shapes")
            .follows(closure.subject);
        if let Some(wanted) = closure.one_answer(&house.geometry.closures, tolerance.value) {
            finding.write(closure.span, wanted.in_feet().to_string());
        }
        if let Some(asked_by) = closure.asked_by {
            finding.follows(asked_by);
        }
    }
}

/// A size as it is called and as it is.
struct NamedSize {
    what: String,
    nominal: Length,
    actual: Length,
    /// By how much what is called is more than what is there.
    more: Length,
}

/// The size that a term of a stack stands for, when its member has a nominal one.
fn named_size(house: &House, of: ElementId) -> Option<NamedSize> {
    let model = &house.model;
    let (member, count, lies_flat) = match of.kind {
        ElementKind::Joists => (model.joists_of(of)?.size.value()?, 1, false),
        ElementKind::Beam => (model.beam(of)?.size.value()?, 1, false),
        ElementKind::Wall => {
            let sill = model.wall(of)?.sill.value()?;
            (&sill.member, sill.count, true)
        }
        ElementKind::Shelf => {
            let sill = model.shelf(of)?.sill.value()?;
            (&sill.member, sill.count, true)
        }
        _ => return None,
    };
    let (nominal, actual) = sizes_of(member, lies_flat)?;
    let (nominal, actual) = (nominal.times(i64::from(count)), actual.times(i64::from(count)));
    let what = if count > 1 { format!("{count} of {}", member.text) } else { member.text.to_string() };
    Some(NamedSize { what, nominal, actual, more: nominal - actual })
}

fn sizes_of(member: &Member, lies_flat: bool) -> Option<(Length, Length)> {
    let whole = |inches: u32| Length::inches(i64::from(inches));
    match &member.written {
        Section::Nominal(thickness, _) if lies_flat => Some((whole(*thickness), member.thickness()?)),
        Section::Nominal(_, width) => Some((whole(*width), member.depth()?)),
        Section::Rolled(mark) if !lies_flat => {
            let digits: String =
                mark.chars().skip_while(|c| c.is_alphabetic()).take_while(char::is_ascii_digit).collect();
            Some((whole(digits.parse().ok()?), member.depth()?))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 100'-0" − 3/4" − 10" − 1-1/2" = 98'-11 3/4"; two sills called 2" each: 100'-0" − 3/4" − 9-1/4" − 4" = 98'-10".
    #[test]
    fn knows_joists_and_sills() {
        let house = |top: &str, sills: u32, mark: &str| {
            format!(
                "
floor main
  subfloor    100'-0\"
  deck        3/4\"
joists J1
  floor       main
  size        2x10 SPF No.2
  bears on    W1
wall W1
  kind        concrete
  sill        {sills} of 2x6 treated
  top         {top}
{mark}"
            )
        };
        check_rule(
            &RULE,
            &house(
                "98'-11 3/4\"",
                1,
                "--            ^^^^^^^^^^^ the level of wall W1 is right for 2x10 SPF No.2 10\" deep, as it is called; it is 9-1/4\"\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "98'-10\"",
                2,
                "--            ^^^^^^^ the level of wall W1 is right for 2 of 2x6 treated 4\" deep, as it is called; it is 3\"\n",
            ),
        );
        // Off by something else: not this fault.
        check_rule(&RULE, &house("98'-9\"", 1, ""));
    }

    /// A W8x24 is 7.93" deep (published): a seat found with 8" is 0.07" low.
    #[test]
    fn knows_rolled_shapes() {
        check_rule(
            &RULE,
            "
beam B1
  size        W8x24
  set         top 100'-0\"
  bears on    PK1
pocket PK1
  seat        99'-4\"
--            ^^^^^^ the level of pocket PK1 is right for W8x24 8\" deep, as it is called; it is 7-15/16\"~
",
        );
    }
}
