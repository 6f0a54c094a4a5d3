"""What an editor shows beside and above the text. Figures of Loon Cove are worked by hand beside the rules' own tests."""
import asyncio

import pytest
from lsprotocol import types as t

from conftest import SAMPLES
from client import LONG, edited

LOON_COVE = (SAMPLES / "loon-cove.framing").read_text()
URI = "untitled:house"


@pytest.mark.covers("hoverProvider")
@pytest.mark.parametrize("editor", ["neovim", "emacs", "visual_studio_code"])
async def test_a_hover_says_the_figures_and_the_caution(start, editor):
    client = await start(editor)
    house = client.open(URI, LOON_COVE)
    hover = await client.text_document_hover_async(t.HoverParams(**house.at('column C$01 "Column')))
    said = hover.contents.value
    assert "carries 13,136 lb by D + L" in said and '96-5/16"' in said, said
    assert "have it checked by a licensed professional" in said
    assert house.covered(hover.range) == "C1"
    nothing = await client.text_document_hover_async(t.HoverParams(**house.at("-- floo$0rs")))
    assert nothing is None


@pytest.mark.covers("codeLensProvider", "executeCommandProvider")
async def test_a_lens_says_what_is_carried_and_opens_its_sheet(start):
    client = await start(options={"opensSheets": True})
    house = client.open(URI, LOON_COVE)
    lenses = await client.text_document_code_lens_async(t.CodeLensParams(house.id))
    by_name = {house.covered(lens.range): lens.command for lens in lenses}
    assert by_name["C1"].title.startswith("carries 13,136 lb")
    sheet = await client.workspace_execute_command_async(
        t.ExecuteCommandParams(by_name["C1"].command, by_name["C1"].arguments))
    assert "13,136 lb" in sheet and "beam B1" in sheet
    [shown] = await client.until(lambda: client.shown_documents)
    assert shown.uri.endswith(".txt")


@pytest.mark.covers("executeCommandProvider")
async def test_every_command_has_its_sheet(client):
    house = client.open(URI, LOON_COVE)
    says = {
        "storyrod.takedown": ({"element": "C1"}, "13,136 lb"),
        "storyrod.calc": ({"element": "C1"}, "column C1"),
        "storyrod.rod": ({}, "footing F1 top"),
        "storyrod.steps": ({"upper": "main", "lower": "sunroom"}, "3 of 6-1/2\""),
    }
    assert set(client.offered.execute_command_provider.commands) == set(says)
    for command, (argument, expected) in says.items():
        sheet = await client.workspace_execute_command_async(
            t.ExecuteCommandParams(command, [{"uri": house.uri, **argument}]))
        assert expected in sheet, command


async def test_settings_switch_lenses_off_and_on_again(start):
    client = await start("visual_studio_code", configuration={"storyrod": {"codeLens": False}})
    house = client.open(URI, LOON_COVE)
    await client.until(lambda: "workspace/didChangeConfiguration" in client.registered)

    async def lenses():
        return await client.text_document_code_lens_async(t.CodeLensParams(house.id)) or []

    async def settled(is_shown):
        async with asyncio.timeout(LONG):
            while bool(await lenses()) != is_shown:
                pass

    await settled(False)
    client.refreshed.clear()
    client.set_configuration({"storyrod": {"codeLens": True}})
    client.workspace_did_change_configuration(t.DidChangeConfigurationParams(None))
    await client.until(lambda: t.WORKSPACE_CODE_LENS_REFRESH in client.refreshed)
    await settled(True)


@pytest.mark.covers("documentFormattingProvider")
async def test_formatting_brings_back_the_one_style(client):
    untidy = LOON_COVE.replace("  stands on     F1", "  stands   on F1").replace("\n\ncolumn C1", "\n\n\n\ncolumn C1")
    house = client.open(URI, untidy)
    edits = await client.text_document_formatting_async(
        t.DocumentFormattingParams(house.id, t.FormattingOptions(tab_size=2, insert_spaces=True)))
    assert edited(house.text, edits) == LOON_COVE


@pytest.mark.covers("inlayHintProvider", "inlayHintProvider.resolveProvider")
async def test_a_hint_says_what_comes_down_and_why(client):
    house = client.open(URI, LOON_COVE)
    hints = await client.text_document_inlay_hint_async(t.InlayHintParams(house.id, house.whole))
    [hint] = [hint for hint in hints if hint.label == "13,136 lb"]
    assert hint.position == house.position('bears on      C1 for 10"$0')
    whole = await client.inlay_hint_resolve_async(hint)
    assert "beam B1 brings 13,136 lb to column C1" in whole.tooltip and "licensed" in whole.tooltip


@pytest.mark.covers("inlayHintProvider")
async def test_settings_switch_a_kind_of_hints_off(start):
    client = await start(options={"inlayHints": {"reactions": False}})
    house = client.open(URI, LOON_COVE)
    hints = await client.text_document_inlay_hint_async(t.InlayHintParams(house.id, house.whole))
    labels = [hint.label for hint in hints]
    assert "13,136 lb" not in labels and any("bending 83 %" in label for label in labels), labels
