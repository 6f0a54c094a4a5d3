import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { test } from "node:test";

// The script that runs this says where they are.
const program = process.env["STORYROD"] ?? "storyrod";
const sample = readFileSync(process.env["STORYROD_SAMPLE"] ?? "", "utf8");
const { contributes } = JSON.parse(readFileSync("package.json", "utf8"));
const [pattern] = contributes.problemPatterns;

// Risers that differ, and two walls of one name.
const spec = sample.replace("on board 5/8", "on board 1-1/8").replace('wall W2 "', 'wall W1 "');

function lint(format: string): string {
  const argumentsOf = ["lint", "--format", format, "-", "--stdin-filename", "houses/a house.framing"];
  return spawnSync(program, argumentsOf, { input: spec, encoding: "utf8" }).stdout;
}

test("the problem matcher takes every finding of `storyrod lint --format lines` and nothing else", () => {
  const expression = new RegExp(pattern.regexp);
  const matches = lint("lines").split("\n").map((line) => expression.exec(line)).filter((match) => match !== null);
  const [house]: { findings: { rule: string }[] }[] = JSON.parse(lint("json")).specs;
  const findings = house?.findings ?? [];
  assert.ok(findings.length > 2);
  assert.deepEqual(matches.map((match) => match[pattern.code]).sort(), findings.map(({ rule }) => rule).sort());
  for (const match of matches) {
    assert.equal(match[pattern.file], "houses/a house.framing");
    const text = spec.split("\n")[Number(match[pattern.line]) - 1] ?? "";
    assert.ok(Number(match[pattern.column]) <= text.length, `${match[0]}\n${text}`);
  }
  const riser = matches.find((match) => match[pattern.code] === "risers-not-even");
  assert.equal(riser?.[pattern.severity], "error");
  assert.match(riser?.[pattern.message] ?? "", /^the risers of stair S2 go from 6" to 6-1\/2"/);
});
