// Tokens as an editor with TextMate grammars finds them.
'use strict';

const fs = require('fs');
const path = require('path');
const oniguruma = require('vscode-oniguruma');
const textmate = require('vscode-textmate');

// The grammar of the scope in `file`, with more grammars by scope and the scopes of those that are put into others.
async function grammarOf(file, others = {}, injections = []) {
  const wasm = path.join(path.dirname(require.resolve('vscode-oniguruma')), 'onig.wasm');
  await oniguruma.loadWASM(fs.readFileSync(wasm));
  const read = (name) => textmate.parseRawGrammar(fs.readFileSync(name, 'utf8'), name);
  const main = read(file);
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (sources) => new oniguruma.OnigScanner(sources),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async (scope) => {
      if (scope === main.scopeName) return main;
      return others[scope] ? read(others[scope]) : null;
    },
    getInjections: () => injections,
  });
  return { grammar: await registry.loadGrammar(main.scopeName), initial: textmate.INITIAL };
}

module.exports = { grammarOf };
