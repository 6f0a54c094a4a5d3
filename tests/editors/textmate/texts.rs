//! The texts whose colours are held to what the reader of the format finds.
//!
//! With `STORYROD_SPANS=FOLDER` their spans are written there, for `grammar/textmate/test/run` to compare.

use std::fs;
use std::path::Path;

use serde_json::{Value as Json, json};
use storyrod::syntax::lexer::{TokenKind, Tokens, unit_spellings};
use storyrod::syntax::parse_fresh;
use storyrod::syntax::vocabulary::{ELEMENTS, ElementSpec, FACT_NAMES, Naming, lexicon};

use super::spans::{Span, kind_of, spans};
use crate::dice::Dice;
use crate::random_specs;

/// A text by its lines, with its spans in UTF-16 columns.
fn case(name: &str, text: &str, spans: &[Span]) -> Json {
    let mut spans = spans.iter().peekable();
    let mut start = 0;
    let mut lines = Vec::new();
    for line in text.split_inclusive('\n') {
        let end = start + line.len();
        let column = |byte: u32| text[start..byte as usize].encode_utf16().count();
        let mut of_line = Vec::new();
        while let Some((from, to, kind)) = spans.next_if(|(from, ..)| (*from as usize) < end) {
            of_line.push(json!([column(*from), column(*to), kind]));
        }
        lines.push(json!([line.trim_end_matches(['\r', '\n']), of_line]));
        start = end;
    }
    json!({ "name": name, "lines": lines })
}

/// The samples of the project, by name.
fn samples() -> Vec<(String, String)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("grammar/samples");
    let files = fs::read_dir(folder).unwrap().map(|file| file.unwrap().path());
    let mut samples: Vec<_> = files
        .filter(|path| path.extension().is_some_and(|extension| extension == "framing"))
        .map(|path| {
            (path.file_name().unwrap().to_string_lossy().into_owned(), fs::read_to_string(path).unwrap())
        })
        .collect();
    samples.sort();
    samples
}

/// Every fact and every claim of an element, under each word that opens it.
fn every_fact(spec: &ElementSpec) -> String {
    let mut text = String::new();
    for opening in lexicon::openings(spec) {
        let name = if spec.naming == Naming::Name { " N1" } else { "" };
        text.push_str(&format!("{opening}{name} -- by any word\n"));
        spec.all_facts().for_each(|fact| text.push_str(&format!("  {}\n", fact.example)));
        let case = |takes_case: bool| if takes_case { "live " } else { "" };
        spec.claimable().for_each(|fact| {
            text.push_str(&format!("  {}{} should be 3\n", case(fact.takes_case), fact.words))
        });
    }
    text + "\n" + spec.example
}

/// Every fact by its name, every unit, and whatever a member can be made of.
fn every_word() -> String {
    let mut text = "sheet A-1\n".to_owned();
    for name in FACT_NAMES {
        let arguments = name.arguments().map(|argument| format!(" {} N1", argument.joined_by));
        let (fact, value) = (name.words, arguments.collect::<String>());
        text.push_str(&format!("  shows {fact}{value} = 3 plus {fact}{value}\n"));
    }
    text.push_str("project\n");
    for unit in unit_spellings().into_iter().flatten() {
        text.push_str(&format!("  limit some-limit 12 {unit}\n  limit some-limit 1.5{unit}\n"));
    }
    for stuff in lexicon::stuff() {
        let forms =
            ["2x10 ?", "11-7/8 ?", "2x10 ? 2", "2x10 ? 24F", "? 4 x 4 x 1/4", "? 3-1/2 x 0.226", "? 4"];
        let mut sizes =
            forms.map(|form| format!("beam B1\n  size {}\n", form.replace('?', stuff))).into_iter();
        let reads =
            |size: &String| parse_fresh(size).chunks.iter().all(|chunk| chunk.body.problems.is_empty());
        let read = sizes.find(reads);
        assert!(read.is_some(), "{stuff} is nothing to be made of");
        text.extend(read);
    }
    text
}

/// A fact with figures and signs at random behind it, up to the first that the lexer refuses. What it says can rarely
/// be read; what its tokens are is known.
fn spelling(dice: &mut Dice) -> (String, Vec<Span>) {
    const NUMBERS: &[&str] = &["1", "2", "12", "9", "0", "½", "⅛", "⅝", "1/2", "3/4", "2.5", "-6", "98"];
    const PIECES: &[&str] = &[
        "'", "\"", "-", " ", "/", "1/2", "3/4", "⅜", "¼", "¾", "⅞", "'-", "’", "”", "′-", "″", "x", "×", ".",
        "5", "6 1/2\"", "in", " in", " ft", "mm", " m", " psf", "psi", "%", "-ply", "F", "e6", "''", " in.",
        " sq ft", " kN/m", "x10",
    ];
    const OPENINGS: &[&str] =
        &["", "", "", "", "", "EL ", "EL. ", "(-)", "+", "±", "-", "(", "2027-0", "HSS"];
    const PARTED: &[&str] =
        &[" ", " ", ", ", " x ", " -- ", " = ", "-- ", " \"a -- 5\" ", "\"a ", " “5” ", "” ", " \"open "];
    let mut value = String::new();
    for _ in 0..dice.between(1, 3) {
        value.push_str(dice.one_of(OPENINGS));
        value.push_str(dice.one_of(NUMBERS));
        for _ in 0..dice.between(0, 4) {
            value.push_str(dice.one_of(PIECES));
        }
        value.push_str(dice.one_of(PARTED));
    }
    // An elevation is no side of a size: what an `x` behind it begins, only the lexer can tell.
    if ["EL", "+", "±", "(-)"].iter().any(|opening| value.contains(opening)) {
        value = value.replace(['x', '×'], "-");
    }
    let line = format!("  size {}\n", value.trim());
    let phrase = (2, 6, "phrase");
    let tokens = Tokens::of(&line, 0).filter(|token| token.span.start > 6);
    let tokens = tokens.take_while(|token| token.kind != TokenKind::Wrong);
    let loud =
        tokens.filter(|token| !matches!(token.kind, TokenKind::Blank | TokenKind::LineEnd | TokenKind::Word));
    let spans = loud.map(|token| (token.span.start, token.span.end, kind_of(&token)));
    let spans = std::iter::once(phrase).chain(spans).collect();
    (line, spans)
}

#[test]
fn the_spans_of_the_samples_and_of_random_specs_can_be_told() {
    let mut cases = Vec::new();
    for (name, text) in samples() {
        cases.push(case(&name, &text, &spans(&text)));
    }
    for spec in ELEMENTS {
        let text = every_fact(spec);
        cases.push(case(&format!("every fact of {}", spec.keyword), &text, &spans(&text)));
    }
    let text = every_word();
    cases.push(case("every word", &text, &spans(&text)));
    let folder = std::env::var_os("STORYROD_SPANS");
    let n_random = if folder.is_some() { 2_000 } else { 20 };
    for seed in 0..n_random {
        let text = random_specs::spec(&mut Dice::new(seed), 3);
        cases.push(case(&format!("random spec {seed}"), &text, &spans(&text)));
    }
    let mut spellings = Vec::new();
    for seed in 0..n_random * 10 {
        let (line, spans) = spelling(&mut Dice::new(seed));
        let heading = "beam B1\n";
        let shift = u32::try_from(heading.len()).unwrap();
        let mut all = vec![(0, 4, "element"), (5, 7, "defined")];
        all.extend(spans.into_iter().map(|(start, end, kind)| (start + shift, end + shift, kind)));
        spellings.push(case(&format!("spelling {seed}"), &(heading.to_owned() + &line), &all));
    }
    let Some(folder) = folder else { return };
    fs::create_dir_all(&folder).unwrap();
    let write = |name: &str, cases: &[Json]| {
        fs::write(Path::new(&folder).join(name), serde_json::to_string(cases).unwrap()).unwrap();
    };
    write("specs.json", &cases);
    write("spellings.json", &spellings);
}
