//! A change as a person says it, `J1 size 2x12`, to an edit of the spec.

use std::fmt;

use crate::diagnostic::Edit;
use crate::house::{House, lines};
use crate::model::element::Common;
use crate::syntax::value::{Member, Value};
use crate::syntax::vocabulary::{ElementSpec, Naming, spec_of};
use crate::syntax::{Chunk, Fact, parse_fresh};
use crate::text::{Span, nearest};

/// Why a wish is no edit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoEdit {
    /// It does not begin with the name of an element: the word, and the nearest name.
    UnknownElement(String, Option<String>),
    /// What stands behind the name is no line of that element: the line, and the element's label.
    NoSuchLine(String, String),
    /// The element says that fact on several lines: the fact's phrase, and the element's label.
    SeveralLines(String, String),
}

impl fmt::Display for NoEdit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownElement(word, None) => write!(f, "nothing is named `{word}`"),
            Self::UnknownElement(word, Some(near)) => write!(f, "nothing is named `{word}`; `{near}` is"),
            Self::NoSuchLine(line, label) => write!(f, "`{line}` is no line of {label}"),
            Self::SeveralLines(phrase, label) => {
                write!(f, "{label} says `{phrase}` on several lines: which is meant can't be told")
            }
        }
    }
}

/// The edit that makes an element say a line: in place of the line that says that fact now, or as a new one.
/// `J1 without joint` takes the line out. A bare size keeps the number of plies, the wood and the grade of what stands
/// there.
///
/// # Errors
/// [`NoEdit`] when it can't be told what is meant.
pub fn edit_of(house: &House, wish: &str) -> Result<Edit, NoEdit> {
    let (name, line) = wish.trim().split_once(char::is_whitespace).unwrap_or((wish.trim(), ""));
    let common = element(house, name)?;
    let (line, is_gone) = match line.trim().strip_prefix("without ") {
        Some(phrase) => (phrase.trim(), true),
        None => (line.trim(), false),
    };
    let no_line = || NoEdit::NoSuchLine(line.to_owned(), common.label());
    if is_gone {
        let known =
            spec_of(common.id.kind).all_facts().find(|fact| fact.phrase == line).ok_or_else(no_line)?;
        let (place, _) = only_line(house, common, known.phrase)?.ok_or_else(no_line)?;
        return Ok(lines::removed(house, place));
    }
    saying(house, common, line)
}

/// The edit that makes an element say a line, as [`edit_of`] does.
///
/// # Errors
/// [`NoEdit`] when it is no line of that element, or the element says that fact on several lines.
pub fn saying(house: &House, common: &Common, line: &str) -> Result<Edit, NoEdit> {
    let no_line = || NoEdit::NoSuchLine(line.to_owned(), common.label());
    let wanted = read(spec_of(common.id.kind), line).ok_or_else(no_line)?;
    match only_line(house, common, wanted.spec.phrase)? {
        Some((place, fact)) => Ok(Edit { span: place, text: merged(fact, &wanted, line) }),
        None => lines::added(house, common, line).ok_or_else(no_line),
    }
}

fn element<'h>(house: &'h House, name: &str) -> Result<&'h Common, NoEdit> {
    let by_name = house.model.named(name).and_then(|id| house.model.common(id));
    let by_word = || house.model.commons().find(|common| common.id.kind.word() == name);
    by_name.or_else(by_word).ok_or_else(|| {
        let names = house.model.commons().map(|common| &*common.name);
        NoEdit::UnknownElement(name.to_owned(), nearest(name, names).map(str::to_owned))
    })
}

/// The line as a fact of such an element, when it is one and nothing is wrong with it.
fn read(spec: &ElementSpec, line: &str) -> Option<Fact> {
    let heading = match spec.naming {
        Naming::Name => format!("{} X", spec.keyword),
        Naming::Title | Naming::None => spec.keyword.to_owned(),
    };
    let mut tree = parse_fresh(&format!("{heading}\n  {line}\n"));
    let body = tree.chunks.pop().filter(|_| tree.chunks.is_empty())?.body;
    match body.facts.as_slice() {
        [fact] if body.problems.is_empty() => Some(fact.clone()),
        _ => None,
    }
}

/// The line of an element that says a fact, with its place.
fn only_line<'h>(
    house: &'h House,
    common: &Common,
    phrase: &str,
) -> Result<Option<(Span, &'h Fact)>, NoEdit> {
    let file = common.span.file;
    let chunk: Option<&Chunk> =
        house.trees.get(file.0 as usize).and_then(|tree| tree.chunk_at(common.name_span.start));
    let Some(chunk) = chunk else { return Ok(None) };
    let mut said = chunk.body.facts.iter().filter(|fact| fact.spec.phrase == phrase);
    match (said.next(), said.next()) {
        (Some(_), Some(_)) => Err(NoEdit::SeveralLines(phrase.to_owned(), common.label())),
        (Some(fact), None) => Ok(Some((fact.span.within(file, chunk.start), fact))),
        (None, _) => Ok(None),
    }
}

/// The line with what a bare size leaves open taken from the line that stands there.
fn merged(stands: &Fact, wanted: &Fact, line: &str) -> String {
    let member = |fact: &Fact| -> Option<Member> {
        match fact.parts.as_slice() {
            [part] => match &part.value {
                Value::Member(member) => Some((**member).clone()),
                _ => None,
            },
            _ => None,
        }
    };
    let (Some(stands), Some(bare)) = (member(stands), member(wanted)) else { return line.to_owned() };
    let is_bare = bare.make.is_none() && bare.species.is_none() && bare.grade.is_none() && !bare.is_treated;
    if !is_bare || is_steel(&bare) || is_steel(&stands) {
        return line.to_owned();
    }
    let phrase = wanted.spec.phrase;
    let section = line.strip_prefix(phrase).unwrap_or(line).trim();
    let plies = (stands.plies > 1 && bare.plies == 1).then(|| format!("{}-ply", stands.plies));
    let treated = stands.is_treated.then(|| "treated".to_owned());
    let stuff = [stands.make, stands.species, stands.grade].into_iter().flatten().map(String::from);
    let words =
        [phrase.to_owned()].into_iter().chain(plies).chain([section.to_owned()]).chain(stuff).chain(treated);
    words.collect::<Vec<_>>().join(" ")
}

fn is_steel(member: &Member) -> bool {
    use crate::syntax::value::Section;
    match member.section {
        Section::Rolled(_) | Section::Tube(..) | Section::Pipe(..) | Section::FilledPipe(_) => true,
        Section::Nominal(..) | Section::Built(..) | Section::Depth(_) | Section::Product(_) => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::rule_check::house;

    const SPEC: &str = "project \"P\"\n  frost         42\"\n\njoists J1\n  size          2x10 SPF No.2 -- note\n  bears on      W1\n  bears on      W2\n\nbeam B1\n  size          3-ply 2x10 SPF No.2\n";

    /// The line that the edit leaves, or takes out.
    fn line_after(wish: &str) -> String {
        let edit = edit_of(&house(SPEC), wish).unwrap_or_else(|why| panic!("{wish}: {why}"));
        let mut text = SPEC.to_owned();
        text.replace_range(edit.span.start as usize..edit.span.end as usize, &edit.text);
        let changed: Vec<&str> = text.lines().filter(|line| !SPEC.lines().any(|was| was == *line)).collect();
        changed.join("|")
    }

    #[test]
    fn a_line_is_changed_added_or_taken_out() {
        assert_eq!(line_after("J1 size 2x12"), "  size 2x12 SPF No.2 -- note");
        assert_eq!(line_after("J1 size 2x12 HF No.1"), "  size 2x12 HF No.1 -- note");
        assert_eq!(line_after("B1 size 2x12"), "  size 3-ply 2x12 SPF No.2");
        assert_eq!(line_after("B1 size W8x24"), "  size W8x24");
        assert_eq!(line_after("project frost 48\""), "  frost 48\"");
        assert_eq!(line_after("J1 spacing 16\" from A"), "  spacing       16\" from A");
        assert_eq!(line_after("J1 without size"), "");
    }

    #[test]
    fn what_is_not_meant_clearly_is_refused() {
        let no = |wish: &str| edit_of(&house(SPEC), wish).unwrap_err().to_string();
        assert_eq!(no("J2 size 2x12"), "nothing is named `J2`; `J1` is");
        assert_eq!(no("J1 size twelve inches"), "`size twelve inches` is no line of joists J1");
        assert_eq!(
            no("J1 bears on W3"),
            "joists J1 says `bears on` on several lines: which is meant can't be told"
        );
        assert_eq!(no("J1 without joint"), "`joint` is no line of joists J1");
        assert_eq!(no("J1"), "`` is no line of joists J1");
    }
}
