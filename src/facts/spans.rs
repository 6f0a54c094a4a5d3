//! How far a member spans.

use crate::facts::{Answer, NoAnswer};
use crate::geometry::bearing;
use crate::geometry::plan_contacts::{Bay, BeamContact};
use crate::geometry::sum::Unknown;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// The longest span between neighbouring supports, centre to centre; by the grid between ends and joints.
///
/// # Errors
/// [`NoAnswer`] when it has no spans or its supports aren't known.
pub fn span(house: &House, element: ElementId) -> Result<Answer, NoAnswer> {
    // What the member is solved with, so that a sheet and a check never differ.
    let seats = house.forces.lines_of(element).iter().flat_map(|line| line.seats.windows(2));
    let solved = seats.filter_map(|pair| match pair {
        [near, far] => Some(far.station - near.station),
        _ => None,
    });
    if let Some(longest) = solved.max() {
        return Ok(Answer::length(longest));
    }
    let at = element.index as usize;
    let stations: Vec<Vec<Length>> = match element.kind {
        ElementKind::Joists => {
            let contacts = house.geometry.contacts.joists.get(at).ok_or(NoAnswer::NotAFactOfIt)?;
            let joists = house.model.joists_of(element).ok_or(NoAnswer::NotAFactOfIt)?;
            contacts.bays.iter().map(|bay| stations_of(joists, bay)).collect()
        }
        ElementKind::Beam => {
            let beam = house.model.beam(element).ok_or(NoAnswer::NotAFactOfIt)?;
            let contacts = house.geometry.contacts.beams.get(at).ok_or(NoAnswer::NotAFactOfIt)?;
            let mut meets: Vec<Length> = Vec::new();
            for (contact, support) in contacts.supports.iter().zip(&beam.supports) {
                let Ok(BeamContact::Meets { station, .. }) = contact else { continue };
                let is_joint = beam.joints.iter().any(|joint| {
                    Some(&joint.over.name) == support.on.reference().map(|reference| &reference.name)
                });
                if !beam.is_span_by_grid || is_joint {
                    meets.push(*station);
                }
            }
            if beam.is_span_by_grid {
                meets.push(Length::ZERO);
                meets.extend(contacts.length);
            }
            meets.sort();
            vec![meets]
        }
        _ => return Err(NoAnswer::NotAFactOfIt),
    };
    let spans = stations.iter().flat_map(|stations| stations.iter().zip(stations.iter().skip(1)));
    let longest = spans.map(|(near, far)| *far - *near).max();
    longest.map(Answer::length).ok_or(NoAnswer::Unknown(Unknown { of: Some(element), fact: "bears on" }))
}

/// Where the joists of a bay are held, along them: at the bay's edges where their spans go by the grid.
fn stations_of(joists: &Joists, bay: &Bay) -> Vec<Length> {
    let stations = bay.stations.iter().map(|(station, _)| *station);
    let Some(run) = joists.run.get().filter(|_| joists.is_span_by_grid) else { return stations.collect() };
    let (low, high) = bay.rect.on(run);
    let by_grid = |station: Length| match bearing::is_at_end(joists, station) {
        true if (station - low).abs() <= (high - station).abs() => low,
        true => high,
        false => station,
    };
    stations.map(by_grid).collect()
}
