//! Files: what include lines led to, and files that say too little or too much.

pub mod file_empty;
pub mod include_circle;
pub mod include_not_found;
pub mod include_outside_root;
pub mod include_repeated;
pub mod include_unreadable;
pub mod too_many_problems;

use crate::house::House;
use crate::inputs::Include;
use crate::text::Span;

/// Every include line with the place of its path.
fn includes(house: &House) -> impl Iterator<Item = (&Include, Span)> {
    house.inputs.includes.iter().map(|include| (include, include.span.within(include.file, 0)))
}
