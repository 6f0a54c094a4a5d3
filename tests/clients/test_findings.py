"""Findings: pushed or asked for, of open files and of all others, of one project and of several."""
import asyncio

import pytest
from lsprotocol import types as t

from conftest import SAMPLES
from client import LONG, path_of

FIRST = (SAMPLES / "first.framing").read_text()

# By hand: the grade is 98'-0", the footing's underside 95'-0 1/2" less 8", which is 94'-4 1/2"; that is 3'-7 1/2" deep,
# more than 42" and less than 48".
FROST = ('frost         42"', 'frost         48"')
SHALLOW = "95'-0 1/2\""

# A client that asks for findings and can be told to ask again.
ASKING = t.ClientCapabilities(
    text_document=t.TextDocumentClientCapabilities(diagnostic=t.DiagnosticClientCapabilities()),
    workspace=t.WorkspaceClientCapabilities(
        diagnostics=t.DiagnosticWorkspaceClientCapabilities(refresh_support=True), workspace_folders=True))

# A client that shows progress.
WATCHING = t.ClientCapabilities(
    window=t.WindowClientCapabilities(work_done_progress=True),
    workspace=t.WorkspaceClientCapabilities(workspace_folders=True))


def codes(findings):
    return [finding.code for finding in findings]


async def asked(document, known=None):
    return await document.client.text_document_diagnostic_async(
        t.DocumentDiagnosticParams(document.id, previous_result_id=known))


@pytest.mark.covers("textDocumentSync.openClose", "textDocumentSync.change")
@pytest.mark.parametrize("editor", ["neovim", "emacs", "visual_studio_code"])
async def test_a_mistake_is_pushed_at_its_place_until_it_is_mended(start, editor):
    client = await start(editor)
    house = client.open("untitled:house", FIRST)
    assert codes(await house.findings()) == []
    house.change(FROST)
    [finding] = await house.findings()
    assert (finding.code, finding.severity, finding.source) == ("frost-depth", t.DiagnosticSeverity.Error, "storyrod")
    if client.offered.position_encoding != "utf-8":
        assert house.covered(finding.range) == SHALLOW
    house.change(FROST[::-1])
    assert codes(await house.findings()) == []


@pytest.mark.covers("diagnosticProvider")
async def test_who_asks_is_told_and_nothing_is_pushed(start):
    client = await start(ASKING)
    house = client.open("untitled:house", FIRST.replace(*FROST))
    report = await asked(house)
    assert codes(report.items) == ["frost-depth"]
    assert isinstance(await asked(house, report.result_id), t.RelatedUnchangedDocumentDiagnosticReport)
    house.change(FROST[::-1])
    assert codes((await asked(house, report.result_id)).items) == []
    assert not client.published


@pytest.mark.covers("diagnosticProvider")
async def test_who_asks_is_told_to_ask_again_when_another_file_is_concerned(start, house):
    client = await start(ASKING)
    root, concrete = client.open_file(house), client.open_file(house.parent / "concrete.framing")
    assert codes((await asked(concrete)).items) == []
    client.refreshed.clear()
    # By hand, of the pad in the other file: the girder's 13,136 lb, 76 lb of column and 1,323 lb of pad are 14,535 lb
    # on 2'-9" square, 7.56 sq ft.
    root.change(("2000 psf", "1500 psf"))
    await client.until(lambda: t.WORKSPACE_DIAGNOSTIC_REFRESH in client.refreshed)
    found = (await asked(concrete)).items
    [pad] = [one for one in found if concrete.covered(one.range) == '2\'-9" x 2\'-9" x 14"']
    assert pad.message.startswith("footing F1 presses 1,922 psf on soil that takes 1,500 psf")
    every = await client.workspace_diagnostic_async(t.WorkspaceDiagnosticParams([]))
    by_file = {path_of(report.uri).name: codes(report.items) for report in every.items}
    assert set(by_file) == {"loon-cove.framing", "concrete.framing"}
    assert by_file["concrete.framing"] == codes(found)


async def test_who_does_not_ask_is_offered_no_answer(client):
    assert client.offered.diagnostic_provider is None


async def test_a_file_of_two_projects_shows_both_and_names_the_project_where_they_differ(client, folder):
    at = FIRST.index("wall W1 ")
    root, common = FIRST[:at] + 'include "common.framing"\n', FIRST[at:].replace('on south\n', 'on south\n  nonsense\n', 1)
    (folder / "common.framing").write_text(common)
    (folder / "birch.framing").write_text(root.replace("One-room cabin", "Birch"))
    (folder / "cedar.framing").write_text(root.replace("One-room cabin", "Cedar").replace(*FROST))
    part = client.open_file(folder / "common.framing")
    found = {finding.code: finding for finding in await part.findings()}
    assert found["frost-depth"].message.endswith("\nin Cedar")
    [common] = [finding for code, finding in found.items() if part.line(finding.range) == "nonsense"]
    assert "\nin " not in common.message


async def test_a_file_that_no_project_includes_shows_only_what_cannot_be_read(client, folder):
    (folder / "part.framing").write_text("column C1\n  at 3§\n  stands on  F9\n")
    part = client.open_file(folder / "part.framing")
    # The pad F9 is nowhere, but nobody can say so of half a house.
    assert codes(await part.findings()) == ["stray-character"]


@pytest.mark.covers("workspace.workspaceFolders")
async def test_folders_come_and_go_with_what_is_found_in_them(start, folder):
    first, second = folder / "first", folder / "second"
    for place in [first, second]:
        place.mkdir()
        (place / "house.framing").write_text(FIRST.replace(*FROST))
    client = await start("visual_studio_code", [first])
    uris = [(place / "house.framing").as_uri() for place in [first, second]]
    assert codes(await client.findings(uris[0])) == ["frost-depth"]
    named = [t.WorkspaceFolder(uri=place.as_uri(), name=place.name) for place in [first, second]]
    client.workspace_did_change_workspace_folders(t.DidChangeWorkspaceFoldersParams(
        t.WorkspaceFoldersChangeEvent(added=[named[1]], removed=[])))
    assert codes(await client.findings(uris[1])) == ["frost-depth"]
    client.workspace_did_change_workspace_folders(t.DidChangeWorkspaceFoldersParams(
        t.WorkspaceFoldersChangeEvent(added=[], removed=[named[0]])))
    await client.until(lambda: not client.published[uris[0]].diagnostics)
    assert client.published[uris[1]].diagnostics


async def test_the_disk_counts_where_no_document_is_open(start, folder):
    path = folder / "house.framing"
    path.write_text(FIRST.replace(*FROST))
    client = await start("visual_studio_code", [folder])
    await client.until(lambda: "workspace/didChangeWatchedFiles" in client.registered)
    assert codes(await client.findings(path.as_uri())) == ["frost-depth"]
    path.write_text(FIRST)
    client.changed_on_disk(path)
    await client.until(lambda: not client.published[path.as_uri()].diagnostics)
    # The open document stands before the file.
    house = client.open(path.as_uri(), FIRST.replace(*FROST))
    assert codes(await house.findings()) == ["frost-depth"]
    house.close()
    await client.until(lambda: not client.published[path.as_uri()].diagnostics)


@pytest.mark.covers("textDocumentSync.save")
async def test_a_saved_document_makes_a_client_that_watches_no_files_see_the_disk(start, house):
    client = await start(t.ClientCapabilities())
    root = client.open_file(house)
    part = house.parent / "concrete.framing"
    assert codes(await root.findings()) == []
    part.write_text(part.read_text().replace("footing F1", "footing F77"))
    client.text_document_did_save(t.DidSaveTextDocumentParams(root.id))
    found = await client.until(lambda: client.published[root.uri].diagnostics)
    assert "unknown-name" in codes(found) and root.covered(found[0].range) == "F1"


def estate(folder, count):
    for at in range(count):
        (folder / f"house-{at:02}.framing").write_text(FIRST.replace(*FROST).replace("One-room cabin", f"Cabin {at}"))


async def test_a_look_through_forty_projects_shows_how_far_it_is(start, folder):
    estate(folder, 40)
    client = await start(WATCHING, [folder])
    await client.until(lambda: any(isinstance(steps[-1], t.WorkDoneProgressEnd) for steps in shown(client)))
    [steps] = shown(client)
    first, *reports, last = steps
    assert isinstance(first, t.WorkDoneProgressBegin) and first.cancellable
    assert [report.message.split()[0] for report in reports] == [f"{n}/40" for n in range(1, 41)]
    assert [report.percentage for report in reports] == [n * 100 // 40 for n in range(1, 41)]
    assert last.message is None
    await client.until(lambda: len(client.published) == 40)
    assert {tuple(codes(said.diagnostics)) for said in client.published.values()} == {("frost-depth",)}


async def test_a_look_through_that_is_stopped_tells_what_it_found(start, folder):
    estate(folder, 40)
    client = await start(WATCHING, [folder])
    await client.until(lambda: any(len(steps) > 1 for steps in shown(client)))
    [token] = client.progress_reports
    client.protocol.notify(t.WINDOW_WORK_DONE_PROGRESS_CANCEL, t.WorkDoneProgressCancelParams(token))
    await client.until(lambda: any(isinstance(steps[-1], t.WorkDoneProgressEnd) for steps in shown(client)))
    # The server may have been quicker than we: then it was all of them.
    [steps] = shown(client)
    n_told = len([step for step in steps if isinstance(step, t.WorkDoneProgressReport)])
    assert steps[-1].message == ("stopped" if n_told < 40 else None)
    await client.until(lambda: len(client.published) >= n_told)


def shown(client):
    return [steps for steps in client.progress_reports.values() if steps]


async def test_a_log_is_written_where_somebody_wants_one(start, folder):
    log = folder / "server.log"
    client = await start(arguments=["--log", str(log)])
    house = client.open("untitled:house", FIRST)
    await house.findings()
    async with asyncio.timeout(LONG):
        while not log.exists():
            await asyncio.sleep(0)
    assert log.is_file()
