//! Joist fields: what carries them, read from the support lines and the plan.

use crate::geometry::band;
use crate::geometry::bearing;
use crate::geometry::carried::carrying_element;
use crate::model::Model;
use crate::model::framing::Joists;
use crate::model::plan::Axis;
use crate::model::support::{Carrier, Contact};
use crate::statics::action::{Lost, Receiver};
use crate::statics::field::{END_REACH, Field, FieldSupport};
use crate::statics::member_line::Stiffness;
use crate::units::Length;

/// A joist field, ready to be followed.
///
/// # Errors
/// Why its loads can't be followed: nothing carries it, or a line that would say what does can't be read.
pub fn field<'a>(model: &Model, joists: &'a Joists, stiffness: Stiffness) -> Result<Field<'a>, Lost> {
    let run = joists.run.get().ok_or(Lost::Unreadable)?;
    // A support that can't be read may hold any of it.
    if ["bears on", "hangs from", "joint"].into_iter().any(|fact| joists.common.may_say(fact)) {
        return Err(Lost::Unreadable);
    }
    if joists.supports.is_empty() {
        return Err(Lost::NoSupport);
    }
    let mut supports = Vec::new();
    let mut outside = Vec::new();
    for (index, support) in joists.supports.iter().enumerate() {
        let on = match (&support.on, carrying_element(support)) {
            (Carrier::Outside(_), _) => {
                outside.push(index);
                continue;
            }
            (Carrier::Element(_), Some(element)) => element,
            (Carrier::Element(_), None) => return Err(Lost::Unreadable),
        };
        let hangs = matches!(support.by, Contact::Hangs(_));
        let band = if hangs { band::of(model, on) } else { band::bearing_surface(model, on) };
        let band = band.ok_or(Lost::Unreadable)?;
        if band.axis == run {
            continue;
        }
        let contact = bearing::of_joists(model, joists, support).ok();
        let is_joint = joists.joints.iter().any(|joint| joint.over.target == Some(on));
        let parts_at = if hangs {
            Some(band.width().half())
        } else if is_joint {
            Some(contact.map_or(Length::ZERO, |contact| contact.of_each.half()))
        } else {
            None
        };
        supports.push(FieldSupport {
            on: Receiver::Element(on),
            support: index,
            strip: band.across,
            reach: band.along,
            contact: contact.map(|contact| contact.length),
            parts_at,
        });
    }
    for index in outside {
        supports.push(outside_spec(joists, run, &supports, index));
    }
    Ok(Field {
        of: joists.common.id,
        run,
        fill: &joists.fill,
        supports,
        is_span_by_grid: joists.is_span_by_grid,
        stiffness,
    })
}

/// A support outside of the spec has no place: it is taken at the edge of the field that nothing else holds, the lower one
/// first.
fn outside_spec(joists: &Joists, run: Axis, supports: &[FieldSupport], index: usize) -> FieldSupport {
    let low = joists.fill.iter().map(|rect| rect.on(run).0).min().unwrap_or_default();
    let high = joists.fill.iter().map(|rect| rect.on(run).1).max().unwrap_or_default();
    let is_low_held = supports.iter().any(|support| (support.strip.0 - low).abs() <= END_REACH);
    let station = if is_low_held { high } else { low };
    let across = run.across();
    let reach = (
        joists.fill.iter().map(|rect| rect.on(across).0).min().unwrap_or_default(),
        joists.fill.iter().map(|rect| rect.on(across).1).max().unwrap_or_default(),
    );
    FieldSupport {
        on: Receiver::Outside,
        support: index,
        strip: (station, station),
        reach,
        contact: None,
        parts_at: None,
    }
}
