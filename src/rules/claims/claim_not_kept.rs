//! Claims that what follows from the rest contradicts.

use crate::facts::comparison::stands;
use crate::house::House;
use crate::rules::claims::{both_sides, claims};
use crate::rules::{Findings, rule};
use crate::syntax::value::{Relation, Within};

rule! {
    /// A fact should be one number, and comes to another.
    ///
    /// `top should be 99'-0 1/2"` is compared with what follows from everything else, and never used.
    ///
    /// Of what is ordered, poured or set it names the ways out; an `accept "note" on DATE` there makes it advice.
    ///
    /// ## Why
    /// The author worked the number out by hand, or took it from a sheet. One of the two has changed since.
    ///
    /// ## Source
    /// Common practice: addition. Without `within`, numbers agree when they differ by less than the limit
    /// `closure-tolerance`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor  100'-0"
    ///   finish    oak 3/4"
    ///   finish    should be 100'-1"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor  100'-0"
    ///   finish    oak 3/4"
    ///   finish    should be 100'-0 3/4"
    /// ```
    "claim-not-kept", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for (common, claim) in claims(house) {
        let Ok((derived, stated)) = both_sides(house, common, claim) else { continue };
        let standing =
            stands(house, &derived.value, Relation::Equal, &stated, claim.within.map(Within::Length));
        let Some((false, difference)) = standing else { continue };
        let mut message = format!(
            "the {} of {} should be {stated}, but it comes to {}",
            claim.fact,
            common.label(),
            derived.value
        );
        if let Some(difference) = difference {
            message.push_str(&format!(": {} apart", difference.abs()));
        }
        if let Some(within) = claim.within {
            message.push_str(&format!(", {within} allowed"));
        }
        let finding = findings.about(common.id, claim.value_span, message);
        // What is wrong with the element itself may be why.
        finding.follows(common.id);
        if difference.is_some() {
            finding.disagrees(common.id, &claim.fact, stated, derived.value.clone());
        }
        if let Some(comes_to) = derived.value.written(house.text_at(claim.value_span), claim.within) {
            finding.write(claim.value_span, comes_to);
        }
        if let Some(sum) = &derived.sum {
            finding.note(sum.to_string());
            for term in sum.terms().iter().filter(|term| term.of != common.id) {
                if let Some(span) = term.span {
                    finding.related(span, format!("{} {}", term.amount.abs(), term.what));
                }
            }
            for element in sum.elements().into_iter().filter(|element| *element != common.id) {
                finding.follows(element);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 100'-0" less 3/4" deck is 99'-11 1/4"; a dressed 2x10 (9-1/4") hangs down to 99'-2".
    #[test]
    fn prints_the_sum() {
        check_rule(
            &RULE,
            "
floor main
  subfloor  100'-0\"
  deck      3/4\"
joists J1
  floor     main
  size      2x10 SPF No.2
  top       should be 99'-11 1/4\"
  bottom    should be 99'-2 1/2\"
--                    ^^^^^^^^^^ the bottom of joists J1 should be 99'-2 1/2\", but it comes to 99'-2\": 1/2\" apart
-- | 100'-0\" subfloor of main − 3/4\" deck − 9-1/4\" joists J1 = 99'-2\"
",
        );
    }

    /// 2 x 6-1/2" is 13": at the tolerance it agrees, below it does not.
    #[test]
    fn at_the_tolerance() {
        let stair = |within: &str, mark: &str| {
            format!(
                "
floor main
  subfloor  100'-0\"
floor den
  subfloor  98'-11\"
stair S1
  from      den to main
  risers    2
  rise      should be 1'-0\" within {within}
{mark}"
            )
        };
        check_rule(&RULE, &stair("1\"", ""));
        check_rule(
            &RULE,
            &stair(
                "15/16\"",
                "--                    ^^^^^ the rise of stair S1 should be 1'-0\", but it comes to 1'-1\": 1\" apart, 15/16\" allowed\n",
            ),
        );
    }
}
