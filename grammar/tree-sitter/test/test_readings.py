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


def readings(*, damaged):
    with open(os.environ["FRAMING_READINGS"]) as lines:
        every = [json.loads(line) for line in lines]
    return [reading for reading in every if reading.get("damaged", False) == damaged]


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


def assert_holds_what_is_read(reading):
    facts = {}

    def walk(node):
        if node.type in ("fact", "claim"):
            facts[node.start_byte] = node
        for child in node.named_children:
            walk(child)

    walk(parse(reading["text"]))
    for element in reading["elements"]:
        for fact in element["facts"]:
            assert fact_as_read(facts[fact["at"][0]], fact) == fact


def wrong_of(readings, check):
    wrong = []
    for reading in readings:
        try:
            check(reading)
        except (AssertionError, KeyError) as error:
            wrong.append(f"{reading['text']}{type(error).__name__} {error}")
    return f"{len(wrong)} texts:\n" + "\n".join(wrong[:40]) if wrong else None


def n_facts(readings):
    return sum(len(element["facts"]) for reading in readings for element in reading["elements"])


def test_the_trees_say_what_the_parser_reads():
    all_read = readings(damaged=False)
    assert len(all_read) > 5_000 and n_facts(all_read) > 50_000
    assert not wrong_of(all_read, assert_as_read)


def test_what_can_be_read_in_a_damaged_text_is_in_its_tree():
    all_read = readings(damaged=True)
    assert len(all_read) >= 400 and n_facts(all_read) > 20_000
    assert not wrong_of(all_read, assert_holds_what_is_read)
