//! What can still be done about an element that is bought or stands already. All of it is common practice.

use crate::facts::FactValue;
use crate::model::element::{Common, Stage};
use crate::syntax::value::Date;
use crate::syntax::vocabulary::ElementKind;

/// An element that is no longer only on paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Standing {
    /// How far it has come. Invariant: not [`Stage::Drawn`].
    pub stage: Stage,
    /// Since when.
    pub since: Option<Date>,
}

impl Standing {
    /// The standing of an element; `None` on paper.
    pub fn of(common: &Common) -> Option<Self> {
        let status = common.status.value()?;
        match status.stage {
            Stage::Drawn => None,
            stage @ (Stage::Ordered | Stage::Poured | Stage::Set) => {
                Some(Self { stage, since: status.since })
            }
        }
    }

    /// The ways out for whoever stands before it, when a fact by which it is made or laid was `old` and is `new`: other
    /// facts of it, such as the room below, follow from those.
    pub fn ways_out(self, kind: ElementKind, words: &str, old: &FactValue, new: &FactValue) -> Vec<String> {
        if !is_made_by(kind, words) {
            return Vec::new();
        }
        let by = match (old.as_length(), new.as_length()) {
            (Some(old), Some(new)) => Some(new - old),
            _ => None,
        };
        let mut ways: Vec<String> = Vec::new();
        match self.stage {
            Stage::Drawn => {}
            Stage::Ordered => {
                ways.push(format!("call the supplier before it is made: {words} {new} instead of {old}"))
            }
            Stage::Poured | Stage::Set => match (kind, by) {
                (
                    ElementKind::Wall
                    | ElementKind::Shelf
                    | ElementKind::Pocket
                    | ElementKind::Footing
                    | ElementKind::Slab,
                    Some(by),
                ) if by.is_positive() => {
                    ways.push(format!("build it up by {by}: packing or grout under what bears there"));
                }
                (
                    ElementKind::Wall
                    | ElementKind::Shelf
                    | ElementKind::Pocket
                    | ElementKind::Footing
                    | ElementKind::Slab,
                    Some(by),
                ) => ways.push(format!("cut it down by {}, or let what lies on it give way", by.abs())),
                (ElementKind::Column, Some(by)) if by.is_positive() => {
                    ways.push(format!("shim it by {by}, or set a new one"));
                }
                (ElementKind::Column, Some(by)) => {
                    ways.push(format!("cut it by {}, or set a new one", by.abs()))
                }
                (
                    ElementKind::Beam | ElementKind::Joists | ElementKind::Ledger | ElementKind::Header,
                    Some(by),
                ) => {
                    let way = if by.is_positive() { "shim its ends up" } else { "lower its seats" };
                    ways.push(format!("{way} by {}", by.abs()));
                }
                (_, _) => ways.push(format!("keep {words} {old} and change the rest")),
            },
        }
        ways.push("write `accept \"…\" on DATE` there once it is decided".to_owned());
        ways
    }
}

/// The facts that the saw, the forms or the seat of a thing fix.
fn is_made_by(kind: ElementKind, words: &str) -> bool {
    match kind {
        ElementKind::Column | ElementKind::Jacks | ElementKind::Squash | ElementKind::Header => {
            matches!(words, "cut" | "size")
        }
        ElementKind::Wall => matches!(words, "top" | "thick" | "studs cut"),
        ElementKind::Footing | ElementKind::Slab => matches!(words, "top" | "bottom" | "thick" | "size"),
        ElementKind::Shelf | ElementKind::Pocket => words == "seat",
        ElementKind::Beam | ElementKind::Joists | ElementKind::Ledger => {
            matches!(words, "bottom" | "cut" | "size")
        }
        ElementKind::Stair => matches!(words, "risers" | "riser" | "run"),
        _ => false,
    }
}
