/** What a person can call: the sheets, and the few things that concern the server. */

import { commands, type Disposable, type TextEditor, window } from "vscode";
import { type Argument, argumentOf } from "./argument";
import { LANGUAGE } from "./client";
import type { SheetDocuments } from "./documents";
import { elementAt } from "./places";
import { NoServer, reason, type Server } from "./server";
import { type Sheet, SHEETS } from "./sheets";
import { tellWhyNot } from "./trouble";

export function registerCommands(server: Server, documents: SheetDocuments): Disposable[] {
  const show = (sheet: Sheet, of: (given: unknown) => Promise<Argument | undefined>) =>
    async (given: unknown): Promise<void> => {
      try {
        const argument = await of(given);
        if (argument !== undefined) await sheet.show(sheet, argument, documents);
      } catch (fault) {
        if (fault instanceof NoServer) tellWhyNot(server, fault.message);
        else void window.showWarningMessage(`Storyrod: ${reason(fault)}`);
      }
    };
  const sheets = SHEETS.flatMap((sheet) => {
    const whole = commands.registerCommand(sheet.command, show(sheet, async (given) => argumentOf(given) ?? chosen(sheet)));
    return sheet.atCursor === undefined ? [whole] : [whole, commands.registerCommand(sheet.atCursor, show(sheet, atCursor))];
  });
  return [
    ...sheets,
    commands.registerCommand("storyrod.restartServer", () => server.restart()),
    commands.registerCommand("storyrod.showLog", () => server.log.show()),
  ];
}

async function chosen(sheet: Sheet): Promise<Argument | undefined> {
  const { document } = spec();
  const choice = sheet.choose === undefined ? {} : await sheet.choose(document);
  return choice && { uri: document.uri.toString(), ...choice };
}

async function atCursor(): Promise<Argument> {
  const { document, selection } = spec();
  const element = await elementAt(document, selection.active);
  if (element === undefined) throw new Error("the cursor stands in no element that has a name");
  return { uri: document.uri.toString(), element };
}

/** The spec that a person looks at. */
function spec(): TextEditor {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== LANGUAGE) throw new Error("open a spec first: a file that ends in .framing");
  return editor;
}
