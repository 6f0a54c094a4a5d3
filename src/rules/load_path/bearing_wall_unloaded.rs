//! Bearing walls that nothing bears on.

use crate::house::House;
use crate::model::support::Carrier;
use crate::rules::{Findings, rule};

rule! {
    /// A framed wall is said to bear, and nothing bears on it.
    ///
    /// Joists, a beam, a roof, another wall, a post or jacks may name it, or a `load` say what comes from what the spec
    /// leaves out. While a line or a name of the spec can't be read it might be the one, and nothing is reported.
    ///
    /// ## Why
    /// Either its load was forgotten, and everything below it is sized without it, or the wall is a partition.
    ///
    /// ## Source
    /// Common practice: a wall on a plan is marked as bearing for something that bears.
    ///
    /// ## Examples
    /// ```framing,fires
    /// wall W1
    ///   kind        framed
    ///   bearing     yes
    /// ```
    /// ```framing,passes
    /// wall W1
    ///   kind        framed
    ///   bearing     yes
    ///   load        435 plf live "second floor"
    /// ```
    "bearing-wall-unloaded", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    if house.has_unread_names() {
        return;
    }
    let model = &house.model;
    for wall in &model.walls {
        let Some((true, span)) = wall.bearing.stated().map(|(bears, span)| (*bears, span)) else { continue };
        let id = wall.common.id;
        let stands_on_it = |on: &Carrier| on.reference().and_then(|reference| reference.target) == Some(id);
        let is_loaded = !house.geometry.load_path.carried_by(id).is_empty()
            || !wall.loads.is_empty()
            || model.loads.iter().any(|load| load.on.value().is_some_and(stands_on_it));
        if wall.kind.value().is_none_or(|kind| kind.is_mineral()) || is_loaded {
            continue;
        }
        findings
            .about(id, span, format!("{} is said to bear, and nothing bears on it", wall.common.label()))
            .help("say what bears on it, declare what comes from elsewhere (`load 435 plf live \"…\"`), or write `bearing no`")
            .basis("common practice");
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::{check_rule, found};

    #[test]
    fn whatever_names_it_loads_it() {
        for more in [
            "joists J1\n  bears on  W1\n",
            "beam B1\n  bears on  W1\n",
            "roof R1\n  bears on  W1\n",
            "wall W2\n  stands on  main over W1\nfloor main\n",
            "load LD1\n  on  W1\n",
        ] {
            assert_eq!(
                found(&RULE, &format!("wall W1\n  kind  framed\n  bearing  yes\n{more}")),
                [],
                "{more}"
            );
        }
    }

    #[test]
    fn a_pony_wall_that_says_nothing_makes_no_claim() {
        check_rule(
            &RULE,
            "
wall W1
  kind      pony
wall W2
  kind      pony
  bearing   yes
--          ^^^ wall W2 is said to bear, and nothing bears on it
wall W3
  kind      framed
  bearing   no
",
        );
    }

    #[test]
    fn a_line_that_is_not_read_might_name_it() {
        assert_eq!(found(&RULE, "wall W1\n  kind  framed\n  bearing  yes\njoists J1\n  bears on  ?\n"), []);
    }
}
