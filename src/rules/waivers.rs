//! Waivers: rules that are silenced on one element, and what was decided about what stands.

pub mod accept_acknowledges_nothing;
pub mod waiver_of_unknown_rule;
pub mod waiver_out_of_date;
pub mod waiver_silences_nothing;
pub mod waiver_without_reason;

use crate::house::House;
use crate::model::element::{Common, Waiver};

/// Every waiver with the element it stands in.
fn waivers(house: &House) -> impl Iterator<Item = (&Common, &Waiver)> {
    house.model.commons().flat_map(|common| common.waivers.iter().map(move |waiver| (common, waiver)))
}
