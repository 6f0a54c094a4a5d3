//! What sawn joists shrink, against the gap above the beam that does not.

use crate::diagnostic::{Edit, Fix};
use crate::geometry::carried::Carried;
use crate::geometry::drying::shrunk;
use crate::house::House;
use crate::house::lines::part_at;
use crate::model::framing::BeamSet;
use crate::model::support::Contact;
use crate::products::section::CrossGrain;
use crate::profiles::levels::{FLUSH_GAP_STEP, SHRINKAGE};
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// Sawn joists are flush with a beam that does not shrink.
    ///
    /// Joists that hang from a steel or engineered beam drop by their own drying, the beam stays. The gap above it
    /// (`held LEN low`) has to take that up.
    ///
    /// ## Why
    /// In the first heating season the deck settles on both sides and leaves a hump over the beam.
    ///
    /// ## Source
    /// Common practice: shrinkage across the grain of 0.25 % of the depth for each percent of moisture lost; the limits
    /// `shrinkage` and `flush-gap-step`. Trade texts say 3/8" to 1/2" for a 2x10.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// beam B1
    ///   size        W8x18
    ///   set         flush in main
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   hangs from  B1 by hanger 900 lb source "invented"
    /// ```
    /// ```framing,passes
    /// floor main
    ///   subfloor    100'-0"
    ///   deck        3/4"
    /// beam B1
    ///   size        W8x18
    ///   set         flush in main, held 3/8" low
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   hangs from  B1 by hanger 900 lb source "invented"
    /// ```
    "flush-steel-no-gap", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let rate = house.limits.of(&SHRINKAGE);
    let Some(lost) = house.model.moisture_lost() else { return };
    let step = house.limits.of(&FLUSH_GAP_STEP).value;
    let carried = Carried::of(&house.model);
    for beam in &house.model.beams {
        let Some((BeamSet::Flush(_, held), span)) = beam.set.stated() else { continue };
        let section = beam.size.value().and_then(|size| size.section.as_ref());
        if section.is_none_or(|section| section.cross_grain() == CrossGrain::Shrinks) {
            continue;
        }
        let hung = carried
            .joists_on(beam.common.id)
            .iter()
            .filter(|(_, support)| matches!(support.by, Contact::Hangs(_)));
        let shrinking = hung.filter_map(|(joists, _)| {
            let section = joists.size.value()?.section.as_ref()?;
            (section.cross_grain() == CrossGrain::Shrinks).then_some((section.depth, *joists))
        });
        let Some((depth, joists)) = shrinking.max_by_key(|(depth, _)| *depth) else { continue };
        let shrinks = shrunk(depth, rate.value, lost);
        let needed = shrinks.rounded_up_to(step);
        if *held >= needed {
            continue;
        }
        let finding = findings.about(
            beam.common.id,
            span,
            format!(
                "joists {} will dry by about {} beside {}, which stays: hold it {needed} low, not {held}",
                joists.common.name,
                shrinks.rounded_to(Length::sixteenths(0, 1)),
                beam.common.label()
            ),
        );
        match part_at(house, span, "held") {
            Some(place) => finding.write(place, needed.to_string()),
            None => finding.fix(Fix {
                title: format!("write `held {needed} low`"),
                edits: vec![Edit {
                    span: Span { start: span.end, ..span },
                    text: format!(", held {needed} low"),
                }],
            }),
        };
        finding
            .note(format!("{} × {:.0} points of moisture × {depth} of depth", rate.value.0, lost.0))
            .related(joists.size.span().unwrap_or(joists.common.name_span), "sawn joists that hang from it")
            .help(format!("hold the beam at least {needed} low; 3/8\" to 1/2\" is usual beside a 2x10"))
            .basis(rate.basis());
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    /// By hand: 0.0025 × (19 − 9) × 7-1/4" = 0.18", about 3/16"; the next 1/8" up is 1/4" (common practice).
    #[test]
    fn asks_for_the_drying() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
beam B1
  size        W8x18
  set         flush in main, held 1/8\" low
--            ^^^^^^^^^^^^^^^^^^^^^^^^^^^^ joists J1 will dry by about 3/16\" beside beam B1, which stays: hold it 1/4\" low, not 1/8\"
joists J1
  floor       main
  size        2x8 SPF No.2
  hangs from  B1 by hanger 900 lb source \"invented\"
",
        );
    }

    /// Engineered joists come dry: no gap is needed (common practice).
    #[test]
    fn leaves_engineered_joists_alone() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
beam B1
  size        W8x18
  set         flush in main
joists J1
  floor       main
  size        1-3/4 x 9-1/2 LVL
  hangs from  B1 by hanger 900 lb source \"invented\"
",
        );
    }
}
