//! Surfaces that were to be level.

use crate::facts::{NoAnswer, answers};
use crate::geometry::sum::Sum;
use crate::house::House;
use crate::model::element::{ElementId, Reference};
use crate::model::promises::Promise;
use crate::profiles::Applied;
use crate::profiles::levels::FLUSH_TOLERANCE;
use crate::profiles::stairs::STEP_FREE_EDGE;
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;
use crate::units::Length;

rule! {
    /// Two surfaces that the design promises level, or free of a step, are not.
    ///
    /// Of floors, areas, landings, stoops and slabs the walking surface is meant, of anything else its top.
    ///
    /// ## Why
    /// A sill that was to be flush becomes a step that somebody trips over, or a ramp that was not paid for.
    ///
    /// ## Source
    /// The design's own words. Without `within`, what is level differs by no more than the limit `flush-tolerance`, and a
    /// way without a step has no edge higher than the limit `step-free-edge`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor  100'-0"
    ///   finish    oak 3/4"
    /// floor den
    ///   subfloor  100'-0"
    ///   finish    tile 1-3/8"
    /// intent "One level"
    ///   keep      den step-free to main
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor  100'-0"
    ///   finish    oak 3/4"
    /// floor den
    ///   subfloor  99'-11 1/2"
    ///   finish    tile 1-1/4"
    /// intent "One level"
    ///   keep      den step-free to main
    /// ```
    "intent-not-level", Error
}

/// Two surfaces and how far apart they may be.
struct Pair<'h> {
    first: &'h Reference,
    second: &'h Reference,
    within: Option<Length>,
    limit: Applied<Length>,
    span: Span,
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for intent in &house.model.intents {
        for promise in &intent.promises {
            let pair = match promise {
                Promise::Level(first, second, within, span) => Pair {
                    first,
                    second,
                    within: *within,
                    limit: house.limits.of(&FLUSH_TOLERANCE),
                    span: *span,
                },
                Promise::StepFree(first, second, span) => {
                    Pair { first, second, within: None, limit: house.limits.of(&STEP_FREE_EDGE), span: *span }
                }
                Promise::Holds(_)
                | Promise::NothingBelowCeiling(..)
                | Promise::NoColumn(..)
                | Promise::Over(..)
                | Promise::Meeting(..)
                | Promise::StraightFace(..) => continue,
            };
            compare(house, intent.common.id, &pair, findings);
        }
    }
}

fn compare(house: &House, intent: ElementId, pair: &Pair<'_>, findings: &mut Findings<'_>) {
    let (Some(one), Some(other)) = (pair.first.target, pair.second.target) else { return };
    let (Ok(first), Ok(second)) = (surface(house, one), surface(house, other)) else { return };
    let apart = (first.total() - second.total()).abs();
    let allowed = pair.within.unwrap_or(pair.limit.value);
    if apart <= allowed {
        return;
    }
    let finding = findings.about(
        intent,
        pair.span,
        format!(
            "{} at {} is not level with {} at {}: {apart} apart, {allowed} allowed",
            pair.first.name,
            first.total().in_feet(),
            pair.second.name,
            second.total().in_feet()
        ),
    );
    finding.note(format!("{}: {first}", pair.first.name)).note(format!("{}: {second}", pair.second.name));
    finding.follows(one).follows(other);
    for element in first.elements().into_iter().chain(second.elements()) {
        finding.follows(element);
    }
    if pair.within.is_none() {
        finding.basis(pair.limit.basis());
    }
}

/// What one walks on, or the top.
fn surface(house: &House, element: ElementId) -> Result<Sum, NoAnswer> {
    match element.kind {
        ElementKind::Floor
        | ElementKind::Area
        | ElementKind::Landing
        | ElementKind::Stoop
        | ElementKind::Slab => answers::finish(house, element),
        _ => answers::top(house, element),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// 100'-0" and 3/4" of oak against 99'-11 3/4" and 3/4": 1/4" apart, which is within 1/4".
    #[test]
    fn at_the_tolerance() {
        let house = |line: &str, mark: &str| {
            format!(
                "
floor main
  subfloor  100'-0\"
  finish    oak 3/4\"
slab SL1
  top       100'-1\"
intent \"Door sill\"
  keep      {line}
{mark}"
            )
        };
        check_rule(&RULE, &house("main level with SL1 within 1/4\"", ""));
        check_rule(
            &RULE,
            &house(
                "main level with SL1 within 3/16\"",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ main at 100'-0 3/4\" is not level with SL1 at 100'-1\": 1/4\" apart, 3/16\" allowed
-- | main: 100'-0\" subfloor of main + 3/4\" finish of main = 100'-0 3/4\"
",
            ),
        );
    }

    /// 1/8\" is flush (common practice); 1/2\" is no step (ICC A117.1 303, from memory).
    #[test]
    fn at_the_limits() {
        let house = |finish: &str, promise: &str, mark: &str| {
            format!(
                "
floor main
  subfloor  100'-0\"
floor bath
  subfloor  100'-0\"
  finish    tile {finish}
intent \"Level\"
  keep      {promise}
{mark}"
            )
        };
        check_rule(&RULE, &house("1/8\"", "bath level with main", ""));
        check_rule(
            &RULE,
            &house(
                "3/16\"",
                "bath level with main",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ bath at 100'-0 3/16\" is not level with main at 100'-0\": 3/16\" apart, 1/8\" allowed\n",
            ),
        );
        check_rule(&RULE, &house("1/2\"", "main step-free to bath", ""));
        check_rule(
            &RULE,
            &house(
                "9/16\"",
                "main step-free to bath",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ main at 100'-0\" is not level with bath at 100'-0 9/16\": 9/16\" apart, 1/2\" allowed\n",
            ),
        );
    }
}
