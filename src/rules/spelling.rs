//! The text itself: what can't be read. Nothing here can be waived.

pub mod day_does_not_exist;
pub mod fact_before_element;
pub mod fact_not_understood;
pub mod fact_repeated;
pub mod heading_unclear;
pub mod impossible_fraction;
pub mod include_unclear;
pub mod length_not_exact;
pub mod line_too_long;
pub mod name_malformed;
pub mod name_missing;
pub mod name_reserved;
pub mod number_too_large;
pub mod odd_dimension;
pub mod stray_character;
pub mod text_not_closed;
pub mod unit_unclear;
pub mod unknown_element;
pub mod unknown_fact;

use crate::house::{House, TextProblem};
use crate::rules::MOST_TOLD;

/// The problems of the text that are told one by one: the first of each file.
fn told(house: &House) -> impl Iterator<Item = TextProblem<'_>> {
    house.files().flat_map(|file| house.text_problems_of(file).take(MOST_TOLD))
}
