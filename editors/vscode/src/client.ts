/** The language client: what it is told of us, and where it must not act by itself. */

import type { OutputChannel } from "vscode";
import {
  CloseAction,
  type DynamicFeature,
  ErrorAction,
  type ErrorHandler,
  ExecuteCommandRequest,
  LanguageClient,
  type LanguageClientOptions,
  RevealOutputChannelOn,
  type StaticFeature,
} from "vscode-languageclient/node";
import { preferences, SECTION, serverArguments } from "./settings";

export const LANGUAGE = "framing";

/** The documents that are ours. */
export const SELECTOR = [
  { scheme: "file", language: LANGUAGE },
  { scheme: "untitled", language: LANGUAGE },
];

/** A server that breaks off more often than that within the time is not started again. */
const MOST_BREAKS = 4;
const WITHIN_MS = 3 * 60_000;

/** Whoever started the client. */
export interface Starter {
  readonly log: OutputChannel;
  /** True once a start was a success; before that the starter sees for himself what went wrong. */
  hasStarted(): boolean;
  /** The server broke off too often. */
  gaveUp(): void;
}

export class Client extends LanguageClient {
  constructor(program: string, starter: Starter) {
    super(SECTION, "Storyrod", { command: program, args: serverArguments() }, options(starter));
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

function options(starter: Starter): LanguageClientOptions {
  return {
    documentSelector: SELECTOR,
    outputChannel: starter.log,
    // A question that failed stands in the log; it is no reason to stop whoever types.
    revealOutputChannelOn: RevealOutputChannelOn.Never,
    initializationOptions: preferences(),
    errorHandler: errorHandler(starter),
    // No second try at once; whoever started the client says why.
    initializationFailedHandler: () => false,
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

function errorHandler(starter: Starter): ErrorHandler {
  let breaks: number[] = [];
  return {
    error: () => ({ action: ErrorAction.Continue, handled: true }),
    closed: () => {
      const now = Date.now();
      breaks = [...breaks.filter((one) => now - one < WITHIN_MS), now];
      if (starter.hasStarted() && breaks.length <= MOST_BREAKS) return { action: CloseAction.Restart, handled: true };
      if (starter.hasStarted()) starter.gaveUp();
      return { action: CloseAction.DoNotRestart, handled: true };
    },
  };
}
