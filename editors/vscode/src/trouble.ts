/** What a person is told when there is no server to work with, and the ways out of it. */

import { commands, window, workspace } from "vscode";
import { OLDEST_VERSION } from "./executable";
import type { Server } from "./server";

const SETTINGS = "Open settings";
const HOW = "How to install";
const AGAIN = "Try again";

/** Says it once, with buttons; nothing waits for the answer. */
export function tellWhyNot(server: Server, why: string): void {
  const message = `Storyrod has no server: ${why}. Specs are coloured, but nothing is checked.`;
  void window.showErrorMessage(message, SETTINGS, HOW, AGAIN).then(async (choice) => {
    if (choice === SETTINGS) await commands.executeCommand("workbench.action.openSettings", "storyrod.server");
    if (choice === HOW) await showHowToInstall(why);
    if (choice === AGAIN) await server.restart();
  });
}

async function showHowToInstall(why: string): Promise<void> {
  await window.showTextDocument(await workspace.openTextDocument({ language: "markdown", content: howToInstall(why) }));
}

function howToInstall(why: string): string {
  return `# Install Storyrod

What is missing: ${why}.

1. Have a Rust toolchain (\`cargo --version\` answers).
2. In a checkout of Storyrod: \`cargo install --path .\`
3. \`storyrod --version\` says ${OLDEST_VERSION} or later.
4. Here: \`Storyrod: Restart Server\` from the command palette.

The program is looked for on PATH, then in the folder where cargo installs (\`~/.cargo/bin\`).
When it stands elsewhere, put its whole path into the setting \`storyrod.server.path\`.
`;
}
