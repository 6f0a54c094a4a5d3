// What the workbench offers while one writes, and what it writes by itself.
import { see, seeOnly } from '../patience.mjs';

export default async ({ code, house, cabin, root, foundation, step }) => {
  const anew = async (spec) => {
    spec.restore();
    await code.open(spec.name);
    await code.revert();
  };

  await step('inside an element its facts are offered, and none of another one', async () => {
    await anew(house);
    await code.put(house.place('  stands on     F1$0\n  cut '));
    await code.press('Enter', 'b');
    const offered = await see(() => code.suggestions(), /^braced, How far up/);
    await seeOnly(() => offered.filter((label) => /^(bars|bears on)\b/.test(label)), []);
  });

  await step('supports are offered by name, with what they are', async () => {
    await anew(house);
    await code.replace(house.place('  bears on      $0PK1 for 7"'), 'PK1 for 7"', '');
    await code.press('Control+Space');
    const offered = await see(() => code.suggestions(), /^PK1, pocket, .*0" off/, /^W3, wall/);
    // A girder does not carry itself, and nothing lies on a roof.
    await seeOnly(() => offered.filter((label) => /^(B1|R1|R2)\b/.test(label)), []);
  });

  await step('the values of a fact are told, with the one to come', async () => {
    await anew(house);
    await code.replace(house.place('  base          $0plate 9" x 9" x 1/2", grout 1"'), 'plate 9" x 9" x 1/2", grout 1"', '');
    await code.keys.type('plate ');
    await see(() => code.texts('.parameter-hints-widget.visible'), /plate\s+width x length x thickness/);
    await seeOnly(() => code.texts('.parameter-hints-widget.visible .parameter.active'), ['width x length x thickness']);
  });

  await step('another name is written everywhere', async () => {
    await anew(house);
    await code.put(house.place('column C$01 "Column under the girder"'));
    await code.press('F2');
    const box = code.page.locator('.rename-box input').first();
    await box.waitFor();
    await box.fill('C77');
    await box.press('Enter');
    await see(() => code.lines(), 'column C77 "Column under the girder"');
    await code.save();
    const named = ['column C1 ', 'joint         over C1\n', 'joint         round C1\n', 'bears on      C1 for'];
    const renamed = named.reduce((text, place) => text.replace(place, place.replace('C1', 'C77')), house.text);
    await seeOnly(() => house.onDisk(), renamed);
    await seeOnly(() => code.counts(), [0, 0]);
  });

  await step('another name is written in both files of a house', async () => {
    await anew(house);
    await anew(root);
    await code.put(root.place('bears on      W$01 for'));
    await code.press('F2');
    const box = code.page.locator('.rename-box input').first();
    await box.waitFor();
    await box.fill('W77');
    await box.press('Enter');
    await see(() => code.lines(), 'bears on      W77 for');
    await code.command('File: Save All Files');
    await seeOnly(() => root.onDisk(), root.with('bears on      W1 for', 'bears on      W77 for'));
    const named = ['wall W1 ', 'under         W1,', 'top of W1 ='];
    const renamed = named.reduce((text, place) => text.replace(place, place.replace('W1', 'W77')), foundation.text);
    await seeOnly(() => foundation.onDisk(), renamed);
    await seeOnly(() => code.counts(), [0, 0]);
  });

  // By hand: 100'-0" less deck 3/4", joist 9-1/4" and sill 1-1/2" is 99'-0 1/2".
  await step('the cure of a finding is offered first', async () => {
    foundation.restore();
    await anew(root);
    await anew(cabin);
    const top = 'line          north face\n  thick         8"\n  top           ';
    await code.replace(cabin.place(`${top}$099'-0 1/2"`), '99\'-0 1/2"', '98\'-4"');
    await see(async () => String(await code.counts()), /^[1-9]/);
    await code.put(cabin.place(`${top}99'$0-0 1/2"`));
    await code.press('Control+.');
    await see(() => code.texts('.action-widget .monaco-list-row.focused'), 'write 99\'-0 1/2"');
  });

  await step('chosen it writes the number that is needed', async () => {
    await code.press('Enter');
    await seeOnly(() => code.counts(), [0, 0]);
    await code.save();
    await seeOnly(() => cabin.onDisk(), cabin.text);
  });

  await step('an untidy file is brought into the one style', async () => {
    await anew(cabin);
    await code.replace(cabin.place('  spacing    $0   16" from A'), '', '      ');
    await code.command('Format Document');
    await see(() => code.lines(), /^ {2}spacing {7}16" from A$/);
    await code.save();
    await seeOnly(() => cabin.onDisk(), cabin.text);
  });

  await step('a finished line is brought into the one style', async () => {
    await anew(cabin);
    await code.put(cabin.place('  spacing       16" from A$0'));
    await code.press('Enter');
    await code.keys.type('span by grid');
    await code.press('Escape', 'Enter');
    await see(() => code.lines(), '  span          by grid');
  });

  await step('snippets for whole elements are offered', async () => {
    await anew(cabin);
    await code.press('Control+End');
    await code.press('Enter');
    await code.keys.type('col');
    await see(() => code.suggestions(), /column.*[Ss]nippet/);
  });
};
