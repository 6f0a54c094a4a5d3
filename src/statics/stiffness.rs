//! How stiff a member is.

use crate::model::Model;
use crate::model::framing::Beam;
use crate::model::member::Member;
use crate::statics::member_line::Stiffness;

/// The stiffness of a member on edge; `None` when its stuff or size isn't known.
pub fn of(_model: &Model, member: Option<&Member>) -> Option<Stiffness> {
    let _ = member?;
    None
}

/// The stiffness of a beam as it is laid.
pub fn of_beam(model: &Model, beam: &Beam) -> Option<Stiffness> {
    of(model, beam.size.value())
}
