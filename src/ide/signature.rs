//! What a fact's line asks for, while it is typed.

use std::ops::Range;

use crate::ide::cursor::{Cursor, Reading};
use crate::ide::slots::{slot_name, ways};
use crate::syntax::form::{Form, Kind};
use crate::syntax::next::{self, What};
use crate::syntax::vocabulary::{kind_name, value_meaning};

/// The ways in which the fact under the cursor can be said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signatures {
    /// Each way.
    pub ways: Vec<Signature>,
    /// The first that fits what is typed.
    pub active: usize,
}

/// One way in which a fact can be said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Signature {
    /// The line: `cap  plate width x length x thickness [, long side along BEAM]`.
    pub label: String,
    /// The fact's meaning, what holds without it and an example, in Markdown.
    pub documentation: String,
    /// Its values from the left.
    pub slots: Vec<Slot>,
    /// The value under the cursor.
    pub active: Option<usize>,
}

/// A value of a fact.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Slot {
    /// Its bytes in the label.
    pub place: Range<usize>,
    /// What it is.
    pub meaning: String,
}

/// The ways in which the fact around byte `offset` can be said, and the value that stands there.
pub fn signature(text: &str, offset: u32) -> Option<Signatures> {
    let cursor = Cursor::at(text, offset)?;
    let reading = cursor.readings().into_iter().max_by_key(|reading| reading.walk(&cursor).n_read)?;
    let typed = cursor.before.get(reading.n_words..).unwrap_or_default();
    let mut found: Vec<(usize, Signature)> = Vec::new();
    for way in ways(reading.form) {
        let walk = next::next(&way, typed);
        let active = walk
            .next
            .iter()
            .filter(|next| next.what != What::End)
            .find_map(|next| next.slot)
            .filter(|_| walk.n_read == typed.len());
        found.push((walk.n_read, said(&cursor, &reading, &way, active)));
    }
    let most = found.iter().map(|(n_read, _)| *n_read).max()?;
    let active = found.iter().position(|(n_read, _)| *n_read == most)?;
    let ways: Vec<Signature> = found.into_iter().map(|(_, signature)| signature).collect();
    Some(Signatures { ways, active })
}

fn said(cursor: &Cursor<'_>, reading: &Reading, way: &[&'static Form], active: Option<usize>) -> Signature {
    let phrase = match reading.claimed {
        None => reading.fact.phrase.to_owned(),
        Some(_) => {
            let words = cursor.before.get(..reading.n_words).unwrap_or_default();
            words.iter().map(|token| token.text).collect::<Vec<_>>().join(" ")
        }
    };
    let mut label = Label { text: format!("{phrase}  "), slots: Vec::new() };
    way.iter().for_each(|form| label.put(form));
    Signature {
        label: label.text.trim_end().to_owned(),
        documentation: documentation(reading),
        slots: label.slots,
        active,
    }
}

fn documentation(reading: &Reading) -> String {
    let fact = reading.fact;
    let meaning = reading.claimed.map(|name| name.meaning.to_owned());
    let default = (!fact.default.is_empty()).then(|| format!("without it: {}", fact.default));
    let example = Some(format!("```framing\n{}\n```", fact.example));
    [meaning, Some(fact.meaning.to_owned()), default, example]
        .into_iter()
        .flatten()
        .collect::<Vec<_>>()
        .join("\n\n")
}

/// A label that grows.
struct Label {
    text: String,
    slots: Vec<Slot>,
}

impl Label {
    fn put(&mut self, form: &'static Form) {
        match form {
            Form::Nothing => {}
            Form::Words(words) | Form::Mark(words) => self.word(words),
            Form::Comma => self.text.push(','),
            Form::Slot(label, kind) => {
                self.blank();
                // A value is often labelled by the word before it: `for LENGTH`.
                let before = self.text.split([' ', '[', '(']).rfind(|word| !word.is_empty());
                let name = slot_name(label, kind);
                let name = if before == Some(&name) { kind_name(kind).to_owned() } else { name };
                let start = self.text.len();
                self.text.push_str(&name);
                self.slots.push(Slot { place: start..self.text.len(), meaning: meaning(kind) });
            }
            Form::Sequence(forms) => forms.iter().for_each(|form| self.put(form)),
            Form::Optional(form) => {
                self.blank();
                self.text.push('[');
                self.put(form);
                self.text.push(']');
            }
            Form::OneOf(forms) => {
                self.blank();
                self.text.push('(');
                for (at, form) in forms.iter().enumerate() {
                    if at > 0 {
                        self.text.push_str(" |");
                    }
                    self.put(form);
                }
                self.text.push(')');
            }
            Form::List(form) => {
                self.put(form);
                self.text.push_str(", …");
            }
        }
    }

    fn word(&mut self, word: &str) {
        self.blank();
        self.text.push_str(word);
    }

    fn blank(&mut self) {
        if !self.text.ends_with(['(', '[', ' ']) {
            self.text.push(' ');
        }
    }
}

/// What a value is, in trade words.
fn meaning(kind: &'static Kind) -> String {
    match kind {
        Kind::Name(kinds) if kinds.len() <= 12 => {
            let kinds: Vec<_> = kinds.iter().map(|kind| kind.word()).collect();
            format!("the name of one of these: {}", kinds.join(", "))
        }
        Kind::Word(words) => {
            let words: Vec<_> = words.iter().map(|word| format!("`{word}`")).collect();
            words.join(", ")
        }
        Kind::Dimensions(..) => {
            "inches parted by ` x `, the thickness last; feet and inches may stand too: `2'-9\" x 14\"`"
                .to_owned()
        }
        _ => match value_meaning(kind) {
            Some((meaning, written)) => {
                let written: Vec<_> = written.iter().map(|value| format!("`{value}`")).collect();
                format!("{meaning} Written: {}", written.join(", "))
            }
            None => kind_name(kind).to_owned(),
        },
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The way that fits at `$0` and the value that stands there.
    fn told(fixture: &str) -> Option<(String, Option<String>)> {
        let at = u32::try_from(fixture.find("$0").unwrap()).unwrap();
        let signatures = signature(&fixture.replace("$0", ""), at)?;
        let active = &signatures.ways[signatures.active];
        let slot = active.active.map(|slot| active.label[active.slots[slot].place.clone()].to_owned());
        Some((active.label.clone(), slot))
    }

    fn check(fixture: &str, label: &str, slot: Option<&str>) {
        let told = told(fixture).unwrap_or_else(|| panic!("nothing at {fixture}"));
        assert_eq!((told.0.as_str(), told.1.as_deref()), (label, slot), "{fixture}");
    }

    #[test]
    fn the_way_that_fits_and_the_value_under_the_cursor() {
        let plate = "cap  plate width x length x thickness [, long side along name]";
        check("column C1\n  cap plate $0", plate, Some("width x length x thickness"));
        check("column C1\n  cap plate 7\" x $0", plate, Some("width x length x thickness"));
        check("column C1\n  cap plate 7x10 x 1/2\", long side along $0", plate, Some("name"));
        check("column C1\n  cap seat $0", "cap  seat thick", Some("thick"));
        check("beam B1\n  bears on $0", "bears on  outside words [for length]", None);
        check("beam B1\n  bears on W1 for $0", "bears on  support [for length]", Some("length"));
        check("column C1\n  cut should be $0", "cut  should be value [within length]", Some("value"));
        check("wall W1\n  top 99'-0 1/2\" at $0", "top  elevation [at grid line], …", Some("grid line"));
    }

    #[test]
    fn nothing_is_asked_for_outside_of_a_fact() {
        assert_eq!(told("beam $0"), None);
        assert_eq!(told("beam B1\n  $0"), None);
        assert_eq!(told("beam B1\n  bears $0"), None);
        assert_eq!(told("beam B1\n  size -- $0"), None);
    }
}
