//! Posts, jacks, headers and roofs that nothing carries.

use std::collections::HashMap;

use crate::geometry::load_path::PathEnd;
use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::rules::wording::pounds;
use crate::rules::{Findings, rule};
use crate::statics::action::Source;
use crate::statics::balance::total_of;
use crate::units::Force;

rule! {
    /// A post, a pack of jacks, a header or a roof stands on nothing.
    ///
    /// Its load arrives at this place and no line says what takes it further.
    ///
    /// ## Why
    /// No beam, column or footing below was sized for it.
    ///
    /// ## Source
    /// Common practice: equilibrium; residential code R301.1 asks for a continuous path (from memory).
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column P1
    ///   at          A/1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0'
    ///   y           1 0'
    /// column P1
    ///   at          A/1
    ///   stands on   F1
    /// footing F1
    ///   at          A/1
    /// ```
    "point-load-dropped", Error, danger
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let columns = house.model.columns.iter().map(|column| (&column.common, "stands on"));
    let jacks = house.model.jacks.iter().map(|jacks| (&jacks.common, "stands on"));
    let headers = house.model.headers.iter().map(|header| (&header.common, "bears on"));
    let roofs = house.model.roofs.iter().map(|roof| (&roof.common, "bears on"));
    let loads = LoadsAbove::of(house);
    for (common, phrase) in columns.chain(jacks).chain(headers).chain(roofs) {
        if house.geometry.load_path.end_of(common.id) != PathEnd::Drops(common.id) {
            continue;
        }
        let finding = findings.about(
            common.id,
            common.name_span,
            format!("{} {} on nothing", common.label(), common.verb("stands", "stand")),
        );
        let above = loads.on(common.id);
        if !above.is_empty() {
            finding.note(format!("with it, the load of {} goes nowhere", above.join(", ")));
        }
        finding.help(format!("say `{phrase}` and what carries it, down to a footing"));
        finding.basis("R301.1 (from memory)");
    }
}

/// Who stands on whom, read upwards.
struct LoadsAbove<'a> {
    house: &'a House,
    carried: HashMap<ElementId, Vec<&'a Common>>,
}

impl<'a> LoadsAbove<'a> {
    fn of(house: &'a House) -> Self {
        let mut carried = HashMap::<_, Vec<_>>::new();
        for common in house.model.commons() {
            for carrier in house.geometry.load_path.carriers_of(common.id) {
                carried.entry(*carrier).or_default().push(common);
            }
        }
        Self { house, carried }
    }

    fn on(&self, element: ElementId) -> Vec<String> {
        let carried = self.carried.get(&element).into_iter().flatten();
        carried
            .map(|common| format!("{}{}", common.label(), brought(self.house, common.id, element)))
            .collect()
    }
}

/// How much one element brings to another, in brackets: ` (14,592 lb)`; nothing where it is not known.
fn brought(house: &House, from: ElementId, to: ElementId) -> String {
    let actions = house.forces.on(to).iter().filter(|action| action.source == Source::From(from));
    let force = total_of(actions).total();
    if force == Force::ZERO { String::new() } else { format!(" ({})", pounds(force)) }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_what_goes_down_with_it() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 12'
  y           1 0'
column P1
--     ^^ column P1 stands on nothing
-- | with it, the load of beam B1
  at          A/1
beam B1
  size        W8x18
  from        A/1 to B/1
  bears on    P1
",
        );
    }

    /// A line that can't be read may well say what carries it.
    #[test]
    fn keeps_quiet_where_a_line_is_broken() {
        check_rule(
            &RULE,
            "
grid
  x           A 0'
  y           1 0'
column P1
  at          A/1
  stands on   the big rock
",
        );
    }
}
