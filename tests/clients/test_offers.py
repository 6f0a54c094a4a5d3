"""Every capability that the server speaks of has a case that asks for it."""
import attrs
from lsprotocol import types as t
from pygls.protocol import default_converter

import test_findings
import test_looks
import test_meaning
import test_sight
import test_writing
from test_findings import ASKING

SUITES = [test_findings, test_looks, test_meaning, test_sight, test_writing]

# Told, not asked for.
SAID = {"positionEncoding"}


def covered():
    marks = [mark for suite in SUITES for case in vars(suite).values() for mark in getattr(case, "pytestmark", [])]
    return {name for mark in marks if mark.name == "covers" for name in mark.args}


def offered(capabilities):
    """Every capability by name; those with parts of their own part by part."""
    for name, value in capabilities.items():
        if name in ("workspace", "textDocumentSync", "workspace.fileOperations"):
            yield from offered({f"{name}.{part}": inner for part, inner in value.items()})
        elif value:
            yield name


async def test_everything_offered_is_asked_for(start):
    names = set()
    for editor in [ASKING, "neovim", "visual_studio_code"]:
        client = await start(editor)
        raw = default_converter().unstructure(client.offered)
        names |= set(offered(raw))
        for name, options in raw.items():
            if isinstance(options, dict) and options.get("resolveProvider"):
                names.add(f"{name}.resolveProvider")
    assert names - SAID - covered() == set()
