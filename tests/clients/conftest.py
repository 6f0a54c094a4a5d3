import pathlib

import pytest
import pytest_asyncio
from pytest_lsp import client_capabilities

from client import Client

SAMPLES = pathlib.Path(__file__).parents[2] / "grammar/samples"


@pytest.fixture
def folder(tmp_path):
    """An empty folder, links resolved."""
    return tmp_path.resolve()


@pytest.fixture
def house(folder):
    """Loon Cove in two files: the concrete and what lies in it apart from the rest. Gives the root file."""
    text = (SAMPLES / "loon-cove.framing").read_text()
    before, rest = text.split("-- concrete ---", 1)
    rest = rest.split("\n", 1)[1]
    concrete, behind = rest.split("-- floor framing ---", 1)
    behind = behind.split("\n", 1)[1]
    (folder / "concrete.framing").write_text(concrete.lstrip("\n"))
    root = folder / "loon-cove.framing"
    root.write_text(before + 'include "concrete.framing"\n' + behind)
    return root


@pytest_asyncio.fixture
async def start():
    """Starts sessions, and ends them in good order when the case is over."""
    sessions = []

    async def begin(editor="neovim@v0.10.0", folders=(), options=None, arguments=(), configuration=None):
        client = Client()
        if configuration is not None:
            client.set_configuration(configuration)
        capabilities = client_capabilities(editor) if isinstance(editor, str) else editor
        await client.begin(capabilities, folders, options, arguments)
        sessions.append(client)
        return client

    yield begin
    for client in sessions:
        await client.end()


@pytest_asyncio.fixture
async def client(start):
    """A session without a folder."""
    return await start()
