"""Holds what Kate's engine makes of specs against what the format's own reader says of every word.

The engine prints each style in a colour of its own; the server tells each word's kind. Both must agree.
"""

import collections
import html
import json
import os
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree as tree

DEFINITION = pathlib.Path(__file__).parent.parent / "framing.xml"

# What the reader calls a word, and what the engine may call it. A word of the format that stands in two lists
# (`over` joins and is chosen) has one style, so those are not told apart here.
WORDS = {"Joining", "Choice", "Named fact"}
STYLES = {
    "keyword": {"Element", "Include", "Joining"},
    "property": {"Fact"},
    "number": {"Number"},
    "type": {"Unit"},
    "string": {"Text"},
    "comment": {"Comment", "Alert"},
    "operator": WORDS,
    "enumMember": WORDS,
    "variable": {"Name", "Normal"},
    "namespace": {"Name", "Normal"},
    "class": {"Name", "Normal"},
    "parameter": {"Normal", "Number"},
    "decorator": {"Normal"},
}

RULE = {"attribute", "context", "lookAhead", "firstNonSpace", "column"}
# The elements of a definition and their attributes, of those that the published schema (`language.xsd`) has.
# The engine passes over any other without a word; what refers to nothing it tells.
SCHEMA = {
    "language": {"name", "section", "extensions", "version", "kateversion", "indenter", "license"},
    "highlighting": set(), "contexts": set(), "itemDatas": set(), "general": set(), "emptyLines": set(),
    "comments": set(), "item": set(), "DetectSpaces": RULE, "IncludeRules": {"context"}, "list": {"name"},
    "context": {"name", "attribute", "lineEndContext", "fallthroughContext"},
    "RegExpr": RULE | {"String"}, "keyword": RULE | {"String", "weakDeliminator"},
    "itemData": {"name", "defStyleNum", "spellChecking"}, "folding": {"indentationsensitive"},
    "emptyLine": {"regexpr"}, "comment": {"name", "start", "position"}, "keywords": {"casesensitive"},
}


def main(engine, server, home, specs):
    for item in tree.parse(DEFINITION).iter():
        if strange := set(item.attrib) - SCHEMA[item.tag]:
            sys.exit(f"{DEFINITION}: {item.tag} has no {strange}")
    styles = set_up(home)
    words = collections.Counter()
    seen = collections.defaultdict(set)
    faults = []
    with Server(server) as running:
        for spec in specs:
            text = spec.read_text(encoding="utf-8")
            shown = styles_of(engine, styles, spec)
            if "".join(character for character, _ in shown) != text:
                sys.exit(f"{spec}: the engine printed another text")
            read = [False] * len(text)
            for start, end, kind in running.words(text):
                piece = text[start:end]
                found = {style for character, style in shown[start:end] if not character.isspace()}
                words[kind] += 1
                seen[kind] |= found
                if not is_right(text, start, piece, kind, found):
                    line = text.count("\n", 0, start) + 1
                    faults.append(f"{spec}:{line}: {kind} `{piece}` is shown as {', '.join(sorted(found))}")
                read[start:end] = [True] * len(piece)
            faults += leftovers(spec, text, shown, read)
            faults += marks(spec, text, shown)
    print(f"{len(specs)} specs: " + ", ".join(f"{count} {kind}" for kind, count in sorted(words.items())))
    never = set(styles.values()) - {"Normal"} - set().union(*seen.values())
    if never:
        faults.append(f"never seen: {', '.join(sorted(never))}")
    if faults:
        sys.exit("\n".join(faults[:40] + [f"{len(faults)} faults"]))


def is_right(text, start, piece, kind, found):
    line = text[text.rfind("\n", 0, start) + 1 : (text + "\n").index("\n", start)]
    is_first = line.split()[0] in piece.split()
    if kind == "string" and piece[0] not in '"“”':
        return True  # words of the author's own without quotes: `fir plank`
    if kind == "enumMember" and line.split()[0] in ("before", "fastened"):
        return True  # the same, told as chosen
    if kind == "property" and not is_first:
        # `limit riser-difference` names a limit of its own.
        return found <= ({"Normal"} if line.split()[0] in ("profile", "limit") else {"Named fact"})
    if kind in ("variable", "namespace") and line.split().count(piece) > 1:
        return True  # a name that is a word of its line as well: `over basement basement`
    return found <= STYLES[kind]


def leftovers(spec, text, shown, read):
    """What is coloured and is no word of that kind to the reader."""
    quiet = {"Normal", "Joining", "Choice"}
    for at, (character, style) in enumerate(shown):
        if style not in quiet and not read[at] and not character.isspace():
            line = text.count("\n", 0, at) + 1
            yield f"{spec}:{line}: `{character}` is shown as {style} and is none"


def marks(spec, text, shown):
    """Lines of carets: how the line above them must be shown."""
    above = start = 0
    for number, line in enumerate(text.splitlines(keepends=True), 1):
        mark = re.fullmatch(r"--( *)(\^+) (.+)\n", line)
        if mark:
            at = above + 2 + len(mark[1])
            found = {style for _, style in shown[at : at + len(mark[2])]}
            if found != {mark[3]}:
                yield f"{spec}:{number}: {mark[3]} expected, found {', '.join(sorted(found))}"
        else:
            above = start
        start += len(line)


def set_up(home):
    """A home for the engine: the definition, and a theme that gives each style its own colour. Colour to style."""
    data = home / "org.kde.syntax-highlighting"
    for folder in ("syntax", "themes"):
        (data / folder).mkdir(parents=True, exist_ok=True)
    (data / "syntax" / "framing.xml").write_bytes(DEFINITION.read_bytes())
    names = [item.get("name") for item in tree.parse(DEFINITION).iter("itemData")]
    colours = {f"#0000{at:02x}": name for at, name in enumerate(names, 1)}
    theme = {
        "metadata": {"name": "Told apart", "revision": 1},
        "text-styles": {"Normal": {"text-color": "#ffffff"}},
        "custom-styles": {"Framing": {name: {"text-color": colour} for colour, name in colours.items()}},
        "editor-colors": {},
    }
    (data / "themes" / "told-apart.theme").write_text(json.dumps(theme))
    os.environ["XDG_DATA_HOME"] = str(home)
    return colours


def styles_of(engine, styles, spec):
    """Every character of a spec with its style."""
    told = subprocess.run(
        [engine, "--syntax", "Framing", "--theme", "Told apart", "--output-format", "html", spec],
        capture_output=True, text=True, check=True, timeout=60,
        env={**os.environ, "QT_LOGGING_RULES": "kf.syntaxhighlighting*.warning=true"},
    )
    if told.stderr.strip():
        sys.exit(f"the engine complains: {told.stderr.strip()}")
    page = told.stdout
    body = page[page.index("<pre>\n") + 6 : page.rindex("</pre>")]
    shown = []
    for colour, inside, outside in re.findall(r'<span style="color:(#\w+);?[^"]*">(.*?)</span>|([^<]+)', body, re.S):
        style = styles.get(colour, "Alert") if colour else "Normal"
        shown += [(character, style) for character in html.unescape(inside or outside)]
    return shown


class Server:
    """`storyrod server`, asked for the words of a text."""

    def __init__(self, binary):
        pipe = subprocess.PIPE
        self.process = subprocess.Popen([binary, "server"], stdin=pipe, stdout=pipe, stderr=subprocess.DEVNULL)
        abilities = {"general": {"positionEncodings": ["utf-32"]}}
        answer = self.ask("initialize", processId=os.getpid(), rootUri=None, capabilities=abilities)
        self.kinds = answer["capabilities"]["semanticTokensProvider"]["legend"]["tokenTypes"]
        assert answer["capabilities"]["positionEncoding"] == "utf-32"
        self.tell("initialized")
        self.count = 0

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.ask("shutdown")
        self.tell("exit")
        self.process.wait(timeout=20)

    def words(self, text):
        """Start, end and kind of every word."""
        self.count += 1
        uri = f"untitled:spec-{self.count}.framing"
        document = {"uri": uri, "languageId": "framing", "version": 1, "text": text}
        self.tell("textDocument/didOpen", textDocument=document)
        data = self.ask("textDocument/semanticTokens/full", textDocument={"uri": uri})["data"]
        starts = [0] + [match.end() for match in re.finditer("\n", text)]
        line = column = 0
        for down, along, length, kind, _ in zip(*[iter(data)] * 5):
            line, column = line + down, along if down else column + along
            yield starts[line] + column, starts[line] + column + length, self.kinds[kind]
        self.tell("textDocument/didClose", textDocument={"uri": uri})

    def ask(self, method, **params):
        self.send({"id": 1, "method": method, "params": params or None})
        while True:
            message = self.receive()
            if "method" in message and "id" in message:
                self.send({"id": message["id"], "result": None})
            elif message.get("id") == 1:
                if "error" in message:
                    sys.exit(f"the server refuses {method}: {message['error']}")
                return message["result"]

    def tell(self, method, **params):
        self.send({"method": method, "params": params})

    def send(self, message):
        message = {name: value for name, value in message.items() if value is not None or name == "result"}
        body = json.dumps({"jsonrpc": "2.0", **message}).encode()
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n" % len(body) + body)
        self.process.stdin.flush()

    def receive(self):
        length = 0
        while (line := self.process.stdout.readline().strip()):
            name, value = line.split(b":")
            if name.lower() == b"content-length":
                length = int(value)
        if not length:
            sys.exit("the server has gone")
        return json.loads(self.process.stdout.read(length))


if __name__ == "__main__":
    engine, server, home, *specs = sys.argv[1:]
    main(engine, server, pathlib.Path(home), [pathlib.Path(spec) for spec in specs])
