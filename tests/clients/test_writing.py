"""What an editor offers while one writes: cures and rewrites, what can stand next, the values of a fact."""
import pytest
from lsprotocol import types as t

from client import edited, edits_by_uri
from test_findings import FIRST, codes

URI = "untitled:house"

# A wall of the first house half an inch too low. By hand: 100'-0" less deck 3/4", joist 9-1/4" and sill 1-1/2" puts every
# wall top at 99'-0 1/2".
WALL = 'wall W2 "North wall"\n  kind          concrete\n  from          A/2 to B/2\n  line          north face\n  thick         8"\n  top           '
LOW = FIRST.replace(WALL + "99'-0 1/2\"", WALL + "98'-4\"")

# A client that reads what an action does only when it is chosen.
RESOLVING = t.ClientCapabilities(
    text_document=t.TextDocumentClientCapabilities(
        code_action=t.CodeActionClientCapabilities(
            code_action_literal_support=t.ClientCodeActionLiteralOptions(t.ClientCodeActionKindOptions([])),
            data_support=True, is_preferred_support=True,
            resolve_support=t.ClientCodeActionResolveOptions(["edit"])),
        publish_diagnostics=t.PublishDiagnosticsClientCapabilities(data_support=True)),
    workspace=t.WorkspaceClientCapabilities(
        workspace_edit=t.WorkspaceEditClientCapabilities(document_changes=True)))


async def actions_at(house, marked, diagnostics=(), only=None):
    place = house.position(marked)
    return await house.client.text_document_code_action_async(t.CodeActionParams(
        house.id, t.Range(place, place), t.CodeActionContext(list(diagnostics), only=only)))


@pytest.mark.covers("codeActionProvider")
@pytest.mark.parametrize("editor", ["neovim", "emacs", "visual_studio_code"])
async def test_a_fix_that_is_applied_makes_its_finding_vanish(start, editor):
    client = await start(editor)
    house = client.open(URI, LOW)
    found = [finding for finding in await house.findings() if finding.code == "stack-does-not-close"]
    assert len(found) == 1
    actions = await actions_at(house, "top           98'$0-4\"", found)
    [fix] = [action for action in actions if action.title == "write 99'-0 1/2\""]
    assert fix.kind == t.CodeActionKind.QuickFix and fix.is_preferred
    if fix.edit is None:
        fix = await client.code_action_resolve_async(fix)
    [(uri, edits)] = edits_by_uri(fix.edit).items()
    assert uri == house.uri
    house.become(edited(house.text, edits))
    assert house.text == FIRST
    assert codes(await house.findings()) == []


@pytest.mark.covers("codeActionProvider.resolveProvider")
async def test_what_a_fix_of_everything_does_is_worked_out_when_it_is_chosen(start):
    client = await start(RESOLVING)
    house = client.open(URI, LOW.replace("  floor         main", "  floor         mian"))
    await house.findings()
    [everything] = await actions_at(house, "project$0", only=[t.CodeActionKind.SourceFixAll])
    assert everything.edit is None
    resolved = await client.code_action_resolve_async(everything)
    [(_, edits)] = edits_by_uri(resolved.edit).items()
    assert edited(house.text, edits) == FIRST
