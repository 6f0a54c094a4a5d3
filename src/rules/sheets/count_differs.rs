//! Counts on sheets.

use crate::facts::FactValue;
use crate::facts::answers::answer;
use crate::house::House;
use crate::house::lines::part_at;
use crate::model::element::ElementId;
use crate::rules::{Findings, rule};

rule! {
    /// A sheet counts another number of pieces than the house has.
    ///
    /// A mark counts once for every place where it stands; of a kind, `4 of columns`, either the marks or the pieces may
    /// be meant.
    ///
    /// ## Why
    /// The schedule is what gets ordered.
    ///
    /// ## Source
    /// Arithmetic.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x        A 0', B 12'
    ///   y        1 0', 2 10'
    /// footing F5
    ///   at       A/1
    ///   at       B/1
    /// sheet S-101
    ///   counts   3 of F5
    /// ```
    /// ```framing,passes
    /// grid
    ///   x        A 0', B 12'
    ///   y        1 0', 2 10'
    /// footing F5
    ///   at       A/1
    ///   at       B/1
    /// sheet S-101
    ///   counts   2 of F5
    /// ```
    "count-differs", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for sheet in &house.model.sheets {
        for count in &sheet.counts {
            let (stated, what) = &count.value;
            let (elements, pieces) = match house.model.named(what) {
                Some(element) => (None, pieces_of(house, element)),
                None => {
                    let (elements, pieces) = of_kind(house, what);
                    (Some(elements), pieces)
                }
            };
            let Some(pieces) = pieces else { continue };
            if *stated == pieces || elements == Some(*stated) {
                continue;
            }
            let there = elements.unwrap_or(pieces);
            let finding = findings.about(
                sheet.common.id,
                count.span,
                format!("{} counts {stated} of {what}, the spec has {there}", sheet.common.label()),
            );
            if let Some(common) = house.model.named(what).and_then(|element| house.model.common(element)) {
                finding.related(common.name_span, common.label()).follows(common.id);
            }
            finding.help("correct the sheet, or the spec").basis("arithmetic");
            if let Some(number) = part_at(house, count.span, "count") {
                finding.write(number, there.to_string());
            }
        }
    }
}

fn pieces_of(house: &House, element: ElementId) -> Option<u32> {
    match answer(house, "count", &[element]).ok()?.value {
        FactValue::Count(count) => Some(count),
        FactValue::Elevation(_)
        | FactValue::Length(_)
        | FactValue::Area(_)
        | FactValue::Size(_)
        | FactValue::Force { .. }
        | FactValue::LineLoad(_)
        | FactValue::Pressure(_)
        | FactValue::Number(_) => None,
    }
}

/// How many elements of a kind there are, and how many pieces they are as far as that is known.
fn of_kind(house: &House, plural: &str) -> (u32, Option<u32>) {
    let of_it = house.model.commons().filter(|common| common.id.kind.plural() == plural);
    of_it.fold((0, Some(0)), |(elements, pieces), common| {
        let pieces =
            pieces.zip(pieces_of(house, common.id)).map(|(pieces, more)| pieces.saturating_add(more));
        (elements + 1, pieces)
    })
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// How many joists fill a field follows from their spacing; without it nobody knows.
    #[test]
    fn counts_no_joists_without_a_spacing() {
        check_rule(
            &RULE,
            "
grid
  x        A 0', B 12'
  y        1 0', 2 10'
joists J1
  fill     A to B by 1 to 2
  run      along y
sheet S-101
  counts   9 of J1
",
        );
    }

    #[test]
    fn counts_marks_and_kinds() {
        check_rule(
            &RULE,
            "
grid
  x        A 0', B 12'
  y        1 0', 2 10'
column C1
column C2
footing F1
  at       A/1
  at       B/1
sheet S-101
  counts   2 of columns
  counts   3 of columns
--^^^^^^^^^^^^^^^^^^^^^ sheet S-101 counts 3 of columns, the spec has 2
  counts   1 of footings
  counts   2 of footings
  counts   1 of F1
--^^^^^^^^^^^^^^^^ sheet S-101 counts 1 of F1, the spec has 2
",
        );
    }
}
