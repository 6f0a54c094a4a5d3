"""The queries for Helix compile, and find in every sample what the grammar's own find."""

from collections import Counter
from pathlib import Path

from framing import LANGUAGE, SAMPLES, Query, QueryCursor, captures, parse

FOLDER = Path(__file__).parent.parent / "queries" / "framing"
QUERIES = {path.stem: Query(LANGUAGE, path.read_text()) for path in FOLDER.glob("*.scm")}


def found(name, text):
    return QueryCursor(QUERIES[name]).captures(parse(text))


def places(nodes):
    return sorted((node.start_byte, node.end_byte) for node in nodes)


def all_places(by_name):
    return places(node for nodes in by_name.values() for node in nodes)


assert set(QUERIES) == {"highlights", "indents", "injections", "tags", "textobjects"}, QUERIES
counts = Counter()
for sample in SAMPLES:
    text = sample.read_text()
    elements = [node for node in parse(text).named_children if node.type not in ("comment", "include")]
    objects = found("textobjects", text)
    assert all_places(found("highlights", text)) == all_places(captures("highlights", text)), sample
    assert places(found("indents", text)["indent"]) == places(elements), sample
    assert places(objects["class.around"]) == places(elements), sample
    facts = [child for element in elements for child in element.named_children if child.type in ("fact", "claim")]
    assert places(objects["entry.around"]) == places(facts), sample
    assert all_places(found("tags", text)) == all_places(captures("tags", text)), sample
    assert found("injections", text)["injection.content"], sample
    counts += Counter(elements=len(elements), facts=len(facts))
print(f"{len(SAMPLES)} samples: {counts['elements']} elements, {counts['facts']} facts")
