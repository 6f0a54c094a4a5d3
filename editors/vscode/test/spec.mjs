// Houses in a folder of their own, and what the program itself prints about them.
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';

const ROOT = path.resolve(import.meta.dirname, '../../..');
export const STORYROD = path.join(process.env.STORYROD_TARGET, 'debug/storyrod');

/** A file that a session works on: a sample, or a part of one. */
export class Spec {
  constructor(folder, name, text) {
    this.name = path.basename(name);
    this.path = path.join(folder, name);
    this.text = text;
    this.restore();
  }

  /** A copy of a sample. */
  static ofSample(folder, name) {
    return new Spec(folder, name, fs.readFileSync(path.join(ROOT, 'grammar/samples', name), 'utf8'));
  }

  restore() {
    this.write(this.text);
  }

  write(text) {
    fs.mkdirSync(path.dirname(this.path), { recursive: true });
    fs.writeFileSync(this.path, text);
  }

  onDisk() {
    return fs.readFileSync(this.path, 'utf8');
  }

  /** The text with `old`, which must stand there once, replaced. */
  with(old, replacement) {
    this.place(old);
    return this.text.replace(old, () => replacement);
  }

  /** Line and column of `$0` in a piece of text that stands in the file once, both from 1. */
  place(marked) {
    const piece = marked.replace('$0', '');
    const at = this.text.indexOf(piece);
    if (at < 0 || this.text.indexOf(piece, at + 1) >= 0) throw new Error(`not once in ${this.name}: ${piece}`);
    const before = this.text.slice(0, at + Math.max(marked.indexOf('$0'), 0)).split('\n');
    return { line: before.length, column: before.at(-1).length + 1 };
  }

  /** What `storyrod COMMAND FILE …` prints. */
  print(command, ...more) {
    return execFileSync(STORYROD, [command, this.path, ...more], { encoding: 'utf8' });
  }

  /** The one group of a pattern in what a command prints. */
  printed(pattern, command, ...more) {
    const found = pattern.exec(this.print(command, ...more));
    if (!found) throw new Error(`storyrod ${command} ${more.join(' ')} prints nothing like ${pattern}`);
    return found[1];
  }
}

/** What lies in the folder that the workbench opens. */
export function specsIn(folder) {
  const house = Spec.ofSample(folder, 'loon-cove.framing');
  const cabin = Spec.ofSample(folder, 'first.framing');
  const copy = new Spec(folder, 'copy.framing', house.text);
  // The cabin once more, its foundation in a file apart.
  const at = cabin.text.indexOf('wall W1 ');
  const root = new Spec(folder, 'split/root.framing', `${cabin.text.slice(0, at)}include "foundation.framing"\n`);
  const foundation = new Spec(folder, 'split/foundation.framing', cabin.text.slice(at));
  const notes = new Spec(folder, 'notes.md', '# Notes\n\n```framing\ncolumn C1 "Under the girder"\n```\n');
  return { house, cabin, copy, root, foundation, notes };
}
