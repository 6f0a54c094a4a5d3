// Colours: those of the grammar, and those of the server over them.
import { see } from '../patience.mjs';

export default async ({ code, house, notes, step }) => {
  const inspect = async (place, ...wanted) => {
    await code.put(place);
    await code.command('Developer: Inspect Editor Tokens and Scopes');
    await see(async () => (await code.texts('.token-inspect-widget')).map((text) => text.replace(/\s+/g, ' ')), ...wanted);
    await code.press('Escape');
  };

  await step('the grammar knows the words', async () => {
    await code.open(house.name);
    await inspect(house.place('col$0umn C1 "Column under the girder"'), 'source.framing', 'keyword');
    await inspect(house.place('  bears on      C1 for 1$00"'), 'source.framing', 'constant.numeric');
  });

  await step('the server knows what a name is', async () => {
    await inspect(house.place('column C$01 "Column under the girder"'), 'semantic token type variable', 'declaration', 'ordered');
  });

  await step('a fence in a Markdown file is coloured', async () => {
    await code.open(notes.name);
    await inspect({ line: 4, column: 3 }, 'meta.embedded', /(keyword|storage)\S*\.framing/);
  });
};
