//! What an author states of derived facts.

pub mod claim_not_kept;
pub mod comparison_of_unlike_things;
pub mod fact_not_derived;

use crate::facts::answers::answer;
use crate::facts::comparison::literal;
use crate::facts::{Answer, FactValue, NoAnswer};
use crate::house::House;
use crate::model::element::{Claim, Common};
use crate::syntax::vocabulary::ElementKind;

/// Every claim with the element it stands in; what a column is cut to has a rule of its own.
fn claims(house: &House) -> impl Iterator<Item = (&Common, &Claim)> {
    let all = house.model.commons().flat_map(|common| common.claims.iter().map(move |claim| (common, claim)));
    all.filter(|(common, claim)| {
        common.id.kind != ElementKind::Column || !matches!(&*claim.fact, "cut" | "length")
    })
}

/// What the claimed fact comes to, and what it should be.
fn both_sides(house: &House, common: &Common, claim: &Claim) -> Result<(Answer, FactValue), NoAnswer> {
    let derived = answer(house, &claim.fact, &[common.id])?;
    let stated = literal(&claim.value)?;
    // A level is claimed as a length; printed beside one it is a level too.
    let stated = match (&derived.value, stated) {
        (FactValue::Elevation(_), FactValue::Length(level)) => FactValue::Elevation(level),
        (_, stated) => stated,
    };
    Ok((derived, stated))
}
