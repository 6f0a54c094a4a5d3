/** What a person is told when there is no server to work with, and the ways out of it. */

import { commands, type Disposable, env, Uri, window, workspace } from "vscode";
import { OLDEST_VERSION } from "./executable";
import type { Server } from "./server";

const SETTINGS = "Open settings";
const HOW = "How to install";
const AGAIN = "Try again";

const SCHEME = "storyrod-help";
const PAGE = Uri.from({ scheme: SCHEME, path: "/Install Storyrod.md" });

let unanswered = 0;

/** Says it when the server can't start; while somebody types a path into the settings that would be every second. */
export function tellUnlessTold(server: Server, why: string): void {
  if (unanswered === 0) tellWhyNot(server, why);
}

/** Says it, with buttons; nothing waits for the answer. */
export function tellWhyNot(server: Server, why: string): void {
  const message = `Storyrod has no server: ${why}. Specs are coloured, but nothing is checked.`;
  unanswered += 1;
  void window.showErrorMessage(message, SETTINGS, HOW, AGAIN).then(async (choice) => {
    unanswered -= 1;
    if (choice === SETTINGS) await openSettings("storyrod.server");
    if (choice === HOW) await window.showTextDocument(await workspace.openTextDocument(PAGE));
    if (choice === AGAIN) await server.restart();
  });
}

/** The path is set where the server runs: on the other machine, when the editor is connected to one. */
async function openSettings(query: string): Promise<void> {
  if (env.remoteName === undefined) await commands.executeCommand("workbench.action.openSettings", query);
  else await commands.executeCommand("workbench.action.openRemoteSettings", { query });
}

export function registerHelp(): Disposable {
  return workspace.registerTextDocumentContentProvider(SCHEME, { provideTextDocumentContent: () => HELP });
}

const HELP = `# Install Storyrod

The program that checks the specs is apart from this extension.

1. Have a Rust toolchain: \`cargo --version\` answers.
2. In a checkout of Storyrod: \`cargo install --path .\`
3. \`storyrod --version\` says ${OLDEST_VERSION} or later.
4. In this editor, from the command palette: \`Storyrod: Restart Server\`

The program is looked for on PATH, then in the folder where cargo installs (\`~/.cargo/bin\`).
When it stands elsewhere, put its whole path into the setting \`storyrod.server.path\`.
`;
