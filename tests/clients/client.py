"""An editor as the suite needs it: keeps what the server says, and fails on anything that the protocol does not allow."""
import asyncio
import os
import pathlib

import attrs
from lsprotocol import types as t
from pygls.protocol import default_converter
from pytest_lsp import LanguageClient
from pytest_lsp.client import DEFAULT_CLIENT_FEATURES, register_lsp_features
from pytest_lsp.protocol import LanguageClientProtocol

from strict import faults

# How long anything may take before a case fails. Nothing comes near it.
LONG = 60

REFRESHES = [t.WORKSPACE_DIAGNOSTIC_REFRESH, t.WORKSPACE_CODE_LENS_REFRESH, t.WORKSPACE_INLAY_HINT_REFRESH,
             t.WORKSPACE_SEMANTIC_TOKENS_REFRESH]


class StrictProtocol(LanguageClientProtocol):
    """Looks at every message before the library reads it."""

    def structure_message(self, data):
        if isinstance(data, dict) and "jsonrpc" in data:
            self._server.unheard += faults_of_message(data, self._result_types.get(data.get("id")))
        return super().structure_message(data)

    def handle_message(self, message):
        super().handle_message(message)
        self._server.news.set()

    def get_message_type(self, method):
        known = super().get_message_type(method)
        assert known is not None, f"{method} is no method of the protocol"
        return known


def faults_of_message(data, response):
    method = data.get("method")
    if "error" in data:
        # An answer has a result or an error, and an error says what it is about.
        return faults(data, t.ResponseErrorMessage, "error")
    if method is None:
        missing = [] if "result" in data else [f"answer {data['id']}: neither result nor error"]
        return missing + faults(data, response, response.__name__)
    return faults(data, t.METHOD_TO_TYPES[method][0], method)


class Client(LanguageClient):
    """One session with the server."""

    def __init__(self):
        super().__init__(protocol_cls=StrictProtocol, converter_factory=default_converter)
        self.unheard = []
        self.news = asyncio.Event()
        self.offered = None
        self.published = {}
        self.registered = {}
        self.refreshed = set()
        # The library marks the functions that it is given, so they can't be methods.
        ours = {
            t.CLIENT_REGISTER_CAPABILITY: lambda params: self.register(params),
            t.TEXT_DOCUMENT_PUBLISH_DIAGNOSTICS: lambda params: self.publish(params),
        }
        for what in REFRESHES:
            ours[what] = lambda params, what=what: self.refreshed.add(what)
        register_lsp_features(self, DEFAULT_CLIENT_FEATURES | ours)

    def register(self, params: t.RegistrationParams):
        for one in params.registrations:
            self.registered[one.method] = one.register_options

    def publish(self, params: t.PublishDiagnosticsParams):
        self.published[params.uri] = params

    async def begin(self, capabilities, folders=(), options=None, arguments=()):
        """Starts a server and introduces itself."""
        await self.start_io(os.environ["STORYROD"], "server", *arguments)
        named = [t.WorkspaceFolder(uri=folder.as_uri(), name=folder.name) for folder in folders]
        answer = await self.initialize_session(t.InitializeParams(
            capabilities=capabilities, workspace_folders=named, initialization_options=options))
        self.offered = answer.capabilities

    async def end(self):
        """Ends the session in good order."""
        await asyncio.wait_for(self.shutdown_session(), LONG)
        assert self._server.returncode == 0
        await self.stop()
        assert not self.unheard, "\n".join(self.unheard)

    async def until(self, condition):
        """Waits until the condition holds, looking again whenever the server has said something."""
        async with asyncio.timeout(LONG):
            while not (found := condition()):
                self.news.clear()
                await self.news.wait()
        return found

    def open(self, uri, text):
        """Opens a document."""
        document = Document(self, uri, text)
        self.text_document_did_open(t.DidOpenTextDocumentParams(
            t.TextDocumentItem(uri=uri, language_id="framing", version=document.version, text=text)))
        return document

    def open_file(self, path):
        """Opens a file as it stands on disk."""
        return self.open(path.as_uri(), path.read_text())

    async def findings(self, uri, version=None):
        """What is pushed for a version of a document; `None` for a file that is not open."""
        def pushed():
            said = self.published.get(uri)
            return said if said and said.version == version else None
        return (await self.until(pushed)).diagnostics

    def changed_on_disk(self, *paths):
        """Tells that files were written."""
        changes = [t.FileEvent(uri=path.as_uri(), type=t.FileChangeType.Changed) for path in paths]
        self.workspace_did_change_watched_files(t.DidChangeWatchedFilesParams(changes))


@attrs.define
class Document:
    """An open document. Places are written as a piece of its text with `$0` where the cursor stands."""

    client: Client
    uri: str
    text: str
    version: int = 1

    @property
    def id(self):
        return t.TextDocumentIdentifier(self.uri)

    def at(self, marked):
        """Document and position, as most questions want them."""
        return {"text_document": self.id, "position": self.position(marked)}

    def position(self, marked):
        before, _, behind = marked.partition("$0")
        assert self.text.count(before + behind) == 1, f"{marked!r} stands {self.text.count(before + behind)} times"
        return position_of(self.text, self.text.index(before + behind) + len(before))

    def range(self, piece):
        """The range of a piece of the text."""
        return t.Range(self.position("$0" + piece), self.position(piece + "$0"))

    @property
    def whole(self):
        return t.Range(t.Position(0, 0), position_of(self.text, len(self.text)))

    def covered(self, range):
        """The text in a range."""
        return self.text[offset_of(self.text, range.start):offset_of(self.text, range.end)]

    def line(self, range):
        """The line in which a range begins, without indent."""
        return self.text.splitlines()[range.start.line].strip()

    def change(self, *changes):
        """Types: each change is a piece of the text and what it becomes."""
        sent = []
        for old, new in changes:
            sent.append(t.TextDocumentContentChangePartial(range=self.range(old), text=new))
            self.text = self.text.replace(old, new)
        self.version += 1
        self.client.text_document_did_change(t.DidChangeTextDocumentParams(
            t.VersionedTextDocumentIdentifier(version=self.version, uri=self.uri), sent))

    def become(self, text):
        """Replaces the whole text."""
        self.text = text
        self.version += 1
        self.client.text_document_did_change(t.DidChangeTextDocumentParams(
            t.VersionedTextDocumentIdentifier(version=self.version, uri=self.uri),
            [t.TextDocumentContentChangeWholeDocument(text)]))

    def close(self):
        """Closes the document."""
        self.client.text_document_did_close(t.DidCloseTextDocumentParams(self.id))

    async def findings(self):
        """What is pushed for the text of now."""
        return await self.client.findings(self.uri, self.version)


def position_of(text, at):
    lines = text[:at].split("\n")
    return t.Position(len(lines) - 1, len(lines[-1].encode("utf-16-le")) // 2)


def offset_of(text, position):
    lines = text.split("\n")
    line = lines[position.line].encode("utf-16-le")
    assert position.character * 2 <= len(line), f"{position} is outside the text"
    before = line[:position.character * 2].decode("utf-16-le")
    return sum(len(line) + 1 for line in lines[:position.line]) + len(before)


def edited(text, edits):
    """The text with edits made, the last one first."""
    for edit in sorted(edits, key=lambda edit: (edit.range.start.line, edit.range.start.character), reverse=True):
        start, end = offset_of(text, edit.range.start), offset_of(text, edit.range.end)
        text = text[:start] + edit.new_text + text[end:]
    return text


def edits_by_uri(edit):
    """The edits of a workspace edit, file by file, however they are written."""
    if edit.document_changes is None:
        return edit.changes
    return {change.text_document.uri: change.edits for change in edit.document_changes}


def path_of(uri):
    """The file of an address."""
    assert uri.startswith("file://"), uri
    return pathlib.Path(uri.removeprefix("file://"))
