//! What the reader says each word is, for `editors/vim/test/run` to hold a real Vim's colours to it.

use std::fmt::Write;
use std::path::{Path, PathBuf};

use storyrod::ide::{self, Modifier, WordKind};
use storyrod::syntax::names;
use storyrod::syntax::vocabulary::lexicon::{self, Phrases};
use storyrod::text::FileId;

use crate::{analysis, dice::Dice, random_specs};

/// The samples, some specs drawn at random from the vocabulary's forms, and a text of odd spellings.
fn specs() -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut paths: Vec<PathBuf> = std::fs::read_dir(root.join("grammar/samples"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|extension| extension == "framing"))
        .chain([root.join("editors/vim/test/spellings.framing")])
        .collect();
    paths.sort();
    let of_file = |path: PathBuf| {
        let name = path.file_stem().unwrap().to_str().unwrap().to_owned();
        (name, std::fs::read_to_string(&path).unwrap())
    };
    let at_random = |seed| (format!("random-{seed}"), random_specs::every_element(&mut Dice::new(seed)));
    paths.into_iter().map(of_file).chain((0..10).map(at_random)).collect()
}

/// One word a line: its line, its column in bytes, how many bytes it has, what it is; all counted from 1.
fn words_of(text: &str) -> String {
    let snapshot = analysis::of(text);
    let offered: Phrases =
        [lexicon::choices(), lexicon::stuff(), lexicon::cases()].into_iter().flatten().collect();
    let mut rows = String::new();
    for word in ide::tokens(&snapshot.house, FileId(0), None) {
        let before = text.get(..word.span.start as usize).unwrap();
        let line = before.matches('\n').count() + 1;
        let column = before.len() - before.rfind('\n').map_or(0, |at| at + 1) + 1;
        let said = snapshot.house.text_at(word.span).split_whitespace().collect::<Vec<_>>().join(" ");
        let is_quoted = said.starts_with(['"', '“', '”']);
        let is_declared = word.modifiers.has(Modifier::Declaration);
        let kind = match word.kind {
            WordKind::String if !is_quoted => "words",
            WordKind::EnumMember if names::joins(&said) => "joining",
            WordKind::EnumMember if !offered.contains(said.as_str()) => "words",
            WordKind::Namespace | WordKind::Class | WordKind::Variable if is_declared => "declaration",
            kind => kind.name(),
        };
        writeln!(rows, "{line} {column} {} {kind}", word.span.end - word.span.start).unwrap();
    }
    rows
}

#[test]
fn the_words_of_the_samples_are_there_for_a_real_vim() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/vim/words");
    std::fs::create_dir_all(&folder).unwrap();
    for (name, text) in specs() {
        let rows = words_of(&text);
        assert!(rows.lines().count() > 100, "{name} has words");
        std::fs::write(folder.join(format!("{name}.framing")), &text).unwrap();
        std::fs::write(folder.join(format!("{name}.words")), rows).unwrap();
    }
}
