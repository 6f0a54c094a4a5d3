"""The built grammar, and what is asked of its trees."""

import ctypes
import os
from pathlib import Path

from tree_sitter import Language, Node, Parser, Query, QueryCursor

GRAMMAR = Path(__file__).resolve().parent.parent
SAMPLES = sorted((GRAMMAR.parent / "samples").glob("*.framing"))


def load() -> Language:
    """The language in the library that the script `run` built."""
    library = ctypes.CDLL(os.environ["FRAMING_PARSER"])
    library.tree_sitter_framing.restype = ctypes.c_void_p
    capsule = ctypes.pythonapi.PyCapsule_New
    capsule.restype, capsule.argtypes = ctypes.py_object, [ctypes.c_void_p, ctypes.c_char_p, ctypes.c_void_p]
    return Language(capsule(library.tree_sitter_framing(), b"tree_sitter.Language", None))


LANGUAGE = load()
PARSER = Parser(LANGUAGE)


def parse(text: str | bytes) -> Node:
    return PARSER.parse(text.encode() if isinstance(text, str) else text).root_node


def faults(node: Node) -> list[Node]:
    """Every ERROR and MISSING node."""
    if not node.has_error:
        return []
    own = [node] if node.is_error or node.is_missing else []
    return own + [fault for child in node.children for fault in faults(child)]


def fields(node: Node) -> list[tuple[str, Node]]:
    """The children that have a field, with its name, in the order of the text."""
    named = [(node.field_name_for_child(at), child) for at, child in enumerate(node.children)]
    return [(name, child) for name, child in named if name]


def query(name: str) -> Query:
    return Query(LANGUAGE, (GRAMMAR / "queries" / f"{name}.scm").read_text())


def captures(name: str, text: str) -> dict[str, list[Node]]:
    return QueryCursor(query(name)).captures(parse(text))
