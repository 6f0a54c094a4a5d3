//! Drain pipes against the joists they run among.

use crate::geometry::carried::Carried;
use crate::geometry::cuts::{Cuttable, cuttable};
use crate::geometry::drain_runs::{PipeRun, runs_of};
use crate::geometry::layout::joists_between;
use crate::geometry::passages::passages;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::model::openings::Drain;
use crate::profiles::framing::{
    DRAIN_FALL, DRAIN_FALL_SMALL, DRAIN_FITTING, DRAIN_SMALL, HOLE_DIAMETER, HOLE_EDGE,
};
use crate::rules::{Findings, rule};
use crate::units::Length;

rule! {
    /// A drain's pipe, with its fall, has no room among the joists it runs in.
    ///
    /// Along the joists, pipe, fitting and fall fit into their depth. Across sawn joists, the pipe fits into a hole that
    /// they may have, and all holes of the run keep off the edges; engineered joists take what their maker's chart says,
    /// which is not looked at here. Where the run leaves the floor for a lower one, the joists of both share the pipe's
    /// height, or it comes out on the lower deck.
    ///
    /// ## Why
    /// Water needs its fall. What the plan has no room for is cut out of the joists on site.
    ///
    /// ## Source
    /// Residential code R502.8.1 for holes and P3005.3 for the fall where the drain states none; the limits
    /// `hole-diameter`, `hole-edge`, `drain-fall`, `drain-fall-small` and `drain-small`. `drain-fitting` is common
    /// practice.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    /// drain D1
    ///   floor       main
    ///   at          A plus 2' / 1 plus 3'
    ///   pipe        3-1/2"
    ///   runs        east 6'-0" at 1/4" per foot
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 12'
    ///   y           1 0', 2 10'
    /// floor main
    ///   subfloor    100'-0"
    /// joists J1
    ///   floor       main
    ///   size        2x10 SPF No.2
    ///   fill        A to B by 1 to 2
    ///   run         along y
    ///   spacing     16" from A
    /// drain D1
    ///   floor       main
    ///   at          A plus 2' / 1 plus 3'
    ///   pipe        3-1/2"
    ///   runs        north 6'-0" at 1/4" per foot
    /// ```
    "drain-without-room", Warning
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let carried = Carried::of(&house.model);
    for drain in &house.model.drains {
        let (Some(pipe), Some(floor)) =
            (drain.pipe.get(), drain.floor.value().and_then(|floor| floor.target))
        else {
            continue;
        };
        let is_small = pipe <= house.limits.of(&DRAIN_SMALL).value;
        let least = house.limits.of(if is_small { &DRAIN_FALL_SMALL } else { &DRAIN_FALL }).value;
        let least = Length::feet(1).shared_by(least.0).map_or(Length::ZERO, |fall| fall.rounded());
        for run in runs_of(drain, least) {
            if leaves_no_room(house, &carried, drain, (floor, pipe), &run, findings) {
                break;
            }
        }
    }
}

/// Reports the first thing in a run's way.
fn leaves_no_room(
    house: &House,
    carried: &Carried<'_>,
    drain: &Drain,
    (floor, pipe): (ElementId, Length),
    run: &PipeRun,
    findings: &mut Findings<'_>,
) -> bool {
    if comes_out_at_a_step(house, carried, drain, (floor, pipe), run, findings) {
        return true;
    }
    let along = run.way.axis;
    let (low, high) = run.way.ends();
    carried.fields_of(floor).iter().any(|joists| {
        let met = joists.fill.iter().find_map(|rect| {
            let (from, to) = (rect.on(along).0.max(low), rect.on(along).1.min(high));
            let (near, far) = rect.on(along.across());
            (near <= run.way.at && run.way.at <= far && from < to).then_some((from, to))
        });
        match (met, joists.run.get()) {
            (Some((from, to)), Some(axis)) if axis == along => {
                let length = to - from;
                overfills_a_bay(house, drain, joists, pipe, (run, length), findings)
            }
            (Some(stretch), Some(_)) => overcuts_joists(house, drain, joists, pipe, (run, stretch), findings),
            (Some(_) | None, _) => false,
        }
    })
}

fn overfills_a_bay(
    house: &House,
    drain: &Drain,
    joists: &Joists,
    pipe: Length,
    (run, length): (&PipeRun, Length),
    findings: &mut Findings<'_>,
) -> bool {
    let Some(depth) = joists.size.value().and_then(|size| size.depth()) else { return false };
    let fitting = house.limits.of(&DRAIN_FITTING);
    let fall = run.fallen + share_of(run, length);
    let needed = pipe + fitting.value + fall;
    if needed <= depth {
        return false;
    }
    findings
        .about(
            drain.common.id,
            run.span,
            format!(
                "the pipe of {} needs {needed} of height at the end of this run; {} are {depth} deep",
                drain.common.label(),
                joists.common.label()
            ),
        )
        .note(format!("{pipe} of pipe, {} of fitting and {fall} of fall", fitting.value))
        .help("shorten the run, bring the stack nearer, or plan a lowered ceiling below it")
        .follows(joists.common.id)
        .basis(fitting.basis());
    true
}

fn overcuts_joists(
    house: &House,
    drain: &Drain,
    joists: &Joists,
    pipe: Length,
    (run, stretch): (&PipeRun, (Length, Length)),
    findings: &mut Findings<'_>,
) -> bool {
    let Some(size) = joists.size.value() else { return false };
    let (Some(Cuttable::Sawn), Some(depth)) = (cuttable(size), size.depth()) else { return false };
    let Some((first, last)) = joists_between(joists, stretch) else { return false };
    let share = house.limits.of(&HOLE_DIAMETER);
    if let Some(most) = depth.shared_by(share.value.0).filter(|most| *most < pipe) {
        findings
            .about(
                drain.common.id,
                run.span,
                format!(
                    "the pipe of {} crosses {}, and {pipe} is too large a hole for {}: {most} at the most",
                    drain.common.label(),
                    joists.common.label(),
                    size.text
                ),
            )
            .help("run it along the joists, below them, or where they can be headed off")
            .follows(joists.common.id)
            .basis(share.basis());
        return true;
    }
    let edge = house.limits.of(&HOLE_EDGE);
    let needed = pipe + share_of(run, last - first);
    let room = depth - edge.value.times(2);
    if needed <= room {
        return false;
    }
    findings
        .about(
            drain.common.id,
            run.span,
            format!(
                "the pipe of {} needs {needed} of height from the first to the last of {} that it crosses; {room} of {} may be drilled",
                drain.common.label(),
                joists.common.label(),
                size.text
            ),
        )
        .note(format!("a depth of {depth}, {} kept at each edge", edge.value))
        .help("shorten the run, or run it along the joists")
        .follows(joists.common.id)
        .basis(edge.basis());
    true
}

fn comes_out_at_a_step(
    house: &House,
    carried: &Carried<'_>,
    drain: &Drain,
    (floor, pipe): (ElementId, Length),
    run: &PipeRun,
    findings: &mut Findings<'_>,
) -> bool {
    let ways = passages(&house.model, &house.geometry, carried, floor, &run.way);
    let Some(passage) = ways.into_iter().find(|passage| passage.is_down && passage.shared < pipe) else {
        return false;
    };
    let Some(lower) = house.model.common(passage.to) else { return false };
    let joists = if passage.shared.is_positive() {
        format!("share {} of height", passage.shared)
    } else {
        "share no height".to_owned()
    };
    findings
        .about(
            drain.common.id,
            run.span,
            format!(
                "the pipe of {}, {pipe} thick, runs on into {}, whose joists {joists} with those it leaves: it meets the lower deck",
                drain.common.label(),
                lower.label()
            ),
        )
        .related(lower.name_span, lower.label())
        .help("bring the stack down before the step")
        .follows(passage.to)
        .basis("arithmetic of the two stacks");
    true
}

/// How far the pipe falls over a part of a run.
fn share_of(run: &PipeRun, length: Length) -> Length {
    let (low, high) = run.way.ends();
    let whole = (high - low).to_inches();
    if whole > 0.0 { run.falls.scaled(length.to_inches() / whole) } else { Length::ZERO }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(drain: &str) -> String {
        format!(
            "
grid
  x           A 0', B 24'
  y           1 0', 2 30'
floor main
  subfloor    100'-0\"
joists J1
  floor       main
  size        2x10 SPF No.2
  fill        A to B by 1 to 2
  run         along y
  spacing     16\" from A
drain D1
  floor       main
  at          A plus 2' / 1 plus 1'
{drain}"
        )
    }

    /// By hand: 3-1/2" and 1/2" leave 5-1/4" of 9-1/4" for the fall: 21' at 1/4".
    #[test]
    fn along_the_joists_the_fall_counts() {
        check_rule(&RULE, &house("  pipe        3-1/2\"\n  runs        north 21'-0\" at 1/4\" per foot\n"));
        check_rule(
            &RULE,
            &house(
                "  pipe        3-1/2\"
  runs        north 22'-0\" at 1/4\" per foot
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the pipe of drain D1 needs 9-1/2\" of height at the end of this run; joists J1 are 9-1/4\" deep
-- | 3-1/2\" of pipe, 1/2\" of fitting and 5-1/2\" of fall
",
            ),
        );
    }

    /// R502.8.1, the row of a 2x10 printed in a copy of low grade: 3.083\" at the most, 2\" at each edge. Joists at 2'-8\"
    /// and every 16\"; from 2' to 20' the last is at 18'-8\": 16' at 1/4\" are 4\", with 1-1/2\" more than 5-1/4\".
    #[test]
    fn across_the_joists_holes_count() {
        check_rule(&RULE, &house("  pipe        1-1/2\"\n  runs        east 16'-0\" at 1/4\" per foot\n"));
        check_rule(
            &RULE,
            &house(
                "  pipe        1-1/2\"
  runs        east 18'-0\" at 1/4\" per foot
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the pipe of drain D1 needs 5-1/2\" of height from the first to the last of joists J1 that it crosses; 5-1/4\" of 2x10 SPF No.2 may be drilled
",
            ),
        );
        // Between two joists it crosses none.
        check_rule(&RULE, &house("  pipe        3-1/2\"\n  runs        east 6\" at 1/4\" per foot\n"));
        check_rule(
            &RULE,
            &house(
                "  pipe        3-1/2\"
  runs        east 12\" at 1/4\" per foot
--^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ the pipe of drain D1 crosses joists J1, and 3-1/2\" is too large a hole for 2x10 SPF No.2: 3-1/16\"~ at the most
",
            ),
        );
    }
}
