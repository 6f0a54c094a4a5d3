//! Each stair's rise, risers, run and headroom.

use crate::geometry::levels::FloorLevels;
use crate::geometry::sum::{Derived, Sum, Unknown};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::plan::{Axis, PlanPoint, PlanRect};
use crate::model::stairs::{Foot, Stair, StairOpening};
use crate::syntax::value::Side;
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Length, Ratio};

/// A stair's numbers.
#[derive(Clone, Debug)]
pub struct Flight {
    /// Finish of the floor it starts from.
    pub lower: Derived,
    /// Finish of the floor it ends on.
    pub upper: Derived,
    /// From finish to finish.
    pub rise: Result<Length, Unknown>,
    /// The risers as they will be: the first, those between, the last.
    pub risers: Result<Risers, Unknown>,
    /// From the first riser to the last: treads times their number.
    pub run: Result<Length, Unknown>,
    /// From the top nosing to the edge of the opening above the flight.
    pub opening_length: Result<Length, Unknown>,
    /// Headroom under that edge, from the line of the nosings.
    pub headroom: Result<Length, Unknown>,
    /// How long the opening has to be for a headroom: see [`opening_for`].
    pub edge: Result<Edge, Unknown>,
}

/// The risers of a flight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Risers {
    /// How many.
    pub count: u32,
    /// The first, from the lower finish.
    pub bottom: Ratio,
    /// Each between the first and the last, and all of them when nothing was laid out otherwise.
    pub between: Ratio,
    /// The last, up to the upper finish.
    pub top: Ratio,
}

impl Risers {
    /// The tallest.
    pub fn tallest(&self) -> Length {
        self.all().map(Ratio::rounded).max().unwrap_or_default()
    }

    /// The lowest.
    pub fn lowest(&self) -> Length {
        self.all().map(Ratio::rounded).min().unwrap_or_default()
    }

    /// The tallest less the lowest.
    pub fn spread(&self) -> Length {
        self.tallest() - self.lowest()
    }

    fn all(&self) -> impl Iterator<Item = Ratio> {
        // A flight of two has no riser between, a single riser is first and last.
        let between = (self.count > 2).then_some(self.between);
        let top = (self.count > 1).then_some(self.top);
        std::iter::once(self.bottom).chain(between).chain(top)
    }
}

/// The edge of the opening above a flight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edge {
    /// From the upper finish down to the lowest thing at the edge.
    pub below_finish: Length,
    /// The whole rise and the number of risers, so that the pitch stays exact.
    pub rise: Length,
    /// How many risers.
    pub risers: u32,
    /// Tread depth.
    pub tread: Length,
}

/// The numbers of every stair, in the model's order.
pub fn of(model: &Model, floors: &[FloorLevels]) -> Vec<Flight> {
    model.stairs.iter().map(|stair| flight_of(model, floors, stair)).collect()
}

/// The height of the line of the nosings over a place of the flight. `None` for a stair that isn't known in full.
pub fn line_of_nosings(stair: &Stair, flight: &Flight, at: &PlanPoint) -> Option<Length> {
    let (axis, is_up) = direction_of(stair.climbs.get()?)?;
    let top = stair.top.value()?.on(axis);
    let before_top = if is_up { top - at.on(axis) } else { at.on(axis) - top };
    let rise = flight.rise.ok()?;
    let run = stair.tread.get()?.times(i64::from(stair.risers.get()?));
    Some(flight.upper.as_ref().ok()?.total() - scaled(before_top, rise, run)?)
}

/// How long an opening must be, from the top nosing, to leave `headroom` at its edge.
pub fn opening_for(edge: &Edge, headroom: Length) -> Length {
    let needed_drop = headroom + edge.below_finish;
    scaled(needed_drop, edge.tread.times(i64::from(edge.risers)), edge.rise).unwrap_or_default()
}

fn flight_of(model: &Model, floors: &[FloorLevels], stair: &Stair) -> Flight {
    let id = stair.common.id;
    let unknown = |fact| Unknown { of: Some(id), fact };
    let finish = |end: Option<ElementId>| finish_of(model, floors, end).unwrap_or(Err(unknown("from")));
    let lower = match stair.from.value() {
        Some(Foot::Floor(floor)) => finish(floor.target),
        // The ground a stair starts from is the top it was laid out from.
        Some(Foot::Grade) => stair
            .laid_out
            .get()
            .map(|(lower, _)| Sum::start(lower, "grade", id, stair.laid_out.span()))
            .ok_or(unknown("laid out")),
        None => Err(unknown("from")),
    };
    let upper = finish(stair.to.value().and_then(|floor| floor.target));
    let rise = match (&lower, &upper) {
        (Ok(lower), Ok(upper)) => Ok(upper.total() - lower.total()),
        (Err(unknown), _) | (_, Err(unknown)) => Err(*unknown),
    };
    let risers = match (&lower, &upper) {
        (Ok(lower), Ok(upper)) => risers_of(stair, lower.total(), upper.total()),
        (Err(unknown), _) | (_, Err(unknown)) => Err(*unknown),
    };
    let run = (|| {
        let count = stair.risers.get().ok_or(unknown("risers"))?;
        let tread = stair.tread.get().ok_or(unknown("tread"))?;
        Ok(tread.times(i64::from(count) - 1))
    })();
    let opening_length = opening_length_of(model, stair);
    let edge = edge_of(model, floors, stair, rise);
    let headroom = match (opening_length, edge) {
        (Ok(length), Ok(edge)) => {
            let drop = scaled(length, edge.rise, edge.tread.times(i64::from(edge.risers)));
            drop.map(|drop| drop - edge.below_finish).ok_or(unknown("tread"))
        }
        (Err(unknown), _) | (_, Err(unknown)) => Err(unknown),
    };
    Flight { lower, upper, rise, risers, run, opening_length, headroom, edge }
}

/// What one walks on where a stair begins or ends: a floor's finish, a landing's or stoop's top.
fn finish_of(model: &Model, floors: &[FloorLevels], end: Option<ElementId>) -> Option<Derived> {
    let end = end?;
    let at = end.index as usize;
    let (id, body) = match end.kind {
        ElementKind::Floor => return Some(floors.get(at)?.finish.clone()),
        ElementKind::Landing => (model.landings.get(at)?.common.id, &model.landings.get(at)?.body),
        ElementKind::Stoop => (model.stoops.get(at)?.common.id, &model.stoops.get(at)?.body),
        _ => return None,
    };
    let unknown = Unknown { of: Some(id), fact: "top" };
    Some(body.top.get().ok_or(unknown).map(|top| Sum::start(top, "landing", id, body.top.span())))
}

/// Equal risers, unless the stringers were laid out for other finishes: then what changed shows in the end risers.
fn risers_of(stair: &Stair, lower: Length, upper: Length) -> Result<Risers, Unknown> {
    let id = stair.common.id;
    let unknown = |fact| Unknown { of: Some(id), fact };
    let count = stair.risers.get().ok_or(unknown("risers"))?;
    if stair.laid_out.is_broken() {
        return Err(unknown("laid out"));
    }
    let (from, to) = stair.laid_out.get().unwrap_or((lower, upper));
    let between = (to - from).shared_by(count).ok_or(unknown("risers"))?;
    let whole =
        |extra: Length| (to - from + extra.times(i64::from(count))).shared_by(count).ok_or(unknown("risers"));
    if count == 1 {
        let only = Ratio::whole(upper - lower);
        return Ok(Risers { count, bottom: only, between: only, top: only });
    }
    Ok(Risers { count, bottom: whole(from - lower)?, between, top: whole(upper - to)? })
}

/// From the top nosing along the run to the far edge of the opening.
fn opening_length_of(model: &Model, stair: &Stair) -> Result<Length, Unknown> {
    let id = stair.common.id;
    let unknown = |fact| Unknown { of: Some(id), fact };
    match stair.opening.value().ok_or(unknown("opening"))? {
        StairOpening::Long(length) => Ok(*length),
        StairOpening::Named(reference) => {
            let opening =
                reference.target.and_then(|opening| model.opening(opening)).ok_or(unknown("opening"))?;
            let edges = opening.fill.first().ok_or(Unknown { of: Some(opening.common.id), fact: "fill" })?;
            let top = stair.top.value().ok_or(unknown("top"))?;
            let climbs = stair.climbs.get().ok_or(unknown("climbs"))?;
            let (axis, _) = direction_of(climbs).ok_or(unknown("climbs"))?;
            Ok((far_edge(edges, climbs).ok_or(unknown("climbs"))? - top.on(axis)).abs())
        }
    }
}

/// The axis a side lies on and whether it points up that axis; `None` for a hand.
pub const fn direction_of(side: Side) -> Option<(Axis, bool)> {
    match side {
        Side::North => Some((Axis::Y, true)),
        Side::South => Some((Axis::Y, false)),
        Side::East => Some((Axis::X, true)),
        Side::West => Some((Axis::X, false)),
        Side::Left | Side::Right => None,
    }
}

/// The opening's edge on the side the stair comes up from: the one a head meets.
fn far_edge(opening: &PlanRect, climbs: Side) -> Option<Length> {
    let (axis, is_up) = direction_of(climbs)?;
    let (low, high) = opening.on(axis);
    Some(if is_up { low } else { high })
}

fn edge_of(
    model: &Model,
    floors: &[FloorLevels],
    stair: &Stair,
    rise: Result<Length, Unknown>,
) -> Result<Edge, Unknown> {
    let id = stair.common.id;
    let unknown = |fact| Unknown { of: Some(id), fact };
    let rise = rise?;
    if !rise.is_positive() {
        return Err(unknown("rise"));
    }
    let floor = match stair.opening.value().ok_or(unknown("opening"))? {
        StairOpening::Named(reference) => reference
            .target
            .and_then(|opening| model.opening(opening))
            .and_then(|opening| opening.floor.value())
            .and_then(|floor| floor.target),
        StairOpening::Long(_) => stair.to.value().and_then(|floor| floor.target),
    };
    let floor = floor.filter(|floor| floor.kind == ElementKind::Floor).ok_or(unknown("opening"))?;
    let levels = floors.get(floor.index as usize).ok_or(unknown("opening"))?;
    let upper = stair.to.value().and_then(|floor| floor.target);
    let finish = finish_of(model, floors, upper).ok_or(unknown("from"))??.total();
    Ok(Edge {
        below_finish: finish - levels.ceiling.clone()?.total(),
        rise,
        risers: stair.risers.get().filter(|count| *count > 0).ok_or(unknown("risers"))?,
        tread: stair.tread.get().filter(|tread| tread.is_positive()).ok_or(unknown("tread"))?,
    })
}

/// `length × numerator / denominator`, rounded to the exact unit; `None` for a denominator of nothing.
fn scaled(length: Length, numerator: Length, denominator: Length) -> Option<Length> {
    let product = i128::from(length.to_units()).checked_mul(i128::from(numerator.to_units()))?;
    let quotient = product.checked_div(i128::from(denominator.to_units()))?;
    i64::try_from(quotient).ok().map(Length::from_units)
}

#[cfg(test)]
mod tests {
    use super::{Flight, opening_for};
    use crate::testing::rule_check::house;
    use crate::units::Length;

    fn flight(stair: &str) -> Flight {
        let house = house(&format!(
            "
floor main
  subfloor      100'-0\"
  deck          3/4\"
joists J1
  floor         main
  size          2x8 SPF No.2
floor den
  subfloor      98'-3\"
stair S1
  from          den to main
{stair}"
        ));
        house.geometry.flights[0].clone()
    }

    /// A rise of 21" in three is 7" each; the run is two treads.
    #[test]
    fn risers_share_the_rise() {
        let flight = flight("  risers        3\n  tread         11\"\n");
        let risers = flight.risers.unwrap();
        assert!(risers.between.is(Length::inches(7)) && risers.spread() == Length::ZERO);
        assert_eq!(flight.run, Ok(Length::inches(22)));
    }

    /// Laid out for 20-1/4" (6-3/4" each) and both finishes to be added later: the first riser starts 1/2" lower, the
    /// last ends 1/4" higher.
    #[test]
    fn what_was_not_laid_out_for_lands_in_the_end_risers() {
        let risers =
            flight("  risers        3\n  laid out      98'-3 1/2\" to 99'-11 3/4\"\n").risers.unwrap();
        assert!(risers.bottom.is(Length::sixteenths(7, 4)));
        assert!(risers.between.is(Length::sixteenths(6, 12)));
        assert!(risers.top.is(Length::inches(7)));
        assert_eq!(risers.spread(), Length::sixteenths(0, 8));
    }

    /// A single riser has nothing to differ from.
    #[test]
    fn one_riser_takes_it_all() {
        let risers = flight("  risers        1\n  laid out      98'-3\" to 99'-10\"\n").risers.unwrap();
        assert_eq!(risers.spread(), Length::ZERO);
        assert!(risers.bottom.is(Length::inches(21)));
    }

    /// By hand: pitch 7 to 10; the joists' underside is 3/4" + 7-1/4" = 8" below the upper finish. 100" along, the
    /// nosings are 70" down: 62" of headroom. For 76" the edge must be (76 + 8) × 10/7 = 120" along.
    #[test]
    fn headroom_follows_the_pitch() {
        let flight = flight("  risers        3\n  tread         10\"\n  opening       8'-4\"\n");
        assert_eq!(flight.headroom, Ok(Length::inches(62)));
        assert_eq!(opening_for(&flight.edge.unwrap(), Length::inches(76)), Length::feet(10));
    }
}
