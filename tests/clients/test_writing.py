"""What an editor offers while one writes: cures and rewrites, what can stand next, the values of a fact."""
import pytest
from lsprotocol import types as t

from client import edited, edits_by_uri
from test_findings import FIRST, codes
from test_sight import LOON_COVE

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


@pytest.mark.covers("completionProvider", "completionProvider.resolveProvider")
async def test_what_can_carry_a_girder_is_offered_and_what_can_not_is_not(start):
    client = await start("visual_studio_code")
    house = client.open(URI, LOON_COVE)
    await house.findings()
    house.change(("  bears on      PK1 for 7\"", "  bears on      "))
    offer = await client.text_document_completion_async(
        t.CompletionParams(**house.at('  span          by grid\n  bears on      $0\n  bears on      C1')))
    items = {item.label: item for item in offer.items}
    # A girder lies in a pocket or on a column; it does not carry itself, and nothing lies on a door or a roof.
    assert {"PK1", "PK2", "C1"} <= set(items) and not {"B1", "DR1", "R1", "R2"} & set(items), sorted(items)
    assert items["PK1"].detail.startswith("pocket")
    whole = await client.completion_item_resolve_async(items["PK1"])
    assert "West seat of B1" in whole.documentation.value
    chosen = t.TextEdit(range_of(whole), whole.text_edit.new_text)
    assert edited(house.text, [chosen]) == house.text.replace("bears on      \n", "bears on      PK1\n")


def range_of(item):
    """Where a completion is written: what is replaced, for a client that can tell it from what is kept."""
    edit = item.text_edit
    return edit.replace if isinstance(edit, t.InsertReplaceEdit) else edit.range


@pytest.mark.covers("completionProvider")
async def test_facts_and_units_are_offered_where_they_can_stand(client):
    house = client.open(URI, "column C1\n  \n")
    offer = await client.text_document_completion_async(t.CompletionParams(**house.at("column C1\n  $0")))
    labels = {item.label for item in offer.items}
    # The facts of a column in the reference, and none of a footing's.
    assert {"at", "stands on", "cap", "base"} <= labels and not {"under", "bars"} & labels, sorted(labels)


@pytest.mark.covers("signatureHelpProvider")
async def test_the_values_of_a_fact_are_told_with_the_one_to_come(client):
    house = client.open(URI, "column C1\n  cap plate \n")
    told = await client.text_document_signature_help_async(t.SignatureHelpParams(**house.at("cap plate $0")))
    active = told.signatures[told.active_signature]
    assert active.label.startswith("cap  plate width x length x thickness")
    start, end = active.parameters[active.active_parameter].label
    assert active.label[start:end].startswith("width")
