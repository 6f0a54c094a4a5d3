//! Shallow strips that start at a basement wall.

use crate::geometry::footing_steps::drop_at;
use crate::geometry::pads::{Strip, strips_of};
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::foundation::{Footing, Wall};
use crate::model::plan::Axis;
use crate::profiles::foundations::{BACKFILL_SLOPE, DIG_OUT_WIDTH};
use crate::profiles::levels::CLOSURE_TOLERANCE;
use crate::rules::{Findings, rule};
use crate::syntax::value::Side;
use crate::units::Length;

rule! {
    /// A shallow footing starts on the backfill beside a deeper one.
    ///
    /// Where a wall runs into another whose footing lies deeper, on the side that has ground against it: within the limit
    /// `dig-out-width` of the deep footing's edge the shallow one must have stepped down to its level, and further away it
    /// keeps to the line of `backfill-slope` that rises from there.
    ///
    /// ## Why
    /// The ground beside a basement was dug out and thrown back. It settles by inches, and the end of the shallow footing
    /// with it: the new room tears off the house.
    ///
    /// ## Source
    /// Common practice; texts on foundations give the disturbed ground 3' to 6'.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12'
    /// wall W1
    ///   kind        concrete
    ///   from        A/2 to B/2
    ///   thick       10"
    ///   grade       97'-0" on south
    ///   stands on   F1
    /// wall W2
    ///   kind        concrete
    ///   from        A/1 to A/2
    ///   thick       8"
    ///   stands on   F2
    /// footing F1
    ///   under       W1
    ///   size        24" x 10"
    ///   top         91'-0"
    /// footing F2
    ///   under       W2
    ///   size        16" x 8"
    ///   top         93'-0"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 20'
    ///   y           1 0', 2 12'
    /// wall W1
    ///   kind        concrete
    ///   from        A/2 to B/2
    ///   thick       10"
    ///   grade       97'-0" on south
    ///   stands on   F1
    /// wall W2
    ///   kind        concrete
    ///   from        A/1 to A/2
    ///   thick       8"
    ///   stands on   F2
    /// footing F1
    ///   under       W1
    ///   size        24" x 10"
    ///   top         91'-0"
    /// footing F2
    ///   under       W2
    ///   size        16" x 8"
    ///   top         93'-0"
    ///   step        down 2'-2" at 2 less 4'-0"
    /// ```
    "footing-on-backfill", Error
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut strips: Vec<(Strip, &Footing)> = Vec::new();
    for footing in &house.model.footings {
        strips.extend(strips_of(&house.model, footing).into_iter().map(|strip| (strip, footing)));
    }
    // From west to east: only strips that overlap in x can meet.
    strips.sort_by_key(|(strip, _)| strip.band.on(Axis::X).0);
    let mut open: Vec<&(Strip, &Footing)> = Vec::new();
    for strip in &strips {
        let west = strip.0.band.on(Axis::X).0;
        open.retain(|(other, _)| other.band.on(Axis::X).1 >= west);
        for met in &open {
            check_meeting(house, strip, met, findings);
            check_meeting(house, met, strip, findings);
        }
        open.push(strip);
    }
}

/// Checks one strip where it runs into a deeper one.
fn check_meeting(
    house: &House,
    (shallow, footing): &(Strip, &Footing),
    (deep, deep_footing): &(Strip, &Footing),
    findings: &mut Findings<'_>,
) {
    if footing.common.id == deep_footing.common.id || shallow.band.axis == deep.band.axis {
        return;
    }
    let walls = house.model.wall(shallow.wall).zip(house.model.wall(deep.wall));
    let Some((wall, deep_wall)) = walls else { return };
    let surfaces = &house.geometry.surfaces;
    let bottoms = (
        surfaces.of(footing.common.id, Surface::Bottom),
        surfaces.of(deep_footing.common.id, Surface::Bottom),
    );
    let (Ok(bottom), Ok(deep_bottom)) = bottoms else { return };
    let Some(meeting) = Meeting::of(shallow, deep, wall, deep_wall) else { return };
    let (width, slope) = (house.limits.of(&DIG_OUT_WIDTH), house.limits.of(&BACKFILL_SLOPE));
    let tolerance = house.limits.of(&CLOSURE_TOLERANCE).value;
    // The strip lies level between its steps, so it comes nearest to the line right behind each.
    let mut places = vec![Length::ZERO, width.value];
    places.extend(
        footing
            .steps
            .iter()
            .filter(|step| step.value.1.axis == meeting.axis)
            .map(|step| meeting.distance(step.value.1.at)),
    );
    let axis = meeting.axis;
    let lies = |distance: Length| {
        let at = meeting.at(distance + Length::from_units(1));
        drop_at(&house.model, footing, axis, at).map(|drop| bottom.total() - drop - deep_bottom.total())
    };
    let allowed = |distance: Length| {
        if distance < width.value {
            return Length::ZERO;
        }
        distance.shared_by(slope.value.0).map(|rise| rise.rounded()).unwrap_or_default()
    };
    let reached = meeting.length;
    let bad = places
        .into_iter()
        .filter(|distance| !distance.is_negative() && *distance < reached)
        .filter_map(|distance| Some((distance, lies(distance)?)))
        .filter(|(distance, above)| *above - allowed(*distance) >= tolerance)
        .min();
    let Some((first, above)) = bad else { return };
    let message = if first < width.value {
        format!(
            "{} under {} lies {above} above {} and starts against {}: its first {} are on backfill",
            footing.common.label(),
            wall.common.name,
            deep_footing.common.label(),
            deep_wall.common.label(),
            width.value
        )
    } else {
        format!(
            "{} under {} lies {above} above {} only {first} from its edge: no more than {} there",
            footing.common.label(),
            wall.common.name,
            deep_footing.common.label(),
            allowed(first)
        )
    };
    findings
        .about(footing.common.id, footing.top.span().unwrap_or(footing.common.name_span), message)
        .suspects(footing.common.id, "bottom")
        .related(
            wall.common.name_span,
            format!("{} runs into {}", wall.common.label(), deep_wall.common.label()),
        )
        .related(deep_footing.common.name_span, "the deeper footing")
        .help(format!(
            "step it down to {} before it comes within {} of the deeper footing, or let it span the backfill",
            deep_bottom.total().in_feet(),
            width.value
        ))
        .basis(width.basis());
}

/// Where one strip runs into another from the side of the ground.
struct Meeting {
    /// The axis the shallow wall runs along.
    axis: Axis,
    /// The edge of the deep footing that it comes to.
    edge: Length,
    /// It goes away from there towards larger coordinates.
    is_up: bool,
    /// How far it goes.
    length: Length,
}

impl Meeting {
    fn of(shallow: &Strip, deep: &Strip, wall: &Wall, deep_wall: &Wall) -> Option<Self> {
        let axis = shallow.band.axis;
        let line = wall.from.value()?.on(axis);
        let (low, high) = deep.band.across;
        let middle = deep.band.centre();
        let across = shallow.band.centre();
        let is_beside = across < deep.band.along.0 || across > deep.band.along.1;
        // It goes away to the side where most of it lies, and begins within the deep strip.
        let is_up = line.1 - middle > middle - line.0;
        let (edge, near, far) = if is_up { (high, line.0, line.1) } else { (low, line.1, line.0) };
        let starts_there = low <= near && near <= high;
        let side = match (axis, is_up) {
            (Axis::X, true) => Side::East,
            (Axis::X, false) => Side::West,
            (Axis::Y, true) => Side::North,
            (Axis::Y, false) => Side::South,
        };
        let has_ground = deep_wall.grades.iter().any(|grade| grade.side == Some(side));
        (starts_there && has_ground && !is_beside).then_some(Self {
            axis,
            edge,
            is_up,
            length: (far - edge).abs(),
        })
    }

    fn distance(&self, at: Length) -> Length {
        if self.is_up { at - self.edge } else { self.edge - at }
    }

    fn at(&self, distance: Length) -> Length {
        if self.is_up { self.edge + distance } else { self.edge - distance }
    }
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(step: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0', 2 12'
wall W1
  kind        concrete
  from        A/2 to B/2
  thick       10\"
  grade       97'-0\" on south
  stands on   F1
wall W2
  kind        concrete
  from        A/1 to A/2
  thick       8\"
  stands on   F2
footing F1
  under       W1
  size        24\" x 8\"
  top         91'-0\"
footing F2
  under       W2
  size        16\" x 8\"
  top         95'-0\"
{mark}  step        down 4' at {step}
"
        )
    }

    /// The deep strip's edge is 12" south of line 2, and 4' of rise want 4' of run: 5'-0" from line 2 passes. An inch less,
    /// and at 3'-11" from the edge it lies 4'-0" up. A step 3'-6" from line 2 is 2'-6" from the edge: inside the dig-out.
    #[test]
    fn keeps_under_the_line() {
        check_rule(&RULE, &house("2 less 5'-0\"", ""));
        check_rule(
            &RULE,
            &house(
                "2 less 4'-11\"",
                "--            ^^^^^^ footing F2 under W2 lies 4'-0\" above footing F1 only 3'-11\" from its edge: no more than 3'-11\" there\n",
            ),
        );
        check_rule(
            &RULE,
            &house(
                "2 less 3'-6\"",
                "--            ^^^^^^ footing F2 under W2 lies 4'-0\" above footing F1 and starts against wall W1: its first 3'-0\" are on backfill\n",
            ),
        );
    }
}
