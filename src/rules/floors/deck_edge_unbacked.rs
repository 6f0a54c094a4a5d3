//! Edges of decks that reach past the framing.

use crate::geometry::deck_edges::at_ends;
use crate::house::House;
use crate::profiles::framing::DECK_OVERHANG;
use crate::rules::{Findings, rule};

rule! {
    /// A deck's edge reaches past the last member under it.
    ///
    /// Looked at where a `deck edge` is stated at the ends of the joists: it lies over the sill, plate or beam where they
    /// end, with the rim on its outer edge. An edge along the joists at a step is looked at by `step-edge-unframed`.
    ///
    /// ## Why
    /// Sheets of deck break along an edge that nothing holds. At a step that edge is a nosing, and people stand on it.
    ///
    /// ## Source
    /// Common practice; the limit `deck-overhang`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12'
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   bears on    B1
    ///   bears on    B2
    ///   deck edge   1 less 4-1/2"
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/2 to B/2
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12'
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   bears on    B1
    ///   bears on    B2
    ///   deck edge   1 less 2-1/4"
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/2 to B/2
    /// ```
    "deck-edge-unbacked", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let most = house.limits.of(&DECK_OVERHANG);
    for (joists, contacts) in house.model.joists.iter().zip(&house.geometry.contacts.joists) {
        for edge in at_ends(&house.model, joists, contacts).into_iter().filter(|edge| edge.past > most.value)
        {
            let Some(support) = house.model.common(edge.support) else { continue };
            findings
                .about(
                    joists.common.id,
                    edge.edge.span,
                    format!(
                        "the deck on {} reaches {} past {} with nothing under its edge: {} at the most",
                        joists.common.label(),
                        edge.past,
                        support.label(),
                        most.value
                    ),
                )
                .related(support.name_span, "the last support on that side")
                .help("move the edge, or let the joists run out to it (`cantilever`)")
                .follows(edge.support)
                .basis(most.basis());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(edge: &str, cantilever: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 12'
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  bears on    W1
  bears on    B2
{cantilever}  deck edge   {edge}
{mark}wall W1
  kind        concrete
  from        A/1 to B/1
  line        south face
  thick       8\"
  sill        1 of 2x6 treated, held in 1\" from south face
beam B2
  size        3-ply 2x10 SPF No.2
  from        A/2 to B/2
"
        )
    }

    /// The sill's outer edge is 1" inside of line 1: 3/4" past it passes (common practice).
    #[test]
    fn at_the_limit() {
        check_rule(&RULE, &house("1 plus 1/4\"", "", ""));
        check_rule(
            &RULE,
            &house(
                "1",
                "",
                "--            ^ the deck on joists J1 reaches 1\" past wall W1 with nothing under its edge: 3/4\" at the most\n",
            ),
        );
        check_rule(&RULE, &house("1", "  cantilever  past W1 by 3\"\n", ""));
    }
}
