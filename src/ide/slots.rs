//! The values of a fact in trade words, and the ways in which a fact can be said.

use crate::syntax::form::{Form, Kind};
use crate::syntax::vocabulary::kind_name;

/// More ways of one fact than this are not told one by one.
const MOST_WAYS: usize = 12;

/// The ways in which a form can be said, each as its pieces from the left.
pub(super) fn ways(form: &'static Form) -> Vec<Vec<&'static Form>> {
    match form {
        Form::OneOf(choices) => {
            let ways: Vec<_> = choices.iter().flat_map(ways).collect();
            if ways.len() > MOST_WAYS { vec![vec![form]] } else { ways }
        }
        Form::Sequence(forms) => {
            let mut all: Vec<Vec<&'static Form>> = vec![Vec::new()];
            for form in *forms {
                let of_form = ways(form);
                if all.len() * of_form.len() > MOST_WAYS {
                    all.iter_mut().for_each(|way| way.push(form));
                    continue;
                }
                all = all
                    .iter()
                    .flat_map(|way| of_form.iter().map(|more| [way.as_slice(), more].concat()))
                    .collect();
            }
            all
        }
        Form::Nothing
        | Form::Words(_)
        | Form::Mark(_)
        | Form::Slot(..)
        | Form::Comma
        | Form::Optional(_)
        | Form::List(_) => vec![vec![form]],
    }
}

/// A value as a person asks for it: `width x length x thickness`, `support`, `x/y`.
pub(super) fn slot_name(label: &str, kind: &Kind) -> String {
    match kind {
        Kind::Point => "x/y".to_owned(),
        Kind::Line => "x/y to x/y".to_owned(),
        Kind::Rect => "x to x by y to y".to_owned(),
        Kind::Dimensions(3, 3) => "width x length x thickness".to_owned(),
        Kind::Dimensions(2, 3) => "width x length x thickness".to_owned(),
        Kind::Dimensions(least, _) => vec!["size"; *least].join(" x "),
        Kind::Member => "member size".to_owned(),
        Kind::Word(words) if words.len() <= 4 => words.join("|"),
        Kind::Name(kinds) => match (label, kinds) {
            ("first" | "second" | "element", [one]) => one.word().to_owned(),
            ("first" | "second" | "element", _) => "element".to_owned(),
            _ => label.to_owned(),
        },
        Kind::Elevation if matches!(label, "value" | "at") => "elevation".to_owned(),
        Kind::GridRef | Kind::GridLine => "grid line".to_owned(),
        Kind::Comparison => "fact = value".to_owned(),
        Kind::FactName => "fact of element".to_owned(),
        Kind::Slug if label == "value" => "name".to_owned(),
        _ if label == "value" => kind_name(kind).to_owned(),
        _ => label.replace('-', " "),
    }
}
