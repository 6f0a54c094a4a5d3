//! The live load of a floor against what it is used for.

use crate::house::House;
use crate::model::element::Common;
use crate::model::field::Field;
use crate::profiles::loads::live_load_of;
use crate::rules::{Findings, rule};
use crate::units::AreaLoad;

rule! {
    /// A floor is framed for less live load than its use brings.
    ///
    /// Compares `live` with the least load of `use`, for floors and for areas of their own.
    ///
    /// ## Why
    /// Books, tubs and crowds weigh what they weigh, whatever the joists were sized for.
    ///
    /// ## Source
    /// Residential code Table R301.5; the limits `live-…`. The load of a room full of books is common practice: the
    /// code leaves it to the designer.
    ///
    /// ## Examples
    /// ```framing,fires
    /// floor main
    ///   subfloor    100'-0"
    ///   use         living
    ///   live        30 psf
    /// ```
    /// ```framing,passes
    /// floor attic
    ///   subfloor    109'-0"
    ///   use         sleeping
    ///   live        30 psf
    /// ```
    "load-below-use", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    for floor in &house.model.floors {
        judge(house, &floor.common, &floor.use_, &floor.live, findings);
    }
    for area in &house.model.areas {
        let floor = area.floor.value().and_then(|floor| house.model.floor(floor.target?));
        let live = if area.live.is_missing() { floor.map(|floor| &floor.live) } else { Some(&area.live) };
        if let (Some(live), true) = (live, area.use_.stated().is_some() || area.live.stated().is_some()) {
            let use_ = if area.use_.is_missing() { floor.map(|floor| &floor.use_) } else { Some(&area.use_) };
            if let Some(use_) = use_ {
                judge(house, &area.common, use_, live, findings);
            }
        }
    }
}

fn judge(
    house: &House,
    common: &Common,
    use_: &Field<Box<str>>,
    live: &Field<AreaLoad>,
    findings: &mut Findings<'_>,
) {
    let (Some((stated, span)), Some(use_word)) = (live.stated(), use_.value()) else { return };
    let Some(limit) = live_load_of(use_word) else { return };
    let needed = house.limits.of(&limit);
    if *stated >= needed.value {
        return;
    }
    let finding = findings.about(
        common.id,
        span,
        format!(
            "{} is framed for {:.0} psf, but `{use_word}` brings {:.0} psf at the least",
            common.label(),
            stated.to_psf(),
            needed.value.to_psf()
        ),
    );
    match use_.stated() {
        Some((_, span)) => finding.related(span, "what it is used for"),
        None => finding.note("no `use` line: taken as living space"),
    };
    finding.help(format!("frame it for {:.0} psf, or say what it is really used for", needed.value.to_psf()));
    finding.basis(needed.basis());
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::profiles::loads::live_load_of;
    use crate::syntax::form::{Form, Kind};
    use crate::syntax::vocabulary::{ElementKind, spec_of};
    use crate::testing::rule_check::check_rule;

    /// Table R301.5 (read in a secondary copy): sleeping rooms 30 psf, other rooms 40.
    #[test]
    fn compares_with_the_use() {
        check_rule(
            &RULE,
            "
floor main
  subfloor    100'-0\"
  use         kitchen
  live        30 psf
--            ^^^^^^ floor main is framed for 30 psf, but `kitchen` brings 40 psf at the least
",
        );
    }

    /// A use that the format knows and no load stands for would pass in silence.
    #[test]
    fn every_use_has_a_load() {
        let facts = spec_of(ElementKind::Floor).facts;
        let form = facts.iter().find(|fact| fact.phrase == "use").map(|fact| fact.form).unwrap();
        let Form::Slot(_, Kind::Word(uses)) = form else { panic!("`use` takes one of a list of words") };
        for word in uses {
            assert!(live_load_of(word).is_some(), "no live load for `{word}`");
        }
    }
}
