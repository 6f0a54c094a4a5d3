// Holds the colours of the grammar against what the format's own reader found in the same texts.
//
// compare.js GRAMMAR SPECS SPELLINGS
'use strict';

const fs = require('fs');
const { grammarOf } = require('./tokens.js');

// What each kind of stretch is coloured as, and into how many tokens it may be cut: a number before its unit, a text
// between its quotes.
const SCOPES = {
  element: [/^storage\.type\.element/, 1],
  defined: [/^entity\.name\.type/, 1],
  include: [/^keyword\.control\.import/, 1],
  phrase: [/^variable\.other\.property/, 1],
  fact: [/^support\.function\.fact/, 1],
  joining: [/^keyword\.operator\.word/, 1],
  choice: [/^constant\.language\.choice/, 1],
  side: [/^constant\.language\.side/, 1],
  name: [/^variable\.other\.name/, 1],
  rule: [/^variable\.other\.constant/, 1],
  material: [/^support\.type\.material/, 1],
  'size-mark': [/^keyword\.operator\.size/, 1],
  length: [/^constant\.numeric\.length/, 2],
  number: [/^constant\.numeric\.number/, 1],
  quantity: [/^constant\.numeric\.quantity/, 2],
  date: [/^constant\.numeric\.date/, 1],
  bar: [/^constant\.numeric\.bar/, 1],
  size: [/^constant\.numeric\.size/, 1],
  plies: [/^constant\.numeric\.count/, 1],
  text: [/^string\.quoted\.double/, 3],
  comment: [/^comment\.line/, 1],
  comma: [/^punctuation\.separator\.comma/, 1],
  slash: [/^punctuation\.separator\.point/, 1],
  paren: [/^punctuation\.section\.parens/, 1],
  relation: [/^keyword\.operator\.comparison/, 1],
};

// What is wrong in the tokens of a line; what the reader calls wrong may have any colour.
function faults(line, tokens, spans, isStrict) {
  const found = [];
  const shown = (token) => `"${line.slice(token.startIndex, token.endIndex)}" is ${token.scopes.slice(1).join(' ')}`;
  const over = (token, [start, end]) => token.startIndex < end && token.endIndex > start;
  for (const span of spans) {
    const [start, end, kind] = span;
    const inside = tokens.filter((token) => over(token, span));
    if (kind === 'wrong') continue;
    const text = `"${line.slice(start, end)}", ${kind},`;
    if (kind === 'own-words') {
      const coloured = inside.filter((token) => token.scopes.length > 1);
      if (coloured.length > 0) found.push(`${text} is coloured: ${coloured.map(shown).join('; ')}`);
      continue;
    }
    const [scope, most] = SCOPES[kind];
    const fits = (token) => token.scopes.length > 1 && scope.test(token.scopes[1]);
    // Joining words that follow each other may be one token: `each way`.
    const alike = kind === 'joining' ? spans.filter((other) => other[2] === kind) : [span];
    const isCut = inside.some((token) => !alike.some((one) => token.startIndex >= one[0])
      || !alike.some((one) => one[0] === token.startIndex || token.startIndex > start)
      || !alike.some((one) => one[1] === token.endIndex || token.endIndex < end)
      || spans.some((other) => !alike.includes(other) && over(token, other)));
    if (isCut || inside.length > most || inside.length === 0 || !inside.every(fits)) {
      found.push(`${text} is not what it should be: ${inside.map(shown).join('; ')}`);
    }
  }
  if (isStrict) {
    for (const token of tokens) {
      const isTold = spans.some((span) => over(token, span));
      if (!isTold && token.scopes.length > 1) found.push(`nothing is there: ${shown(token)}`);
    }
  }
  return found;
}

async function main([grammarFile, specsFile, spellingsFile]) {
  const { grammar, initial } = await grammarOf(grammarFile);
  const seen = {};
  let failed = 0;
  for (const [file, isStrict] of [[specsFile, true], [spellingsFile, false]]) {
    const cases = JSON.parse(fs.readFileSync(file, 'utf8'));
    let spansCompared = 0;
    for (const { name, lines } of cases) {
      let stack = initial;
      lines.forEach(([line, spans], at) => {
        const result = grammar.tokenizeLine(line, stack);
        stack = result.ruleStack;
        for (const fault of faults(line, result.tokens, spans, isStrict)) {
          failed += 1;
          if (failed <= 40) console.error(`${name}, line ${at + 1}: ${line.trim()}\n    ${fault}`);
        }
        spansCompared += spans.length;
        for (const [, , kind] of spans) seen[kind] = (seen[kind] || 0) + 1;
      });
    }
    console.log(`${cases.length} texts, ${spansCompared} spans compared`);
  }
  const unseen = Object.keys(SCOPES).filter((kind) => !seen[kind] && kind !== 'include');
  if (unseen.length > 0) throw new Error(`nothing to compare of: ${unseen.join(', ')}`);
  if (failed > 0) throw new Error(`${failed} spans have another colour than they should`);
}

main(process.argv.slice(2)).catch((error) => {
  console.error(error.message);
  process.exit(1);
});
