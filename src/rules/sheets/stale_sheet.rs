//! Sheets that were checked before the last news from the site.

use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::model::promises::Sheet;
use crate::rules::{Findings, rule};
use crate::syntax::value::Date;

rule! {
    /// Something on a sheet was measured, ordered, poured or set after the sheet was last checked.
    ///
    /// Looks at the elements that the sheet shows, counts and schedules, and at the dates of their `status`, their shots
    /// and their `accept` notes.
    ///
    /// ## Why
    /// The sheet still shows what was planned; what stands may be another number.
    ///
    /// ## Source
    /// Common practice of drawing control.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W2
    ///   kind     concrete
    ///   top      99'-0 1/2"
    ///   shot     top 99'-0 3/8" on 2027-04-03
    /// sheet A-301
    ///   shows    top of W2 = 99'-0 1/2"
    ///   checked  2027-03-14
    /// ```
    /// ```framing,passes
    /// wall W2
    ///   kind     concrete
    ///   top      99'-0 1/2"
    ///   shot     top 99'-0 3/8" on 2027-04-03
    /// sheet A-301
    ///   shows    top of W2 = 99'-0 1/2"
    ///   checked  2027-04-03
    /// ```
    "stale-sheet", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for sheet in &house.model.sheets {
        let Some((checked, span)) = sheet.checked.stated() else { continue };
        for element in elements_on(house, sheet) {
            let Some(common) = house.model.common(element) else { continue };
            let Some((date, what)) = latest(common).filter(|(date, _)| date > checked) else { continue };
            findings
                .about(
                    sheet.common.id,
                    span,
                    format!(
                        "{} was last checked on {checked}, {} was {what} on {date}",
                        sheet.common.label(),
                        common.label()
                    ),
                )
                .related(common.name_span, common.label())
                .help("compare the sheet with the spec and date it anew")
                .basis("common practice");
        }
    }
}

/// The elements that a sheet says something of, each once.
fn elements_on(house: &House, sheet: &Sheet) -> Vec<ElementId> {
    let mut elements = Vec::new();
    for assertion in &sheet.shows {
        for side in [&assertion.comparison.left, &assertion.comparison.right] {
            elements.extend(side.names().filter_map(|name| house.model.named(name)));
        }
    }
    elements.extend(sheet.counts.iter().filter_map(|count| house.model.named(&count.value.1)));
    elements.extend(sheet.schedules.iter().filter_map(|mark| mark.target));
    elements.sort();
    elements.dedup();
    elements
}

/// The last thing that happened to an element, and on which day.
fn latest(common: &Common) -> Option<(Date, &'static str)> {
    let status = common.status.value().and_then(|status| Some((status.since?, status.stage.word())));
    let shots = common.shots.iter().filter_map(|shot| Some((shot.on?, "measured")));
    let accepts = common.accepts.iter().filter_map(|accept| Some((accept.value.on?, "accepted as it is")));
    status.into_iter().chain(shots).chain(accepts).max()
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    #[test]
    fn names_the_last_event() {
        check_rule(
            &RULE,
            "
wall W2
  kind     concrete
  status   poured 2027-04-02
  shot     top 99'-0 3/8\" on 2027-04-03
footing F1
  status   poured 2027-03-01
sheet A-301
  shows    top of W2 = 99'-0 1/2\"
  shows    top of F1 = 91'-0\"
  checked  2027-03-14
--         ^^^^^^^^^^ sheet A-301 was last checked on 2027-03-14, wall W2 was measured on 2027-04-03
",
        );
    }
}
