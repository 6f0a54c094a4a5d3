//! Severities that a project sets for the whole house, where they can't stand. Nothing here can be waived.

pub mod severity_given_twice;
pub mod severity_must_stay;
pub mod severity_of_unknown_rule;
pub mod severity_without_reason;

use crate::house::House;
use crate::model::site::OwnSeverity;
use crate::rules::weighing::{is_lower, own_severities};
use crate::rules::{Rule, rule_named};

/// Every severity that a project lowers, with its rule.
fn lowered(house: &House) -> impl Iterator<Item = (&OwnSeverity, &'static Rule)> {
    let known = own_severities(house).iter().filter_map(|own| Some((own, rule_named(&own.rule)?)));
    known.filter(|(own, rule)| is_lower(own, rule))
}
