/** What a person has set, as the extension and the server need it. */

import { homedir } from "node:os";
import { workspace } from "vscode";
import type { Surroundings } from "./executable";

export const SECTION = "storyrod";

/** What the server takes: every member that `package.json` offers, but those that are the extension's own. */
export function preferences(): Record<string, unknown> {
  const { codeLens, inlayHints, wholeWorkspace, rulesAddress } = workspace.getConfiguration().get(SECTION, {}) as Record<string, unknown>;
  // The extension opens sheets itself, where they stay up to date; a hover here shows findings in a block of its own.
  return { codeLens, inlayHints, wholeWorkspace, rulesAddress, opensSheets: false, hoversTellFindings: false };
}

export function surroundings(): Surroundings {
  return {
    path: workspace.getConfiguration(SECTION).get<string>("server.path", "").trim(),
    home: homedir(),
    environment: process.env,
    platform: process.platform,
  };
}

/** The arguments that start the server. */
export function serverArguments(): string[] {
  const log = workspace.getConfiguration(SECTION).get<string>("server.log", "").trim();
  return log === "" ? ["server"] : ["server", "--log", log.replace(/^~(?=[/\\])/, homedir())];
}
