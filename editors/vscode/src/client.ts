/** The language client: what it is told of us, and where it must not act by itself. */

import type { OutputChannel } from "vscode";
import {
  type DynamicFeature,
  ExecuteCommandRequest,
  LanguageClient,
  type LanguageClientOptions,
  type StaticFeature,
} from "vscode-languageclient/node";
import { preferences, SECTION, serverArguments } from "./settings";

export const LANGUAGE = "framing";

/** The documents that are ours. */
export const SELECTOR = [
  { scheme: "file", language: LANGUAGE },
  { scheme: "untitled", language: LANGUAGE },
];

export class Client extends LanguageClient {
  constructor(program: string, log: OutputChannel) {
    super(SECTION, "Storyrod", { command: program, args: serverArguments() }, options(log));
  }

  /** Leaves the server's commands to us: a person can call them before the server runs, and after it broke off. */
  override registerFeature(feature: StaticFeature | DynamicFeature<unknown>): void {
    const takes = "registrationType" in feature ? feature.registrationType.method : undefined;
    if (takes !== ExecuteCommandRequest.method) super.registerFeature(feature);
  }

  /** Writes to the log only: whoever started the client says what went wrong, with a way out. */
  override error(message: string, data?: unknown, showNotification?: boolean | "force"): void {
    super.error(message, data, showNotification === "force" ? false : showNotification);
  }
}

function options(log: OutputChannel): LanguageClientOptions {
  return {
    documentSelector: SELECTOR,
    outputChannel: log,
    initializationOptions: preferences(),
    middleware: {
      workspace: {
        configuration: async (params, token, next) => {
          const answers = await next(params, token);
          if (!Array.isArray(answers)) return answers;
          return answers.map((answer, at) => (params.items[at]?.section === SECTION ? preferences() : answer));
        },
      },
    },
  };
}
