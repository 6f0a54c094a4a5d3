//! What sheets and intents assert: two expressions and what should hold between them.

use crate::facts::answers::answer_in_case;
use crate::facts::{FactValue, NoAnswer};
use crate::geometry::sum::Sum;
use crate::house::House;
use crate::model::element::{Assertion, ElementId};
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::syntax::value::{Expression, FactName, Load, Relation, Sign, Term, Value, Within};
use crate::units::{Area, Force, Length};

/// How an assertion stands.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// It holds.
    Holds,
    /// It does not.
    Fails(Failure),
    /// One side has no value: why.
    NotKnown(NoAnswer),
    /// The two sides are of different kinds: a length against a number.
    DifferentKinds(FactValue, FactValue),
}

/// An assertion that does not hold.
#[derive(Clone, Debug, PartialEq)]
pub struct Failure {
    /// The left side's value.
    pub left: FactValue,
    /// The right side's value.
    pub right: FactValue,
    /// Left less right, when both are lengths.
    pub difference: Option<Length>,
    /// How far apart still counts as equal.
    pub within: Length,
    /// The arithmetic of the facts on either side.
    pub sums: Vec<Sum>,
    /// The elements of both sides, in the order named.
    pub of: Vec<ElementId>,
}

/// How an assertion stands.
pub fn outcome_of(house: &House, assertion: &Assertion) -> Outcome {
    let comparison = &assertion.comparison;
    let (mut sums, mut of) = (Vec::new(), Vec::new());
    let left = match value_of(house, &comparison.left, &mut sums, &mut of) {
        Ok(value) => value,
        Err(why) => return Outcome::NotKnown(why),
    };
    let right = match value_of(house, &comparison.right, &mut sums, &mut of) {
        Ok(value) => value,
        Err(why) => return Outcome::NotKnown(why),
    };
    let within = comparison.within.and_then(Within::length).unwrap_or_default();
    match stands(house, &left, comparison.relation, &right, comparison.within) {
        Some((true, _)) => Outcome::Holds,
        Some((false, difference)) => Outcome::Fails(Failure { left, right, difference, within, sums, of }),
        None => Outcome::DifferentKinds(left, right),
    }
}

/// What both sides of an assertion come to.
///
/// # Errors
/// [`NoAnswer`] when one of them has no value.
pub fn sides(house: &House, assertion: &Assertion) -> Result<(FactValue, FactValue), NoAnswer> {
    let (mut sums, mut of) = (Vec::new(), Vec::new());
    let left = value_of(house, &assertion.comparison.left, &mut sums, &mut of)?;
    Ok((left, value_of(house, &assertion.comparison.right, &mut sums, &mut of)?))
}

/// True when the two values stand so to each other, and the left less the right when they are lengths. `None` for
/// values of different kinds.
pub fn stands(
    house: &House,
    left: &FactValue,
    relation: Relation,
    right: &FactValue,
    within: Option<Within>,
) -> Option<(bool, Option<Length>)> {
    match (left, right) {
        (FactValue::Count(a), FactValue::Count(b)) => Some((holds_between(relation, a.cmp(b), a == b), None)),
        (FactValue::Area(a), FactValue::Area(b)) => {
            // Areas are stated to the whole square foot.
            let is_equal = (a.to_sq_ft() - b.to_sq_ft()).abs() <= 0.5;
            let order = a.partial_cmp(b).unwrap_or(std::cmp::Ordering::Equal);
            Some((holds_between(relation, order, is_equal), None))
        }
        (FactValue::Size(a), FactValue::Size(b)) => Some((a == b, None)),
        (FactValue::Force { whole: a, .. }, FactValue::Force { whole: b, .. }) => {
            let apart = match within {
                Some(Within::Load(Load::Point(apart))) => apart.to_lb(),
                _ => LOAD_AS_STATED,
            };
            Some((close(relation, a.to_lb(), b.to_lb(), apart), None))
        }
        (FactValue::Force { each_foot: Some(a), .. }, FactValue::LineLoad(b))
        | (FactValue::LineLoad(a), FactValue::LineLoad(b)) => {
            let apart = match within {
                Some(Within::Load(Load::Line(apart))) => apart.to_plf(),
                _ => LOAD_AS_STATED,
            };
            Some((close(relation, a.to_plf(), b.to_plf(), apart), None))
        }
        (FactValue::Pressure(a), FactValue::Pressure(b)) => {
            let apart = match within {
                Some(Within::Load(Load::Area(apart))) => apart.to_psf(),
                _ => LOAD_AS_STATED,
            };
            Some((close(relation, a.to_psf(), b.to_psf(), apart), None))
        }
        (FactValue::Number(a), FactValue::Number(b)) => {
            Some((close(relation, *a, *b, RATIO_AS_STATED), None))
        }
        (FactValue::Number(a), FactValue::Count(b)) => {
            Some((close(relation, *a, f64::from(*b), RATIO_AS_STATED), None))
        }
        (a, b) => {
            let (a, b) = (a.as_length()?, b.as_length()?);
            let difference = a - b;
            // Within says how far at most; without it the two agree when they differ by less than the tolerance.
            let is_equal = match within {
                Some(Within::Length(within)) => difference.abs() <= within,
                Some(Within::Load(_)) => return None,
                None => difference.abs() < house.limits.of(&CLOSURE_TOLERANCE).value,
            };
            Some((holds_between(relation, a.cmp(&b), is_equal), Some(difference)))
        }
    }
}

/// A load is stated to the whole pound.
const LOAD_AS_STATED: f64 = 0.5;

/// A ratio is stated to the hundredth.
const RATIO_AS_STATED: f64 = 0.005;

fn close(relation: Relation, a: f64, b: f64, apart: f64) -> bool {
    let order = a.partial_cmp(&b).unwrap_or(std::cmp::Ordering::Equal);
    holds_between(relation, order, (a - b).abs() <= apart)
}

fn holds_between(relation: Relation, order: std::cmp::Ordering, is_equal: bool) -> bool {
    match relation {
        Relation::Equal => is_equal,
        Relation::Less => order.is_lt() && !is_equal,
        Relation::AtMost => order.is_lt() || is_equal,
        Relation::More => order.is_gt() && !is_equal,
        Relation::AtLeast => order.is_gt() || is_equal,
    }
}

fn value_of(
    house: &House,
    expression: &Expression,
    sums: &mut Vec<Sum>,
    of: &mut Vec<ElementId>,
) -> Result<FactValue, NoAnswer> {
    let mut total: Option<FactValue> = None;
    for (sign, term) in &expression.terms {
        let value = term_value(house, term, sums, of)?;
        total = Some(match (total, sign) {
            (None, Sign::Plus) => value,
            (None, Sign::Less) => times(&value, -1.0)?,
            (Some(sum), Sign::Plus) => added(&sum, &value, 1)?,
            (Some(sum), Sign::Less) => added(&sum, &value, -1)?,
        });
    }
    total.ok_or(NoAnswer::NotAFactOfIt)
}

fn term_value(
    house: &House,
    term: &Term,
    sums: &mut Vec<Sum>,
    of: &mut Vec<ElementId>,
) -> Result<FactValue, NoAnswer> {
    match term {
        Term::Value(value) => literal(value),
        Term::Fact(fact) => fact_value(house, fact, sums, of),
        Term::Times(factor, fact) => times(&fact_value(house, fact, sums, of)?, *factor),
        Term::Half(term) => times(&term_value(house, term, sums, of)?, 0.5),
    }
}

fn fact_value(
    house: &House,
    fact: &FactName,
    sums: &mut Vec<Sum>,
    of: &mut Vec<ElementId>,
) -> Result<FactValue, NoAnswer> {
    let elements: Option<Vec<ElementId>> = fact.of.iter().map(|(name, _)| house.model.named(name)).collect();
    let unknown = NoAnswer::Unknown(crate::geometry::sum::Unknown { of: None, fact: "name" });
    let elements = elements.ok_or(unknown)?;
    of.extend(&elements);
    let answer = answer_in_case(house, &fact.fact, fact.case.as_deref(), &elements)?;
    sums.extend(answer.sum);
    Ok(answer.value)
}

/// A value as the author states it.
///
/// # Errors
/// [`NoAnswer::NotAFactOfIt`] for a value that no fact has.
pub fn literal(value: &Value) -> Result<FactValue, NoAnswer> {
    match value {
        Value::Length(length) => Ok(FactValue::Length(*length)),
        Value::Count(count) => Ok(FactValue::Count(*count)),
        Value::Area(area) => Ok(FactValue::Area(*area)),
        Value::Load(Load::Point(force)) => Ok(FactValue::Force { whole: *force, each_foot: None }),
        Value::Load(Load::Line(load)) => Ok(FactValue::LineLoad(*load)),
        Value::Load(Load::Area(pressure)) => Ok(FactValue::Pressure(*pressure)),
        Value::Number(number) => Ok(FactValue::Number(*number)),
        _ => Err(NoAnswer::NotAFactOfIt),
    }
}

fn times(value: &FactValue, factor: f64) -> Result<FactValue, NoAnswer> {
    match value {
        FactValue::Elevation(length) | FactValue::Length(length) => {
            Ok(FactValue::Length(length.scaled(factor)))
        }
        FactValue::Area(area) => Ok(FactValue::Area(*area * factor)),
        FactValue::Force { whole, each_foot } => {
            Ok(FactValue::Force { whole: *whole * factor, each_foot: each_foot.map(|load| load * factor) })
        }
        FactValue::LineLoad(load) => Ok(FactValue::LineLoad(*load * factor)),
        FactValue::Pressure(pressure) => Ok(FactValue::Pressure(*pressure * factor)),
        FactValue::Number(number) => Ok(FactValue::Number(number * factor)),
        FactValue::Count(_) | FactValue::Size(_) => Err(NoAnswer::NotAFactOfIt),
    }
}

fn added(sum: &FactValue, value: &FactValue, sign: i64) -> Result<FactValue, NoAnswer> {
    match (sum, value) {
        (FactValue::Count(a), FactValue::Count(b)) => {
            let total = i64::from(*a) + sign * i64::from(*b);
            u32::try_from(total).map(FactValue::Count).map_err(|_| NoAnswer::NotAFactOfIt)
        }
        (FactValue::Area(a), FactValue::Area(b)) => {
            Ok(FactValue::Area(Area::sq_ft(a.to_sq_ft() + sign as f64 * b.to_sq_ft())))
        }
        (FactValue::Force { whole: a, .. }, FactValue::Force { whole: b, .. }) => {
            let whole: Force = *a + *b * sign as f64;
            Ok(FactValue::Force { whole, each_foot: None })
        }
        (a, b) => match (a.as_length(), b.as_length()) {
            (Some(length), Some(other)) => {
                let total = length + other.times(sign);
                let stays_elevation =
                    matches!(a, FactValue::Elevation(_)) && !matches!(b, FactValue::Elevation(_));
                Ok(if stays_elevation { FactValue::Elevation(total) } else { FactValue::Length(total) })
            }
            _ => Err(NoAnswer::NotAFactOfIt),
        },
    }
}
