//! Posts of decks and balconies that nothing holds down.

use crate::geometry::carried::Carried;
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::framing::Column;
use crate::model::plan::PlanPoint;
use crate::model::site::{Floor, Roof};
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// A post in the open air is tied to nothing at its foot, or, under a roof, at its top.
    ///
    /// Looks at posts whose beams carry joists of a floor that is used as a deck or balcony, or lies `over outside`, and
    /// at posts on concrete outside of every indoor floor that carry a roof. How strong a tie has to be is a matter of
    /// forces, and of a licensed professional.
    ///
    /// ## Why
    /// Wind lifts and a push shifts what only stands on its pier.
    ///
    /// ## Source
    /// Residential code R507.4, R802.11 and R301.1 (from memory).
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
    for column in house.model.columns.iter().filter(|column| !column.common.may_say("tie")) {
        let is_tied = |at_top: bool| column.ties.iter().any(|tie| tie.is_top == at_top);
        let roof = roof_in_the_open_on(house, &carried, column);
        let load = match open_floor_on(house, &carried, column.common.id) {
            Some(floor) if !is_tied(false) => &floor.common,
            Some(_) | None => match roof {
                Some(roof) if !(is_tied(false) && is_tied(true)) => &roof.common,
                Some(_) | None => continue,
            },
        };
        let place = match roof {
            Some(_) if !is_tied(true) && !is_tied(false) => "at its top and its foot",
            Some(_) if !is_tied(true) => "at its top",
            Some(_) | None => "at its foot",
        };
        report(column, load, place, findings);
    }
}

/// A roof that a post on concrete carries, itself or through its beams, outside of every indoor floor.
fn roof_in_the_open_on<'a>(house: &'a House, carried: &Carried<'_>, post: &Column) -> Option<&'a Roof> {
    let on = post.stands_on.value()?.on.reference()?.target?;
    if !matches!(on.kind, ElementKind::Footing | ElementKind::Slab)
        || is_indoors(house, carried, post.at.value()?)
    {
        return None;
    }
    let path = &house.geometry.load_path;
    let loads = path.carried_by(post.common.id).iter();
    let over_beams = loads.clone().filter(|load| load.kind == ElementKind::Beam);
    let mut roofs = over_beams
        .flat_map(|beam| path.carried_by(*beam))
        .chain(loads)
        .filter(|load| load.kind == ElementKind::Roof);
    house.model.roofs.get(roofs.next()?.index as usize)
}

/// A place lies in the joists or on the slab of a floor that is not in the open air.
fn is_indoors(house: &House, carried: &Carried<'_>, place: &PlanPoint) -> bool {
    house.model.floors.iter().filter(|floor| !floor.is_outdoors()).any(|floor| {
        let joists = carried.fields_of(floor.common.id).iter().flat_map(|joists| &joists.fill);
        let slab = floor.on.value().and_then(|slab| house.model.slab(slab.target?));
        joists.chain(slab.iter().flat_map(|slab| &slab.fill)).any(|rect| rect.contains(place))
    })
}

/// A floor in the open air that a post carries through its beams.
fn open_floor_on<'a>(house: &'a House, carried: &Carried<'_>, post: ElementId) -> Option<&'a Floor> {
    let beams = carried.beams_on(post).iter().map(|(beam, _)| beam.common.id);
    let fields = beams.chain([post]).flat_map(|carrier| carried.joists_on(carrier));
    let mut floors = fields.filter_map(|(joists, _)| house.model.floor(joists.floor.value()?.target?));
    floors.find(|floor| floor.is_outdoors())
}

fn report(column: &Column, load: &Common, place: &str, findings: &mut Findings<'_>) {
    findings
        .about(
            column.common.id,
            column.common.name_span,
            format!("{} carries {} and is tied to nothing {place}", column.common.label(), load.label()),
        )
        .help(
            "write `tie bottom by \"…\" LOAD source \"…\"`, or `tie top …`, with the connector that holds it",
        )
        .basis("R507.4, R802.11, R301.1 (from memory)");
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

    /// P1 stands in the open, P2 under the house.
    #[test]
    fn a_porch_roof_lifts_both_ends() {
        let house = |ties: &str, mark: &str| {
            format!(
                "
grid
  x           A 0', B 20'
  y           1 0', 2 14'
floor main
joists J1
  floor       main
  fill        A to B by 1 to 2
footing F1
post P1
{mark}  at          A / 1 less 6'
  stands on   F1
{ties}post P2
  at          A plus 2' / 1 plus 6'
  stands on   F1
beam B1
  bears on    P1
roof R1
  bears on    B1
roof R2
  bears on    P2
"
            )
        };
        let (top, bottom) = (
            "  tie         top by \"post cap\" 900 lb source \"invented\"\n",
            "  tie         bottom by \"post base\" 900 lb source \"invented\"\n",
        );
        check_rule(&RULE, &house(&format!("{top}{bottom}"), ""));
        check_rule(
            &RULE,
            &house(bottom, "--   ^^ column P1 carries roof R1 and is tied to nothing at its top\n"),
        );
        check_rule(
            &RULE,
            &house("", "--   ^^ column P1 carries roof R1 and is tied to nothing at its top and its foot\n"),
        );
    }
}
