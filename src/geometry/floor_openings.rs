//! How a floor opening lies in its joists: headers across them, trimmers along them, tails between header and support.

use crate::geometry::carried::Carried;
use crate::geometry::plan_contacts::Contacts;
use crate::model::framing::Joists;
use crate::model::openings::Opening;
use crate::units::Length;

/// An opening in a field of joists.
#[derive(Clone, Copy, Debug)]
pub struct FramedOpening<'a> {
    /// The joists it cuts.
    pub joists: &'a Joists,
    /// How far its headers span: its extent across the joists.
    pub header: Length,
    /// From its two edges along the joists to the middle of the support beyond, the lower side first. `None` where that
    /// support isn't known, or the edge lies past the last one.
    pub tails: [Option<Length>; 2],
}

impl FramedOpening<'_> {
    /// The longest of its tail joists.
    pub fn longest_tail(&self) -> Option<Length> {
        self.tails.iter().flatten().max().copied()
    }
}

/// How an opening lies in the joists of its floor. `None` for an opening in a wall, or where the joists aren't known.
pub fn framed<'a>(
    contacts: &Contacts,
    carried: &Carried<'a>,
    opening: &Opening,
) -> Option<FramedOpening<'a>> {
    let [rect] = opening.fill.as_slice() else { return None };
    let floor = opening.floor.value()?.target?;
    for joists in carried.fields_of(floor) {
        let Some(run) = joists.run.get() else { continue };
        let of_field = contacts.joists.get(joists.common.id.index as usize)?;
        let (low, high) = rect.on(run);
        let (from, to) = rect.on(run.across());
        let bay = of_field.bays.iter().find(|bay| {
            let (along, across) = (bay.rect.on(run), bay.rect.on(run.across()));
            along.0 <= low && high <= along.1 && across.0 <= from && to <= across.1
        });
        let Some(bay) = bay else { continue };
        let may_have_more = joists.common.may_say("bears on") || joists.common.may_say("hangs from");
        let is_known = of_field.supports.iter().all(Result::is_ok) && !may_have_more;
        let stations = bay.stations.iter().map(|(station, _)| *station).filter(|_| is_known);
        let before = stations.clone().filter(|station| *station <= low).max().map(|station| low - station);
        let after = stations.filter(|station| *station >= high).min().map(|station| station - high);
        return Some(FramedOpening { joists, header: to - from, tails: [before, after] });
    }
    None
}
