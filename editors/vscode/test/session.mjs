// Holds the sessions, one after the other, in one workbench. Each step is told as it ends, with what it measured;
// a picture of it is kept. A step leaves what it opened for the picture; the next one puts it away.
import fs from 'node:fs';
import path from 'node:path';
import { Machine } from './machine.mjs';
import { NotSeen } from './patience.mjs';
import { specsIn } from './spec.mjs';
import { Workbench } from './workbench.mjs';

const SESSIONS = ['server', 'findings', 'sight', 'sheets', 'writing', 'ways', 'colours', 'task'];

const tools = path.join(process.env.STORYROD_TARGET, 'vscode');
const shots = path.join(tools, 'shots');
fs.rmSync(shots, { recursive: true, force: true });
fs.mkdirSync(shots, { recursive: true });

const wanted = process.argv.length > 2 ? process.argv.slice(2) : SESSIONS;
const machine = new Machine();
const specs = specsIn(machine.folder);
if (!wanted.includes('server')) machine.putServer();
let passed = 0;
let failed = 0;

try {
  const page = await machine.start(tools, process.env.STORYROD_VSIX);
  const code = new Workbench(page);
  for (const name of SESSIONS) {
    if (!wanted.includes(name)) continue;
    const { default: session } = await import(`./sessions/${name}.mjs`);
    const step = async (title, body) => {
      const picture = path.join(shots, `${name}-${title.replace(/[^a-z0-9]+/gi, '-')}.png`);
      const began = Date.now();
      try {
        const said = await body();
        passed += 1;
        console.log(`ok ${name}: ${said ? `${title}: ${said}` : title} (${((Date.now() - began) / 1000).toFixed(1)} s)`);
      } catch (fault) {
        failed += 1;
        console.log(`FAILED ${name}: ${title}\n${fault instanceof NotSeen ? fault.message : fault.stack}`);
      }
      await page.screenshot({ path: picture }).catch(() => {});
    };
    await session({ code, machine, ...specs, step });
    // Without a server nothing else can be seen.
    if (name === 'server' && failed > 0) break;
  }
} catch (fault) {
  failed += 1;
  console.log(`FAILED ${fault.stack}`);
} finally {
  await machine.stop(path.join(tools, 'logs'));
}
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed > 0 ? 1 : 0);
