//! What changed between two states of some specs and what follows, for a person: plain text, Markdown and HTML.

mod html;
mod json;
mod letter;
mod markdown;
mod text;
mod words;

pub use html::write_html as write_change_html;
pub use json::write_json as write_change_json;
pub use letter::write_letter;
pub use markdown::write_markdown as write_change_markdown;
pub use text::write_text as write_change_text;
pub(in crate::report) use words::fact as fact_words;

use crate::compare::{Change, StatedChange};

/// What changed in all specs that were compared.
#[derive(Clone, Copy, Debug)]
pub struct ShownChanges<'a> {
    /// Those in which something changed; the only one, changed or not, when one was asked for.
    pub specs: &'a [ShownChange<'a>],
    /// How many more were compared, in which nothing that matters changed; `None` when one was asked for.
    pub n_same: Option<usize>,
}

/// A change with the places of its lines as this reader writes them.
#[derive(Clone, Copy, Debug)]
pub struct ShownChange<'a> {
    /// The name of the spec.
    pub spec: &'a str,
    /// What changed.
    pub change: &'a Change,
    /// `FILE:LINE:COLUMN` of each of [`Change::stated`], in their order.
    pub places: &'a [String],
}

impl<'a> ShownChange<'a> {
    fn stated(&self) -> impl Iterator<Item = (&'a StatedChange, &'a str)> {
        let places = self.places.iter().map(String::as_str).chain(std::iter::repeat(""));
        self.change.stated.iter().zip(places)
    }
}
