//! `textDocument/codeAction` and `codeAction/resolve`.

use serde::{Deserialize, Serialize};
use tower_lsp::lsp_types::{
    CodeAction, CodeActionClientCapabilities, CodeActionContext, CodeActionDisabled, CodeActionKind,
    CodeActionOrCommand, CodeActionTriggerKind, Diagnostic, NumberOrString, Range, Url, WorkspaceEdit,
};

use crate::ide::{self, Action, ActionKind, Mended, Wanted};
use crate::server::edits::Edits;
use crate::server::view::View;
use crate::text::Span;

/// Every sort of action with its name in the protocol.
const KINDS: [(ActionKind, CodeActionKind); 4] = [
    (ActionKind::QuickFix, CodeActionKind::QUICKFIX),
    (ActionKind::Rewrite, CodeActionKind::REFACTOR_REWRITE),
    (ActionKind::FixAll, CodeActionKind::new("source.fixAll.storyrod")),
    (ActionKind::Organize, CodeActionKind::new("source.organize.storyrod")),
];

/// What an action remembers for the client to ask for its edits later.
#[derive(Debug, Serialize, Deserialize)]
pub struct Remembered {
    /// The document.
    pub uri: Url,
    /// The version it was offered for.
    version: Option<i32>,
    /// The place.
    range: Range,
}

/// The sorts that are offered, for the capabilities.
pub fn kinds() -> Vec<CodeActionKind> {
    KINDS.into_iter().map(|(_, name)| name).collect()
}

/// What can be done at a range. `None` for a client that takes commands only.
pub fn code_actions(
    view: &View,
    range: Range,
    context: &CodeActionContext,
) -> Option<Vec<CodeActionOrCommand>> {
    let client = client(view)?;
    client.code_action_literal_support.as_ref()?;
    let is_automatic = context.trigger_kind == Some(CodeActionTriggerKind::AUTOMATIC);
    let wanted = Wanted { kinds: wanted_kinds(context.only.as_deref(), is_automatic), is_automatic };
    let offered = ide::actions(view.house.snapshot(), place(view, range), &wanted);
    let shown = offered.into_iter().filter(|action| {
        (action.disabled.is_none() || client.disabled_support == Some(true))
            && is_of_the_context(view, action, &context.diagnostics)
    });
    let encoded = shown.filter_map(|action| {
        let mut encoded = encoded(view, &action, &context.diagnostics);
        if is_lazy(client) {
            let remembered = Remembered { uri: view.page.uri.clone(), version: view.page.version, range };
            encoded.data = Some(serde_json::to_value(remembered).ok()?);
        } else if action.disabled.is_none() {
            encoded.edit = Some(edit(view, &action)?);
        }
        Some(CodeActionOrCommand::CodeAction(encoded))
    });
    Some(encoded.collect())
}

/// The action with its edits. `None` when the text is another by now, or nothing of this title is offered there.
pub fn resolved(view: &View, mut action: CodeAction, remembered: &Remembered) -> Option<CodeAction> {
    if remembered.version != view.page.version {
        return None;
    }
    let (kind, _) = KINDS.into_iter().find(|(_, name)| action.kind.as_ref() == Some(name))?;
    let wanted = Wanted { kinds: vec![kind], is_automatic: false };
    let offered = ide::actions(view.house.snapshot(), place(view, remembered.range), &wanted);
    let chosen =
        offered.iter().find(|offered| offered.title == action.title && offered.disabled.is_none())?;
    action.edit = Some(edit(view, chosen)?);
    Some(action)
}

fn place(view: &View, range: Range) -> Span {
    Span::new(view.house.file, view.offset(range.start), view.offset(range.end))
}

fn client(view: &View) -> Option<&CodeActionClientCapabilities> {
    view.client.text_document.as_ref()?.code_action.as_ref()
}

/// It keeps our data and asks for the edits of what is chosen.
fn is_lazy(client: &CodeActionClientCapabilities) -> bool {
    let resolves = client.resolve_support.as_ref();
    client.data_support == Some(true)
        && resolves.is_some_and(|it| it.properties.iter().any(|property| property == "edit"))
}

/// The sorts that the client asks for. What is about a whole file comes when it is asked for, by its name or by a person.
fn wanted_kinds(only: Option<&[CodeActionKind]>, is_automatic: bool) -> Vec<ActionKind> {
    let is_wanted = |kind: ActionKind, name: &CodeActionKind| match only {
        Some(only) => only.iter().any(|asked| is_within(name.as_str(), asked.as_str())),
        None => !is_automatic || matches!(kind, ActionKind::QuickFix | ActionKind::Rewrite),
    };
    KINDS.iter().filter(|(kind, name)| is_wanted(*kind, name)).map(|(kind, _)| *kind).collect()
}

/// `source.fixAll.storyrod` is one of `source`; the empty name stands for all.
fn is_within(name: &str, asked: &str) -> bool {
    asked.is_empty() || name.strip_prefix(asked).is_some_and(|rest| rest.is_empty() || rest.starts_with('.'))
}

/// When the client names findings of ours, cures are of these.
fn is_of_the_context(view: &View, action: &Action, findings: &[Diagnostic]) -> bool {
    let is_cure = action.kind == ActionKind::QuickFix && !action.mends.is_empty();
    let is_ours = |finding: &Diagnostic| finding.source.as_deref() == Some(env!("CARGO_PKG_NAME"));
    !is_cure
        || !findings.iter().any(is_ours)
        || findings.iter().any(|finding| action.mends.iter().any(|mended| is_about(view, mended, finding)))
}

fn is_about(view: &View, mended: &Mended, finding: &Diagnostic) -> bool {
    let is_rule = matches!(&finding.code, Some(NumberOrString::String(rule)) if rule == mended.rule);
    is_rule && finding.range == view.range(mended.span.start, mended.span.end)
}

fn encoded(view: &View, action: &Action, findings: &[Diagnostic]) -> CodeAction {
    let kind = KINDS.into_iter().find(|(kind, _)| *kind == action.kind).map(|(_, name)| name);
    let mended =
        findings.iter().filter(|finding| action.mends.iter().any(|mended| is_about(view, mended, finding)));
    let mended: Vec<Diagnostic> = mended.cloned().collect();
    CodeAction {
        title: action.title.clone(),
        kind,
        diagnostics: (!mended.is_empty()).then_some(mended),
        is_preferred: action.is_preferred.then_some(true),
        disabled: action.disabled.clone().map(|reason| CodeActionDisabled { reason }),
        ..CodeAction::default()
    }
}

fn edit(view: &View, action: &Action) -> Option<WorkspaceEdit> {
    let mut edits = Edits::default();
    for edit in ide::edits_of(view.house.snapshot(), view.house.file, action) {
        let page = view.house.analysed.page(edit.span.file)?;
        edits.add(page, edit.span.start, edit.span.end, &edit.text);
    }
    Some(edits.encoded(view.abilities))
}
