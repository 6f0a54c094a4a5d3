//! Titles that name a side of the compass.

use std::collections::BTreeMap;

use crate::geometry::alignment::middle_of;
use crate::house::House;
use crate::model::element::Common;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// Two elements are titled for opposite sides, but lie the other way round.
    ///
    /// Titles that are equal but for one word, north against south or east against west, are compared with the plan.
    ///
    /// ## Why
    /// A plan mirrored in haste keeps its titles. The crew reads the titles and builds the house the wrong way round.
    ///
    /// ## Source
    /// Common practice: y grows north, x grows east.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// column C1 "North post"
    ///   at          A/1
    /// column C2 "South post"
    ///   at          A/2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// column C1 "South post"
    ///   at          A/1
    /// column C2 "North post"
    ///   at          A/2
    /// ```
    "mirrored-side", Warning
}

/// Pairs of opposite words: the one for the larger coordinate, the one for the smaller, and whether it is x.
const OPPOSITES: [(&str, &str, bool); 2] = [("north", "south", false), ("east", "west", true)];

fn check(house: &House, findings: &mut Findings<'_>) {
    for (high, low, is_x) in OPPOSITES {
        let mut by_title: BTreeMap<(&str, String), Sides<'_>> = BTreeMap::new();
        for common in house.model.commons() {
            let Some(title) = &common.title else { continue };
            let words: Vec<String> = title
                .split(|character: char| !character.is_alphanumeric())
                .filter(|word| !word.is_empty())
                .map(str::to_lowercase)
                .collect();
            let is_high = words.iter().any(|word| word == high);
            let is_low = words.iter().any(|word| word == low);
            if is_high == is_low {
                continue;
            }
            let Some((x, y)) = middle_of(&house.model, common.id) else { continue };
            let at = if is_x { x } else { y };
            let rest: Vec<String> = words
                .into_iter()
                .map(|word| if word == high || word == low { "*".to_owned() } else { word })
                .collect();
            let sides = by_title.entry((common.id.kind.word(), rest.join(" "))).or_default();
            if is_high { sides.high.push((at, common)) } else { sides.low.push((at, common)) }
        }
        for sides in by_title.values() {
            // Of several with one title, the outermost against the outermost.
            let lowest_high = sides.high.iter().min_by_key(|(at, _)| *at);
            let highest_low = sides.low.iter().max_by_key(|(at, _)| *at);
            let Some(((at, one), (other_at, other))) = lowest_high.zip(highest_low) else { continue };
            if at >= other_at {
                continue;
            }
            findings
                .about(
                    one.id,
                    one.name_span,
                    format!(
                        "{} is titled {high} and {} {low}, but it lies {} further {low}",
                        one.label(),
                        other.label(),
                        *other_at - *at
                    ),
                )
                .related(other.name_span, other.label())
                .help("exchange the titles or the places")
                .basis("common practice");
        }
    }
}

/// Elements with one title but for the side, with their places.
#[derive(Default)]
struct Sides<'a> {
    high: Vec<(Length, &'a Common)>,
    low: Vec<(Length, &'a Common)>,
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn compares_titles_that_differ_in_the_side_alone() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0', 2 10'
column C1 \"Porch, east\"
--     ^^ column C1 is titled east and column C2 west, but it lies 12'-0\" further west
  at          A/1
column C2 \"Porch, west\"
  at          B/1
column C3 \"Terrace, east\"
  at          A/2
",
        );
    }
}
