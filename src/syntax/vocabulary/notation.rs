//! A form as a person reads it: `flush in FLOOR [, held LENGTH [low]]`.

use crate::syntax::form::{Form, Kind};
use crate::syntax::vocabulary::ElementKind;

/// The form in the reference's notation: words as they are typed, values in capitals, `[…]` for what may be left out,
/// `·` between choices, `…` for more of the same.
pub fn notation(form: &Form) -> String {
    match form {
        Form::Nothing => String::new(),
        Form::Words(words) | Form::Mark(words) => (*words).to_owned(),
        Form::Slot(_, kind) => kind_notation(kind),
        Form::Comma => ",".to_owned(),
        Form::Sequence(parts) => joined(parts),
        Form::Optional(inner) => format!("[{}]", notation(inner)),
        Form::OneOf(choices) => choices.iter().map(notation).collect::<Vec<_>>().join(" · "),
        Form::List(inner) => format!("{}, …", grouped(inner)),
    }
}

/// A kind of value as the notation writes it.
pub fn kind_notation(kind: &Kind) -> String {
    match kind {
        Kind::Name(kinds) => names(kinds),
        Kind::Word(words) => words.join(" · "),
        Kind::Dimensions(least, most) => dimensions(*least, *most),
        Kind::Length
        | Kind::Elevation
        | Kind::Load
        | Kind::Stress
        | Kind::Area
        | Kind::Date
        | Kind::Text
        | Kind::Count
        | Kind::Number
        | Kind::Percent
        | Kind::GridLine
        | Kind::GridRef
        | Kind::Point
        | Kind::Rect
        | Kind::Line
        | Kind::Side
        | Kind::Member
        | Kind::Slug
        | Kind::FreeWords
        | Kind::Bar
        | Kind::FactName
        | Kind::Comparison
        | Kind::AnyValue => kind_name(kind).to_uppercase(),
    }
}

/// What a kind of value is called in the grammar and in the reference.
pub const fn kind_name(kind: &Kind) -> &'static str {
    match kind {
        Kind::Length => "length",
        Kind::Elevation => "elevation",
        Kind::Load => "load",
        Kind::Stress => "stress",
        Kind::Area => "area",
        Kind::Date => "date",
        Kind::Text => "text",
        Kind::Count => "count",
        Kind::Number => "number",
        Kind::Percent => "percent",
        Kind::Name(_) => "name",
        Kind::GridLine => "gridline",
        Kind::GridRef => "grid-ref",
        Kind::Point => "point",
        Kind::Rect => "rect",
        Kind::Line => "line",
        Kind::Side => "side",
        Kind::Dimensions(_, _) => "dimensions",
        Kind::Member => "member",
        Kind::Word(_) => "word",
        Kind::Slug => "slug",
        Kind::FreeWords => "words",
        Kind::Bar => "bar",
        Kind::FactName => "fact",
        Kind::Comparison => "comparison",
        Kind::AnyValue => "value",
    }
}

fn joined(parts: &[Form]) -> String {
    let mut text = String::new();
    for part in parts {
        let piece = grouped(part);
        let is_tight = piece.is_empty() || piece.starts_with(',') || text.is_empty();
        if !is_tight {
            text.push(' ');
        }
        text.push_str(&piece);
    }
    text
}

/// The notation in brackets where a choice would run into its neighbours.
fn grouped(form: &Form) -> String {
    let text = notation(form);
    let is_choice = match form {
        Form::OneOf(choices) => choices.len() > 1,
        Form::Slot(_, Kind::Word(words)) => words.len() > 1,
        Form::Slot(_, Kind::Name(kinds)) => (2..=NAMES_SHOWN).contains(&kinds.len()),
        Form::Slot(..)
        | Form::Nothing
        | Form::Words(_)
        | Form::Mark(_)
        | Form::Comma
        | Form::Sequence(_)
        | Form::Optional(_)
        | Form::List(_) => false,
    };
    if is_choice { format!("({text})") } else { text }
}

/// More kinds than this are written as `NAME`.
const NAMES_SHOWN: usize = 4;

fn names(kinds: &[ElementKind]) -> String {
    if kinds.len() > NAMES_SHOWN {
        return "NAME".to_owned();
    }
    kinds.iter().map(|kind| kind.word().to_uppercase()).collect::<Vec<_>>().join(" · ")
}

fn dimensions(least: usize, most: usize) -> String {
    let needed = vec!["LENGTH"; least].join(" x ");
    needed + &" [x LENGTH]".repeat(most.saturating_sub(least))
}
