// Waiting for what a person would wait for.

/** How long anything may take. A loaded machine is slow; a test that waits on a condition loses nothing by it. */
export const LONG = 20_000;

/** What a test wanted and what there was instead. */
export class NotSeen extends Error {}

/** Asks again until the answer is true, or something else than nothing, and gives it. */
export async function until(what, condition, patience = LONG) {
  const deadline = Date.now() + patience;
  let fault = '';
  do {
    try {
      const answer = await condition();
      if (answer) return answer;
      fault = '';
    } catch (error) {
      if (error instanceof NotSeen) throw error;
      fault = `: ${error.message.split('\n')[0]}`;
    }
    await new Promise((resolve) => setTimeout(resolve, 50));
  } while (Date.now() < deadline);
  throw new NotSeen(`  wanted: ${what}${fault}`);
}

const holds = (text, wanted) => (wanted instanceof RegExp ? wanted.test(text) : text.includes(wanted));

/** Reads until every wanted text stands in what is read, a text or one of several, and gives what was read. */
export async function see(read, ...wanted) {
  let seen = [];
  const missing = () => wanted.filter((one) => !seen.some((text) => holds(text, one)));
  await orTell(() => missing().join('\n'), () => seen.join('\n'), async () => {
    seen = [await read()].flat().map((text) => plain(text ?? ''));
    return missing().length === 0;
  });
  return seen;
}

/** Reads until it is this and nothing else. */
export async function seeOnly(read, wanted) {
  let seen;
  const text = (value) => (typeof value === 'string' ? value : JSON.stringify(value));
  const [before, behind] = [(line) => !text(seen ?? '').includes(line), (line) => !text(wanted).includes(line)];
  const lines = (value, differs) => text(value ?? '').split('\n').filter(differs).join('\n');
  await orTell(() => lines(wanted, before), () => lines(seen, behind), async () => {
    seen = await read();
    return text(seen) === text(wanted);
  });
}

async function orTell(wanted, seen, condition) {
  try {
    await until('', condition);
  } catch {
    const some = (text) => text.split('\n').slice(0, 50).join('\n          ');
    throw new NotSeen(`  wanted: ${some(wanted())}\n  seen:   ${some(seen())}`);
  }
}

/** How long it takes from what a person does until it is shown. */
export async function timed(act, shown) {
  const began = performance.now();
  await act();
  await shown();
  return `${Math.round(performance.now() - began)} ms`;
}

/** Text of a page as one would type it. */
export const plain = (text) => text.replace(/[\u00a0\u2000-\u200a\u202f]/g, ' ').replace(/[\u200b-\u200d\u2060]/g, '').replaceAll('\u00b7', '·');
