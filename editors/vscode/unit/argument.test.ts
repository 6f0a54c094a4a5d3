import assert from "node:assert/strict";
import { test } from "node:test";
import { argumentOf, titleOf } from "../src/argument";

test("a tab says what the sheet is, of what, and of which house", () => {
  const uri = "file:///home/me/my%20houses/loon%20cove.framing";
  assert.equal(titleOf("rod list", { uri }), "rod list (loon cove)");
  assert.equal(titleOf("takedown", { uri, element: "C1" }), "takedown C1 (loon cove)");
  assert.equal(titleOf("steps", { uri, upper: "main", lower: "sunroom" }), "steps main to sunroom (loon cove)");
  assert.equal(titleOf("takedown", { uri: "untitled:Untitled-1", element: "A/1" }), "takedown A-1 (Untitled-1)");
});

test("the same argument reads the same, whatever the order of its members", () => {
  const one = argumentOf({ element: "C1", uri: "file:///a", more: 1 });
  const other = argumentOf({ uri: "file:///a", element: "C1" });
  assert.equal(JSON.stringify(one), '{"uri":"file:///a","element":"C1"}');
  assert.equal(JSON.stringify(one), JSON.stringify(other));
});

test("what is no argument of ours is none", () => {
  // The editor gives the address of the file to a command of its context menu, as an object of its own.
  for (const given of [undefined, null, "file:///a", { scheme: "file", path: "/a" }, { uri: 3 }]) {
    assert.equal(argumentOf(given), undefined);
  }
});
