//! The span behind an overhang.

use crate::geometry::plan_contacts::FieldContact;
use crate::house::House;
use crate::model::framing::Joists;
use crate::profiles::framing::BACK_SPAN_BALCONY;
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// Joists reach out further than the span behind holds down.
    ///
    /// The span behind an overhang is at least twice as long as the overhang; under a wall or a roof the code's tables
    /// ask for more, and for an anchor at the far end.
    ///
    /// ## Why
    /// The far end lifts, and the edge of the overhang sags and bounces.
    ///
    /// ## Source
    /// Residential code R502.3.3, for balconies; the limit `back-span-balcony`.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 6', 3 10'
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/2 to B/2
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 3
    ///   run         along y
    ///   bears on    B1
    ///   bears on    B2
    ///   cantilever  past B2 by 4'-0"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 8', 3 12'
    /// beam B1
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/1 to B/1
    /// beam B2
    ///   size        3-ply 2x10 SPF No.2
    ///   from        A/2 to B/2
    /// joists J1
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 3
    ///   run         along y
    ///   bears on    B1
    ///   bears on    B2
    ///   cantilever  past B2 by 4'-0"
    /// ```
    "back-span-short", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let times = house.limits.of(&BACK_SPAN_BALCONY);
    'fields: for (joists, contacts) in house.model.joists.iter().zip(&house.geometry.contacts.joists) {
        let mut stations: Vec<(Length, &str)> = Vec::new();
        for (support, contact) in joists.supports.iter().zip(&contacts.supports) {
            match contact {
                Ok(FieldContact::Crosses { station, .. }) => stations.push((*station, support.on.name())),
                Ok(FieldContact::RunsAlong | FieldContact::Misses { .. }) => {}
                Err(_) => continue 'fields,
            }
        }
        stations.sort();
        for cantilever in &joists.cantilevers {
            let (past, overhang) = &cantilever.value;
            let Some(back_span) = back_span(joists, &stations, &past.name) else { continue };
            let needed = overhang.scaled(times.value.0);
            if back_span >= needed {
                continue;
            }
            findings
                .about(
                    joists.common.id,
                    cantilever.span,
                    format!(
                        "{} reach {overhang} past {} with a span of {back_span} behind: {needed} at the least",
                        joists.common.label(),
                        past.name
                    ),
                )
                .note("a wall or roof on the overhang asks for more: that is not looked at here")
                .help("shorten the overhang, or move the support outward")
                .basis(times.basis());
        }
    }
}

/// The distance from a support to the next one behind the overhang past it.
fn back_span(joists: &Joists, stations: &[(Length, &str)], past: &str) -> Option<Length> {
    let run = joists.run.get()?;
    let at = stations.iter().position(|(_, name)| *name == past)?;
    let (here, _) = stations.get(at)?;
    let low = joists.fill.iter().map(|rect| rect.on(run).0).min()?;
    let high = joists.fill.iter().map(|rect| rect.on(run).1).max()?;
    let is_at_low_end = (*here - low).abs() < (high - *here).abs();
    let next = if is_at_low_end { stations.get(at + 1) } else { stations.get(at.checked_sub(1)?) };
    next.map(|(next, _)| (*next - *here).abs())
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(overhang: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 6'
beam B1
  size        3-ply 2x10 SPF No.2
  from        A/1 to B/1
beam B2
  size        3-ply 2x10 SPF No.2
  from        A/2 to B/2
joists J1
  size        2x10 SPF No.2
  fill        A to B by 1 less {overhang} to 2
  run         along y
  bears on    B1
  bears on    B2
  cantilever  past B1 by {overhang}
{mark}"
        )
    }

    /// A field that lies on a name that is missing says nothing of the next field.
    #[test]
    fn an_unknown_field_hides_no_other() {
        let unknown = "joists J0
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  bears on    B9
joists J1
";
        let mark = "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^ joists J1 reach 3'-1\" past B1 with a span of 6'-0\" behind: 6'-2\" at the least\n";
        check_rule(&RULE, &house("3'-1\"", mark).replace("joists J1\n", unknown));
    }

    /// Twice the overhang: 6'-0\" behind hold 3'-0\".
    #[test]
    fn at_the_limit() {
        check_rule(&RULE, &house("3'-0\"", ""));
        check_rule(
            &RULE,
            &house(
                "3'-1\"",
                "--^^^^^^^^^^^^^^^^^^^^^^^^^^^^ joists J1 reach 3'-1\" past B1 with a span of 6'-0\" behind: 6'-2\" at the least\n",
            ),
        );
    }
}
