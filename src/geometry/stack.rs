//! Where loops of the vertical stack close: a stated number against the one that follows from the rest.

use crate::geometry::carried::Carried;
use crate::geometry::levels::FloorLevels;
use crate::geometry::sum::{Derived, Sum, Unknown};
use crate::geometry::surfaces::{Surface, Surfaces, joist_bottom, joist_top, under_packing, under_sill};
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::foundation::Wall;
use crate::text::Span;
use crate::units::Length;

/// A stated number, the number that follows from the rest, and what they are numbers of.
#[derive(Clone, Debug, PartialEq)]
pub struct Closure {
    /// Which loop.
    pub of: Loop,
    /// The element that states the number.
    pub subject: ElementId,
    /// The stated number and where it stands.
    pub stated: Length,
    /// Where it stands.
    pub span: Span,
    /// The stated side's own arithmetic, when it is a sum too.
    pub stated_sum: Option<Sum>,
    /// What follows from the rest.
    pub derived: Sum,
    /// What lies on the subject and asks for the derived number.
    pub asked_by: Option<ElementId>,
}

/// The loops of the stack.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Loop {
    /// The datum and the floor's own number.
    Datum,
    /// The top of a concrete wall under a floor.
    WallUnderJoists,
    /// The plate of a framed wall under a floor.
    PlateUnderJoists,
    /// A framed wall's stated height between what it stands on and what lies on it.
    WallHeight,
    /// A shelf under a floor.
    ShelfUnderJoists,
    /// A ledger beside hung joists.
    LedgerAtJoists,
    /// The top of a beam under joists.
    BeamUnderJoists,
    /// The top of a wall under a beam.
    WallUnderBeam,
    /// A pocket's seat under a beam.
    SeatUnderBeam,
}

impl Closure {
    /// The level to write where the stated one stands: what follows from the rest, when it is a whole number of sixteenths
    /// and nothing else asks for another level there. `all` are the closures of the house.
    pub fn one_answer(&self, all: &[Self], tolerance: Length) -> Option<Length> {
        let wanted = self.derived.total();
        let mut others = all.iter().filter(|other| other.span == self.span);
        let is_one = others.all(|other| (other.derived.total() - wanted).abs() < tolerance);
        let is_exact = wanted.rounded_to(Length::sixteenths(0, 1)) == wanted;
        (self.stated_sum.is_none() && is_one && is_exact).then_some(wanted)
    }

    /// A loop that closes here.
    pub fn new(
        of: Loop,
        subject: ElementId,
        (stated, span): (Length, Span),
        derived: Sum,
        asked_by: Option<ElementId>,
    ) -> Self {
        Self { of, subject, stated, span, stated_sum: None, derived, asked_by }
    }

    /// How much the stated number lies above the derived one.
    pub fn difference(&self) -> Length {
        self.stated - self.derived.total()
    }

    /// True when the two agree: they differ by less than the tolerance.
    pub fn closes(&self, tolerance: Length) -> bool {
        self.difference().abs() < tolerance
    }
}

/// Every loop below the floors.
pub fn closures(
    model: &Model,
    floors: &[FloorLevels],
    surfaces: &Surfaces,
    carried: &Carried<'_>,
) -> Vec<Closure> {
    let mut closures = Vec::new();
    for wall in &model.walls {
        under_wall_loads(floors, surfaces, carried, wall, &mut closures);
    }
    for shelf in &model.shelves {
        let Some((top, span)) = shelf.top.stated() else { continue };
        for (joists, _) in carried.joists_bearing_on(shelf.common.id) {
            let needed =
                joist_bottom(floors, joists).and_then(|sum| under_sill(sum, &shelf.sill, shelf.common.id));
            push(
                &mut closures,
                Loop::ShelfUnderJoists,
                shelf.common.id,
                (*top, span),
                needed,
                joists.common.id,
            );
        }
    }
    for ledger in &model.ledgers {
        let Some((top, span)) = ledger.top.stated() else { continue };
        for (joists, _) in carried.joists_on(ledger.common.id) {
            let needed = joist_top(floors, joists);
            push(
                &mut closures,
                Loop::LedgerAtJoists,
                ledger.common.id,
                (*top, span),
                needed,
                joists.common.id,
            );
        }
    }
    for beam in &model.beams {
        let Ok(top) = surfaces.of(beam.common.id, Surface::Top) else { continue };
        for (joists, support) in carried.joists_bearing_on(beam.common.id) {
            let needed = joist_bottom(floors, joists).and_then(|sum| under_packing(sum, beam));
            let place = (top.total(), support.span);
            let at = closures.len();
            push(&mut closures, Loop::BeamUnderJoists, beam.common.id, place, needed, joists.common.id);
            if let Some(closure) = closures.get_mut(at) {
                closure.stated_sum = Some(top.clone());
            }
        }
    }
    for pocket in &model.pockets {
        let Some((seat, span)) = pocket.seat.stated() else { continue };
        for (beam, _) in carried.beams_on(pocket.common.id) {
            let needed = surfaces.of(beam.common.id, Surface::Bottom).and_then(|bottom| {
                let build_up =
                    pocket.build_up().ok_or(Unknown { of: Some(pocket.common.id), fact: "plate" })?;
                Ok(bottom.less(build_up, "plate, grout and shims", pocket.common.id, pocket.plate.span()))
            });
            push(&mut closures, Loop::SeatUnderBeam, pocket.common.id, (*seat, span), needed, beam.common.id);
        }
    }
    closures
}

fn under_wall_loads(
    floors: &[FloorLevels],
    surfaces: &Surfaces,
    carried: &Carried<'_>,
    wall: &Wall,
    closures: &mut Vec<Closure>,
) {
    let id = wall.common.id;
    let is_mineral = wall.kind.get().is_some_and(|kind| kind.is_mineral());
    let of = if is_mineral { Loop::WallUnderJoists } else { Loop::PlateUnderJoists };
    if let Some((top, span)) = wall.top.stated() {
        for (joists, _) in carried.joists_bearing_on(id) {
            let needed = joist_bottom(floors, joists).and_then(|sum| under_sill(sum, &wall.sill, id));
            push(closures, of, id, (*top, span), needed, joists.common.id);
        }
        for (beam, _) in carried.beams_on(id) {
            let needed =
                surfaces.of(beam.common.id, Surface::Bottom).and_then(|sum| under_sill(sum, &wall.sill, id));
            push(closures, Loop::WallUnderBeam, id, (*top, span), needed, beam.common.id);
        }
    }
    if let Some((height, span)) = wall.height.stated()
        && let (Ok(top), Ok(base)) = (surfaces.of(id, Surface::Top), surfaces.of(id, Surface::Bottom))
    {
        let needed = top.clone().less(base.total(), "what it stands on", id, None);
        // A top that itself came from this height closes by itself.
        if !top.terms().iter().any(|term| term.of == id && term.span == Some(span)) {
            let on_it = carried.joists_bearing_on(id).next().map(|(joists, _)| joists.common.id);
            closures.push(Closure::new(Loop::WallHeight, id, (*height, span), needed, on_it));
        }
    }
}

fn push(
    closures: &mut Vec<Closure>,
    of: Loop,
    subject: ElementId,
    stated: (Length, Span),
    derived: Derived,
    asked_by: ElementId,
) {
    if let Ok(derived) = derived {
        closures.push(Closure::new(of, subject, stated, derived, Some(asked_by)));
    }
}
