/** Elements of a spec, as the server's outline names them: the one at the cursor, the floors. */

import {
  commands,
  type DocumentSymbol,
  type Position,
  type QuickPickItem,
  type SymbolInformation,
  type TextDocument,
  window,
} from "vscode";

/** The name of the element in which the cursor stands. */
export async function elementAt(document: TextDocument, position: Position): Promise<string | undefined> {
  const symbols = await symbolsOf(document);
  const around = symbols.filter((symbol) => symbol.range.contains(position));
  const names = around.map((symbol) => nameOf(symbol.name, document.getText(symbol.selectionRange)));
  return names.find((name) => name !== undefined);
}

/** Two floors that a person picks, the upper one first. */
export async function twoFloors(document: TextDocument): Promise<{ upper: string; lower: string } | undefined> {
  const floors = await floorsOf(document);
  if (floors.length < 2) {
    void window.showInformationMessage("Storyrod: a step lies between two floors, and this spec has fewer.");
    return undefined;
  }
  const upper = await window.showQuickPick(floors, { title: "Divide a step", placeHolder: "from the upper floor" });
  if (upper === undefined) return undefined;
  const others = floors.filter((floor) => floor !== upper);
  const lower = await window.showQuickPick(others, { title: "Divide a step", placeHolder: "down to the lower floor" });
  return lower && { upper: upper.label, lower: lower.label };
}

async function floorsOf(document: TextDocument): Promise<QuickPickItem[]> {
  const own = (await symbolsOf(document)).flatMap(({ name, detail }) => floorItem(name, detail));
  if (own.length > 1) return own;
  // The floors of a house may stand in a file that this one includes, or that includes it.
  const found = await commands.executeCommand<SymbolInformation[] | undefined>(
    "vscode.executeWorkspaceSymbolProvider",
    "floor",
  );
  return (found ?? []).flatMap(({ name, containerName }) => floorItem(name, containerName));
}

function floorItem(name: string, detail: string): QuickPickItem[] {
  const [, floor, title] = /^floor (\S+)(?: "(.*)")?$/.exec(name) ?? [];
  return floor === undefined ? [] : [{ label: floor, description: title ?? "", detail }];
}

/** Every symbol of a file, what stands in another one behind it. */
async function symbolsOf(document: TextDocument): Promise<DocumentSymbol[]> {
  const symbols = await commands.executeCommand<DocumentSymbol[] | undefined>(
    "vscode.executeDocumentSymbolProvider",
    document.uri,
  );
  const all = symbols ?? [];
  // The list grows while it is gone through.
  for (const symbol of all) all.push(...symbol.children);
  return all;
}

/** `C1` of `column C1 "Center column"`; a section, an include and an element with a title only have no name. */
function nameOf(symbol: string, selected: string): string | undefined {
  const isName = /^\S+$/.test(selected) && !selected.startsWith('"') && selected !== symbol;
  return isName && ` ${symbol} `.includes(` ${selected} `) ? selected : undefined;
}
