//! Levels stated finer than anybody can build.

use crate::house::House;
use crate::model::element::Common;
use crate::model::field::Field;
use crate::model::foundation::TopPlace;
use crate::profiles::levels::FINEST_FRACTION;
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A level in concrete or wood is stated finer than it can be built.
    ///
    /// Tops of walls, shelves, footings and slabs, seats, and the levels of floors, against the limit `finest-fraction`.
    ///
    /// ## Why
    /// Nobody sets a form to 1/32". Such a number comes from a steel depth or a conversion, and the next person rounds it
    /// to either side.
    ///
    /// ## Source
    /// Common practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0 17/32"
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        concrete
    ///   top         99'-0 9/16"
    /// ```
    "unbuildable-fraction", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let finest = house.limits.of(&FINEST_FRACTION);
    // Of the two neighbours the one is written that the rest of the stack asks for.
    let buildable = |span: Span, level: Length| {
        let closures = &house.geometry.closures;
        let asked =
            closures.iter().filter(|closure| closure.span == span).map(|closure| closure.derived.total());
        asked
            .into_iter()
            .find(|asked| asked.rounded_to(finest.value) == *asked && (*asked - level).abs() < finest.value)
    };
    let mut report = |of: &Common, what: &str, (level, span): (Length, Span)| {
        let nearest = level.rounded_to(finest.value);
        if nearest == level {
            return;
        }
        findings
            .about(
                of.id,
                span,
                format!(
                    "the {what} of {} is {}, finer than {}: nobody can build it",
                    of.label(),
                    level.in_feet().to_the(64),
                    finest.value
                ),
            )
            .help(format!("{} is the nearest", nearest.in_feet()))
            .write(span, buildable(span, level).unwrap_or(nearest).in_feet().to_string())
            .basis(finest.basis());
    };
    let stated = |field: &Field<Length>| field.stated().map(|(level, span)| (*level, span));
    let model = &house.model;
    for wall in &model.walls {
        stated(&wall.top).into_iter().for_each(|top| report(&wall.common, "top", top));
    }
    for shelf in &model.shelves {
        stated(&shelf.top).into_iter().for_each(|top| report(&shelf.common, "top", top));
    }
    for pocket in &model.pockets {
        stated(&pocket.seat).into_iter().for_each(|seat| report(&pocket.common, "seat", seat));
    }
    for footing in &model.footings {
        if let Some((TopPlace::At(top), span)) = footing.top.stated() {
            report(&footing.common, "top", (*top, span));
        }
    }
    for slab in &model.slabs {
        stated(&slab.top).into_iter().for_each(|top| report(&slab.common, "top", top));
    }
    for floor in &model.floors {
        stated(&floor.subfloor).into_iter().for_each(|level| report(&floor.common, "subfloor", level));
        stated(&floor.finish_at).into_iter().for_each(|level| report(&floor.common, "finish", level));
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn says_what_is_near() {
        check_rule(
            &RULE,
            "
footing F1
  top         91'-0 3/64\"
--            ^^^^^^^^^^^ the top of footing F1 is 91'-0 3/64\", finer than 1/16\": nobody can build it
-- | 91'-0 1/16\" is the nearest
slab SL1
  top         91'-4 1/16\"
",
        );
    }
}
