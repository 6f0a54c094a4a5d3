//! What could have stood where a line stopped fitting, in trade words.

use chumsky::error::RichPattern;

use crate::syntax::lexer::Token;
use crate::syntax::vocabulary::ElementKind;

/// A name for what a parser reads.
#[derive(Clone, Copy)]
pub(super) enum Label {
    /// These words as they are.
    Plain(&'static str),
    /// This very word.
    Word(&'static str),
    /// One of these very words.
    OneOf(&'static [&'static str]),
    /// The name of an element of one of these kinds.
    Name(&'static [ElementKind]),
}

/// More kinds than this are not told one by one.
const MOST_KINDS: usize = 12;

impl From<Label> for RichPattern<'_, Token<'_>> {
    fn from(label: Label) -> Self {
        RichPattern::Label(match label {
            Label::Plain(words) => words.into(),
            Label::Word(word) => format!("`{word}`").into(),
            Label::OneOf(words) => either(words.iter().map(|word| format!("`{word}`"))).into(),
            Label::Name(kinds) if kinds.len() > MOST_KINDS => "the name of an element".into(),
            Label::Name(kinds) => {
                let kinds = either(kinds.iter().map(|kind| kind.word().to_owned()));
                let article = if kinds.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
                format!("the name of {article} {kinds}").into()
            }
        })
    }
}

/// `a, b or c`
fn either(mut items: impl ExactSizeIterator<Item = String>) -> String {
    let mut text = items.next().unwrap_or_default();
    while let Some(item) = items.next() {
        text.push_str(if items.len() == 0 { " or " } else { ", " });
        text.push_str(&item);
    }
    text
}
