// What stands beside and above the text, and what the mouse tells.
import { see } from '../patience.mjs';

export default async ({ code, house, cabin, step }) => {
  // The girder rests on the column; the sheet of the column adds the column's own weight.
  const girder = house.printed(/beam B1 +([\d,]+ lb)/, 'takedown', 'C1');
  const pad = house.printed(/column C1 carries ([\d,]+ lb)/, 'takedown', 'C1');
  const capPlate = `${Math.round(100 * house.printed(/3-1\/8[\s\S]*?ratio ([\d.]+)/, 'calc', 'C1'))} %`;

  await step('resting on a column tells what it is, carries, how full it is, and the caution', async () => {
    await code.open(house.name);
    await see(await code.hover(house.place('column C$01 "Column under the girder"')),
      'Column under the girder', 'HSS 4 x 4 x 3/16', `carries ${girder}`, capPlate, '96-5/16"',
      'have it checked by a licensed professional');
  });

  await step('resting on a fact tells what it means', async () => {
    await see(await code.hover(house.place('  s$0pacing       16" from B')), 'How far apart they are, centre to centre');
  });

  await step('derived numbers stand beside the text', async () => {
    await code.put(house.place('bears on      C1 for $010"'));
    await see(() => code.lines(), `bears on      C1 for 10" ${girder}`,
      `stands on     F1 ${pad}`);
  });

  await step('however much stands on a line, all of it can be read', async () => {
    const earth = Math.round(100 * cabin.printed(/earth against the wall[\s\S]*?ratio ([\d.]+)/, 'calc', 'W4'));
    await code.open(cabin.name);
    await code.put(cabin.place('wall W4 "East w$0all"'));
    await see(() => code.lines(), new RegExp(`^wall W4 "East wall" bottom .* earth against the wall ${earth} %$`));
    await code.open(house.name);
  });

  await step('a lens says what an element carries and how full it is', async () => {
    await code.put(house.place('column C$01 "Column under the girder"'));
    await see(() => code.lenses(), `carries ${girder} · cap ${capPlate}`);
  });

  await step('all of it in a dark theme', async () => {
    await code.command('Preferences: Color Theme');
    await code.choose('Dark Modern');
    await see(() => code.page.locator('.monaco-workbench').getAttribute('class'), 'vs-dark');
    await see(await code.hover(house.place('column C$01 "Column under the girder"')), `carries ${girder}`);
  });
};
