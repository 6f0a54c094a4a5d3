"""The look and the shape of a file: colours, outline, folds, selections, links, and formatting while one writes."""
import pytest
from lsprotocol import types as t

from client import edited, path_of
from test_sight import LOON_COVE, URI


def words(document, data):
    """Every token as its text, its type and its modifiers."""
    legend = document.client.offered.semantic_tokens_provider.legend
    line = column = 0
    for down, right, length, kind, bits in zip(*[iter(data)] * 5):
        line, column = line + down, right if down else column + right
        text = document.text.splitlines()[line][column:column + length]
        yield text, legend.token_types[kind], {name for at, name in enumerate(legend.token_modifiers) if bits >> at & 1}


@pytest.mark.covers("semanticTokensProvider")
async def test_colours_know_what_a_word_is_and_how_far_it_is_built(client):
    house = client.open(URI, LOON_COVE)
    whole = await client.text_document_semantic_tokens_full_async(t.SemanticTokensParams(house.id))
    all_words = list(words(house, whole.data))
    walls = [said for said in all_words if said[0] == "W2"]
    # Declared, and named by MN, F2, J1 and a sheet. Its status is `poured`.
    assert len(walls) == LOON_COVE.count("W2")
    assert all(kind == "variable" and "poured" in modifiers for _, kind, modifiers in walls)
    assert [("declaration" in modifiers) for _, _, modifiers in walls].count(True) == 1
    assert ('"Pad under C1"', "string", set()) in all_words
    assert all(said[1] == "comment" for said in all_words if said[0].startswith("--"))
    column = house.range('column C1 "Column under the girder"')
    some = await client.text_document_semantic_tokens_range_async(t.SemanticTokensRangeParams(house.id, column))
    assert [text for text, _, _ in words(house, some.data)] == ["column", "C1", '"Column under the girder"']


@pytest.mark.covers("semanticTokensProvider")
async def test_colours_after_an_edit_are_told_as_what_has_changed(client):
    house = client.open(URI, LOON_COVE)
    first = await client.text_document_semantic_tokens_full_async(t.SemanticTokensParams(house.id))
    house.change(('column C1 "Column under the girder"', 'column C1 "Column"\n-- under the girder'))
    changed = await client.text_document_semantic_tokens_full_delta_async(
        t.SemanticTokensDeltaParams(house.id, first.result_id))
    data = list(first.data)
    for edit in sorted(changed.edits, key=lambda edit: -edit.start):
        data[edit.start:edit.start + edit.delete_count] = edit.data or []
    whole = await client.text_document_semantic_tokens_full_async(t.SemanticTokensParams(house.id))
    assert data == list(whole.data)
    assert ("-- under the girder", "comment", set()) in list(words(house, data))


@pytest.mark.covers("documentSymbolProvider")
async def test_an_outline_has_sections_and_elements(client):
    house = client.open(URI, LOON_COVE)
    outline = await client.text_document_document_symbol_async(t.DocumentSymbolParams(house.id))
    sections = {symbol.name: symbol for symbol in outline}
    framing = sections["floor framing"]
    names = [symbol.name for symbol in framing.children]
    assert names[:4] == ['joists J1 "Main joists"', 'joists J2 "Sunroom joists"', 'beam B1 "Centre girder"',
                         'column C1 "Column under the girder"']
    column = framing.children[3]
    assert house.covered(column.selection_range) == "C1"
    assert house.covered(column.range).startswith("column C1") and house.covered(column.range).endswith("2027-04-05")


@pytest.mark.covers("workspaceSymbolProvider")
async def test_elements_are_found_across_an_include_and_in_files_that_are_not_open(start, house):
    client = await start("visual_studio_code", [house.parent])
    client.open_file(house)

    async def found(query):
        symbols = await client.workspace_symbol_async(t.WorkspaceSymbolParams(query))
        return [(symbol.name, path_of(symbol.location.uri).name) for symbol in symbols]

    assert ('footing F1 "Pad under C1"', "concrete.framing") in await found("pad under")
    assert ('beam B1 "Centre girder"', "loon-cove.framing") in await found("girder")


@pytest.mark.covers("foldingRangeProvider", "selectionRangeProvider")
async def test_folds_and_selections_follow_the_elements(client):
    house = client.open(URI, LOON_COVE)
    folds = await client.text_document_folding_range_async(t.FoldingRangeParams(house.id))
    lines = house.text.splitlines()
    folded = {lines[fold.start_line]: lines[fold.end_line] for fold in folds}
    assert folded['column C1 "Column under the girder"'] == "  status        ordered 2027-04-05"
    position = house.position("plate 9\" x $09\" x 1/2\"")
    [selection] = await client.text_document_selection_range_async(t.SelectionRangeParams(house.id, [position]))
    covered = []
    while selection:
        covered.append(house.covered(selection.range))
        selection = selection.parent
    assert all(inner in outer for inner, outer in zip(covered, covered[1:]))
    assert any(text.startswith("base ") and text.endswith('grout 1"') for text in covered)
    assert any(text.startswith("column C1") for text in covered) and covered[-1].strip() == house.text.strip()


@pytest.mark.covers("documentLinkProvider")
async def test_an_include_is_a_link(client, house):
    root = client.open_file(house)
    [link] = await client.text_document_document_link_async(t.DocumentLinkParams(root.id))
    assert root.covered(link.range).strip('"') == "concrete.framing"
    assert path_of(link.target) == house.parent / "concrete.framing"


@pytest.mark.covers("documentRangeFormattingProvider", "documentOnTypeFormattingProvider")
async def test_lines_are_formatted_alone_and_as_they_are_finished(client):
    untidy = LOON_COVE.replace("  stands on     F1", "  stands   on F1").replace("  cut           should", "  cut should")
    house = client.open(URI, untidy)
    options = t.FormattingOptions(tab_size=2, insert_spaces=True)
    edits = await client.text_document_range_formatting_async(
        t.DocumentRangeFormattingParams(house.id, house.range("stands   on F1"), options))
    assert edited(untidy, edits) == untidy.replace("  stands   on F1", "  stands on     F1")
    # The line end behind the pad was typed just now.
    edits = await client.text_document_on_type_formatting_async(
        t.DocumentOnTypeFormattingParams(house.id, house.position("$0  cut should"), "\n", options))
    assert edited(untidy, edits) == untidy.replace("  stands   on F1", "  stands on     F1")
