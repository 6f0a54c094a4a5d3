//! What could not be verified, in one finding a house.

use std::collections::BTreeMap;

use crate::design::NotCovered;
use crate::house::House;
use crate::model::element::ElementId;
use crate::rules::{Findings, rule};
use crate::verify::check::NotVerified;
use crate::verify::limit_state::LimitState;

/// More elements than this are not named one by one.
const MOST_NAMED: usize = 4;

rule! {
    /// Checks of strength that could not run.
    ///
    /// One finding a house: which checks, of what, and why, those of one kind together. A check that waits for a line that
    /// can't be read is left out; that line has a finding of its own.
    ///
    /// ## Why
    /// A check that did not run is not a check that passed. Somebody else must make it: with the code's own table, the
    /// maker's values or an engineer.
    ///
    /// ## Source
    /// Common practice. Each line names the clause that gives no value here.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 30'
    ///   y           1 0', 2 24'
    /// slab SL1
    ///   fill        A to B by 1 plus 8" to 2
    ///   top         91'-0"
    /// footing F1
    ///   under       W1
    ///   size        20" x 10"
    ///   top         90'-8"
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        south face
    ///   thick       8"
    ///   top         99'-0"
    ///   grade       97'-6" on south
    ///   stands on   F1
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 30'
    ///   y           1 0', 2 24'
    /// slab SL1
    ///   fill        A to B by 1 plus 8" to 2
    ///   top         95'-0"
    /// footing F1
    ///   under       W1
    ///   size        20" x 10"
    ///   top         94'-8"
    /// wall W1
    ///   kind        concrete
    ///   from        A/1 to B/1
    ///   line        south face
    ///   thick       8"
    ///   top         99'-0"
    ///   grade       97'-6" on south
    ///   stands on   F1
    /// ```
    "check-not-run", Advice
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let groups = groups_of(house);
    let Some(first) = groups.values().next().and_then(|group| group.of.first()).copied() else { return };
    let project = house.model.project.as_ref().map(|project| &project.common);
    let Some(place) = project.or_else(|| house.model.common(first)) else { return };
    let n_checks: usize = groups.values().map(|group| group.n_checks).sum();
    let mut states: Vec<&str> = groups.keys().map(|(limit_state, _)| limit_state.words()).collect();
    states.dedup();
    let noun = if n_checks == 1 { "check" } else { "checks" };
    let finding = findings.about(
        place.id,
        place.name_span,
        format!("{n_checks} {noun} could not run: {}", states.join(", ")),
    );
    for ((limit_state, _), group) in &groups {
        finding.note(format!("{}, {}: {}", limit_state.words(), named(house, &group.of), group.why));
    }
    finding.help("have them made with the code's own table, the maker's values or an engineer");
}

/// Checks that could not run for one reason.
struct Group {
    of: Vec<ElementId>,
    why: String,
    n_checks: usize,
}

fn groups_of(house: &House) -> BTreeMap<(LimitState, String), Group> {
    let mut groups: BTreeMap<(LimitState, String), Group> = BTreeMap::new();
    for verification in house.verifications.all() {
        let Err(why) = &verification.outcome else { continue };
        if matches!(why, NotVerified::Missing(..) | NotVerified::NoForces(_)) && house.has_unread_names() {
            continue;
        }
        let group = groups.entry((verification.limit_state, kind_of(why))).or_insert_with(|| Group {
            of: Vec::new(),
            why: why.to_string(),
            n_checks: 0,
        });
        group.n_checks = group.n_checks.saturating_add(1);
        if !group.of.contains(&verification.of) {
            group.of.push(verification.of);
        }
    }
    groups
}

/// The reason without its numbers, so that like reasons come together.
fn kind_of(why: &NotVerified) -> String {
    match why {
        NotVerified::NotCovered(
            NotCovered::OutOfRange { quantity, clause, .. }
            | NotCovered::LengthOutOfRange { quantity, clause, .. }
            | NotCovered::NoRule { what: quantity, clause },
        ) => format!("{quantity} {clause}"),
        NotVerified::Missing(_, fact) => (*fact).to_owned(),
        NotVerified::Stuff(no_stuff) => no_stuff.to_string(),
        NotVerified::NoForces(why) => why.to_string(),
    }
}

/// `wall W1, wall W2 and 4 more`.
fn named(house: &House, elements: &[ElementId]) -> String {
    let shown = elements.iter().take(MOST_NAMED).filter_map(|element| house.model.common(*element));
    let shown: Vec<String> = shown.map(|common| common.label()).collect();
    match elements.len().saturating_sub(MOST_NAMED) {
        0 => shown.join(", "),
        more => format!("{} and {more} more", shown.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// By hand: 99'-0\" less 90'-8\" is 8'-4\"; the only row of the table that was read is of walls to 5 ft.
    #[test]
    fn like_reasons_come_together() {
        check_rule(
            &RULE,
            "
grid
  x           A 0', B 30'
  y           1 0', 2 24'
slab SL1
  fill        A plus 8\" to B by 1 plus 8\" to 2
  top         91'-0\"
footing F1
  under       W1, W2
  size        20\" x 10\"
  top         90'-8\"
wall W1
--   ^^ 2 checks could not run: earth against the wall
-- | earth against the wall, wall W1, wall W2: height of the wall is 8'-4\", the limit is 5'-0\"
  kind        concrete
  from        A/1 to B/1
  line        south face
  thick       8\"
  top         99'-0\"
  grade       97'-6\" on south
  stands on   F1
wall W2
  kind        concrete
  from        A/1 to A/2
  line        west face
  thick       8\"
  top         99'-0\"
  grade       97'-6\" on west
  stands on   F1
",
        );
    }
}
