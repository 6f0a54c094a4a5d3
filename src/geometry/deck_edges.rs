//! Where a deck ends, against the last member under it.

use crate::geometry::band;
use crate::geometry::plan_contacts::FieldContacts;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::framing::Joists;
use crate::model::plan::Station;
use crate::units::Length;

/// An edge of a deck at the ends of its joists.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeckEdge {
    /// Where it is.
    pub edge: Station,
    /// The last support of the joists on that side.
    pub support: ElementId,
    /// How far the edge lies past the outer edge of what bears there, or past the stated overhang of the joists. Negative
    /// where it stops short.
    pub past: Length,
}

/// The stated edges of a field's deck at the ends of its joists.
pub fn at_ends(model: &Model, joists: &Joists, contacts: &FieldContacts) -> Vec<DeckEdge> {
    let may_have_more =
        ["bears on", "hangs from", "cantilever"].into_iter().any(|phrase| joists.common.may_say(phrase));
    let Some(run) = joists.run.get() else { return Vec::new() };
    if may_have_more || contacts.supports.iter().any(Result::is_err) {
        return Vec::new();
    }
    let ends = joists.fill.iter().map(|rect| rect.on(run));
    let Some((low, high)) = ends.reduce(|one, other| (one.0.min(other.0), one.1.max(other.1))) else {
        return Vec::new();
    };
    let stations = || contacts.bays.iter().flat_map(|bay| &bay.stations).copied();
    let edges = joists.deck_edges.iter().filter(|edge| edge.axis == run);
    edges
        .filter_map(|edge| {
            let is_high = (edge.at - high).abs() < (edge.at - low).abs();
            let (_, support) = if is_high { stations().max()? } else { stations().min()? };
            let strip = band::bearing_surface(model, support)?.on(run);
            let past = if is_high { edge.at - strip.1 } else { strip.0 - edge.at };
            let of_it =
                joists.cantilevers.iter().filter(|cantilever| cantilever.value.0.target == Some(support));
            let overhang = of_it.map(|cantilever| cantilever.value.1).max().unwrap_or(Length::ZERO);
            Some(DeckEdge { edge: *edge, support, past: past - overhang })
        })
        .collect()
}
