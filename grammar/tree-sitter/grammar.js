// The grammar of *.framing files. Elements, facts and words come from `vocabulary.json`, which is rendered from the
// vocabulary of the parser; by hand stand lines, names, numbers, members, sums. `src/scanner.c` finds where lines end.

const vocabulary = require('./vocabulary.json');

// Characters and numbers, as regular expressions.

const BLANK = '[ \\t\\u00a0\\ufeff]';
const LETTER = '\\p{Alphabetic}';
const REST = `${LETTER}\\p{Nd}_.`;
const DIGITS = '[0-9]+';
const SIGN = '[-−]';
const NUMBER = `${DIGITS}(\\.${DIGITS})?`;
const POWER = `[eE][-+]?${DIGITS}`;
const SMALL_FRACTION = '[½¼¾⅛⅜⅝⅞]';
const FRACTION = `(${DIGITS}/${DIGITS}|${SMALL_FRACTION})`;
const WITH_FRACTION = `(${DIGITS}[- ]${FRACTION}|${DIGITS}${SMALL_FRACTION}|${FRACTION})`;
const MIXED = `(${NUMBER}|${WITH_FRACTION})`;
const FOOT_MARK = "['’′]";
const INCH_MARK = "(\"|”|″|''|’’|′′|[ \\u00a0]?in\\.?)";
const FEET = `${NUMBER} ?${FOOT_MARK}`;
const INCHES = `${MIXED}${INCH_MARK}`;
const LENGTH = `(${FEET}(-?${MIXED}${INCH_MARK}?| ${INCHES})?|${MIXED}(${INCH_MARK}|${unit(vocabulary.lengthUnits)}\\.?))`;
const LEVEL_SIGN = '(\\+|±|\\+/-|\\(-\\) ?)';
const OPENS_ELEVATION = `(EL\\.?(${BLANK}+(${SIGN}|${LEVEL_SIGN})?|${SIGN}|${LEVEL_SIGN})|${LEVEL_SIGN})`;

/** A unit behind a number, after one blank at most. */
function unit(spellings) {
  return `[ \\u00a0]?(${spellings.map((spelling) => spelling.replace(/[./]/g, '\\$&')).join('|')})`;
}

function measure(spellings) {
  return new RegExp(`${SIGN}?${MIXED}(${POWER})?${unit(spellings)}`);
}

// Words. A word is a hidden token; what it does in a line is said by the node that is made of it.

const words = new Map();
const phrases = new Map();

/** The token of a word. */
function token_of(word) {
  const name = `_word_${word.replace(/[^A-Za-z0-9]/g, (sign) => `_${sign.codePointAt(0).toString(16)}_`)}`;
  words.set(name, word);
  return name;
}

/** A word as it may be spelt: `@` says `at`, a capital or a sign says `x`. */
function spelt($, word) {
  const spellings = { at: ['at', '@'], x: ['x', 'X', '×'] }[word] ?? [word];
  const tokens = spellings.map((spelling) => $[token_of(spelling)]);
  return tokens.length > 1 ? choice(...tokens) : tokens[0];
}

/** A phrase as one leaf of this kind. */
function leaf($, phrase, kind) {
  const parts = phrase.split(' ');
  if (parts.length === 1) return alias(spelt($, phrase), $[kind]);
  const name = `_phrase_${parts.map(rule_name).join('_')}`;
  phrases.set(name, parts);
  return alias($[name], $[kind]);
}

function leaf_of($, options, kind) {
  return one_of(options.map((option) => leaf($, option, kind)));
}

function one_of(rules) {
  return rules.length > 1 ? choice(...rules) : rules[0];
}

function rule_name(words) {
  return words.replace(/[^A-Za-z0-9]/g, '_');
}

// Facts.

/**
 * The rule of a form from the vocabulary. Words that could open another choice at the same place may be a name too:
 * what comes behind them tells.
 */
function rule_of($, form, names = []) {
  if (form === ',') return ',';
  if (typeof form === 'string') return leaf($, form, 'link');
  if (Array.isArray(form)) return seq(...form.map((part, at) => rule_of($, part, at === 0 ? names : [])));
  if (form.mark) return field(rule_name(form.mark), leaf($, form.mark, 'mark'));
  if (form.optional) return optional(rule_of($, form.optional));
  if (form.choice) {
    const opening = new Set(form.choice.flatMap(first_words));
    return one_of(form.choice.map((option) => rule_of($, option, [...opening])));
  }
  if (form.list) return seq(rule_of($, form.list), repeat(seq(',', rule_of($, form.list))));
  return field(rule_name(form.slot), value_of($, form, names));
}

/** The words that may open a form which goes on behind them. */
function first_words(form) {
  if (Array.isArray(form) && form.length > 0) {
    const first = form[0].mark ?? form[0];
    return typeof first === 'string' ? [first.split(' ')[0]] : [];
  }
  if (form.kind === 'comparison') {
    const phrases = vocabulary.factNames.map(([phrase]) => phrase);
    return [...phrases, ...vocabulary.cases, 'half of', 'filled pipe', 'pipe'].map((phrase) => phrase.split(' ')[0]);
  }
  return [];
}

function value_of($, slot, names) {
  if (slot.words) return leaf_of($, slot.words, 'choice');
  if (slot.sides) return alias($[sides_rule(slot.sides)], $.dimensions);
  if (slot.kind === 'name') return one_of([$.name, ...names.map((word) => alias($[token_of(word)], $.name))]);
  return $[VALUE_RULES[slot.kind] ?? slot.kind];
}

/** Kinds of values whose rule has another name; `load` and `area` are elements too. */
const VALUE_RULES = { area: 'area_value', fact: 'fact_name', gridline: 'grid_line', load: 'load_value', value: '_value' };

const sides_rules = new Map();

function sides_rule(sides) {
  const name = `_dimensions_${sides.join('_')}`;
  sides_rules.set(name, sides);
  return name;
}

/** Lengths parted by `x`; a nominal size such as `2x10` is two of them. */
function dimensions($, [least, most]) {
  const side = () => $._side_of_size;
  const more = (read) => {
    const rules = [];
    for (let at = read; at < most; at += 1) {
      const next = seq($._by, side());
      rules.push(at < least ? next : optional(next));
    }
    return rules;
  };
  const from_one = seq(side(), ...more(1));
  return most < 2 ? from_one : choice(from_one, seq($.nominal, ...more(2)));
}

/** Facts of the same phrase and form are one rule, whatever elements they stand in. */
const fact_rules = new Map();

function fact_rule([phrase, form]) {
  const key = JSON.stringify([phrase, form]);
  if (!fact_rules.has(key)) {
    const same = [...fact_rules.values()].filter((rule) => rule.phrase === phrase).length;
    fact_rules.set(key, { name: `_fact_${rule_name(phrase)}${same ? `_${same + 1}` : ''}`, phrase, form });
  }
  return fact_rules.get(key).name;
}

function facts_of($, element) {
  const common = vocabulary.common.filter(([phrase]) => element.common.includes(phrase));
  const facts = [...element.facts, ...common].map((fact) => alias($[fact_rule(fact)], $.fact));
  return element.claims.length > 0 ? choice(...facts, alias($[`_claim_of_${rule_name(element.keyword)}`], $.claim)) : choice(...facts);
}

function claim_of($, element) {
  const fact = ([phrase, takes_case]) => seq(
    ...(takes_case ? [optional(field('case', leaf_of($, vocabulary.cases, 'choice')))] : []),
    field('phrase', leaf($, phrase, 'phrase')),
  );
  return seq(choice(...element.claims.map(fact)), $._claimed);
}

// Elements.

function element_of($, element) {
  const keyword = field('keyword', leaf_of($, [element.keyword, ...element.also], 'keyword'));
  // A heading that is still being written keeps its facts.
  const name = element.naming === 'name' ? [optional(field('name', $.name))] : [];
  const title = element.naming === 'none' ? [] : [optional(field('title', $.text))];
  const facts = repeat(seq($._next_fact, optional($[`_fact_of_${rule_name(element.keyword)}`])));
  return seq(keyword, ...name, ...title, facts);
}

const rules = {
  source_file: ($) => seq(
    optional($._first_column),
    repeat(seq($._next_element, optional($._first_column))),
  ),

  _first_column: ($) => choice($.element, seq($.include, repeat($._next_fact)), repeat1($._next_fact)),

  include: ($) => seq(field('keyword', leaf($, vocabulary.include, 'keyword')), field('path', $.text)),

  element: ($) => choice(...vocabulary.elements.map((element) => $[rule_name(element.keyword)])),
};

for (const element of vocabulary.elements) {
  const name = rule_name(element.keyword);
  rules[name] = ($) => element_of($, element);
  rules[`_fact_of_${name}`] = ($) => facts_of($, element);
  if (element.claims.length > 0) rules[`_claim_of_${name}`] = ($) => claim_of($, element);
  for (const fact of [...element.facts, ...vocabulary.common]) fact_rule(fact);
}

for (const { name, phrase, form } of fact_rules.values()) {
  rules[name] = ($) => seq(field('phrase', leaf($, phrase, 'phrase')), rule_of($, form));
}

const values = {
  _claimed: ($) => seq(
    leaf($, 'should be', 'link'),
    field('value', $._value),
    optional(seq(leaf($, 'within', 'link'), field('within', $.length))),
  ),

  // Names and places.

  name: ($) => $._word,
  slug: ($) => $._word,
  grid_line: ($) => choice($._word, $._whole, $._decimal),
  grid_ref: ($) => choice(
    field('line', $.grid_line),
    prec.dynamic(1, seq(
      field('line', $.grid_line),
      leaf_of($, ['plus', 'less'], 'operator'),
      field('offset', $.length),
    )),
  ),
  point: ($) => seq(field('x', $.grid_ref), '/', field('y', $.grid_ref)),
  line: ($) => seq(field('from', $.point), leaf($, 'to', 'link'), field('to', $.point)),
  rect: ($) => seq(
    field('x_from', $.grid_ref), leaf($, 'to', 'link'), field('x_to', $.grid_ref),
    leaf($, 'by', 'link'),
    field('y_from', $.grid_ref), leaf($, 'to', 'link'), field('y_to', $.grid_ref),
  ),
  side: ($) => one_of(vocabulary.sides.map((side) => spelt($, side))),

  // Single values.

  length: ($) => $._length,
  elevation: ($) => choice($._length, $._elevation),
  count: ($) => $._whole,
  number: ($) => choice($._whole, $._decimal),
  words: ($) => repeat1(choice($._word, $._marking)),
  _side_of_size: ($) => choice($.length, alias(choice($._whole, $._decimal, $._with_fraction), $.length)),
  _by: ($) => alias($._size_mark, 'x'),

  // Members.

  member: ($) => choice(
    seq(optional(field('plies', $.plies)), $._section_and_stuff),
    seq(optional(field('plies', $.plies)), field('section', alias($._product, $.section)), optional($._stuff)),
  ),
  _sure_member: ($) => choice(
    $._section_and_stuff,
    seq(field('plies', $.plies), $._section_and_stuff),
    seq(field('plies', $.plies), field('section', alias($._product, $.section)), optional($._stuff)),
  ),
  plies: ($) => prec(-1, choice(
    alias($._ply, $.count),
    seq($.count, leaf($, 'of', 'link')),
    seq('(', $.count, ')'),
  )),
  _section_and_stuff: ($) => choice(
    seq(field('section', $.section), optional($._make), optional($._stuff)),
    seq(field('section', alias($._depth, $.section)), $._make, optional($._stuff)),
  ),
  section: ($) => choice(
    $.nominal,
    $.rolled,
    seq(alias($._tube_mark, $.shape), choice(seq($._side_of_size, $._by, $._side_of_size), $.nominal), $._by, $._side_of_size),
    seq(leaf($, 'pipe', 'shape'), $._side_of_size, $._by, $._side_of_size),
    seq(leaf($, 'filled pipe', 'shape'), $._side_of_size),
    seq($._side_of_size, $._by, $._side_of_size),
  ),
  _depth: ($) => $._side_of_size,
  // A product may be called what opens another section; what comes behind tells.
  _product: ($) => choice(
    $.name,
    alias($._tube_mark, $.name),
    ...['pipe', 'filled'].map((word) => alias(spelt($, word), $.name)),
  ),
  _make: ($) => field('make', leaf_of($, vocabulary.makes, 'make')),
  _stuff: ($) => {
    const species = field('species', leaf_of($, vocabulary.species, 'species'));
    const grade = field('grade', $.grade);
    return choice(
      seq($._treated, optional(species), optional(grade), optional($._treated)),
      seq(species, optional(grade), optional($._treated)),
      seq(grade, optional($._treated)),
    );
  },
  _treated: ($) => field('treated', leaf($, 'treated', 'mark')),
  grade: ($) => choice(
    ...vocabulary.grades.map((grade) => spelt($, grade)),
    $._marking,
    $._bar,
    $._series,
    seq(spelt($, 'class'), $._whole),
    seq(spelt($, 'No.'), $._whole),
    seq(spelt($, 'MSR'), $._marking),
  ),

  // Facts by name, sums of them, and comparisons.

  fact_name: ($) => choice(...vocabulary.factNames.map(([phrase, takes_case, joined_by]) => seq(
    ...(takes_case ? [optional(field('case', leaf_of($, vocabulary.cases, 'choice')))] : []),
    field('phrase', leaf($, phrase, 'phrase')),
    ...joined_by.flatMap((word) => [leaf($, word, 'link'), field('of', $.name)]),
  ))),
  comparison: ($) => seq(
    field('left', $.expression),
    field('relation', $.relation),
    field('right', $.expression),
    optional(seq(leaf($, 'within', 'link'), field('within', choice($.length, $.load_value)))),
  ),
  expression: ($) => seq($._term, repeat(seq(leaf_of($, ['plus', 'less'], 'operator'), $._term))),
  _term: ($) => seq(
    repeat(leaf($, 'half of', 'operator')),
    choice(seq($.number, leaf($, 'times', 'operator'), $.fact_name), $.fact_name, $._value),
  ),
  _value: ($) => choice(
    $.length,
    alias($._elevation, $.elevation),
    $.load_value,
    $.stress,
    $.area_value,
    $.percent,
    $.date,
    $.point,
    alias($._sure_member, $.member),
    $.number,
  ),

  // Tokens.

  text: () => token(choice(
    new RegExp(`"([^ \\t\\u00a0\\r\\n][^"\\r\\n]*)?"`),
    new RegExp(`[“”]([^ \\t\\u00a0\\r\\n”"][^”"\\r\\n]*)?[”"]`),
  )),
  rolled: () => /[A-WYZa-wyz]{1,2}[0-9][0-9.]*[xX×][0-9][0-9.]*/,
  _series: () => new RegExp(`PRI-[${REST}]+(-[${REST}]+)*`),
  date: () => /[0-9]{4}-[0-9]{2}-[0-9]{2}/,
  _ply: () => new RegExp(`${DIGITS}-ply`),
  percent: () => new RegExp(`${SIGN}?${NUMBER}%`),
  load_value: () => measure(vocabulary.loadUnits),
  stress: () => measure(vocabulary.stressUnits),
  area_value: () => measure(vocabulary.areaUnits),
  _length: () => new RegExp(`${SIGN}?${LENGTH}(${BLANK}+o\\.c\\.)?`),
  _elevation: () => new RegExp(`${OPENS_ELEVATION}(${LENGTH}|0)`),
  _with_fraction: () => new RegExp(`${SIGN}?${WITH_FRACTION}`),
  _whole: () => new RegExp(DIGITS),
  _decimal: () => new RegExp(`${SIGN}${DIGITS}|${SIGN}?${DIGITS}\\.${DIGITS}|${SIGN}?${NUMBER}${POWER}`),
  bar: ($) => $._bar,
  _bar: () => /#[0-9]{1,3}/,
  _marking: () => new RegExp(`${NUMBER}[A-WYZa-wyz][A-Za-z0-9]*([-.][A-Za-z0-9]+)*`),
  relation: () => /[<>]?=|[<>≤≥]/,
  _word: () => new RegExp(`${LETTER}([${REST}×]|-[${REST}])*`),
};

for (const [name, rule] of Object.entries(values)) {
  if (rules[name]) throw new Error(`two rules are named ${name}`);
  rules[name] = rule;
}

/** Rules for the words and phrases that the rules above use. */
function word_rules() {
  const $ = new Proxy({}, { get: (_, name) => ({ type: 'SYMBOL', name }) });
  for (const rule of Object.values(rules)) rule($);
  const found = {};
  for (const [name, parts] of phrases) found[name] = ($) => seq(...parts.map((part) => spelt($, part)));
  for (const parts of phrases.values()) parts.forEach((part) => spelt($, part));
  for (const [name, sides] of sides_rules) found[name] = ($) => dimensions($, sides);
  // A pattern, since a string would be a node of its own inside the leaf.
  for (const [name, word] of words) found[name] = () => new RegExp(word.replace(/[.^$*+?()[\]{}|/\\]/g, '\\$&'));
  return found;
}

module.exports = grammar({
  name: 'framing',

  word: ($) => $._word,
  externals: ($) => [$._next_element, $._next_fact, $.comment, $._size_mark, $.nominal, $._tube_mark, '…'],
  extras: ($) => [new RegExp(BLANK), $.comment],
  supertypes: ($) => [$.element],
  conflicts: ($) => [[$.grid_line, $.number], [$.grid_ref]],

  // Words stand before names: of two tokens that are equally long the first counts.
  rules: { source_file: rules.source_file, ...word_rules(), ...rules },
});
