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

  for (const [theme, kind] of [['Dark Modern', 'vs-dark'], ['Light Modern', 'vs']]) {
    await step(`words of another kind have another colour in ${theme}`, async () => {
      await code.command('Preferences: Color Theme');
      await code.choose(theme);
      await see(() => code.page.locator('.monaco-workbench').getAttribute('class'), new RegExp(`\\b${kind}\\b`));
      await code.open(house.name);
      await code.put(house.place('  thick         4"\n  joint         round C$01'));
      const words = ['slab', 'thick', '4"', '"Basement.slab"', '--.concrete.*', 'round'];
      const colours = await Promise.all(words.map((word) => code.colour(word)));
      await see(async () => String(new Set(colours).size), /^6$/);
    });
  }
};
