/** Puts the parts together when a spec is opened, and ends them. */

import type { ExtensionContext } from "vscode";
import { registerCommands } from "./commands";
import { SheetDocuments } from "./documents";
import { Server } from "./server";
import { showState } from "./status";
import { registerTasks } from "./tasks";
import { registerHelp } from "./trouble";

let server: Server | undefined;

export function activate(context: ExtensionContext): void {
  server = new Server();
  const documents = new SheetDocuments(server);
  context.subscriptions.push(
    server,
    documents,
    showState(server),
    registerTasks(),
    registerHelp(),
    ...registerCommands(server, documents),
  );
  void server.start();
}

export async function deactivate(): Promise<void> {
  await server?.stop();
}
