//! Version control shows a changed fact as one changed line, and merges what two branches changed: the one style lets no
//! line look otherwise because of its neighbour.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

#[path = "support/dice.rs"]
mod dice;
#[path = "support/houses.rs"]
mod houses;
#[path = "support/random_specs.rs"]
mod random_specs;

use dice::Dice;
use git2::{IndexEntry, IndexTime, Repository};
use storyrod::syntax::vocabulary::{CLAIM, ELEMENTS, spec_of};
use storyrod::syntax::{LineKind, Opening, format, parse_fresh};

const SAMPLES: [&str; 2] =
    [include_str!("../grammar/samples/first.framing"), include_str!("../grammar/samples/hop-barn.framing")];

/// Texts in the one style: samples, houses, and elements with whatever the vocabulary lets them have.
fn texts() -> Vec<String> {
    let mut texts: Vec<String> = SAMPLES.map(format).into();
    texts.extend((0..2).map(|seed| format(&houses::house(seed))));
    texts.extend((0..2).map(|seed| format(&random_specs::every_element(&mut Dice::new(seed)))));
    texts
}

/// A line that was written anew: which, in which element, and how it is typed.
struct Edit {
    line: usize,
    typed: String,
}

/// Another fact in the place of one, as somebody might type it, with a comment or without.
fn edit(text: &str, dice: &mut Dice) -> Edit {
    let tree = parse_fresh(text);
    let elements: Vec<usize> =
        (0..tree.chunks.len()).filter(|at| !tree.chunks[*at].body.facts.is_empty()).collect();
    let element = dice.one_of(&elements);
    let chunk = &tree.chunks[element];
    let Opening::Element(heading) = &chunk.body.opening else { unreachable!("only elements have facts") };
    let lines = chunk.body.lines.iter().filter_map(|line| match line.kind {
        LineKind::Fact(index) => Some((line.span.start, chunk.body.facts[index].spec)),
        _ => None,
    });
    let (line_start, spec) = dice.one_of(&lines.collect::<Vec<_>>());
    let start = (chunk.start + line_start) as usize;
    let others: Vec<_> = spec_of(heading.kind).all_facts().collect();
    let is_claim = std::ptr::eq(spec, &CLAIM);
    let spec = if is_claim || dice.once_in(2) { dice.one_of(&others) } else { spec };
    let fact = random_specs::fact_line(dice, spec);
    let comment = dice.one_of(&["", "", "-- so", " -- said by the builder on the phone, twice", "\t--  a"]);
    let indent = dice.one_of(&[" ", "  ", "\t", "      "]);
    Edit { line: text[..start].matches('\n').count(), typed: format!("{indent}{fact} {comment}") }
}

fn with(text: &str, edits: &[&Edit]) -> String {
    let mut lines: Vec<&str> = text.lines().collect();
    for edit in edits {
        lines[edit.line] = &edit.typed;
    }
    format(&format!("{}\n", lines.join("\n")))
}

/// What git makes of two branches of one file; `None` when it leaves that to a person.
fn merged(repository: &Repository, base: &str, ours: &str, theirs: &str) -> Option<String> {
    let entry = |text: &str| IndexEntry {
        ctime: IndexTime::new(0, 0),
        mtime: IndexTime::new(0, 0),
        dev: 0,
        ino: 0,
        mode: 0o100_644,
        uid: 0,
        gid: 0,
        file_size: 0,
        id: repository.blob(text.as_bytes()).unwrap(),
        flags: 0,
        flags_extended: 0,
        path: b"house.framing".to_vec(),
    };
    let merged = repository.merge_file_from_index(&entry(base), &entry(ours), &entry(theirs), None).unwrap();
    merged.is_automergeable().then(|| String::from_utf8(merged.content().to_vec()).unwrap())
}

fn is_read_whole(text: &str) -> bool {
    parse_fresh(text)
        .chunks
        .iter()
        .all(|chunk| chunk.body.lines.iter().all(|line| line.kind != LineKind::Broken))
}

fn assert_same(merged: Option<String>, both: &str, what: &str) {
    let merged = merged.unwrap_or_else(|| panic!("{what} can't be merged"));
    let differs = merged.lines().zip(both.lines()).find(|(is, wanted)| is != wanted);
    assert_eq!(differs, None, "{what}");
    assert_eq!(merged, both, "{what}");
}

#[test]
fn a_changed_fact_is_one_changed_line() {
    for (seed, text) in (0..).zip(texts()) {
        let mut dice = Dice::new(seed);
        for _ in 0..16 {
            let edit = edit(&text, &mut dice);
            let after = with(&text, &[&edit]);
            let (before, after): (Vec<_>, Vec<_>) = (text.lines().collect(), after.lines().collect());
            assert_eq!(before.len(), after.len(), "{}", edit.typed);
            let changed = (0..before.len()).filter(|at| before[*at] != after[*at]);
            assert!(changed.clone().all(|at| at == edit.line), "{} moves others:\n{text}", edit.typed);
        }
    }
}

#[test]
fn a_new_element_changes_no_line_that_stands() {
    for (seed, text) in (0..).zip(texts()) {
        let mut dice = Dice::new(seed);
        let starts: Vec<usize> = parse_fresh(&text).chunks.iter().map(|chunk| chunk.start as usize).collect();
        for _ in 0..16 {
            let kind = dice.one_of(ELEMENTS);
            let new = random_specs::element(&mut dice, kind);
            let at = dice.one_of(&[starts.as_slice(), &[text.len()]].concat());
            // The note above an element stays with it.
            let note = text[..at].split_inclusive('\n').rev().take_while(|line| line.starts_with("--"));
            let at = at - note.map(str::len).sum::<usize>();
            let after = format(&format!("{}{new}{}", &text[..at], &text[at..]));
            assert!(after.starts_with(text[..at].trim_end()), "{new} at {at} of:\n{text}");
            assert!(after.ends_with(&text[at..]), "{new} at {at} of:\n{text}");
        }
    }
}

#[test]
fn what_two_branches_change_is_merged() {
    let folder = tempfile::tempdir().unwrap();
    let repository = Repository::init_bare(folder.path()).unwrap();
    let mut n_merged = 0;
    for (seed, text) in (0..).zip(texts()) {
        let mut dice = Dice::new(seed + 1_000);
        for _ in 0..16 {
            let (ours, theirs) = (edit(&text, &mut dice), edit(&text, &mut dice));
            // In neighbouring lines git sees one place that both changed.
            if ours.line.abs_diff(theirs.line) < 2 {
                continue;
            }
            let sides = [with(&text, &[&ours]), with(&text, &[&theirs]), with(&text, &[&ours, &theirs])];
            // A fact that stands twice counts once, and which one is for a person to say.
            if !sides.iter().all(|text| is_read_whole(text)) {
                continue;
            }
            let [of_ours, of_theirs, both] = sides;
            let merged = merged(&repository, &text, &of_ours, &of_theirs);
            assert_same(merged, &both, &format!("`{}` and `{}`", ours.typed, theirs.typed));
            n_merged += 1;
        }
    }
    assert!(n_merged > 40, "{n_merged} merges");
}

#[test]
fn a_branch_that_adds_an_element_and_one_that_changes_another_are_merged() {
    let folder = tempfile::tempdir().unwrap();
    let repository = Repository::init_bare(folder.path()).unwrap();
    for (seed, text) in (0..).zip(texts()) {
        let mut dice = Dice::new(seed + 2_000);
        for _ in 0..10 {
            let kind = dice.one_of(ELEMENTS);
            let new = random_specs::element(&mut dice, kind);
            let theirs = edit(&text, &mut dice);
            // Behind the last line of the file both would change one place.
            if theirs.line + 1 == text.lines().count() {
                continue;
            }
            let added = |text: &str| format(&format!("{text}\n{new}"));
            let both = added(&with(&text, &[&theirs]));
            let merged = merged(&repository, &text, &added(&text), &with(&text, &[&theirs]));
            assert_same(merged, &both, &format!("`{}` and {new}", theirs.typed));
        }
    }
}

#[test]
fn a_file_ends_with_one_line_end_whatever_was_typed() {
    let text = SAMPLES[0];
    for typed in [
        text.trim_end().to_owned(),
        format!("{text}\n\n  \n"),
        text.replace('\n', "\r\n"),
        text.replace('\n', "\r"),
    ] {
        assert_eq!(format(&typed), text);
    }
}
