/** The sheets that a person can open. Each is one row here; everything else reads the table. */

import type { TextDocument } from "vscode";
import type { Argument } from "./argument";
import type { SheetDocuments } from "./documents";
import { twoFloors } from "./places";

export interface Sheet {
  /** The server's command; a lens calls it with its argument, a person without. */
  readonly command: string;
  /** The same of the element at the cursor. */
  readonly atCursor?: string;
  /** What a tab says before the element. */
  readonly name: string;
  /** What a person must choose first; nothing when they turned away. */
  readonly choose?: (document: TextDocument) => Promise<Partial<Argument> | undefined>;
  /** How the answer is shown. All are text so far; a drawing brings a way of its own. */
  readonly show: (sheet: Sheet, argument: Argument, documents: SheetDocuments) => Promise<void>;
}

const asText: Sheet["show"] = (sheet, argument, documents) => documents.open(sheet, argument);

export const SHEETS: readonly Sheet[] = [
  { command: "storyrod.takedown", atCursor: "storyrod.takedownAtCursor", name: "takedown", show: asText },
  { command: "storyrod.calc", atCursor: "storyrod.calcAtCursor", name: "calculation", show: asText },
  { command: "storyrod.rod", name: "rod list", show: asText },
  { command: "storyrod.steps", name: "steps", choose: twoFloors, show: asText },
];
