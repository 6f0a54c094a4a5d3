import assert from "node:assert/strict";
import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { after, test } from "node:test";
import { candidates, find, isAtLeast, OLDEST_VERSION, type Surroundings } from "../src/executable";

const folder = mkdtempSync(join(tmpdir(), "storyrod-unit-"));
after(() => rmSync(folder, { recursive: true }));

/** A program in a folder of its own that answers `--version`. */
function program(name: string, answer: string, mode = 0o755): string {
  const path = join(folder, name, "storyrod");
  mkdirSync(join(folder, name), { recursive: true });
  writeFileSync(path, `#!/bin/sh\n${answer}\n`);
  chmodSync(path, mode);
  return path;
}

const good = program("good", `echo storyrod ${OLDEST_VERSION}`);
const newer = program("newer", "echo storyrod 12.0.3-beta.1");
const older = program("older", "echo storyrod 0.0.9");
const stranger = program("stranger", "echo other 1.2.3");
const broken = program("broken", "exit 3");
const text = program("text", "echo storyrod 1.0.0", 0o644);
program("home/.cargo/bin", `echo storyrod ${OLDEST_VERSION}`);

function around(some: Partial<Surroundings>): Surroundings {
  return { path: "", home: join(folder, "nobody"), environment: { PATH: "" }, platform: "linux", ...some };
}

async function why(some: Partial<Surroundings>): Promise<string> {
  const found = await find(around(some));
  return found.kind === "unusable" ? found.why : `found ${found.path}`;
}

test("the settings come before PATH, and PATH before cargo's folder", async () => {
  const environment = { PATH: ["", "relative", join(folder, "good")].join(delimiter) };
  const home = join(folder, "home");
  assert.deepEqual(await find(around({ path: newer, environment, home })), { kind: "found", path: newer, version: "12.0.3-beta.1" });
  assert.deepEqual(await find(around({ environment, home })), { kind: "found", path: good, version: OLDEST_VERSION });
  assert.equal(await why({ home }), `found ${join(home, ".cargo/bin/storyrod")}`);
  assert.equal(await why({ path: "~/.cargo/bin/storyrod", home }), `found ${join(home, ".cargo/bin/storyrod")}`);
});

test("what can't be used is told with its reason", async () => {
  assert.match(await why({}), /not on PATH and not in cargo's folder/);
  assert.match(await why({ path: join(folder, "nothing") }), /names no program/);
  assert.match(await why({ path: folder }), /names no program/);
  assert.match(await why({ path: text }), /names no program/);
  assert.match(await why({ path: older }), /is version 0\.0\.9; this extension needs/);
  assert.match(await why({ path: stranger }), /another program: it calls itself "other 1\.2\.3"/);
  assert.match(await why({ path: broken }), /does not start/);
});

test("nothing runs that lies in the open folder by a path that hangs from it", async () => {
  assert.match(await why({ path: "./good/storyrod" }), /not a whole path/);
  const environment = { PATH: [".", "bin", "", "/usr/bin"].join(delimiter) };
  assert.deepEqual(candidates(around({ environment, home: "/home/me" })), ["/usr/bin/storyrod", "/home/me/.cargo/bin/storyrod"]);
});

test("versions are compared by their numbers", () => {
  for (const [version, oldest] of [["0.1.0", "0.1.0"], ["0.10.0", "0.9.9"], ["1.0.0-beta.1", "0.9.0"], ["0.1.1", "0.1.0"]] as const) {
    assert.ok(isAtLeast(version, oldest), `${version} ${oldest}`);
  }
  for (const [version, oldest] of [["0.1.0", "0.1.1"], ["0.9.9", "0.10.0"], ["1.9.9", "2.0.0"]] as const) {
    assert.ok(!isAtLeast(version, oldest), `${version} ${oldest}`);
  }
});
