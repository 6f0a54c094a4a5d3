/** The line in the status bar's language menu: which server runs, and how it stands. */

import { type Disposable, languages, LanguageStatusSeverity } from "vscode";
import { SELECTOR } from "./client";
import type { Server, State } from "./server";

export function showState(server: Server): Disposable {
  const item = languages.createLanguageStatusItem("storyrod", SELECTOR);
  item.name = "Storyrod";
  const show = (state: State): void => {
    item.busy = state.kind === "starting";
    item.severity = state.kind === "failed" ? LanguageStatusSeverity.Error : LanguageStatusSeverity.Information;
    item.text = state.kind === "running" ? `Storyrod ${state.version}` : "Storyrod";
    item.detail = detail(state);
    item.command =
      state.kind === "running" || state.kind === "starting"
        ? { command: "storyrod.showLog", title: "Show log" }
        : { command: "storyrod.restartServer", title: "Start server" };
  };
  show(server.state);
  server.onDidChange(show);
  return item;
}

function detail(state: State): string {
  switch (state.kind) {
    case "starting":
      return "server starts";
    case "running":
      return `server runs: ${state.path}`;
    case "stopped":
      return "server is stopped";
    case "failed":
      return `no server: ${state.why}`;
  }
}
