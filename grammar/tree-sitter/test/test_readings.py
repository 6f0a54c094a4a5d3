"""The trees say what the parser of `storyrod` says: the same elements, facts and values at the same places."""

import json
import os

from framing import faults, fields, parse

# Which nodes a value of the parser may be.
NODES = {
    "Mark": {"mark"},
    "Length": {"length", "elevation"},
    "Load": {"load_value"},
    "Stress": {"stress"},
    "Area": {"area_value"},
    "Date": {"date"},
    "Text": {"text"},
    "Count": {"count", "number"},
    "Number": {"number"},
    "Percent": {"percent"},
    "Name": {"name", "grid_line"},
    "Word": {"choice", "words", "slug"},
    "GridRef": {"grid_ref"},
    "Point": {"point"},
    "Rect": {"rect"},
    "Line": {"line"},
    "Side": {"side"},
    "Dimensions": {"dimensions"},
    "Member": {"member"},
    "Bar": {"bar"},
    "FactName": {"fact_name"},
    "Comparison": {"comparison"},
}


def readings():
    with open(os.environ["FRAMING_READINGS"]) as lines:
        return [json.loads(line) for line in lines]


def span(node):
    return [node.start_byte, node.end_byte]


def fact_as_read(node, fact):
    """The fact as the parser would write it down, its values called as the parser calls them."""
    parts = fields(node)
    assert parts[0][0] in ("phrase", "case"), node
    if node.type == "claim":
        n_words = sum(name in ("phrase", "case") for name, _ in parts)
        words = [parts[0][1].start_byte, parts[n_words - 1][1].end_byte]
        links = [child for child in node.children if child.type == "link"]
        found = {"phrase": span(links[0]), "parts": [["fact", "FactName", words]]}
        parts = parts[n_words:]
    else:
        found = {"phrase": span(parts[0][1]), "parts": []}
        parts = parts[1:]
    for (label, value), read in zip(parts, fact["parts"][len(found["parts"]) :]):
        assert value.type in NODES[read[1]], (value, read)
        found["parts"].append([label, read[1], span(value)])
    assert len(parts) + (node.type == "claim") == len(fact["parts"]), node
    return {"is": node.type, "at": [node.start_byte, node.end_byte], **found}


def assert_as_read(reading):
    root = parse(reading["text"])
    assert not faults(root), faults(root)
    elements = [child for child in root.named_children if child.type != "comment"]
    assert [node.type for node in elements] == [read["element"] for read in reading["elements"]]
    for node, read in zip(elements, reading["elements"]):
        heading = {name: span(child) for name, child in fields(node)}
        if "title" in heading:
            quote = 3 if reading["text"].encode()[heading["title"][0]] > 0x7F else 1
            heading["title"] = [heading["title"][0] + quote, heading["title"][1] - quote]
        assert [heading.get(name) for name in ("keyword", "name", "title")] == [
            read[name] for name in ("keyword", "name", "title")
        ]
        facts = [child for child in node.named_children if child.type in ("fact", "claim")]
        assert len(facts) == len(read["facts"])
        for fact, fact_read in zip(facts, read["facts"]):
            assert fact_as_read(fact, fact_read) == fact_read


def test_the_trees_say_what_the_parser_reads():
    all_read = readings()
    assert len(all_read) > 5_000
    assert sum(len(element["facts"]) for reading in all_read for element in reading["elements"]) > 50_000
    wrong = []
    for reading in all_read:
        try:
            assert_as_read(reading)
        except AssertionError as error:
            wrong.append(f"{reading['text']}{error}")
    assert not wrong, f"{len(wrong)} texts:\n" + "\n".join(wrong[:40])
