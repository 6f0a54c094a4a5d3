//! Tops, bottoms and seats of walls, shelves, pockets, ledgers, beams, slabs and footings.

use std::collections::BTreeMap;

use crate::geometry::carried::Carried;
use crate::geometry::levels::FloorLevels;
use crate::geometry::sum::{Derived, Sum, Unknown};
use crate::model::Model;
use crate::model::element::{ElementId, Reference};
use crate::model::field::Field;
use crate::model::foundation::{Footing, Pedestal, TopPlace, Wall};
use crate::model::framing::{Beam, BeamSet, Joists};
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// A surface of an element that has an elevation.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Surface {
    /// Concrete without the sill, the plate of a framed wall, the upper edge of a member.
    Top,
    /// The lower edge, the underside.
    Bottom,
    /// The concrete under a pocket's plate and grout.
    Seat,
    /// What a column stands on: a footing's top or that of its pedestal.
    Bearing,
}

/// The elevations of every surface, as far as they are known.
#[derive(Clone, Debug, Default)]
pub struct Surfaces {
    known: BTreeMap<(ElementId, Surface), Derived>,
}

impl Surfaces {
    /// The elevation that holds: the stated one, else the derived one.
    pub fn of(&self, element: ElementId, surface: Surface) -> Derived {
        self.known
            .get(&(element, surface))
            .cloned()
            .unwrap_or(Err(Unknown { of: Some(element), fact: "top" }))
    }

    fn put(&mut self, element: ElementId, surface: Surface, derived: Derived) {
        self.known.insert((element, surface), derived);
    }
}

/// Derives the surfaces of a house.
pub fn of(model: &Model, floors: &[FloorLevels], carried: &Carried<'_>) -> Surfaces {
    let mut surfaces = Surfaces::default();
    for slab in &model.slabs {
        let id = slab.common.id;
        let top =
            stated_or(&slab.top, id, "top", &slab.common.name, Err(Unknown { of: Some(id), fact: "top" }));
        let bottom = top.clone().and_then(|top| {
            let thick = slab.thick.get().ok_or(Unknown { of: Some(id), fact: "thick" })?;
            Ok(top.less(thick, format!("slab {}", slab.common.name), id, slab.thick.span()))
        });
        surfaces.put(id, Surface::Top, top);
        surfaces.put(id, Surface::Bottom, bottom);
    }
    for footing in &model.footings {
        put_footing(model, footing, &mut surfaces);
    }
    for beam in &model.beams {
        let top = beam_top(floors, carried, beam);
        let bottom = top.clone().and_then(|top| below_member(top, beam));
        surfaces.put(beam.common.id, Surface::Top, top);
        surfaces.put(beam.common.id, Surface::Bottom, bottom);
    }
    put_seats(model, floors, carried, &mut surfaces);
    for wall in model.walls.iter().filter(|wall| is_mineral(wall)) {
        put_wall(model, floors, carried, wall, &mut surfaces);
    }
    for wall in model.walls.iter().filter(|wall| !is_mineral(wall)) {
        put_wall(model, floors, carried, wall, &mut surfaces);
    }
    surfaces
}

/// The top of a floor's joists. A field's own, so that the sum names the field's floor.
pub fn joist_top(floors: &[FloorLevels], joists: &Joists) -> Derived {
    let unknown = Unknown { of: Some(joists.common.id), fact: "floor" };
    let floor = joists.floor.value().and_then(|reference| reference.target).ok_or(unknown)?;
    floors.get(floor.index as usize).map_or(Err(unknown), |levels| levels.joist_top.clone())
}

/// The bottom of a field's joists.
pub fn joist_bottom(floors: &[FloorLevels], joists: &Joists) -> Derived {
    let top = joist_top(floors, joists)?;
    let id = joists.common.id;
    let depth =
        joists.size.value().and_then(|size| size.depth()).ok_or(Unknown { of: Some(id), fact: "size" })?;
    Ok(top.less(depth, format!("joists {}", joists.common.name), id, joists.size.span()))
}

/// A footing's top or a pedestal's, from the elevation or the slab that gives it.
fn place_of(model: &Model, place: &TopPlace, footing: &Footing, fact: &'static str) -> Derived {
    let id = footing.common.id;
    let of_slab = |reference: &Reference| -> Derived {
        let slab =
            reference.target.and_then(|slab| model.slab(slab)).ok_or(Unknown { of: Some(id), fact })?;
        let unknown = Unknown { of: Some(slab.common.id), fact: "top" };
        let top = slab.top.get().ok_or(unknown)?;
        Ok(Sum::start(top, format!("top of {}", slab.common.name), slab.common.id, slab.top.span()))
    };
    let what = format!("{fact} of {}", footing.common.name);
    match place {
        TopPlace::At(elevation) => Ok(Sum::start(*elevation, what, id, footing.top.span())),
        TopPlace::BelowSlab(below, slab) => {
            Ok(of_slab(slab)?.less(*below, "below the slab", id, footing.top.span()))
        }
        TopPlace::AboveSlab(above, slab) => {
            Ok(of_slab(slab)?.plus(*above, "above the slab", id, footing.top.span()))
        }
    }
}

fn put_footing(model: &Model, footing: &Footing, surfaces: &mut Surfaces) {
    let id = footing.common.id;
    let unknown = |fact| Unknown { of: Some(id), fact };
    let top =
        footing.top.value().ok_or(unknown("top")).and_then(|place| place_of(model, place, footing, "top"));
    let bottom = top.clone().and_then(|top| {
        let size = footing.size.get().ok_or(unknown("size"))?;
        Ok(top.less(size.thickness(), format!("footing {}", footing.common.name), id, footing.size.span()))
    });
    let bearing = match (footing.pedestal.value(), footing.pedestal.is_broken()) {
        (Some(Pedestal { top, .. }), _) => place_of(model, top, footing, "pedestal"),
        (None, true) => Err(unknown("pedestal")),
        (None, false) => top.clone(),
    };
    surfaces.put(id, Surface::Top, top);
    surfaces.put(id, Surface::Bottom, bottom);
    surfaces.put(id, Surface::Bearing, bearing);
}

/// A beam's top, from the line that sets it.
fn beam_top(floors: &[FloorLevels], carried: &Carried<'_>, beam: &Beam) -> Derived {
    let id = beam.common.id;
    let unknown = Unknown { of: Some(id), fact: "set" };
    let span = beam.set.span();
    let levels =
        |floor: &Reference| floor.target.and_then(|floor| floors.get(floor.index as usize)).ok_or(unknown);
    match beam.set.value().ok_or(unknown)? {
        BeamSet::Flush(floor, held) => {
            Ok(levels(floor)?.joist_top.clone()?.less(*held, "held low", id, span))
        }
        BeamSet::Upset(floor, by) => {
            Ok(levels(floor)?.subfloor.clone()?.plus(*by, "above the deck", id, span))
        }
        BeamSet::Top(elevation) => {
            Ok(Sum::start(*elevation, format!("top of {}", beam.common.name), id, span))
        }
        BeamSet::Dropped(floor, packed) => {
            // Its own joists decide where it lies; a beam that carries none yet goes under the floor's deepest.
            let bottom = match carried.joists_bearing_on(id).next() {
                Some((joists, _)) => joist_bottom(floors, joists)?,
                None => levels(floor)?.joist_bottom.clone()?,
            };
            under_packing(bottom.less(*packed, "packing", id, span), beam)
        }
    }
}

/// From what lies on a beam down to the beam itself: its nailer, when it has one.
pub fn under_packing(bottom: Sum, beam: &Beam) -> Derived {
    if beam.nailer.is_broken() {
        return Err(Unknown { of: Some(beam.common.id), fact: "nailer" });
    }
    let Some(nailer) = beam.nailer.value() else { return Ok(bottom) };
    let thickness = nailer.member.thickness();
    let thickness = thickness.ok_or(Unknown { of: Some(beam.common.id), fact: "nailer" })?;
    Ok(bottom.less(thickness, format!("nailer on {}", beam.common.name), beam.common.id, beam.nailer.span()))
}

fn below_member(top: Sum, beam: &Beam) -> Derived {
    let id = beam.common.id;
    let size = beam.size.value().ok_or(Unknown { of: Some(id), fact: "size" })?;
    let depth = if beam.is_laid_flat { size.thickness() } else { size.depth() };
    let depth = depth.ok_or(Unknown { of: Some(id), fact: "size" })?;
    Ok(top.less(depth, format!("beam {}", beam.common.name), id, beam.size.span()))
}

/// Shelves, pockets and ledgers: stated, or from what they carry.
fn put_seats(model: &Model, floors: &[FloorLevels], carried: &Carried<'_>, surfaces: &mut Surfaces) {
    for shelf in &model.shelves {
        let id = shelf.common.id;
        let derived =
            carried_from(floors, carried, id).and_then(|bottom| under_sill(bottom, &shelf.sill, id));
        surfaces.put(id, Surface::Top, stated_or(&shelf.top, id, "top", &shelf.common.name, derived));
    }
    for ledger in &model.ledgers {
        let id = ledger.common.id;
        let derived = carried
            .joists_on(id)
            .first()
            .ok_or(Unknown { of: Some(id), fact: "top" })
            .and_then(|(joists, _)| joist_top(floors, joists));
        let top = stated_or(&ledger.top, id, "top", &ledger.common.name, derived);
        let bottom = top.clone().and_then(|top| {
            let depth = ledger.size.value().and_then(|size| size.depth());
            let depth = depth.ok_or(Unknown { of: Some(id), fact: "size" })?;
            Ok(top.less(depth, format!("ledger {}", ledger.common.name), id, ledger.size.span()))
        });
        surfaces.put(id, Surface::Top, top);
        surfaces.put(id, Surface::Bottom, bottom);
    }
    for pocket in &model.pockets {
        let id = pocket.common.id;
        let derived = carried
            .beams_on(id)
            .first()
            .ok_or(Unknown { of: Some(id), fact: "seat" })
            .and_then(|(beam, _)| surfaces.of(beam.common.id, Surface::Bottom))
            .and_then(|bottom| {
                let build_up = pocket.build_up().ok_or(Unknown { of: Some(id), fact: "plate" })?;
                Ok(bottom.less(build_up, "plate, grout and shims", id, pocket.plate.span()))
            });
        surfaces.put(id, Surface::Seat, stated_or(&pocket.seat, id, "seat", &pocket.common.name, derived));
    }
}

/// The underside of the first joists that bear on an element.
fn carried_from(floors: &[FloorLevels], carried: &Carried<'_>, carrier: ElementId) -> Derived {
    carried
        .joists_bearing_on(carrier)
        .next()
        .ok_or(Unknown { of: Some(carrier), fact: "top" })
        .and_then(|(joists, _)| joist_bottom(floors, joists))
}

/// From the wood that lies on concrete down to the concrete.
pub fn under_sill(bottom: Sum, sill: &Field<crate::model::foundation::Sill>, of: ElementId) -> Derived {
    if sill.is_broken() {
        return Err(Unknown { of: Some(of), fact: "sill" });
    }
    let Some(stated) = sill.value() else { return Ok(bottom) };
    let height = stated.height().ok_or(Unknown { of: Some(of), fact: "sill" })?;
    let what = if stated.count == 1 { "sill".to_owned() } else { format!("{} sills", stated.count) };
    Ok(bottom.less(height, what, of, sill.span()))
}

fn is_mineral(wall: &Wall) -> bool {
    wall.kind.get().is_some_and(|kind| kind.is_mineral())
}

fn put_wall(
    model: &Model,
    floors: &[FloorLevels],
    carried: &Carried<'_>,
    wall: &Wall,
    surfaces: &mut Surfaces,
) {
    let id = wall.common.id;
    let base = wall_base(model, floors, wall, surfaces);
    let loaded = carried_from(floors, carried, id);
    let derived = if is_mineral(wall) {
        loaded.and_then(|bottom| under_sill(bottom, &wall.sill, id))
    } else {
        loaded.or_else(|unknown| {
            let height = wall.height.get().ok_or(unknown)?;
            Ok(base.clone()?.plus(height, format!("height of {}", wall.common.name), id, wall.height.span()))
        })
    };
    surfaces.put(id, Surface::Top, stated_or(&wall.top, id, "top", &wall.common.name, derived));
    surfaces.put(id, Surface::Bottom, base);
}

/// What a wall stands on: a footing's top, another wall's sill, a floor's deck, a slab.
fn wall_base(model: &Model, floors: &[FloorLevels], wall: &Wall, surfaces: &Surfaces) -> Derived {
    let unknown = Unknown { of: Some(wall.common.id), fact: "stands on" };
    let stand = wall.stands_on.value().ok_or(unknown)?;
    let on = stand.on.reference().and_then(|reference| reference.target).ok_or(unknown)?;
    standing_surface(model, floors, surfaces, on)
}

/// The surface that something standing on an element stands on.
pub fn standing_surface(
    model: &Model,
    floors: &[FloorLevels],
    surfaces: &Surfaces,
    on: ElementId,
) -> Derived {
    match on.kind {
        ElementKind::Footing => surfaces.of(on, Surface::Bearing),
        ElementKind::Wall => {
            let top = surfaces.of(on, Surface::Top)?;
            match model.wall(on) {
                Some(wall) => over_sill(top, &wall.sill, on),
                None => Ok(top),
            }
        }
        ElementKind::Floor => {
            let levels = floors.get(on.index as usize);
            levels.map_or(Err(Unknown { of: Some(on), fact: "subfloor" }), |levels| levels.subfloor.clone())
        }
        ElementKind::Shelf => {
            let top = surfaces.of(on, Surface::Top)?;
            match model.shelf(on) {
                Some(shelf) => over_sill(top, &shelf.sill, on),
                None => Ok(top),
            }
        }
        _ => surfaces.of(on, Surface::Top),
    }
}

fn over_sill(top: Sum, sill: &Field<crate::model::foundation::Sill>, of: ElementId) -> Derived {
    if sill.is_broken() {
        return Err(Unknown { of: Some(of), fact: "sill" });
    }
    let Some(stated) = sill.value() else { return Ok(top) };
    let height = stated.height().ok_or(Unknown { of: Some(of), fact: "sill" })?;
    Ok(top.plus(height, "sill", of, sill.span()))
}

/// The stated elevation where the flow stops; else the derived one; unknown where a line would state it.
fn stated_or(
    field: &Field<Length>,
    of: ElementId,
    fact: &'static str,
    name: &str,
    derived: Derived,
) -> Derived {
    match field {
        Field::Stated(elevation, span) => {
            Ok(Sum::start(*elevation, format!("{fact} of {name}"), of, Some(*span)))
        }
        Field::Broken(_) => Err(Unknown { of: Some(of), fact }),
        Field::Assumed(..) | Field::Missing => derived,
    }
}

#[cfg(test)]
mod tests {
    use super::Surface;
    use crate::house::House;
    use crate::testing::rule_check::house;

    fn at(house: &House, name: &str, surface: Surface) -> String {
        let element = house.model.named(name).unwrap();
        let derived = house.geometry.surfaces.of(element, surface);
        derived.map_or_else(|_| "?".to_owned(), |sum| sum.total().in_feet().to_string())
    }

    /// By hand, under a deck of 3/4" and dressed 2x10 joists of 9-1/4": joist bottoms at 99'-2"; two sills of 1-1/2"
    /// (two 2x sills make 3", common practice) put the wall at 98'-11".
    #[test]
    fn what_is_not_stated_follows_from_above() {
        let house = house(
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
joists J1
  floor       main
  size        2x10 SPF No.2
  bears on    W1
  bears on    B1
  bears on    BW1
wall W1
  kind        concrete
  sill        2 of 2x6 treated
beam B1
  size        3-ply 2x10 SPF No.2
  set         dropped under main
beam B2
  size        W8x18
  set         flush in main, held 3/8\" low
beam B3
  size        W8x18
  set         dropped under main
  nailer      2x6 SPF flat on top
wall BW1
  kind        framed
  studs       2x6 SPF No.2 at 16\"
  stands on   F1
footing F1
  top         91'-0\"
  size        20\" x 10\"
",
        );
        assert_eq!(at(&house, "W1", Surface::Top), "98'-11\"");
        assert_eq!(at(&house, "B1", Surface::Top), "99'-2\"");
        assert_eq!(at(&house, "B1", Surface::Bottom), "98'-4 3/4\"");
        // Flush: 99'-11 1/4" less 3/8"; its true depth of 8.14" below that is 99'-2.735".
        assert_eq!(at(&house, "B2", Surface::Top), "99'-10 7/8\"");
        assert_eq!(at(&house, "B2", Surface::Bottom), "99'-2 3/4\"~");
        // Dropped under a flat nailer of 1-1/2".
        assert_eq!(at(&house, "B3", Surface::Top), "99'-0 1/2\"");
        assert_eq!(at(&house, "BW1", Surface::Top), "99'-2\"");
        assert_eq!(at(&house, "BW1", Surface::Bottom), "91'-0\"");
        assert_eq!(at(&house, "F1", Surface::Bottom), "90'-2\"");
    }

    /// With equal decks, joists, sills and finishes the shelf lies as far below the wall top as the floor below the
    /// floor (common practice): 14" here.
    #[test]
    fn equal_stacks_make_the_shelf_drop_the_floor_drop() {
        let house = house(
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
floor den
  subfloor    98'-10\"
  deck        3/4\"
joists J1
  floor       main
  size        2x8 SPF No.2
  bears on    W1
joists J2
  floor       den
  size        2x8 SPF No.2
  bears on    SH1
wall W1
  kind        concrete
  sill        1 of 2x4 treated
shelf SH1
  in          W1 from south face
  width       4\"
  sill        1 of 2x4 treated
",
        );
        let level =
            |name: &str| house.geometry.surfaces.of(house.model.named(name).unwrap(), Surface::Top).unwrap();
        assert_eq!((level("W1").total() - level("SH1").total()).to_string(), "1'-2\"");
    }

    /// Unequal stacks (trade arithmetic by hand): a drop of 20" finish to finish, above 2x10 on one sill under 1/2" of
    /// cork, below 2x8 on two sills under 3/4" of plank. D_sf = 20 − 1/2 + 3/4 = 20-1/4; the stacks are
    /// 3/4 + 9-1/4 + 1-1/2 = 11-1/2 and 3/4 + 7-1/4 + 3 = 11; the shelf is 20-1/4 + 11 − 11-1/2 = 19-3/4 below.
    #[test]
    fn unequal_stacks_move_the_shelf() {
        let house = house(
            "
floor main
  subfloor    100'-0\"
  deck        3/4\"
  finish      cork 1/2\"
floor den
  finish at   98'-4 1/2\"
  deck        3/4\"
  finish      plank 3/4\"
joists J1
  floor       main
  size        2x10 SPF No.2
  bears on    W1
joists J2
  floor       den
  size        2x8 SPF No.2
  bears on    SH1
wall W1
  kind        concrete
  sill        1 of 2x4 treated
shelf SH1
  in          W1 from south face
  width       4\"
  sill        2 of 2x4 treated
",
        );
        let level =
            |name: &str| house.geometry.surfaces.of(house.model.named(name).unwrap(), Surface::Top).unwrap();
        assert_eq!((level("W1").total() - level("SH1").total()).in_inches().to_string(), "19-3/4\"");
    }
}
