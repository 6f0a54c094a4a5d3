// Sheets: read-only documents beside the spec.
import { see } from '../patience.mjs';

export default async ({ code, house, step }) => {
  const carried = house.printed(/column C1 carries (.+)/, 'takedown', 'C1');
  const open = async (command, ...choices) => {
    await code.open(house.name);
    await code.put(house.place('column C$01 "Column under the girder"'));
    await code.command(command);
    for (const choice of choices) await code.choose(choice);
  };

  await step('a lens opens the takedown beside the spec', async () => {
    await code.open(house.name);
    await code.put(house.place('column C$01 "Column under the girder"'));
    await code.page.locator('.codelens-decoration a', { hasText: /^carries .* cap / }).click();
    await see(() => code.tabs(), 'takedown C1 (loon-cove)');
    await see(() => code.lines(1), `column C1 carries ${carried}`, 'floor main on joists J1', 'licensed professional');
  });

  await step('it can be read, not written', async () => {
    await code.page.locator('.tab', { hasText: 'takedown C1' }).click();
    await code.page.locator('.editor-instance').nth(1).locator('.view-line').first().click();
    await code.keys.type('x');
    await see(() => code.texts('.monaco-editor-overlaymessage'), 'read-only');
  });

  await step('it follows the spec', async () => {
    await code.open(house.name);
    await code.replace(house.place('  dead          $012 psf'), '12', '22');
    // 10 psf on half of 2 x 13'-9 1/4" by half of 2 x 17'-9".
    await see(() => code.lines(1), /column C1 carries 15,\d\d\d lb/);
    await code.revert();
    await see(() => code.lines(1), `column C1 carries ${carried}`);
  });

  await step('the calculation sheet of the element at the cursor', async () => {
    await open('Storyrod: Calculation Sheet of the Element at the Cursor');
    await see(() => code.tabs(), 'calculation C1 (loon-cove)');
    await see(() => code.lines(1), 'column C1, Column under the girder', house.printed(/(A = b l .*)/, 'calc', 'C1'));
  });

  await step('the rod list', async () => {
    await open('Storyrod: Rod List');
    await see(() => code.tabs(), 'rod list (loon-cove)');
    await see(() => code.lines(1), house.printed(/(footing F1 top .*?) {2,}stated/, 'rod'));
  });

  await step('a divided step', async () => {
    await open('Storyrod: Divide a Step…', 'main', 'sunroom');
    await see(() => code.tabs(), 'steps main to sunroom (loon-cove)');
    await see(() => code.lines(1), house.printed(/(drop: .*)/, 'steps', 'main', 'sunroom'), '3 of 6-1/2"');
  });

  await step('all is closed again', async () => {
    await code.closeAll();
  });
};
