"""What names mean, over an include: where they lead, where they stand, what they are called, what hangs on them."""
import pytest
from lsprotocol import types as t

from client import edited, edits_by_uri, path_of
from test_findings import FIRST, FROST, codes

LINKS = t.ClientCapabilities(
    text_document=t.TextDocumentClientCapabilities(
        definition=t.DefinitionClientCapabilities(link_support=True),
        rename=t.RenameClientCapabilities(prepare_support=True)),
    workspace=t.WorkspaceClientCapabilities(
        workspace_edit=t.WorkspaceEditClientCapabilities(document_changes=True),
        file_operations=t.FileOperationClientCapabilities(will_rename=True)))


def texts(house):
    return {path.as_uri(): path.read_text() for path in [house, house.parent / "concrete.framing"]}


def places(house, locations):
    """`file: line` of every place, whether it comes with where the jump begins or not."""
    links = [one for one in locations if isinstance(one, t.LocationLink)]
    plain = [one for one in locations if isinstance(one, t.Location)]
    return [place(house, one.target_uri, one.target_selection_range) for one in links] + [
        place(house, one.uri, one.range) for one in plain]


def place(house, uri, range):
    text = texts(house)[uri]
    return f"{path_of(uri).stem}: {' '.join(text.splitlines()[range.start.line].split())}"


@pytest.mark.covers("definitionProvider", "declarationProvider", "typeDefinitionProvider", "implementationProvider")
async def test_a_support_leads_to_where_it_is_declared(client, house):
    root = client.open_file(house)
    pad = root.at("base          plate 9\" x 9\" x 1/2\", grout 1\"\n  stands on     F$01")
    for answer in [await client.text_document_definition_async(t.DefinitionParams(**pad)),
                   await client.text_document_declaration_async(t.DeclarationParams(**pad))]:
        assert places(house, answer) == ['concrete: footing F1 "Pad under C1"']
    product = await client.text_document_type_definition_async(t.TypeDefinitionParams(**root.at("header H$01")))
    assert places(house, product) == [
        'loon-cove: opening O2 "Wide opening to the sunroom"',
        'loon-cove: product LV14 "Laminated veneer, 14 in. deep"',
    ]
    below = await client.text_document_implementation_async(t.ImplementationParams(**root.at('column C$01 "Column')))
    assert places(house, below) == ['concrete: footing F1 "Pad under C1"']
    nothing = await client.text_document_definition_async(t.DefinitionParams(**root.at("-- floo$0rs")))
    assert nothing is None


async def test_a_client_that_takes_links_sees_where_the_jump_begins(start, house):
    client = await start(LINKS)
    root = client.open_file(house)
    [link] = await client.text_document_definition_async(t.DefinitionParams(**root.at("bears on      PK$01 for 7")))
    assert root.covered(link.origin_selection_range) == "PK1"
    assert place(house, link.target_uri, link.target_selection_range).startswith("concrete: pocket PK1")


@pytest.mark.covers("referencesProvider", "documentHighlightProvider")
async def test_a_name_stands_in_both_files(client, house):
    root = client.open_file(house)
    at = root.at('beam B$01 "Centre girder"')
    found = await client.text_document_references_async(
        t.ReferenceParams(**at, context=t.ReferenceContext(include_declaration=False)))
    assert sorted(places(house, found)) == [
        "loon-cove: cap plate 7\" x 10\" x 1/2\", long side along B1",
        "loon-cove: hangs from B1 by hanger 1100 lb \"face mount\" source \"invented for this sample\"",
        "loon-cove: joint over B1",
        "loon-cove: keep bottom of B1 >= bottom of J1",
    ]
    walls = await client.text_document_references_async(
        t.ReferenceParams(**root.at("bears on      W$01 for 3-7/8"), context=t.ReferenceContext(include_declaration=True)))
    assert {line.split(": ")[0] for line in places(house, walls)} == {"loon-cove", "concrete"}
    assert 'concrete: wall W1 "Basement wall, south"' in places(house, walls)
    shown = await client.text_document_document_highlight_async(t.DocumentHighlightParams(**at))
    assert [root.covered(one.range) for one in shown] == ["B1"] * 5


@pytest.mark.covers("renameProvider")
async def test_another_name_is_written_in_both_files_and_nothing_is_found_afterwards(start, house):
    client = await start(LINKS)
    root = client.open_file(house)
    at = root.at("base          plate 9\" x 9\" x 1/2\", grout 1\"\n  stands on     F$01")
    ready = await client.text_document_prepare_rename_async(t.PrepareRenameParams(**at))
    assert root.covered(ready.range) == "F1" and ready.placeholder == "F1"
    edit = await client.text_document_rename_async(t.RenameParams(**at, new_name="F77"))
    before = texts(house)
    after = {uri: edited(before[uri], edits) for uri, edits in edits_by_uri(edit).items()}
    assert set(after) == set(before)
    for uri, text in after.items():
        # In this house nothing else is called so, so a replacement of the word says what is expected.
        words = before[uri].replace("F1 ", "F77 ").replace("F1\n", "F77\n")
        assert text == words, path_of(uri).name
        path_of(uri).write_text(text)
    client.changed_on_disk(house.parent / "concrete.framing")
    root.become(after[root.uri])
    assert codes(await root.findings()) == []
    taken = root.at("stands on     F77$0\n  cut")
    with pytest.raises(Exception, match="F2"):
        await client.text_document_rename_async(t.RenameParams(**taken, new_name="F2"))


@pytest.mark.covers("workspace.fileOperations.willRename")
async def test_an_include_follows_a_file_that_moves(start, house):
    client = await start(LINKS, [house.parent])
    root = client.open_file(house)
    moved = t.FileRename((house.parent / "concrete.framing").as_uri(), (house.parent / "below.framing").as_uri())
    edit = await client.workspace_will_rename_files_async(t.RenameFilesParams([moved]))
    [(uri, edits)] = edits_by_uri(edit).items()
    assert uri == root.uri
    assert edited(root.text, edits) == root.text.replace('"concrete.framing"', '"below.framing"')


@pytest.mark.covers("callHierarchyProvider")
async def test_the_load_goes_from_the_girder_over_the_column_into_the_pad(client, house):
    root = client.open_file(house)
    [column] = await client.text_document_prepare_call_hierarchy_async(
        t.CallHierarchyPrepareParams(**root.at('column C$01 "Column')))
    # By hand: 740 plf over two lengths of 17'-9", half of each.
    assert (column.name, column.detail) == ("column C1", "carries 13,136 lb by D + L (D 3,359, L 9,777)")
    above = await client.call_hierarchy_incoming_calls_async(t.CallHierarchyIncomingCallsParams(column))
    # Its own weight by hand: 9.42 plf on 96-5/16".
    assert [(call.from_.name, call.from_.detail) for call in above] == [
        ("beam B1", "13,136 lb by D + L (D 3,359, L 9,777)"), ("weight of column C1", "76 lb by D (D 76)")]
    assert [root.covered(one) for one in above[0].from_ranges] == ["C1"]
    [below] = await client.call_hierarchy_outgoing_calls_async(t.CallHierarchyOutgoingCallsParams(column))
    assert below.to.name == "footing F1" and path_of(below.to.uri).name == "concrete.framing"


@pytest.mark.covers("typeHierarchyProvider")
async def test_a_product_has_its_members(client, house):
    root = client.open_file(house)
    [product] = await client.text_document_prepare_type_hierarchy_async(
        t.TypeHierarchyPrepareParams(**root.at("product LV$014")))
    members = await client.type_hierarchy_subtypes_async(t.TypeHierarchySubtypesParams(product))
    assert [member.name for member in members] == ["header H1"]
    makings = await client.type_hierarchy_supertypes_async(t.TypeHierarchySupertypesParams(members[0]))
    assert [making.name for making in makings] == ["product LV14"]
