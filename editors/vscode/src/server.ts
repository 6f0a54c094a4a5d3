/** The server's life: looked for, started, asked, stopped. Whoever wants to know is told how it stands. */

import { type Disposable, EventEmitter, type OutputChannel, window, workspace } from "vscode";
import { ExecuteCommandRequest, LSPErrorCodes, ResponseError, State as ClientState } from "vscode-languageclient/node";
import { Client } from "./client";
import { find } from "./executable";
import { SECTION, surroundings } from "./settings";
import { tellUnlessTold } from "./trouble";

export type State =
  | { readonly kind: "starting" | "stopped" }
  | { readonly kind: "running"; readonly version: string; readonly path: string }
  | { readonly kind: "failed"; readonly why: string };

/** There is no server to ask; the message says why. */
export class NoServer extends Error {}

/** How often a question is asked that the server broke off because the text has changed meanwhile. */
const TRIES = 20;
const PAUSE_MS = 50;

export class Server implements Disposable {
  readonly log: OutputChannel = window.createOutputChannel("Storyrod");
  private readonly changes = new EventEmitter<State>();
  readonly onDidChange = this.changes.event;
  private current: State = { kind: "stopped" };
  private client: Client | undefined;
  /** One start or stop after the other. */
  private turn: Promise<void> = Promise.resolve();
  private readonly listeners: Disposable[];

  constructor() {
    this.listeners = [
      workspace.onDidChangeConfiguration((change) => {
        if (change.affectsConfiguration(`${SECTION}.server`)) void this.restart();
      }),
      // Settings of the folder count from then on.
      workspace.onDidGrantWorkspaceTrust(() => void this.restart()),
    ];
  }

  get state(): State {
    return this.current;
  }

  start(): Promise<void> {
    return this.next(() => this.begin());
  }

  stop(): Promise<void> {
    return this.next(() => this.end());
  }

  restart(): Promise<void> {
    return this.next(async () => {
      await this.end();
      await this.begin();
    });
  }

  /** The text that a command of the server answers. */
  async ask(command: string, argument: object): Promise<string> {
    await this.turn;
    for (let left = TRIES; ; left--) {
      const { client, current } = this;
      if (client === undefined || current.kind === "failed") {
        throw new NoServer(current.kind === "failed" ? current.why : "it is stopped");
      }
      try {
        const answer: unknown = await client.sendRequest(ExecuteCommandRequest.type, { command, arguments: [argument] });
        return String(answer);
      } catch (fault) {
        const isOutdated = fault instanceof ResponseError && fault.code === LSPErrorCodes.ContentModified;
        if (!isOutdated || left <= 0) throw fault;
        await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
      }
    }
  }

  dispose(): void {
    this.listeners.forEach((listener) => listener.dispose());
    this.changes.dispose();
    this.log.dispose();
  }

  private next(work: () => Promise<void>): Promise<void> {
    this.turn = this.turn.then(work).catch((fault: unknown) => this.fail(reason(fault)));
    return this.turn;
  }

  private async begin(): Promise<void> {
    this.become({ kind: "starting" });
    const found = await find(surroundings());
    if (found.kind === "unusable") return this.fail(found.why);
    this.log.appendLine(`${found.path}, version ${found.version}`);
    const client = new Client(found.path, {
      log: this.log,
      hasStarted: () => this.client !== undefined,
      gaveUp: () => this.fail(`${found.path} breaks off again and again`),
    });
    const running: State = { kind: "running", version: found.version, path: found.path };
    client.onDidChangeState(({ newState }) => {
      if (newState === ClientState.Running) this.become(running);
      // The client itself starts a server anew that broke off.
      if (newState === ClientState.Starting) this.become({ kind: "starting" });
    });
    try {
      await client.start();
      this.client = client;
    } catch (fault) {
      void client.dispose().catch(() => undefined);
      this.fail(`${found.path} does not serve: ${reason(fault)}`);
    }
  }

  private async end(): Promise<void> {
    const client = this.client;
    this.client = undefined;
    // A server that has broken off can't be asked to leave.
    await client?.dispose().catch((fault: unknown) => this.log.appendLine(String(fault)));
    this.become({ kind: "stopped" });
  }

  private fail(why: string): void {
    this.log.appendLine(why);
    this.become({ kind: "failed", why });
    tellUnlessTold(this, why);
  }

  private become(state: State): void {
    this.current = state;
    this.changes.fire(state);
  }
}

/** What went wrong, in the words of whoever noticed. */
export function reason(fault: unknown): string {
  return fault instanceof Error ? fault.message : String(fault);
}
