//! What can be done about a place: cures of what is found there, and lines that say more or less of what is known.

mod claim;
mod difference;
mod fix;
mod fix_all;
mod follow;
mod intent;
mod name;
mod organize;
mod size;
mod waiver;

use crate::diagnostic::{Diagnostic, Edit};
use crate::snapshot::Snapshot;
use crate::text::{FileId, Span};

/// Something that can be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Action {
    /// What it does, as a person would say it.
    pub title: String,
    /// What sort of thing.
    pub kind: ActionKind,
    /// What it changes.
    pub change: Change,
    /// The findings that it mends.
    pub mends: Vec<Mended>,
    /// It is the one answer to what it mends.
    pub is_preferred: bool,
    /// Why it can't be done here, when it can't.
    pub disabled: Option<String>,
}

/// The sorts of actions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ActionKind {
    /// A cure of a finding.
    QuickFix,
    /// The same house in other words.
    Rewrite,
    /// Every cure of a file that has one answer.
    FixAll,
    /// The order of facts.
    Organize,
}

/// What an action changes.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Change {
    /// These places. Invariant: they do not overlap.
    Edits(Vec<Edit>),
    /// What takes an analysis of its own to know: see [`edits_of`].
    FixAll,
    /// The order of the facts of the file.
    Organize,
}

/// A finding that an action mends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mended {
    /// The rule.
    pub rule: &'static str,
    /// Where it points.
    pub span: Span,
}

/// What somebody wants to be offered.
#[derive(Clone, Debug)]
pub struct Wanted {
    /// The sorts of actions.
    pub kinds: Vec<ActionKind>,
    /// The editor asks by itself, not the person: then there are fixes and no more.
    pub is_automatic: bool,
}

/// What can be done about a place; the surest first.
pub fn actions(snapshot: &Snapshot, place: Span, wanted: &Wanted) -> Vec<Action> {
    let findings = findings_at(snapshot, place);
    let wants = |kind| wanted.kinds.contains(&kind);
    let mut all = Vec::new();
    if wants(ActionKind::QuickFix) {
        all.extend(fix::fixes(&findings));
        if !wanted.is_automatic {
            all.extend(fix::choices(&findings));
            all.extend(name::new_elements(snapshot, place));
            all.extend(name::missing_words(snapshot, place));
            all.extend(size::next_sizes(snapshot, place, &findings));
            all.extend(waiver::waivers(snapshot, &findings));
        }
    }
    if wants(ActionKind::Rewrite) && !wanted.is_automatic {
        all.extend(claim::claims(snapshot, place));
        all.extend(follow::follow(snapshot, place));
        all.extend(intent::intents(snapshot, place));
    }
    if wants(ActionKind::FixAll) {
        all.extend(fix_all::fix_all(snapshot, place.file));
    }
    if wants(ActionKind::Organize) {
        all.extend(organize::organize(snapshot, place.file));
    }
    merged(all)
}

/// The places that an action changes, in the order of the text, file by file.
pub fn edits_of(snapshot: &Snapshot, file: FileId, action: &Action) -> Vec<Edit> {
    let mut edits = match &action.change {
        Change::Edits(edits) => edits.clone(),
        Change::FixAll => fix_all::edits(snapshot, file),
        Change::Organize => organize::edits(snapshot, file),
    };
    edits.sort_by_key(|edit| edit.span);
    edits
}

impl Action {
    fn new(title: impl Into<String>, kind: ActionKind, edits: Vec<Edit>) -> Self {
        Self {
            title: title.into(),
            kind,
            change: Change::Edits(edits),
            mends: Vec::new(),
            is_preferred: false,
            disabled: None,
        }
    }

    fn mending(self, finding: &Diagnostic) -> Self {
        Self { mends: vec![Mended { rule: finding.rule, span: finding.span }], ..self }
    }
}

/// Roots and consequences that point at some of a place.
fn findings_at(snapshot: &Snapshot, place: Span) -> Vec<&Diagnostic> {
    let all = snapshot.findings.iter().flat_map(Diagnostic::with_consequences);
    let is_here = |span: Span| span.file == place.file && span.start <= place.end && place.start <= span.end;
    all.filter(|finding| is_here(finding.span)).collect()
}

/// Of actions that change the same in the same words one, which mends what each of them does.
fn merged(all: Vec<Action>) -> Vec<Action> {
    let mut merged: Vec<Action> = Vec::new();
    for action in all {
        let is_same = |one: &&mut Action| one.title == action.title && one.change == action.change;
        match merged.iter_mut().find(is_same) {
            Some(one) => {
                one.mends.extend(action.mends);
                one.is_preferred |= action.is_preferred;
            }
            None => merged.push(action),
        }
    }
    merged
}

#[cfg(test)]
pub(in crate::ide) mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, snapshot_of};

    const ALL: [ActionKind; 4] =
        [ActionKind::QuickFix, ActionKind::Rewrite, ActionKind::FixAll, ActionKind::Organize];

    fn everything() -> Wanted {
        Wanted { kinds: ALL.to_vec(), is_automatic: false }
    }

    /// Everything that is offered at the cursor.
    pub fn offered(fixture: &str) -> Vec<Action> {
        let (snapshot, file, offset) = at_cursor(fixture);
        actions(&snapshot, Span::new(file, offset, offset), &everything())
    }

    /// What it is called.
    pub fn titles(fixture: &str) -> Vec<String> {
        offered(fixture).into_iter().map(|action| action.title).collect()
    }

    /// The text after the action of this title is taken at the cursor.
    pub fn check(fixture: &str, title: &str) -> String {
        let (snapshot, file, offset) = at_cursor(fixture);
        let offered = actions(&snapshot, Span::new(file, offset, offset), &everything());
        let action = offered.iter().find(|action| action.title == title);
        let titles: Vec<_> = offered.iter().map(|action| &action.title).collect();
        let action = action.unwrap_or_else(|| panic!("{title} is not offered; there are {titles:#?}"));
        assert_eq!(action.disabled, None);
        after(&fixture.replace("$0", ""), &edits_of(&snapshot, file, action))
    }

    /// The text after everything is fixed that has one answer.
    pub fn check_all(text: &str) -> String {
        after(text, &fix_all::edits(&snapshot_of(text), FileId(0)))
    }

    /// The text after some edits.
    pub fn after(text: &str, edits: &[Edit]) -> String {
        let mut text = text.to_owned();
        for edit in edits.iter().rev() {
            text.replace_range(edit.span.start as usize..edit.span.end as usize, &edit.text);
        }
        text
    }

    #[test]
    fn only_what_is_wanted() {
        let (snapshot, file, offset) = at_cursor("project\nfloor main\n  deck $07.5\n  subfloor 98.5\n");
        let of = |kinds: &[ActionKind], is_automatic| {
            let wanted = Wanted { kinds: kinds.to_vec(), is_automatic };
            let offered = actions(&snapshot, Span::new(file, offset, offset), &wanted);
            offered.into_iter().map(|action| action.kind).collect::<Vec<_>>()
        };
        assert_eq!(of(&[ActionKind::FixAll], false), [ActionKind::FixAll]);
        assert_eq!(of(&[ActionKind::QuickFix], false), [ActionKind::QuickFix, ActionKind::QuickFix]);
        assert_eq!(of(&[ActionKind::QuickFix, ActionKind::Rewrite], true), []);
        assert_eq!(of(&[], false), []);
    }
}
