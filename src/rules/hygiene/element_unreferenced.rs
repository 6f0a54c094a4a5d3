//! Elements that nothing uses.

use std::collections::HashSet;

use crate::house::House;
use crate::model::element::{Common, ElementId};
use crate::rules::{Findings, rule};
use crate::syntax::vocabulary::ElementKind;

rule! {
    /// Nothing uses an element that is there to be used.
    ///
    /// Products, shelves, pockets, ledgers, and footings that no wall and no column names. While a line or a name of the
    /// spec can't be read it might be the one, and nothing is reported.
    ///
    /// ## Why
    /// What should stand on it was deleted or renamed, or it is poured for nothing.
    ///
    /// ## Source
    /// Common practice: a schedule lists what is used.
    ///
    /// ## Examples
    /// ```framing,fires
    /// footing F1
    ///   at         A/1
    /// column C1
    /// ```
    /// ```framing,passes
    /// footing F1
    ///   concrete   3000 psi
    /// column C1
    ///   stands on  F1
    /// ```
    "element-unreferenced", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    if house.has_unread_names() {
        return;
    }
    let named: HashSet<ElementId> = house
        .model
        .mentions
        .iter()
        .filter(|mention| !mention.is_declaration)
        .map(|mention| mention.target)
        .collect();
    for common in
        house.model.commons().filter(|common| !named.contains(&common.id) && is_for_others(house, common))
    {
        let what = match common.id.kind {
            ElementKind::Footing => "nothing stands on",
            ElementKind::Product => "no member is made of",
            _ => "nothing bears on",
        };
        findings.about(common.id, common.name_span, format!("{what} {}", common.label()));
    }
}

/// It has no effect by itself.
fn is_for_others(house: &House, common: &Common) -> bool {
    match common.id.kind {
        ElementKind::Product | ElementKind::Shelf | ElementKind::Pocket | ElementKind::Ledger => true,
        ElementKind::Footing => {
            house.model.footing(common.id).is_some_and(|footing| footing.under.is_empty())
        }
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn what_serves_others_is_named_by_one() {
        check_rule(
            &RULE,
            "
wall W1
  stands on F1
wall W2
footing F1
footing F2
  under     W2
footing F3
--      ^^ nothing stands on footing F3
pocket PK1
--     ^^^ nothing bears on pocket PK1
  in        W1 from north face
product LV12
--      ^^^^ no member is made of product LV12
",
        );
    }

    #[test]
    fn a_line_that_is_not_read_might_name_it() {
        assert_eq!(found(&RULE, "footing F3\ncolumn C1\n  stands on F3;\n"), []);
        assert_eq!(found(&RULE, "footing F3\ncolumn C1\n  stands on F4\n"), []);
    }
}
