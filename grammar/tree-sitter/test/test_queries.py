"""The queries catch what they are for, and no leaf twice."""

from collections import Counter

import pytest
from framing import GRAMMAR, SAMPLES, QueryCursor, parse, query

NAMES = sorted(path.stem for path in (GRAMMAR / "queries").glob("*.scm"))
# Names, titles and neither; comments everywhere; a line that does not fit.
TEXT = """-- a note
include "walls.framing"

project "House"
intent

hold point inspect "Steps" -- note
  shoot top of W1
-- inside
  before pouring concrete
  wobble

-- above
beam B1
  size W8x24
  bears on W1 for 3"
  size should be 2x10
grid
  x A 0'
"""


def matches(name, text):
    return [found for _, found in QueryCursor(query(name)).matches(parse(text))]


def rows(nodes):
    return [(node.start_point.row, node.end_point.row) for node in nodes]


def texts(nodes):
    return [node.text.decode() for node in nodes]


@pytest.mark.parametrize("name", NAMES)
def test_a_query_compiles_and_finds_something_in_each_sample(name):
    assert len(SAMPLES) >= 5
    for sample in SAMPLES:
        assert matches(name, sample.read_text()), sample


@pytest.mark.parametrize("sample", SAMPLES, ids=lambda path: path.stem)
def test_every_leaf_of_a_sample_has_one_colour(sample):
    def leaves(node):
        captured = node.id in coloured
        if node.child_count == 0 or captured:
            yield node
        else:
            for child in node.children:
                yield from leaves(child)

    root = parse(sample.read_text())
    found = [node for _, match in QueryCursor(query("highlights")).matches(root) for [node] in match.values()]
    coloured = Counter(node.id for node in found)
    assert max(coloured.values()) == 1
    spans = sorted((node.start_byte, node.end_byte) for node in found)
    assert all(end <= start for (_, end), (start, _) in zip(spans, spans[1:])), "a colour inside a colour"
    plain = {node.type for node in leaves(root) if node.id not in coloured and node.end_byte > node.start_byte}
    assert not plain


def test_every_element_folds():
    assert rows(node for [node] in (match["fold"] for match in matches("folds", TEXT))) == [
        (3, 3), (4, 4), (6, 10), (13, 16), (17, 18),
    ]  # fmt: skip


def test_every_element_stands_in_the_outline_once():
    found = [tuple(texts(match.get(part, []))[:1] for part in ("context", "name", "context.extra"))
             for match in matches("outline", TEXT)]  # fmt: skip
    assert sorted(found) == sorted([
        (["project"], ['"House"'], []),
        ([], ["intent"], []),
        (["hold point"], ["inspect"], ['"Steps"']),
        (["beam"], ["B1"], []),
        ([], ["grid"], []),
    ])  # fmt: skip
    for sample in SAMPLES:
        root = parse(sample.read_text())
        elements = [node for node in root.named_children if node.type not in ("comment", "include")]
        items = [node for match in matches("outline", sample.read_text()) for node in match["item"]]
        assert sorted(rows(items)) == sorted(rows(elements))


def test_names_are_told_from_their_uses():
    found = [match for match in matches("tags", TEXT)]
    given = [texts(match["name"]) for match in found if "definition.class" in match]
    used = [texts(match["name"]) for match in found if "reference.class" in match]
    assert (given, used) == ([["inspect"], ["B1"]], [["W1"], ["W1"]])
    scoped = matches("locals", TEXT)
    assert [texts(match["local.definition"]) for match in scoped if "local.definition" in match] == [
        ["inspect"], ["B1"], ["A"],
    ]  # fmt: skip


def test_a_text_object_is_an_element_or_a_fact():
    found = matches("textobjects", TEXT)
    assert rows(node for match in found for node in match.get("class.outer", [])) == [
        (3, 3), (4, 4), (6, 10), (13, 16), (17, 18),
    ]  # fmt: skip
    inner = [rows(match["class.inner"]) for match in found if "class.inner" in match]
    assert [(13 + 1, 14), (15, 15), (16, 16)] in inner
    assert [texts(match["entry.inside"]) for match in found if "entry.inside" in match][-1] == ["A", "0'"]
    assert [(0, 0)] in [rows(match["comment.outer"]) for match in found if "comment.outer" in match]
