// Colours a Markdown text with a fence marked `framing`. A grammar of one rule stands for the editor's own of Markdown.
'use strict';

const assert = require('assert');
const fs = require('fs');
const os = require('os');
const path = require('path');
const { grammarOf } = require('./tokens.js');

const TEXT = `# A beam

beam B1 stays plain here.

\`\`\`framing
beam B1 "Center girder"
  size          W8x24
-- no fence
\`\`\`

~~~ framing title="x"
include "walls.framing"
~~~

\`\`\`rust
beam B1
\`\`\`

\`\`\`framings
beam B1
\`\`\`
beam B1
`;

async function main(folder) {
  const markdown = path.join(fs.mkdtempSync(path.join(os.tmpdir(), 'fences-')), 'markdown.json');
  const rules = [{ name: 'markup.heading.markdown', match: '^#.*$' }];
  fs.writeFileSync(markdown, JSON.stringify({ scopeName: 'text.html.markdown', patterns: rules }));
  const others = {
    'markdown.framing.codeblock': path.join(folder, 'markdown.framing.tmLanguage.json'),
    'source.framing': path.join(folder, 'framing.tmLanguage.json'),
  };
  const { grammar, initial } = await grammarOf(markdown, others, ['markdown.framing.codeblock']);
  fs.rmSync(path.dirname(markdown), { recursive: true });
  let stack = initial;
  const found = [];
  for (const line of TEXT.split('\n')) {
    const result = grammar.tokenizeLine(line, stack);
    stack = result.ruleStack;
    for (const token of result.tokens) {
      const scopes = token.scopes.filter((scope) => /\.framing$|language\.markdown|heading/.test(scope));
      if (scopes.length > 0) found.push([line.slice(token.startIndex, token.endIndex).trim(), scopes.pop()]);
    }
  }
  const wanted = [
    ['# A beam', 'markup.heading.markdown'],
    ['framing', 'fenced_code.block.language.markdown'],
    ['beam', 'storage.type.element.framing'],
    ['', 'meta.embedded.block.framing'],
    ['B1', 'entity.name.type.framing'],
    ['', 'meta.embedded.block.framing'],
    ['"', 'punctuation.definition.string.begin.framing'],
    ['Center girder', 'string.quoted.double.framing'],
    ['"', 'punctuation.definition.string.end.framing'],
    ['', 'meta.embedded.block.framing'],
    ['size', 'variable.other.property.framing'],
    ['', 'meta.embedded.block.framing'],
    ['W8x24', 'support.type.material.framing'],
    ['-- no fence', 'comment.line.double-dash.framing'],
    ['framing', 'fenced_code.block.language.markdown'],
    ['include', 'keyword.control.import.framing'],
    ['', 'meta.embedded.block.framing'],
    ['"', 'punctuation.definition.string.begin.framing'],
    ['walls.framing', 'string.quoted.double.framing'],
    ['"', 'punctuation.definition.string.end.framing'],
  ];
  assert.deepStrictEqual(found, wanted);
  console.log(`${found.length} stretches as they should be`);
}

main(process.argv[2]).catch((error) => {
  console.error(error.message);
  process.exit(1);
});
