/** Sheets as read-only documents beside the spec; those in sight follow every change of it. */

import {
  type Disposable,
  EventEmitter,
  languages,
  type TabGroup,
  TabInputText,
  type TextDocument,
  type TextDocumentContentProvider,
  Uri,
  ViewColumn,
  window,
  workspace,
} from "vscode";
import { type Argument, argumentOf, titleOf } from "./argument";
import { LANGUAGE } from "./client";
import { NoServer, reason, type Server } from "./server";
import type { Sheet } from "./sheets";

const SCHEME = "storyrod-sheet";

/** How sheets look is set under this language: tables, without numbers beside them. */
const SHEET_LANGUAGE = "storyrod-sheet";

/** A sheet is read, not watched: it need not change with every key. */
const PAUSE_MS = 300;

export class SheetDocuments implements TextDocumentContentProvider, Disposable {
  private readonly changes = new EventEmitter<Uri>();
  readonly onDidChange = this.changes.event;
  /** Texts that came already for a document that is about to ask for its own. */
  private readonly texts = new Map<string, string>();
  /** Sheets out of sight that may have become old. */
  private readonly old = new Set<string>();
  private readonly listeners: Disposable[];
  private timer: NodeJS.Timeout | undefined;

  constructor(private readonly server: Server) {
    const specs = workspace.createFileSystemWatcher("**/{*.framing,storyrod.toml}");
    const changed = (): void => this.becomeOld();
    this.listeners = [
      specs,
      specs.onDidChange(changed),
      specs.onDidCreate(changed),
      specs.onDidDelete(changed),
      workspace.registerTextDocumentContentProvider(SCHEME, this),
      workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        if (document.languageId === LANGUAGE && contentChanges.length > 0) changed();
      }),
      window.onDidChangeVisibleTextEditors(() => this.refreshLater(0)),
      server.onDidChange(({ kind }) => {
        if (kind === "running") changed();
      }),
    ];
  }

  /** Opens a sheet, or shows it anew where it is open already. */
  async open(sheet: Sheet, argument: Argument): Promise<void> {
    const text = await this.ask(sheet.command, argument);
    const uri = addressOf(sheet, argument);
    this.texts.set(uri.toString(), text);
    if (isOpen(uri)) this.changes.fire(uri);
    const plain = await workspace.openTextDocument(uri);
    const document = await languages.setTextDocumentLanguage(plain, SHEET_LANGUAGE);
    // The reader goes on writing, with the sheet beside.
    await window.showTextDocument(document, { viewColumn: columnFor(uri), preserveFocus: true, preview: false });
  }

  async provideTextDocumentContent(uri: Uri): Promise<string> {
    const key = uri.toString();
    const text = this.texts.get(key);
    this.texts.delete(key);
    this.old.delete(key);
    if (text !== undefined) return text;
    const wanted = wantedBy(uri);
    if (wanted === undefined) return "this is no address of a sheet\n";
    try {
      return await this.ask(wanted.command, wanted.argument);
    } catch (fault) {
      // Figures of an older spec must not stay as if they held.
      const why = fault instanceof NoServer ? `no server: ${fault.message}` : reason(fault);
      return `this sheet can't be made now: ${why}\n`;
    }
  }

  dispose(): void {
    clearTimeout(this.timer);
    this.listeners.forEach((listener) => listener.dispose());
    this.changes.dispose();
  }

  /** The server knows the house of an open file only. */
  private async ask(command: string, argument: Argument): Promise<string> {
    const uri = Uri.parse(argument.uri, true);
    if (uri.scheme === "file") await workspace.openTextDocument(uri);
    return this.server.ask(command, argument);
  }

  private becomeOld(): void {
    for (const document of workspace.textDocuments.filter(isSheet)) this.old.add(document.uri.toString());
    this.refreshLater(PAUSE_MS);
  }

  private refreshLater(pause: number): void {
    if (this.old.size === 0) return;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => {
      const visible = window.visibleTextEditors.map(({ document }) => document).filter(isSheet);
      for (const { uri } of visible) {
        if (this.old.has(uri.toString())) this.changes.fire(uri);
      }
    }, pause);
  }
}

function isSheet(document: TextDocument): boolean {
  return document.uri.scheme === SCHEME;
}

/** The address says all there is to know of a sheet, so that the document can be made from it. */
function addressOf(sheet: Sheet, argument: Argument): Uri {
  const query = JSON.stringify([sheet.command, argument]);
  return Uri.from({ scheme: SCHEME, path: `/${titleOf(sheet.name, argument)}`, query });
}

function wantedBy(uri: Uri): { command: string; argument: Argument } | undefined {
  const [command, given] = JSON.parse(uri.query) as [string, unknown];
  const argument = argumentOf(given);
  return argument && { command, argument };
}

function isOpen(uri: Uri): boolean {
  return workspace.textDocuments.some((document) => document.uri.toString() === uri.toString());
}

/** Where the sheet stands already, else where other sheets stand, else beside the spec. */
function columnFor(uri: Uri): ViewColumn {
  const holds = (group: TabGroup, fits: (address: Uri) => boolean): boolean =>
    group.tabs.some(({ input }) => input instanceof TabInputText && fits(input.uri));
  const groups = window.tabGroups.all;
  const same = groups.find((group) => holds(group, (address) => address.toString() === uri.toString()));
  const like = groups.find((group) => holds(group, (address) => address.scheme === SCHEME));
  return (same ?? like)?.viewColumn ?? ViewColumn.Beside;
}
