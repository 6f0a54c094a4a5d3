//! What joist fields, beams and columns really meet in plan.

use crate::geometry::band::{self, Band};
use crate::geometry::carried::carrying_element;
use crate::geometry::sum::Unknown;
use crate::model::Model;
use crate::model::element::{Common, ElementId};
use crate::model::foundation::FootingSize;
use crate::model::framing::{Beam, Cap, Column, Joists};
use crate::model::plan::{Axis, PlanPoint, PlanRect};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// How far a field's edge may lie from the support that carries it there, over the support's own width: a ledger's
/// thickness, a furred face. Common practice.
const EDGE_SLACK: Length = Length::inches(2);

/// A beam whose line passes a column farther off than this misses it; nearer, the column stands off the beam's line.
/// Common practice.
pub const BESIDE: Length = Length::feet(1);

/// What everything meets, in the model's order.
#[derive(Clone, Debug, Default)]
pub struct Contacts {
    /// For each joist field.
    pub joists: Vec<FieldContacts>,
    /// For each beam.
    pub beams: Vec<BeamContacts>,
    /// For each column, what it stands on.
    pub columns: Vec<Result<Foothold, Unknown>>,
}

/// What a joist field meets.
#[derive(Clone, Debug, Default)]
pub struct FieldContacts {
    /// For each of its supports, in the order of the text.
    pub supports: Vec<Result<FieldContact, Unknown>>,
    /// For each of its rectangles.
    pub bays: Vec<Bay>,
}

/// A support under or beside a joist field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FieldContact {
    /// It crosses the joists: its middle along them, its width along them, and how far it reaches across the field.
    Crosses {
        /// Its middle along the joists.
        station: Length,
        /// Its strip along the joists.
        strip: (Length, Length),
        /// Its reach across the field.
        reach: (Length, Length),
    },
    /// It runs beside the joists, not across them.
    RunsAlong,
    /// It lies past the field: this far beyond its nearest edge, in this direction.
    Misses {
        /// How far.
        by: Length,
        /// The axis on which it lies past the field.
        axis: Axis,
    },
}

/// One rectangle of a joist field.
#[derive(Clone, Debug, PartialEq)]
pub struct Bay {
    /// The rectangle.
    pub rect: PlanRect,
    /// The middles of what crosses it, along the joists, in order, each once, with the element.
    pub stations: Vec<(Length, ElementId)>,
    /// Stretches across the field whose lower end nothing carries.
    pub loose_low: Vec<(Length, Length)>,
    /// Stretches whose upper end nothing carries.
    pub loose_high: Vec<(Length, Length)>,
}

/// What a beam meets.
#[derive(Clone, Debug, Default)]
pub struct BeamContacts {
    /// For each of its supports, in the order of the text.
    pub supports: Vec<Result<BeamContact, Unknown>>,
    /// Its length; `None` for a skew line.
    pub length: Option<Length>,
    /// How far its first end stands past the first support, when nothing reaches it.
    pub loose_start: Option<Length>,
    /// The same of its other end.
    pub loose_end: Option<Length>,
}

/// A support under or beside a beam.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BeamContact {
    /// It is there.
    Meets {
        /// Its middle, from the beam's beginning.
        station: Length,
        /// Its strip along the beam, from the beam's beginning.
        strip: (Length, Length),
        /// How far its middle lies off the beam's line; nothing for what the beam crosses.
        off_line: Length,
    },
    /// The beam ends this far short of it.
    FallsShort(Length),
    /// The beam passes this far beside it.
    PassesBeside(Length),
    /// It runs beside the beam.
    RunsAlong,
}

/// Where a column stands on what carries it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Foothold {
    /// How far its centre is from the middle of what carries it: for a beam or wall across its line, for a pad the
    /// larger of both directions.
    pub off_centre: Length,
    /// How far its centre lies outside of what carries it; nothing when inside.
    pub outside: Length,
    /// The side of the pad along the larger offset, the width of beam or wall.
    pub width: Length,
}

/// Meets everything with everything it names.
pub fn of(model: &Model) -> Contacts {
    Contacts {
        joists: model.joists.iter().map(|joists| field_contacts(model, joists)).collect(),
        beams: model.beams.iter().map(|beam| beam_contacts(model, beam)).collect(),
        columns: model.columns.iter().map(|column| foothold_of(model, column)).collect(),
    }
}

fn field_contacts(model: &Model, joists: &Joists) -> FieldContacts {
    let id = joists.common.id;
    let Some(run) = joists.run.get() else {
        let unknown = Unknown { of: Some(id), fact: "run" };
        return FieldContacts { supports: vec![Err(unknown); joists.supports.len()], bays: Vec::new() };
    };
    let bands: Vec<Option<(ElementId, Band)>> = joists
        .supports
        .iter()
        .map(|support| carrying_element(support).and_then(|on| Some((on, band::of(model, on)?))))
        .collect();
    let supports = bands
        .iter()
        .zip(&joists.supports)
        .map(|(band, support)| match band {
            Some((_, band)) if !joists.fill.is_empty() => Ok(field_contact(band, &joists.fill, run)),
            _ => Err(Unknown { of: carrying_element(support), fact: "from" }),
        })
        .collect();
    // With a support that isn't known in plan, or comes from outside, an end that looks loose may well be carried.
    let is_whole = bands.iter().all(Option::is_some) && !may_be_carried_otherwise(&joists.common);
    let bays = joists.fill.iter().map(|rect| bay_of(joists, rect, run, &bands, is_whole)).collect();
    FieldContacts { supports, bays }
}

/// True when a line that can't be read may name a support, or say how far the member goes past one.
fn may_be_carried_otherwise(member: &Common) -> bool {
    ["bears on", "hangs from", "cantilever"].into_iter().any(|phrase| member.may_say(phrase))
}

fn field_contact(band: &Band, fill: &[PlanRect], run: Axis) -> FieldContact {
    if band.axis == run {
        return FieldContact::RunsAlong;
    }
    let across = run.across();
    let mut nearest: Option<(Length, Axis)> = None;
    for rect in fill {
        let past_run = gap(band.across, rect.on(run));
        let past_across = gap(band.along, rect.on(across));
        if past_run <= EDGE_SLACK && past_across <= Length::ZERO {
            return FieldContact::Crosses { station: band.centre(), strip: band.across, reach: band.along };
        }
        let (by, axis) = if past_run > EDGE_SLACK { (past_run, run) } else { (past_across, across) };
        if nearest.is_none_or(|(least, _)| by < least) {
            nearest = Some((by, axis));
        }
    }
    let (by, axis) = nearest.unwrap_or((Length::ZERO, run));
    FieldContact::Misses { by, axis }
}

/// How far apart two ranges lie; nothing or less when they meet.
fn gap(one: (Length, Length), other: (Length, Length)) -> Length {
    (one.0 - other.1).max(other.0 - one.1)
}

fn bay_of(
    joists: &Joists,
    rect: &PlanRect,
    run: Axis,
    bands: &[Option<(ElementId, Band)>],
    is_whole: bool,
) -> Bay {
    let across = run.across();
    let (low, high) = rect.on(run);
    let crossing: Vec<(ElementId, Band)> = bands
        .iter()
        .flatten()
        .filter(|(_, band)| band.axis == across)
        .filter(|(_, band)| {
            gap(band.across, (low, high)) <= EDGE_SLACK && gap(band.along, rect.on(across)) <= Length::ZERO
        })
        .copied()
        .collect();
    let mut stations: Vec<(Length, ElementId)> =
        crossing.iter().map(|(on, band)| (band.centre(), *on)).collect();
    stations.sort();
    stations.dedup_by_key(|(station, _)| *station);
    let (mut loose_low, mut loose_high) = (Vec::new(), Vec::new());
    if is_whole {
        loose_low = loose_at(joists, rect, run, low, &crossing);
        loose_high = loose_at(joists, rect, run, high, &crossing);
    }
    Bay { rect: *rect, stations, loose_low, loose_high }
}

/// The stretches of a rectangle's end that no support and no neighbouring rectangle of the field takes.
fn loose_at(
    joists: &Joists,
    rect: &PlanRect,
    run: Axis,
    end: Length,
    crossing: &[(ElementId, Band)],
) -> Vec<(Length, Length)> {
    let across = run.across();
    let mut covered: Vec<(Length, Length)> = crossing
        .iter()
        .filter(|(on, band)| {
            let overhang = joists
                .cantilevers
                .iter()
                .filter(|cantilever| cantilever.value.0.target == Some(*on))
                .map(|cantilever| cantilever.value.1)
                .max()
                .unwrap_or(Length::ZERO);
            gap(band.across, (end, end)) <= EDGE_SLACK + overhang
        })
        .map(|(_, band)| band.along)
        .collect();
    for other in joists.fill.iter().filter(|other| *other != rect) {
        let (other_low, other_high) = other.on(run);
        if other_low <= end && end <= other_high {
            covered.push(other.on(across));
        }
    }
    uncovered(rect.on(across), covered)
}

/// What of a range is left when others are taken away.
fn uncovered(range: (Length, Length), mut taken: Vec<(Length, Length)>) -> Vec<(Length, Length)> {
    taken.sort();
    let mut left = Vec::new();
    let mut from = range.0;
    for (low, high) in taken {
        if low > from {
            left.push((from, low.min(range.1)));
        }
        from = from.max(high);
        if from >= range.1 {
            break;
        }
    }
    if from < range.1 {
        left.push((from, range.1));
    }
    left.retain(|(low, high)| low < high);
    left
}

fn beam_contacts(model: &Model, beam: &Beam) -> BeamContacts {
    let line = beam.from.value();
    let Some((line, axis)) = line.and_then(|line| Some((line, line.axis()?))) else {
        let unknown = Unknown { of: Some(beam.common.id), fact: "from" };
        return BeamContacts { supports: vec![Err(unknown); beam.supports.len()], ..BeamContacts::default() };
    };
    let (low, high) = line.on(axis);
    let length = high - low;
    let begins_low = line.from.on(axis) == low;
    let at = line.from.on(axis.across());
    let supports: Vec<Result<BeamContact, Unknown>> = beam
        .supports
        .iter()
        .map(|support| {
            let unknown = Unknown { of: carrying_element(support), fact: "at" };
            let footprint =
                carrying_element(support).and_then(|on| footprint_of(model, on, axis)).ok_or(unknown)?;
            Ok(beam_contact(&footprint, (low, high), at, begins_low))
        })
        .collect();
    let mut contacts = BeamContacts { supports, length: Some(length), ..BeamContacts::default() };
    if contacts.supports.iter().all(Result::is_ok) && !may_be_carried_otherwise(&beam.common) {
        (contacts.loose_start, contacts.loose_end) = loose_ends(&contacts.supports, length);
    }
    contacts
}

/// What a support covers in plan, for a beam along `axis`.
struct Footprint {
    along: (Length, Length),
    across: (Length, Length),
    runs_along: bool,
    is_point: bool,
}

fn footprint_of(model: &Model, on: ElementId, axis: Axis) -> Option<Footprint> {
    let around = |point: &PlanPoint, half: Length| Footprint {
        along: (point.on(axis) - half, point.on(axis) + half),
        across: (point.on(axis.across()), point.on(axis.across())),
        runs_along: false,
        is_point: true,
    };
    match on.kind {
        ElementKind::Column => {
            let column = model.column(on)?;
            Some(around(column.at.value()?, cap_length(column, axis, model)?.half()))
        }
        ElementKind::Pocket => {
            let pocket = model.pocket(on)?;
            let wall = band::of_wall(model.wall(pocket.wall.value()?.target?)?)?;
            let mut footprint = around(pocket.at.value()?, Length::ZERO);
            footprint.along = if wall.axis == axis { wall.along } else { wall.across };
            Some(footprint)
        }
        ElementKind::Footing => {
            let footing = model.footing(on)?;
            let side = match footing.size.get()? {
                FootingSize::Pad(width, ..) | FootingSize::Round(width, _) => width,
                FootingSize::Strip(..) => return None,
            };
            Some(around(footing.at.first()?, side.half()))
        }
        ElementKind::Jacks => None,
        _ => {
            let band = band::of(model, on)?;
            Some(Footprint {
                along: band.on(axis),
                across: band.on(axis.across()),
                runs_along: band.axis == axis,
                is_point: false,
            })
        }
    }
}

/// How far a column's cap reaches along a beam; the column itself when it has none.
pub fn cap_length(column: &Column, axis: Axis, model: &Model) -> Option<Length> {
    let size = column.size.value();
    match column.cap.value() {
        Some(Cap::Plate([width, length, _], along)) => {
            let (short, long) = ((*width).min(*length), (*width).max(*length));
            match along.as_ref().and_then(|along| axis_of(model, along.target?)) {
                Some(lies) if lies == axis => Some(long),
                Some(_) => Some(short),
                None => Some(*length),
            }
        }
        Some(Cap::Saddle(length, _)) => Some(*length),
        None if column.cap.is_broken() => None,
        Some(Cap::Seat(_) | Cap::None) | None => size.and_then(|size| size.depth()),
    }
}

/// The axis that the joists of a field run along, or a beam or wall lies along.
pub fn axis_of(model: &Model, element: ElementId) -> Option<Axis> {
    match element.kind {
        ElementKind::Joists => model.joists_of(element)?.run.get(),
        _ => band::of(model, element).map(|band| band.axis),
    }
}

/// How wide a column's cap is across a beam; the larger side of the column itself when it has none. `None` for a
/// saddle, which is made for its beam.
pub fn cap_width(column: &Column, axis: Axis, model: &Model) -> Option<Length> {
    let size = column.size.value()?;
    match column.cap.value() {
        Some(Cap::Plate([width, _, _], None)) => Some(*width),
        Some(Cap::Plate(..)) => cap_length(column, axis.across(), model),
        Some(Cap::Saddle(..)) => None,
        None if column.cap.is_broken() => None,
        Some(Cap::Seat(_) | Cap::None) | None => Some(size.depth()?.max(size.width()?)),
    }
}

fn beam_contact(
    footprint: &Footprint,
    (low, high): (Length, Length),
    at: Length,
    begins_low: bool,
) -> BeamContact {
    if footprint.runs_along && !footprint.is_point {
        return BeamContact::RunsAlong;
    }
    let short = gap(footprint.along, (low, high));
    if short > EDGE_SLACK {
        return BeamContact::FallsShort(short);
    }
    let beside = gap(footprint.across, (at, at));
    if !footprint.is_point && beside > Length::ZERO {
        return BeamContact::PassesBeside(beside);
    }
    let from_start = |place: Length| if begins_low { place - low } else { high - place };
    let (a, b) = (from_start(footprint.along.0), from_start(footprint.along.1));
    let off_line = if footprint.is_point { beside.max(Length::ZERO) } else { Length::ZERO };
    BeamContact::Meets { station: (a + b).half(), strip: (a.min(b), a.max(b)), off_line }
}

/// How far each end stands past the last support, when that is more than an overhang its back span can hold.
fn loose_ends(supports: &[Result<BeamContact, Unknown>], length: Length) -> (Option<Length>, Option<Length>) {
    let mut strips: Vec<(Length, Length, Length)> = supports
        .iter()
        .filter_map(|contact| match contact {
            Ok(BeamContact::Meets { station, strip, .. }) => Some((*station, strip.0, strip.1)),
            Ok(BeamContact::FallsShort(_) | BeamContact::PassesBeside(_) | BeamContact::RunsAlong)
            | Err(_) => None,
        })
        .collect();
    strips.sort();
    let (Some(first), Some(last)) = (strips.first(), strips.last()) else {
        return (Some(length), Some(length));
    };
    let back_span = |near: Option<&(Length, Length, Length)>, next: Option<&(Length, Length, Length)>| {
        near.zip(next).map_or(Length::ZERO, |(near, next)| (near.0 - next.0).abs())
    };
    let start_span = back_span(strips.first(), strips.get(1));
    let end_span = back_span(strips.last(), strips.len().checked_sub(2).and_then(|at| strips.get(at)));
    let is_loose = |overhang: Length, span: Length| overhang > EDGE_SLACK && overhang.times(4) > span;
    let (start, end) = (first.1, length - last.2);
    (is_loose(start, start_span).then_some(start), is_loose(end, end_span).then_some(end))
}

fn foothold_of(model: &Model, column: &Column) -> Result<Foothold, Unknown> {
    let id = column.common.id;
    let unknown = |fact| Unknown { of: Some(id), fact };
    let at = column.at.value().ok_or(unknown("at"))?;
    let stand = column.stands_on.value().ok_or(unknown("stands on"))?;
    let on = stand.on.reference().and_then(|reference| reference.target).ok_or(unknown("stands on"))?;
    foothold_on(model, at, on).ok_or(unknown("stands on"))
}

/// Where a point stands on an element. `None` where the element has no place in plan that is known.
pub fn foothold_on(model: &Model, at: &PlanPoint, on: ElementId) -> Option<Foothold> {
    match on.kind {
        ElementKind::Footing => {
            let footing = model.footing(on)?;
            match footing.size.get()? {
                FootingSize::Pad(x, y, _) => foothold_on_pads(at, &footing.at, x, y),
                FootingSize::Round(diameter, _) => foothold_on_pads(at, &footing.at, diameter, diameter),
                FootingSize::Strip(width, _) => footing
                    .under
                    .iter()
                    .filter_map(|wall| band::of_wall(model.wall(wall.target?)?))
                    .map(|band| foothold_on_strip(at, &band, width))
                    .min_by_key(|foothold| (foothold.outside, foothold.off_centre)),
            }
        }
        ElementKind::Slab => {
            let slab = model.slab(on)?;
            let inside = slab
                .fill
                .iter()
                .any(|rect| rect.x.0 <= at.x && at.x <= rect.x.1 && rect.y.0 <= at.y && at.y <= rect.y.1);
            let outside = if inside { Length::ZERO } else { Length::from_units(1) };
            Some(Foothold { off_centre: Length::ZERO, outside, width: Length::ZERO })
        }
        ElementKind::Column => {
            let under = model.column(on)?;
            foothold_on_pads(
                at,
                &[*under.at.value()?],
                under.size.value()?.depth()?,
                under.size.value()?.depth()?,
            )
        }
        ElementKind::Beam | ElementKind::Wall | ElementKind::Ledger | ElementKind::Shelf => {
            let band = band::of(model, on)?;
            Some(foothold_on_strip(at, &band, band.width()))
        }
        _ => None,
    }
}

fn foothold_on_pads(at: &PlanPoint, pads: &[PlanPoint], x: Length, y: Length) -> Option<Foothold> {
    pads.iter()
        .map(|pad| {
            let (dx, dy) = ((at.x - pad.x).abs(), (at.y - pad.y).abs());
            let outside = (dx - x.half()).max(dy - y.half()).max(Length::ZERO);
            let (off_centre, width) = if dx >= dy { (dx, x) } else { (dy, y) };
            Foothold { off_centre, outside, width }
        })
        .min_by_key(|foothold| (foothold.outside, foothold.off_centre))
}

fn foothold_on_strip(at: &PlanPoint, band: &Band, width: Length) -> Foothold {
    let off_centre = (at.on(band.axis.across()) - band.centre()).abs();
    let past_end = gap(band.along, (at.on(band.axis), at.on(band.axis)));
    let outside = (off_centre - width.half()).max(past_end).max(Length::ZERO);
    Foothold { off_centre, outside, width }
}

#[cfg(test)]
mod tests {
    use super::{BeamContact, FieldContact};
    use crate::testing::rule_check::house;
    use crate::units::Length;

    /// A girder in the middle halves a span of 24' (common practice).
    #[test]
    fn a_girder_halves_a_span() {
        let house = house(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 12', 3 24'
beam B1
  size        W8x18
  from        A/1 to B/1
beam B2
  size        W8x18
  from        A/2 to B/2
beam B3
  size        W8x18
  from        A/3 to B/3
joists J1
  size        2x12 SPF No.2
  fill        A to B by 1 to 3
  run         along y
  bears on    B1
  bears on    B2
  bears on    B3
",
        );
        let contacts = &house.geometry.contacts.joists[0];
        let stations: Vec<Length> = contacts.bays[0].stations.iter().map(|(station, _)| *station).collect();
        assert_eq!(stations, [Length::ZERO, Length::feet(12), Length::feet(24)]);
        assert!(contacts.supports.iter().all(|contact| matches!(contact, Ok(FieldContact::Crosses { .. }))));
    }

    /// Stations count from the beam's own beginning, here its east end; the second column stands 3" beside the line.
    #[test]
    fn a_beam_is_measured_from_its_beginning() {
        let house = house(
            "
grid
  x           A 0', B 12'
  y           1 0', 2 12'
column C1
  at          B/1
  size        HSS 4 x 4 x 1/4
column C2
  at          A plus 2' / 1 plus 3\"
  size        HSS 4 x 4 x 1/4
beam B1
  size        W8x18
  from        B/1 to A/1
  bears on    C1
  bears on    C2
",
        );
        let contacts = &house.geometry.contacts.beams[0];
        let stations: Vec<_> = contacts
            .supports
            .iter()
            .map(|contact| match contact {
                Ok(BeamContact::Meets { station, off_line, .. }) => (*station, *off_line),
                other => panic!("{other:?}"),
            })
            .collect();
        assert_eq!(stations, [(Length::ZERO, Length::ZERO), (Length::feet(10), Length::inches(3))]);
        assert_eq!((contacts.loose_start, contacts.loose_end), (None, None));
    }

    /// A column 4" off the middle of a pad of 3' by 2' is inside of it; one 13" off in the short direction is 1" out.
    #[test]
    fn a_column_stands_on_its_pad_or_beside_it() {
        let foothold = |y: &str| {
            let house = house(&format!(
                "
grid
  x           A 0'
  y           1 0'
footing F1
  at          A/1
  size        3'-0\" x 2'-0\" x 12\"
column C1
  at          A/1 plus {y}
  stands on   F1
"
            ));
            let foothold = house.geometry.contacts.columns[0].unwrap();
            (foothold.off_centre, foothold.outside)
        };
        assert_eq!(foothold("4\""), (Length::inches(4), Length::ZERO));
        assert_eq!(foothold("13\""), (Length::inches(13), Length::inches(1)));
    }
}
