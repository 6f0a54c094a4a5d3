// From a name to what it means, over two files, and round a file.
import { see, seeOnly } from '../patience.mjs';

export default async ({ code, house, root, foundation, step }) => {
  await step('a support leads to where it stands, in the other file', async () => {
    await code.open(root.name);
    await code.revert();
    await code.put(root.place('bears on      W$01 for'));
    await code.press('F12');
    await seeOnly(() => code.tab(), [foundation.name]);
    await see(() => code.texts('[id="status.editor.selection"]'), 'Ln 1, Col 6');
  });

  await step('every use of a name, over both files', async () => {
    await code.command('References: Find All References');
    await see(() => code.sideBar(), /root\.framing/, /foundation\.framing/, 'W1, W2, W3, W4', 'top of W1 = 99\'-0 1/2"');
  });

  const girder = house.printed(/beam B1 +([\d,]+ lb)/, 'takedown', 'C1');
  const pad = house.printed(/column C1 carries ([\d,]+ lb)/, 'takedown', 'C1');
  await step('what comes down on a column, with the loads', async () => {
    await code.open(house.name);
    await code.put(house.place('column C$01 "Column under the girder"'));
    await code.command('Calls: Show Call Hierarchy');
    await see(() => code.sideBar(), /column C1/, new RegExp(`beam B1.*${girder}`));
  });

  await step('what carries it, down to the soil', async () => {
    await code.command('Calls: Show Outgoing Calls');
    await see(() => code.sideBar(), new RegExp(`footing F1.*${pad}`));
  });

  await step('everything made of one product', async () => {
    await code.open(house.name);
    await code.put(house.place('product LV$014 '));
    await code.command('Types: Show Type Hierarchy');
    await see(() => code.sideBar(), /product LV14/, /header H1/);
  });

  await step('the outline has sections and elements', async () => {
    await code.open(house.name);
    await code.press('Control+Shift+o');
    await see(() => code.texts('.quick-input-list .monaco-list-row'), 'floors', 'floor main "Main floor"');
  });

  await step('elements are found over all files', async () => {
    await code.press('Escape', 'Control+t');
    await code.keys.insertText('strip foot');
    await see(() => code.texts('.quick-input-list .monaco-list-row'), /footing F1 "Strip footing"[\s\S]*foundation\.framing/);
  });

  await step('breadcrumbs say where the cursor stands', async () => {
    await code.put(house.place('  bears on      C$01 for 10"'));
    await see(() => code.texts('.monaco-breadcrumb-item'), 'floor framing', 'beam B1 "Centre girder"');
  });

  await step('folded elements show their first line', async () => {
    await code.put({ line: 1, column: 1 });
    await code.command('Fold All');
    await see(() => code.lines(), /^-- floors/);
    await seeOnly(async () => (await code.lines()).filter((line) => line.startsWith('  ')), []);
  });

  await step('unfolded they show everything', async () => {
    await code.command('Unfold All');
    await see(() => code.lines(), /^ {2}profile/);
  });

  await step('an include leads to its file', async () => {
    await code.open(root.name);
    await code.put(root.place('include "found$0ation.framing"'));
    await code.press('F12');
    await seeOnly(() => code.tab(), [foundation.name]);
  });
};
