//! Tests of rules: a spec with its findings written under the places they point at.

use std::sync::Arc;

use crate::diagnostic::Diagnostic;
use crate::house::House;
use crate::inputs::Inputs;
use crate::rules::{Finding, Findings, Rule};
use crate::syntax::ElementCache;
use crate::syntax::value::Date;
use crate::text::Source;
use crate::workspace::{OpenDocuments, spec_of};

/// The day on which tests happen.
pub const TODAY: Date = Date { year: 2027, month: 6, day: 1 };

/// The house of a file; with includes, of several: `-- file parts/walls.framing` begins a further one.
pub fn house(text: &str) -> House {
    House::of(&inputs(text), &mut ElementCache::default(), TODAY)
}

/// What a file, or several, as [`house`] takes them, give to read.
pub fn inputs(text: &str) -> Arc<Inputs> {
    if text.lines().any(|line| line.starts_with("include")) {
        inputs_on_disk(text)
    } else {
        Arc::new(Inputs { sources: vec![Source::new("test.framing", text)], includes: Vec::new() })
    }
}

fn inputs_on_disk(text: &str) -> Arc<Inputs> {
    let folder = tempfile::tempdir().unwrap();
    let (mut name, mut lines) = ("test.framing", String::new());
    let write = |name: &str, lines: &str| {
        let path = folder.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, lines).unwrap();
    };
    for line in text.split_inclusive('\n') {
        if let Some(next) = line.strip_prefix("-- file ") {
            write(name, &lines);
            (name, lines) = (next.trim(), String::new());
        } else {
            lines.push_str(line);
        }
    }
    write(name, &lines);
    spec_of(&folder.path().join("test.framing"), &OpenDocuments::default()).unwrap().inputs
}

/// What one rule finds in a house, in the order of the text.
pub fn found(rule: &'static Rule, text: &str) -> Vec<Diagnostic> {
    let house = house(text);
    let mut findings = Findings::new(&house, rule);
    (rule.check)(&house, &mut findings);
    let mut list: Vec<Diagnostic> =
        findings.into_list().into_iter().map(|finding: Finding| finding.diagnostic).collect();
    list.sort_by_key(|diagnostic| diagnostic.span);
    list
}

/// Checks that a rule finds exactly what the fixture marks.
///
/// Below a line, `-- ^^^ message` marks the bytes above the carets; the message must be the finding's own. A further
/// `--<^^^ message` marks from the line's first byte to the last caret. A further
/// line `-- | text` asks that the text stands somewhere in the finding's notes, help, related places or basis.
pub fn check_rule(rule: &'static Rule, fixture: &str) {
    let found = found(rule, fixture);
    let marks = marks_in(fixture);
    let report =
        found.iter().map(|diagnostic| format!("{}\n", describe(diagnostic, fixture))).collect::<String>();
    assert_eq!(found.len(), marks.len(), "the fixture marks {} findings, there are:\n{report}", marks.len());
    for (diagnostic, mark) in found.iter().zip(&marks) {
        let place = (diagnostic.span.start as usize, diagnostic.span.end as usize);
        assert_eq!(diagnostic.message, mark.message, "other message; there are:\n{report}");
        assert_eq!(place, mark.place, "other place of `{}`; there are:\n{report}", mark.message);
        for text in &mark.also {
            let all = everything_said(diagnostic);
            assert!(all.contains(text.as_str()), "`{text}` is not said in:\n{all}");
        }
    }
}

/// Checks that a rule finds exactly one thing, or nothing, in one of its own examples.
pub fn check_example(rule: &'static Rule, text: &str, fires: bool) {
    let found = found(rule, text);
    let report: String = found.iter().map(|diagnostic| format!("{}\n", describe(diagnostic, text))).collect();
    assert_eq!(
        found.len(),
        usize::from(fires),
        "{}: an example that {}:\n{text}\nfinds:\n{report}",
        rule.slug,
        if fires { "fires" } else { "passes" }
    );
}

struct Mark {
    place: (usize, usize),
    message: String,
    also: Vec<String>,
}

fn marks_in(fixture: &str) -> Vec<Mark> {
    let mut marks: Vec<Mark> = Vec::new();
    let (mut start, mut above) = (0, 0);
    for line in fixture.split_inclusive('\n') {
        let trimmed = line.trim_end();
        let rest = trimmed.trim_start_matches('-');
        if let Some(text) = rest.trim_start().strip_prefix("| ").filter(|_| trimmed.starts_with("--")) {
            marks.last_mut().expect("a `|` line follows a marked place").also.push(text.to_owned());
        } else if trimmed.starts_with("--") && rest.trim_start().trim_start_matches('<').starts_with('^') {
            let from = trimmed.find('^').expect("there is a caret");
            let carets = trimmed[from..].chars().take_while(|character| *character == '^').count();
            let message = trimmed[from + carets..].trim().to_owned();
            let first = if rest.starts_with('<') { 0 } else { from };
            marks.push(Mark { place: (above + first, above + from + carets), message, also: Vec::new() });
        } else {
            above = start;
        }
        start += line.len();
    }
    marks.sort_by_key(|mark| mark.place);
    marks
}

fn describe(diagnostic: &Diagnostic, text: &str) -> String {
    let at = text.get(diagnostic.span.start as usize..diagnostic.span.end as usize).unwrap_or("?");
    format!(
        "  at `{at}` ({}..{}): {}\n{}",
        diagnostic.span.start,
        diagnostic.span.end,
        diagnostic.message,
        everything_said(diagnostic)
    )
}

fn everything_said(diagnostic: &Diagnostic) -> String {
    let mut all = Vec::new();
    all.extend(diagnostic.related.iter().map(|related| format!("    related: {}", related.message)));
    all.extend(diagnostic.notes.iter().map(|note| format!("    note: {note}")));
    all.extend(diagnostic.help.iter().map(|help| format!("    help: {help}")));
    all.extend(diagnostic.basis.iter().map(|basis| format!("    basis: {basis}")));
    all.join("\n")
}
