"""A line that does not fit costs that line: what stands on the others stays as it was."""

import time

import pytest
from framing import PARSER, SAMPLES, parse

# What is left of a line half-way through, and what a slip adds to it.
SLIPS = (" ;", ' "open', " 2x", " of", " --", " 1/")
OPENINGS = ("be", "beam", "  be", '  "open', "(", "  load", "4x4")


def parts(root, without=()):
    """The headings and facts of the elements that they are in, but for those in these rows."""
    return [
        (element.type, part.start_point, part.end_point, str(part))
        for element in root.named_children
        if element.type not in ("comment", "ERROR")
        for part in element.children
        if part.type not in ("comment", "ERROR") and part.start_point.row not in without
    ]


def damages(line):
    words = line.split(" ")
    yield line[:-1]
    yield from (" ".join(words[:n]) for n in range(1, len(words)) if words[n - 1])
    yield from (line + slip for slip in SLIPS)
    yield line.replace(line.lstrip().split(" ")[0], "wobble", 1)


def whole_samples():
    """Each sample's lines, and where its elements and comments begin."""
    for sample in SAMPLES:
        text = sample.read_text()
        yield text.split("\n"), parse(text)


def assert_costs_only(row, lines, root, damaged, lost):
    text = "\n".join([*lines[:row], damaged, *lines[row + 1 :]])
    assert parts(parse(text), lost) == parts(root, lost), f"{row + 1}: {damaged!r}"


def some_of(damages, row, lines):
    """All of them in a short text, one for each line in a long one."""
    every = list(damages)
    return every if len(lines) < 100 else [every[row % len(every)]]


def test_a_damaged_fact_costs_its_line():
    n_damages = 0
    for lines, root in whole_samples():
        for row, line in enumerate(lines):
            if line.startswith(" "):
                for damaged in some_of(damages(line.split("  --")[0].rstrip()), row, lines):
                    assert_costs_only(row, lines, root, damaged, {row})
                    n_damages += 1
    assert n_damages > 1_500


def test_a_damaged_heading_costs_its_line_or_without_its_keyword_the_element():
    n_damages = 0
    for lines, root in whole_samples():
        nodes = root.named_children
        for node, behind in zip(nodes, [*nodes[1:], root]):
            if node.type == "comment":
                continue
            row = node.start_point.row
            end = behind.start_point.row if behind is not root else len(lines)
            keyword = node.child_by_field_name("keyword").text.decode()
            for damaged in some_of(damages(lines[row]), row, lines):
                is_whole = damaged.startswith(f"{keyword} ") or damaged == keyword
                lost = {row} if is_whole else set(range(row, end))
                assert_costs_only(row, lines, root, damaged, lost)
                n_damages += 1
    assert n_damages > 200


def test_a_line_begun_between_elements_costs_that_line():
    n_damages = 0
    for lines, root in whole_samples():
        for row in range(1, len(lines) - 1):
            if not lines[row]:
                for begun in some_of(OPENINGS, row, lines):
                    assert_costs_only(row, lines, root, begun, {row})
                    n_damages += 1
    assert n_damages > 200


def test_several_damaged_lines_cost_those_lines():
    lines = SAMPLES[1].read_text().split("\n")
    broken = {row for row, line in enumerate(lines) if line.startswith(" ") and row % 3}
    text = "\n".join(line[: len(line) * 2 // 3] + " ?" if row in broken else line for row, line in enumerate(lines))
    assert parts(parse(text), broken) == parts(parse("\n".join(lines)), broken)


def test_a_line_typed_anew_gives_the_tree_of_the_whole_text():
    text = SAMPLES[1].read_text().encode()
    whole = str(parse(text))
    lines = text.split(b"\n")
    start = 0
    for row, line in enumerate(lines):
        end = start + len(line)
        tree = PARSER.parse(text)
        now = text[:start] + text[end:]
        tree.edit(start, end, start, (row, 0), (row, len(line)), (row, 0))
        tree = PARSER.parse(now, tree)
        for at in range(len(line)):
            place = start + at
            now = now[:place] + line[at : at + 1] + now[place:]
            tree.edit(place, place, place + 1, (row, at), (row, at), (row, at + 1))
            tree = PARSER.parse(now, tree)
        assert now == text and str(tree.root_node) == whole, line
        start = end + 1


@pytest.mark.parametrize("text", [
    "beam B1\n" + "-- note\n" * 40_000 + "  size 2x10\n",
    "beam B1\n" + "  ??? and more\n" * 4_000,
    "beam B1\n  ???\n  " + "? x 12 " * 200_000 + "\n  size 2x10\n",
    'intent "I"\n  keep ' + "1\" plus " * 40_000 + '1" = 2"\n',
    'beam "' * 40_000,
    "9" * 400_000,
], ids=["comments", "broken lines", "a long broken line", "a long sum", "quotes", "figures"])  # fmt: skip
def test_no_text_takes_long(text):
    begun = time.monotonic()
    assert parse(text).end_byte == len(text)
    assert time.monotonic() - begun < 10
