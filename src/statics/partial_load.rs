//! Live load on some spans only: how much more a support can get than with all spans loaded.
//!
//! It is followed from beams and headers that run over three supports or more, down through columns, jacks and pockets to
//! the pads; not into further beams, nor along walls. Source: ASCE 7-16 4.3.3, partial loading (from memory).

use std::collections::HashMap;

use crate::model::element::ElementId;
use crate::statics::action::{Action, Handed, Receiver, Source};
use crate::statics::member_line::{MemberLine, Part};
use crate::statics::pattern;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Force;

/// What one element can bring to another beyond what it brings with all spans loaded.
#[derive(Clone, Debug, Default)]
pub struct PartialLoad {
    beyond: HashMap<(ElementId, ElementId), Force>,
}

impl PartialLoad {
    /// How much more live load one element can bring to another.
    pub fn from_to(&self, from: ElementId, to: ElementId) -> Force {
        self.beyond.get(&(from, to)).copied().unwrap_or(Force::ZERO)
    }

    /// How much more live load an element can get in all from these actions.
    pub fn of(&self, on: ElementId, actions: &[Action]) -> Force {
        let mut from: Vec<ElementId> = actions
            .iter()
            .filter_map(|action| match action.source {
                Source::From(from) => Some(from),
                Source::Weight | Source::AreaOf(_) | Source::Declared(_) | Source::Load(_) => None,
            })
            .collect();
        from.sort();
        from.dedup();
        from.into_iter().map(|from| self.from_to(from, on)).sum()
    }

    /// Takes in one member, all that is above it being taken in already.
    pub fn add(&mut self, element: ElementId, on: &[Action], lines: &[MemberLine], handed: &[Handed]) {
        match element.kind {
            ElementKind::Beam | ElementKind::Header => {
                for line in lines.iter().filter(|line| matches!(line.part, Part::Piece(_))) {
                    self.add_line(line);
                }
            }
            ElementKind::Column | ElementKind::Jacks | ElementKind::Pocket => {
                let passed = self.of(element, on);
                let to = handed.iter().find_map(|handed| handed.to.element());
                if let Some(to) = to.filter(|_| passed > Force::ZERO) {
                    *self.beyond.entry((element, to)).or_default() += passed;
                }
            }
            _ => {}
        }
    }

    fn add_line(&mut self, line: &MemberLine) {
        if line.seats.len() < 3 || line.pushes.live.is_empty() {
            return;
        }
        let (Some(everywhere), Ok(patterned)) =
            (&line.responses.live, pattern::patterns(&line.prepared, &line.pushes.live))
        else {
            return;
        };
        for (at, seat) in line.seats.iter().enumerate() {
            let Receiver::Element(to) = seat.on else { continue };
            let reaction = |reactions: &[Force]| reactions.get(at).copied().unwrap_or(Force::ZERO);
            let most = patterned.patterns.iter().map(|pattern| reaction(&pattern.response.reactions));
            let most = most.fold(Force::ZERO, Force::max);
            let beyond = most - reaction(&everywhere.reactions);
            if beyond > Force::ZERO {
                *self.beyond.entry((line.of, to)).or_default() += beyond;
            }
        }
    }
}
