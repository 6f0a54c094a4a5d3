//! Posts of decks and balconies that nothing holds down.

use crate::geometry::carried::Carried;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::Column;
use crate::model::site::Floor;
use crate::rules::{Findings, rule};

rule! {
    /// A post under a deck or a floor over the open air is tied to nothing at its foot.
    ///
    /// Looks at posts whose beams carry joists of a floor that is used as a deck or balcony, or lies `over outside`.
    /// How strong the tie has to be is a matter of forces, and of a licensed professional.
    ///
    /// ## Why
    /// Wind lifts and a push shifts what only stands on its pier.
    ///
    /// ## Source
    /// Residential code R507.4 and R301.1 (from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor porch
    ///   use         deck
    /// joists J1
    ///   floor       porch
    ///   bears on    B1
    /// beam B1
    ///   bears on    P1
    /// post P1
    ///   base        standoff 1"
    /// ```
    /// ```framing,passes
    /// floor porch
    ///   use         deck
    /// joists J1
    ///   floor       porch
    ///   bears on    B1
    /// beam B1
    ///   bears on    P1
    /// post P1
    ///   base        standoff 1"
    ///   tie         bottom by "post base" 900 lb source "invented"
    /// ```
    "post-untied", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for column in &house.model.columns {
        let is_tied = column.ties.iter().any(|tie| !tie.is_top) || column.common.may_say("tie");
        let Some(floor) = open_floor_on(house, &carried, column.common.id).filter(|_| !is_tied) else {
            continue;
        };
        report(column, floor, findings);
    }
}

/// A floor in the open air that a post carries through its beams.
fn open_floor_on<'a>(house: &'a House, carried: &Carried<'_>, post: ElementId) -> Option<&'a Floor> {
    let beams = carried.beams_on(post).iter().map(|(beam, _)| beam.common.id);
    let fields = beams.chain([post]).flat_map(|carrier| carried.joists_on(carrier));
    let mut floors = fields.filter_map(|(joists, _)| house.model.floor(joists.floor.value()?.target?));
    floors.find(|floor| floor.is_outdoors())
}

fn report(column: &Column, floor: &Floor, findings: &mut Findings<'_>) {
    findings
        .about(
            column.common.id,
            column.common.name_span,
            format!(
                "{} carries {} and is tied to nothing at its foot",
                column.common.label(),
                floor.common.label()
            ),
        )
        .help("write `tie bottom by \"…\" LOAD source \"…\"` with the connector that holds it")
        .basis("R507.4, R301.1 (from memory)");
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn a_tie_at_the_top_holds_no_foot() {
        check_rule(
            &RULE,
            "
floor porch
  over        outside
joists J1
  floor       porch
  bears on    B1
beam B1
  bears on    P1
post P1
--   ^^ column P1 carries floor porch and is tied to nothing at its foot
  tie         top by \"post cap\" 900 lb source \"invented\"
",
        );
    }
}
