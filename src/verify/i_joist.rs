//! I-joists: moment, shear and reactions against what their series or product declares.

use crate::design::wood::i_joist::{moment_capacity, reaction_capacity, shear_capacity};
use crate::model::stuff::{IJoist, NoStuff};
use crate::products::i_joist::capacities::{END_BEARING, INNER_BEARING};
use crate::units::{Force, Length, Moment};
use crate::verify::check::{Check, NotVerified, Step};
use crate::verify::demands::Demand;
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;
use crate::verify::spanning::{Acting, Outcomes, governing};
use crate::verify::wood_values::read;

/// Moment, shear, and the reaction at each seat.
pub fn of(acting: &Acting<'_>, joist: &IJoist) -> Outcomes {
    let bending = governing(acting.demands.iter().map(|demand| bending(acting, joist, demand)));
    let shear = governing(acting.demands.iter().map(|demand| shear(acting, joist, demand)));
    let seats = 0..acting.spanning.line.seats.len();
    let reactions = governing(
        acting
            .demands
            .iter()
            .flat_map(|demand| seats.clone().map(move |seat| reaction(acting, joist, demand, seat))),
    );
    let states = [LimitState::Bending, LimitState::Shear, LimitState::SupportReaction];
    states.into_iter().zip([bending, shear, reactions]).filter_map(|(state, it)| Some((state, it?))).collect()
}

fn declared<T>(acting: &Acting<'_>, value: Option<T>, symbol: &'static str) -> Result<T, NotVerified> {
    value.ok_or_else(|| match acting.spanning.stuff.product {
        Some(product) => NoStuff::NotDeclared(product, symbol).into(),
        None => NoStuff::NoValues(symbol.into()).into(),
    })
}

fn bending(acting: &Acting<'_>, joist: &IJoist, demand: &Demand) -> Result<Check, NotVerified> {
    let reference = declared(acting, joist.moment, "moment")? * pieces(acting);
    let extremes = demand.response.extremes();
    let (sagging, hogging) = (extremes.sagging, extremes.hogging);
    let (moment, at): (Moment, Length) = if sagging.0.abs() >= hogging.0.abs() { sagging } else { hogging };
    let capacity = moment_capacity(reference, demand.duration);
    let of = Compared { demand: moment.abs().into(), capacity: capacity.into(), reference: reference.into() };
    Ok(check(demand, of, at, ["M", "Mr", "Mr'"], "NDS 2018 table 7.3.1, from memory"))
}

fn shear(acting: &Acting<'_>, joist: &IJoist, demand: &Demand) -> Result<Check, NotVerified> {
    let reference = declared(acting, joist.shear, "shear")? * pieces(acting);
    let (shear, at) = demand.response.extremes().shear;
    let capacity = shear_capacity(reference, demand.duration);
    let of = Compared { demand: shear.abs().into(), capacity: capacity.into(), reference: reference.into() };
    Ok(check(demand, of, at, ["V", "Vr", "Vr'"], "NDS 2018 table 7.3.1, from memory"))
}

fn reaction(acting: &Acting<'_>, joist: &IJoist, demand: &Demand, seat: usize) -> Result<Check, NotVerified> {
    let line = &acting.spanning.line;
    let at = line.seats.get(seat).map(|seat| seat.station - line.begins).unwrap_or_default();
    let is_inner = at.is_positive() && at < line.prepared.length();
    let (reference, stated) = if is_inner {
        (declared(acting, joist.inner_reaction, "interior")?, INNER_BEARING)
    } else {
        (declared(acting, joist.end_reaction, "end")?, END_BEARING)
    };
    // What lies right over the seat goes down through blocks, not through the web.
    let force = demand.response.reactions.get(seat).copied().unwrap_or(Force::ZERO).max(Force::ZERO);
    // A hanger is made for the joist's own bearing.
    let bearing = acting.spanning.seats.get(seat).and_then(|contact| contact.bearing).unwrap_or(stated);
    let reference = reference * pieces(acting);
    let capacity = reaction_capacity(reference, stated, bearing, demand.duration)?;
    let of = Compared { demand: force.into(), capacity: capacity.into(), reference: reference.into() };
    Ok(check(demand, of, at, ["R", "Rr", "Rr'"], "NDS 2018 table 7.3.1, from memory"))
}

fn pieces(acting: &Acting<'_>) -> f64 {
    f64::from(acting.spanning.stuff.section.pieces)
}

struct Compared {
    demand: Quantity,
    capacity: Quantity,
    reference: Quantity,
}

fn check(
    demand: &Demand,
    compared: Compared,
    at: Length,
    [symbol, reference, adjusted]: [&'static str; 3],
    clause: &'static str,
) -> Check {
    let steps = vec![
        read(symbol, compared.demand, "statics: continuous member"),
        read(reference, compared.reference, "by series or product, all pieces"),
        Step {
            symbol: adjusted,
            formula: "reference CD",
            values: vec![("reference", compared.reference), ("CD", demand.duration.into())],
            result: compared.capacity,
            source: clause,
        },
    ];
    Check {
        demand: compared.demand,
        capacity: compared.capacity,
        combination: demand.combination.name,
        pattern: demand.pattern.clone(),
        at: Some(at),
        clause,
        steps,
        assumed: Vec::new(),
    }
}
