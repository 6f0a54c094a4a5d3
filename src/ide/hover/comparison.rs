//! A fact's name, and what a sheet, an intent or a claim says of it: its value, how that comes about, whether it holds.

use crate::facts::answers::{answer, answer_in_case};
use crate::facts::comparison::{Outcome, literal, outcome_of, sides, stands};
use crate::facts::{Answer, FactValue, NoAnswer};
use crate::house::House;
use crate::ide::figures::unknown_in_words;
use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::sentence::sentence;
use crate::ide::hover::{Piece, Worth};
use crate::model::element::{Assertion, Claim, ElementId};
use crate::model::promises::Promise;
use crate::syntax::Part;
use crate::syntax::value::{Comparison, FactName, Relation, Term, Value, Within};
use crate::syntax::vocabulary::{CLAIM, FACT_NAMES};

/// What there is to say of the claim, the comparison or the fact's name that the line at the cursor holds.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    let fact = cursor.fact?;
    let is_here = |part: &&Part| matches!(part.value, Value::FactName(_) | Value::Comparison(_));
    let part = fact.parts.iter().find(is_here)?;
    let said = match &part.value {
        Value::Comparison(comparison) => of_comparison(cursor, comparison),
        Value::FactName(name) if std::ptr::eq(fact.spec, &CLAIM) => of_claim(cursor, name)?,
        Value::FactName(name) => of_fact(cursor, name),
        _ => return None,
    };
    let span = if std::ptr::eq(fact.spec, &CLAIM) { fact.span } else { part.span };
    let text = said.lines.join("\n\n");
    Some(Piece { span: cursor.span(span), worth: Worth::Much, text, has_figures: said.has_figures })
}

/// Lines, and whether loads, pressures or ratios stand in them.
struct Said {
    lines: Vec<String>,
    has_figures: bool,
}

/// Whether a claim of the element holds.
pub fn claim_outcome(house: &House, of: ElementId, claim: &Claim) -> String {
    let is = match answer(house, &claim.fact, &[of]) {
        Ok(is) => is,
        Err(why) => return not_known(house, why),
    };
    let Ok(should) = literal(&claim.value) else { return value_in_words(&is) };
    let within = claim.within.map(Within::Length);
    let holds = match stands(house, &is.value, Relation::Equal, &should, within) {
        Some((true, _)) => "agrees".to_owned(),
        Some((false, Some(difference))) => format!("differs by {}", difference.abs()),
        Some((false, None)) => "differs".to_owned(),
        None => "is of another kind".to_owned(),
    };
    format!("{} follows from the rest; `{should}` is stated: {holds}", value_in_words(&is))
}

/// Whether an assertion of a sheet or an intent holds, with both numbers.
pub fn assertion_outcome(house: &House, assertion: &Assertion) -> String {
    let sign = assertion.comparison.relation.sign();
    match outcome_of(house, assertion) {
        Outcome::Holds => match sides(house, assertion) {
            Ok((left, right)) => format!("holds: {left} {sign} {right}"),
            Err(why) => not_known(house, why),
        },
        Outcome::Fails(failure) => {
            let apart =
                failure.difference.map(|apart| format!(", {} apart", apart.abs())).unwrap_or_default();
            format!("does not hold: {} is not {sign} {}{apart}", failure.left, failure.right)
        }
        Outcome::NotKnown(why) => not_known(house, why),
        Outcome::DifferentKinds(left, right) => format!("compares unlike things: {left} and {right}"),
    }
}

/// The assertions of a sheet or an intent.
pub fn assertions_of(house: &House, element: ElementId) -> Vec<&Assertion> {
    let at = element.index as usize;
    let of_sheet = house.model.sheets.get(at).filter(|sheet| sheet.common.id == element);
    let of_intent = house.model.intents.get(at).filter(|intent| intent.common.id == element);
    let promises = of_intent.into_iter().flat_map(|intent| &intent.promises);
    let held = promises.filter_map(|promise| match promise {
        Promise::Holds(assertion) => Some(assertion),
        Promise::NothingBelowCeiling(..)
        | Promise::NoColumn(..)
        | Promise::Over(..)
        | Promise::Meeting(..)
        | Promise::StepFree(..)
        | Promise::Level(..)
        | Promise::StraightFace(..) => None,
    });
    of_sheet.into_iter().flat_map(|sheet| &sheet.shows).chain(held).collect()
}

/// An answer's value with its arithmetic: `99'-0 1/2"`, then the sum.
fn value_in_words(answer: &Answer) -> String {
    let sum = answer.sum.as_ref().filter(|sum| sum.terms().len() > 1);
    match sum {
        Some(sum) => format!("**{}** ({})", answer.value, escaped(&sum.to_string())),
        None => format!("**{}**", answer.value),
    }
}

fn not_known(house: &House, why: NoAnswer) -> String {
    match why {
        NoAnswer::Unknown(unknown) => format!("not known: {}", unknown_in_words(house, &unknown)),
        NoAnswer::NotAFactOfIt => "not known: it has no such fact".to_owned(),
    }
}

fn of_claim(cursor: &Cursor<'_>, name: &FactName) -> Option<Said> {
    let (house, common) = (cursor.house(), cursor.common()?);
    let claim = common.claims.iter().find(|claim| claim.span.touches(cursor.offset))?;
    let is = answer(house, &claim.fact, &[common.id]);
    let lines = vec![
        format!("**{}** of {}", name.fact, escaped(&common.label())),
        claim_outcome(house, common.id, claim),
    ];
    Some(Said { lines, has_figures: is.is_ok_and(|answer| is_figure(&answer.value)) })
}

fn of_comparison(cursor: &Cursor<'_>, comparison: &Comparison) -> Said {
    let house = cursor.house();
    let terms = comparison.left.terms.iter().chain(&comparison.right.terms);
    let names: Vec<&FactName> = terms.filter_map(|(_, term)| fact_in(term)).collect();
    let assertions = cursor.element.map(|element| assertions_of(house, element)).unwrap_or_default();
    let assertion = assertions.into_iter().find(|one| one.span.touches(cursor.offset));
    let outcome = assertion.map(|assertion| assertion_outcome(house, assertion));
    if let Some(name) = names.iter().find(|name| cursor.span(name.span).touches(cursor.offset)) {
        let mut said = of_fact(cursor, name);
        said.lines.extend(outcome);
        return said;
    }
    let mut said = Said { lines: outcome.into_iter().collect(), has_figures: false };
    for name in names {
        let (value, is_figure) = fact_value(house, name);
        said.lines.push(format!("- {}: {value}", escaped(house.text_at(cursor.span(name.span)))));
        said.has_figures |= is_figure;
    }
    said
}

/// The fact that a term uses.
fn fact_in(term: &Term) -> Option<&FactName> {
    match term {
        Term::Fact(name) | Term::Times(_, name) => Some(name),
        Term::Half(inner) => fact_in(inner),
        Term::Value(_) => None,
    }
}

fn of_fact(cursor: &Cursor<'_>, name: &FactName) -> Said {
    let house = cursor.house();
    let (value, has_figures) = fact_value(house, name);
    let mut lines = vec![format!("**{}** is {value}", escaped(house.text_at(cursor.span(name.span))))];
    let spec = FACT_NAMES
        .iter()
        .find(|spec| *spec.words == *name.fact && spec.arguments().count() == name.of.len().max(1));
    lines.extend(spec.map(|spec| spec.meaning.to_owned()));
    let pointed = name.of.iter().find(|(_, span)| cursor.span(*span).touches(cursor.offset));
    if let Some(common) = pointed.and_then(|(name, _)| house.model.common(house.model.named(name)?)) {
        let words = sentence(house, common.id).map(|words| format!(": {words}")).unwrap_or_default();
        lines.push(format!("{}{words}", escaped(&common.label())));
    }
    Said { lines, has_figures }
}

/// What a fact comes to, and whether a caution goes with it.
fn fact_value(house: &House, name: &FactName) -> (String, bool) {
    let of: Option<Vec<ElementId>> = name.of.iter().map(|(name, _)| house.model.named(name)).collect();
    let Some(of) = of else { return ("not known: a name in it means nothing".to_owned(), false) };
    match answer_in_case(house, &name.fact, name.case.as_deref(), &of) {
        Ok(answer) => (value_in_words(&answer), is_figure(&answer.value)),
        Err(why) => (not_known(house, why), false),
    }
}

/// True of loads, pressures and ratios.
const fn is_figure(value: &FactValue) -> bool {
    match value {
        FactValue::Force { .. } | FactValue::LineLoad(_) | FactValue::Pressure(_) | FactValue::Number(_) => {
            true
        }
        FactValue::Elevation(_)
        | FactValue::Length(_)
        | FactValue::Count(_)
        | FactValue::Area(_)
        | FactValue::Size(_) => false,
    }
}

#[cfg(test)]
mod tests {
    use crate::ide::hover::tests::{HOP_BARN, LOON_COVE, check};

    /// The demo house's own figures: walls at 97'-5 1/8" and 99'-0 1/2" step by 19-3/8".
    #[test]
    fn a_fact_s_name_says_its_value_and_whether_the_line_holds() {
        let piece = "shows         st$0ep from W5 to W1";
        let expected = [
            "**step from W5 to W1** is **1'-7 3/8\"**",
            "the second wall's top",
            "holds: 1'-7 3/8\" = 1'-7 3/8\"",
        ];
        check(LOON_COVE, piece, "step from W5 to W1 = 19-3/8\"", &expected);
        check(
            LOON_COVE,
            "shows         top of W$05 = ",
            "top of W5 = 97'-5 1/8\"",
            &["**top of W5** is **97'-5 1/8\"**", "wall W5: concrete, 8\" thick, 16'-0\" long", "holds"],
        );
    }

    /// By hand: 100'-0" − 3/4" − 1/2" − 7.93" (the depth of a W8x24, published) is 99'-2.82".
    #[test]
    fn a_sum_is_told_term_by_term() {
        let expected = [
            "100'-0\" subfloor of main − 3/4\" deck − 1/2\" held low − 7-15/16\"~ beam B1 = 99'-2 13/16\"~",
            "holds: 99'-2 13/16\"~ >= 99'-2\"",
        ];
        check(LOON_COVE, "keep          $0bottom of B1 >=", "bottom of B1 >= bottom of J1", &expected);
        check(
            LOON_COVE,
            "ke$0ep          bottom of B1 >=",
            "bottom of B1 >= bottom of J1",
            &["holds", "- bottom of B1: **99'-2 13/16\"~**", "- bottom of J1: **99'-2\"**"],
        );
    }

    /// The demo house's own figure: C1 is cut to 104-3/8".
    #[test]
    fn a_claim_says_what_follows_from_the_rest() {
        let claim = "cut           should be 104-3/8\" within 1/16\"";
        let agrees = ["**8'-8 3/8\"", "follows from the rest; `8'-8 3/8\"` is stated: agrees"];
        for piece in ["cu$0t           should be 104-3/8\"", "cut           should be 104$0-3/8\""] {
            check(HOP_BARN, piece, claim, &agrees);
        }
        let text = HOP_BARN.replace("should be 104-3/8\" within 1/16\"", "should be 105-3/8\"");
        let differs = "follows from the rest; `8'-9 3/8\"` is stated: differs by 1\"";
        check(&text, "cu$0t           should be 105", "cut           should be 105-3/8\"", &[differs]);
    }

    /// The demo house's own figure.
    #[test]
    fn a_load_comes_with_the_caution() {
        let text = LOON_COVE.replace("riser of S2 <= 7\"", "load on C1 <= 14000 lb");
        check(
            &text,
            "lo$0ad on C1",
            "load on C1 <= 14000 lb",
            &[
                "is **13,136 lb**",
                "holds: 13,136 lb <= 14,000 lb",
                "have it checked by a licensed professional",
            ],
        );
    }
}
