// What is wrong with a house, where one sees it, and what mends it.
import { see, seeOnly, timed } from '../patience.mjs';

// The sunroom's finish grows by half an inch after the stringers were cut: the lowest riser shrinks from 6-1/2" to 6".
const FINISH = 'finish        linoleum on board $05/8"';
const MISTAKE = [/risers of stair S2 go from 6" to 6-1\/2"/, 'storyrod', 'risers-not-even'];

const CLEAN = [0, 0];

export default async ({ code, machine, house, copy, step }) => {
  const makeMistake = () => code.replace(house.place(FINISH), '5/8"', '1-1/8"');

  await step('a clean house shows nothing', async () => {
    await code.open(house.name);
    await see(() => code.lenses(), 'finish');
    await seeOnly(() => code.counts(), CLEAN);
    await seeOnly(() => code.squiggles(), 0);
  });

  await step('a changed number is underlined where the stair is laid out', async () => {
    await makeMistake();
    await seeOnly(() => code.counts(), [1, 0]);
    await code.put(house.place('laid out      $098\'-5 1/4"'));
    await see(async () => String(await code.squiggles()), /^[1-9]/);
  });

  await step('resting on it tells what is wrong, by which rule, and what else it says', async () => {
    await see(await code.hover(house.place('laid out      98\'$0-5 1/4"')), ...MISTAKE);
  });

  await step('the Problems panel lists it with the places that belong to it', async () => {
    await code.press('Escape');
    await code.showProblems();
    await see(() => code.problems(), ...MISTAKE);
    await code.press('ArrowDown', 'ArrowRight');
    await see(() => code.problems(), '3/4" finish of main', '1-1/8" finish of sunroom');
  });

  await step('the undone change leaves nothing', async () => {
    await code.open(house.name);
    await code.revert();
    await seeOnly(() => code.counts(), CLEAN);
    await code.showProblems();
    await see(() => code.texts('.markers-panel'), 'No problems');
  });

  await step('from the choice of a file to its first squiggle', async () => {
    // The house has no floor of this name.
    copy.write(copy.with('datum         main', 'datum         cellar'));
    await seeOnly(() => code.counts(), [1, 0]);
    const took = await timed(await code.find(copy.name), () => code.squiggle());
    await see(() => code.problems(), /cellar.*unknown-name/);
    return took;
  });

  await step('from a typed mistake to its squiggle', async () => {
    copy.restore();
    await seeOnly(() => code.squiggles(), 0);
    await code.select(copy.place('datum         $0main'), 'main');
    return timed(() => code.keys.insertText('cellar'), () => code.squiggle());
  });

  await step('a file mended by another program is told mended', async () => {
    await code.save();
    copy.restore();
    await seeOnly(() => code.counts(), CLEAN);
    await code.closeTab();
    await code.press('Control+Shift+m');
  });

  await step('the server keeps small', async () => {
    const [{ peak }] = machine.languageServers();
    if (peak > 300_000) throw new Error(`it took ${peak} kB`);
    return `${Math.round(peak / 1024)} MB at the most, unoptimized`;
  });
};
