/** Which program is the server, and is it one that we can work with. Knows nothing of the editor. */

import { execFile } from "node:child_process";
import { constants } from "node:fs";
import { access, stat } from "node:fs/promises";
import { delimiter, isAbsolute, join } from "node:path";

/** The oldest server that has everything this extension asks for. */
export const OLDEST_VERSION = "0.1.0";

/** Where a person's own programs are, as far as looking for the server goes. */
export interface Surroundings {
  /** What the settings say; empty when they say nothing. */
  readonly path: string;
  readonly home: string;
  readonly environment: NodeJS.ProcessEnv;
  readonly platform: NodeJS.Platform;
}

export type Found =
  | { readonly kind: "found"; readonly path: string; readonly version: string }
  | { readonly kind: "unusable"; readonly why: string };

/** The server of the settings; without them the first one on PATH, then the one that `cargo install` made. */
export async function find(around: Surroundings): Promise<Found> {
  if (around.path !== "") {
    const path = around.path.replace(/^~(?=[/\\])/, around.home);
    // A path that hangs from the open folder would run whatever lies there.
    if (!isAbsolute(path)) return unusable(`the setting storyrod.server.path is not a whole path: ${path}`);
    if (!(await isProgram(path))) return unusable(`the setting storyrod.server.path names no program: ${path}`);
    return withVersion(path);
  }
  for (const path of candidates(around)) {
    if (await isProgram(path)) return withVersion(path);
  }
  return unusable("the program storyrod is not on PATH and not in cargo's folder");
}

/** Every place where a server may be, the first one first. */
export function candidates({ home, environment, platform }: Surroundings): string[] {
  const name = platform === "win32" ? "storyrod.exe" : "storyrod";
  const path = environment["PATH"] ?? environment["Path"] ?? "";
  // An entry that hangs from the current folder would run whatever lies there.
  const folders = path.split(delimiter).filter(isAbsolute);
  const cargo = environment["CARGO_INSTALL_ROOT"] ?? environment["CARGO_HOME"] ?? join(home, ".cargo");
  return [...folders, join(cargo, "bin")].map((folder) => join(folder, name));
}

/** True when a version is not older than another; both as `1.2.3`. */
export function isAtLeast(version: string, oldest: string): boolean {
  const [one, other] = [version, oldest].map((it) => it.split(/[.+-]/, 3).map(Number));
  for (let at = 0; at < 3; at++) {
    const difference = (one?.[at] ?? 0) - (other?.[at] ?? 0);
    if (difference !== 0) return difference > 0;
  }
  return true;
}

async function isProgram(path: string): Promise<boolean> {
  try {
    await access(path, constants.X_OK);
    return (await stat(path)).isFile();
  } catch {
    return false;
  }
}

async function withVersion(path: string): Promise<Found> {
  let said: string;
  try {
    said = await output(path, "--version");
  } catch (fault) {
    return unusable(`${path} does not start: ${firstLine(String(fault))}`);
  }
  const version = /^storyrod (\d+\.\d+\.\d+\S*)/.exec(said)?.[1];
  if (version === undefined) return unusable(`${path} is another program: it calls itself "${firstLine(said)}"`);
  if (!isAtLeast(version, OLDEST_VERSION)) {
    return unusable(`${path} is version ${version}; this extension needs ${OLDEST_VERSION} or later`);
  }
  return { kind: "found", path, version };
}

function output(path: string, argument: string): Promise<string> {
  return new Promise((resolve, reject) => {
    execFile(path, [argument], { timeout: 10_000 }, (fault, text) => (fault ? reject(fault) : resolve(text)));
  });
}

function firstLine(text: string): string {
  return text.trim().split("\n", 1)[0] ?? "";
}

function unusable(why: string): Found {
  return { kind: "unusable", why };
}
