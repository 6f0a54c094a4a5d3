//! Every cure of a file that has one answer and moves nothing but words and numbers on paper.

use crate::diagnostic::{Diagnostic, Edit, Fix, Remedy, Severity};
use crate::house::lines;
use crate::ide::actions::difference::difference;
use crate::ide::actions::{Action, ActionKind, Change};
use crate::rules;
use crate::snapshot::{Snapshot, edited};
use crate::syntax::vocabulary::CLAIM;
use crate::text::{FileId, Span};

/// A fix can lay bare the next fault so many times.
const MOST_ROUNDS: usize = 10;

/// The groups of rules whose cures are words of the format.
const OF_WORDS: [&str; 2] = ["spelling", "names"];

/// The groups of rules whose cures are numbers that follow from others. What checks strength, what compares the house with
/// its sheets, claims and promises, and what silences a rule are not among them: there a person decides which side is right.
const OF_GEOMETRY: [&str; 8] =
    ["stack", "beams", "columns", "foundations", "floors", "supports", "stairs", "load_path"];

/// The action, when there is something to fix.
pub fn fix_all(snapshot: &Snapshot, file: FileId) -> Option<Action> {
    safe_fixes(snapshot, file).next()?;
    let action = Action::new("fix all that has one answer", ActionKind::FixAll, Vec::new());
    Some(Action { change: Change::FixAll, ..action })
}

/// All fixes that do not overlap, round by round until none is left. A round that would bring new errors is not taken.
pub fn edits(snapshot: &Snapshot, file: FileId) -> Vec<Edit> {
    let text_of = |snapshot: &Snapshot| {
        snapshot.inputs.sources.get(file.0 as usize).map(|source| source.text.to_string())
    };
    let mut newest: Option<Snapshot> = None;
    for _ in 0..MOST_ROUNDS {
        let current = newest.as_ref().unwrap_or(snapshot);
        let (edits, are_words) = round(current, file);
        if edits.is_empty() {
            break;
        }
        let Some(next) = edited::with(current, &edits) else { break };
        // A line that can be read at last may well say something wrong; a number that is put right must not.
        if !are_words && n_errors(&next) >= n_errors(current) && n_findings(&next) >= n_findings(current) {
            break;
        }
        newest = Some(next);
    }
    let texts = newest.as_ref().and_then(text_of).zip(text_of(snapshot));
    let Some((new, old)) = texts else { return Vec::new() };
    difference(file, &old, &new)
}

/// The edits of one round, and whether they are of words: those come first, alone.
fn round(snapshot: &Snapshot, file: FileId) -> (Vec<Edit>, bool) {
    let of = |groups: &[&str]| {
        let mut edits: Vec<Edit> = Vec::new();
        for (_, fix) in safe_fixes(snapshot, file).filter(|(finding, _)| is_of(finding, groups)) {
            let overlaps = |edit: &Edit| edits.iter().any(|taken| meet(taken.span, edit.span));
            if !fix.edits.iter().any(overlaps) {
                edits.extend(fix.edits.iter().cloned());
            }
        }
        edits
    };
    let words = of(&OF_WORDS);
    if words.is_empty() { (of(&OF_GEOMETRY), false) } else { (words, true) }
}

fn meet(one: Span, other: Span) -> bool {
    one.start <= other.end && other.start <= one.end
}

/// The fixes of roots that may be made without being looked at one by one.
fn safe_fixes(snapshot: &Snapshot, file: FileId) -> impl Iterator<Item = (&Diagnostic, &Fix)> {
    let fixes = snapshot.findings.iter().filter_map(|finding| Some((finding, finding.fix.as_ref()?)));
    fixes.filter(move |(finding, fix)| {
        let is_danger = rules::rule_named(finding.rule).is_none_or(|rule| rule.is_danger);
        let is_kind = is_of(finding, &OF_WORDS) || is_of(finding, &OF_GEOMETRY);
        let is_safe =
            |edit: &Edit| edit.span.file == file && !adds_a_line(edit) && !is_claimed(snapshot, edit.span);
        !is_danger && is_kind && finding.remedy == Remedy::OnPaper && fix.edits.iter().all(is_safe)
    })
}

fn is_of(finding: &Diagnostic, groups: &[&str]) -> bool {
    rules::rule_named(finding.rule).is_some_and(|rule| groups.contains(&rule.group()))
}

/// What is to be built besides is for a person to say.
fn adds_a_line(edit: &Edit) -> bool {
    edit.text.contains(['\n', '\r'])
}

/// A claim is there to be compared: that it is wrong is what its author wants to know.
fn is_claimed(snapshot: &Snapshot, place: Span) -> bool {
    lines::fact_at(&snapshot.house, place).is_some_and(|(_, fact)| std::ptr::eq(fact.spec, &CLAIM))
}

fn n_errors(snapshot: &Snapshot) -> usize {
    let all = snapshot.findings.iter().flat_map(Diagnostic::with_consequences);
    all.filter(|finding| finding.severity == Severity::Error).count()
}

fn n_findings(snapshot: &Snapshot) -> usize {
    snapshot.findings.iter().map(|finding| finding.with_consequences().len()).sum()
}

#[cfg(test)]
mod tests {
    use crate::ide::actions::tests::check_all;

    const HOUSE: &str = r#"project "House"
florr main
  subfloor      100'-0"
  deck          3/4"
wall W1
  kind          concrete
  top           98'-4"
  sill          1 of 2x6 treated
wall W2
  kind          concrete
  top           98'-4"
  sill          1 of 2x6
joists J1
  floor         mian
  size          2x10 SPF No.2
  bears on      W1
  bears on      W2
"#;

    /// By hand: 100'-0" - 3/4" - 9-1/4" - 1-1/2" = 99'-0 1/2".
    #[test]
    fn what_a_fix_lays_bare_is_fixed_too() {
        let fixed = HOUSE
            .replace("florr", "floor")
            .replace("mian", "main")
            .replace("98'-4\"", "99'-0 1/2\"")
            .replace("1 of 2x6\n", "1 of 2x6 treated\n");
        assert_eq!(check_all(HOUSE), fixed);
        assert_eq!(check_all(&fixed), fixed);
    }

    #[test]
    fn claims_sheets_and_what_stands_stay() {
        let poured = HOUSE
            .replace("florr", "floor")
            .replace("mian", "main")
            .replace("of 2x6\n", "of 2x6 treated\n")
            .replace("98'-4\"\n", "98'-4\"\n  status        poured\n");
        assert_eq!(check_all(&poured), poured);
        let claimed = "project\nfloor main\n  subfloor  100'-0\"\n  finish    oak 3/4\"\n  finish    should be 100'-1\"\n\
                       sheet A-1\n  shows     finish of main = 100'-2\"\n";
        assert_eq!(check_all(claimed), claimed);
    }
}
