//! What an item of a hierarchy means when the client brings it back: names, which other edits leave alone.

use serde::{Deserialize, Serialize};
use serde_json::Value;
use tower_lsp::lsp_types::Url;

use crate::house::House;
use crate::model::element::ElementId;

/// What an item keeps for the next question.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Kept {
    /// The document from which the first question was asked.
    pub uri: Url,
    /// What the item is about.
    pub about: About,
}

/// What an item is about.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
pub enum About {
    /// An element.
    Element {
        /// The word for its kind.
        kind: String,
        /// Its name.
        name: String,
    },
    /// A size as it is written.
    Size(String),
    /// Something from which nothing goes on.
    Leaf,
}

impl Kept {
    /// What the item's data say; `None` when they are not ours.
    pub fn of(data: Option<Value>) -> Option<Self> {
        serde_json::from_value(data?).ok()
    }

    /// The data of an item.
    pub fn data(&self) -> Option<Value> {
        serde_json::to_value(self).ok()
    }
}

impl About {
    /// An element of a house.
    pub fn element(house: &House, id: ElementId) -> Self {
        match house.model.common(id) {
            Some(common) => Self::Element { kind: id.kind.word().to_owned(), name: common.name.to_string() },
            None => Self::Leaf,
        }
    }

    /// The element that it is in a house of now.
    pub fn element_in(&self, house: &House) -> Option<ElementId> {
        let Self::Element { kind, name } = self else { return None };
        house.model.named(name).filter(|id| id.kind.word() == kind)
    }
}
