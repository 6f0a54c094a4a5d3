//! Colours and folds for Kate, and for whatever else reads its syntax definitions.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::path::Path;

use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::names::JOINING;
use storyrod::syntax::value::Side;
use storyrod::syntax::vocabulary::lexicon::{self, Phrases};
use storyrod::syntax::vocabulary::{ELEMENTS, ElementSpec, FACT_NAMES, spec_of};
use storyrod::syntax::{Opening, parse_fresh};

use crate::dice::Dice;
use crate::{holds, longest_first, random_specs};

/// What may not follow a word: it would be a longer word.
const WORD_ENDS: &str = r"(?![\p{L}\p{Nd}_.×]|-[\p{L}\p{Nd}_.])";
const WORD: &str = r"\p{L}(?:[\p{L}\p{Nd}_.×]|-[\p{L}\p{Nd}_.])*";
const BEHIND_BLANK: &str = r"(?:^|(?<=\s))";

/// One of the words or phrases as a pattern.
fn one_of(phrases: impl IntoIterator<Item = &'static str>) -> String {
    let phrases = longest_first(phrases);
    let pattern = phrases.join("|").replace('.', r"\.").replace(' ', r"\s+");
    if phrases.len() == 1 { pattern } else { format!("(?:{pattern})") }
}

/// Numbers as they are read: days, sizes, plies, lengths in every spelling, shares, bars; no units of letters.
fn number() -> String {
    let sign = r"(?:(?<![^\s(,=])(?:EL\.?\s*)?(?:-|−|\(-\) ?|±|\+/-|\+)|(?<!\S)EL\.?\s*)?";
    let plain = r"[0-9]+(?:\.[0-9]+)?";
    let fraction = "(?:[0-9]+/[0-9]+|[½¼¾⅛⅜⅝⅞])";
    let mixed = format!("(?:{fraction}|[0-9]+[- ]{fraction}|[0-9]+[½¼¾⅛⅜⅝⅞]|{plain})");
    let inch = "(?:[\"”″]|''|’’|′′)";
    let kinds = [
        "[0-9]{4}-[0-9]{2}-[0-9]{2}(?![\\p{L}\\p{N}/'\"-])",
        "[0-9]+[xX×][0-9]+(?![\\p{L}\\p{N}/'\"”’′″_×]|[.-][0-9½¼¾⅛⅜⅝⅞])",
        "[0-9]+-ply(?![\\p{L}\\p{N}])",
        &format!("{plain} ?(?!''|’’|′′)['’′](?:-?{mixed}{inch}?| {mixed}(?:{inch}|(?= ?in\\b)))?"),
        &format!("{mixed}{inch}"),
        &format!("{plain}%"),
        &format!("{plain}[eE][+-]?[0-9]{{1,2}}(?![\\p{{L}}\\p{{N}}])"),
        &mixed,
    ];
    format!("#[0-9]{{1,3}}|{sign}(?:{})", kinds.join("|"))
}

/// A mark that begins with a figure, not a number with its unit nor one side of a size: `24F-V4`.
fn marking() -> String {
    let units = one_of(lexicon::units());
    format!(
        r"[0-9]+(?:\.[0-9]+)?(?!{units}(?![\p{{L}}\p{{N}}_/-])|[xX×][0-9½¼¾⅛⅜⅝⅞]|[eE][0-9])\p{{L}}[\p{{L}}\p{{N}}]*(?:[-.][\p{{L}}\p{{N}}]+)*"
    )
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// A rule that looks for a pattern.
fn rule(attribute: &str, pattern: &str, more: &str) -> String {
    // What every word ends with stands once in the file, as an entity.
    let pattern = escaped(&pattern.replace(WORD_ENDS, "\0")).replace('\0', "&end;");
    format!("<RegExpr attribute=\"{attribute}\" String=\"{pattern}\"{more}/>")
}

/// Rules that look for words, each set with its attribute. What is two words or more comes first.
fn words_rules(sets: &[(&str, &Phrases)]) -> Vec<String> {
    let (mut long, mut short) = (Vec::new(), Vec::new());
    for (attribute, words) in sets {
        let (phrases, single): (Vec<_>, Vec<_>) = words.iter().partition(|word| word.contains(' '));
        for (words, rules) in [(phrases, &mut long), (single, &mut short)] {
            if !words.is_empty() {
                rules.push(rule(attribute, &format!("{}{WORD_ENDS}", one_of(words)), ""));
            }
        }
    }
    [long, short].concat()
}

fn include(context: &str) -> String {
    format!("<IncludeRules context=\"{context}\"/>")
}

fn context(name: &str, more: &str, rules: impl IntoIterator<Item = String>) -> String {
    let rules: String = rules.into_iter().map(|rule| format!("        {rule}\n")).collect();
    format!("      <context name=\"{name}\" {more}>\n{rules}      </context>\n")
}

const STAYS: &str = r##"attribute="Normal" lineEndContext="#stay""##;
const ENDS: &str = r##"attribute="Normal" lineEndContext="#pop""##;

/// The words of the format behind a fact's phrase. A name may look like those of another fact.
#[derive(Default, PartialEq, Eq, PartialOrd, Ord)]
struct Words {
    joining: Phrases,
    choices: Phrases,
    names_facts: bool,
}

impl Words {
    fn of(form: &Form) -> Self {
        let mut words = Self::default();
        words.add(form);
        words
    }

    fn add(&mut self, form: &Form) {
        match form {
            // The figure of `per 12` is a number.
            Form::Words(phrase) if JOINING.contains(phrase) => {}
            Form::Words(phrase) => _ = self.joining.insert(phrase.trim_end_matches(" 12")),
            Form::Mark(phrase) => _ = self.choices.insert(phrase),
            Form::Slot(_, Kind::Word(phrases)) => self.choices.extend(*phrases),
            Form::Slot(_, Kind::Side) => self.choices.extend(Side::ALL.iter().map(|side| side.word())),
            Form::Slot(_, Kind::Member) => self.choices.extend(lexicon::stuff().into_iter().chain(["class"])),
            Form::Slot(_, Kind::Comparison | Kind::FactName) => self.names_facts = true,
            Form::Slot(..) | Form::Nothing | Form::Comma => {}
            Form::Optional(inner) | Form::List(inner) => self.add(inner),
            Form::Sequence(parts) | Form::OneOf(parts) => parts.iter().for_each(|part| self.add(part)),
        }
    }

    fn context(&self, name: &str) -> String {
        let mut rules = vec![include("Values")];
        rules.extend(words_rules(&[("Joining", &self.joining), ("Choice", &self.choices)]));
        if self.names_facts {
            rules.push(include("Named facts"));
        }
        rules.push(include("Rest"));
        context(name, ENDS, rules)
    }
}

/// What an element's lines are read in: its facts are coloured, those of others are not; and what stands behind them,
/// each set of words in the context of its name.
fn element(spec: &ElementSpec, behind: &mut BTreeMap<Words, String>) -> String {
    let first = |pattern: &str, context: &str| {
        rule("Fact", pattern, &format!(" context=\"{context}\" firstNonSpace=\"true\""))
    };
    let mut rules = vec![include("Element lines")];
    let claimable: Vec<_> = spec.claimable().map(|name| name.words).collect();
    if !claimable.is_empty() {
        let claim = format!(r"{}(?=\s+should\s+be{WORD_ENDS})", one_of(claimable));
        rules.push(first(&claim, "Claim"));
    }
    let mut facts: Vec<_> = spec.all_facts().collect();
    // The longest phrase that begins the line is the fact.
    facts.sort_by_key(|fact| std::cmp::Reverse(fact.phrase.len()));
    rules.extend(facts.into_iter().map(|fact| {
        let named = || format!("Behind {} of {}", fact.phrase, spec.keyword);
        let context = behind.entry(Words::of(&fact.form)).or_insert_with(named);
        first(&format!("{}{WORD_ENDS}", one_of([fact.phrase])), context)
    }));
    rules.push(include("Heading"));
    context(&format!("In {}", spec.keyword), STAYS, rules)
}

/// What ends an element: whatever stands in the first column and is no fact that has lost its blanks.
fn begins_anew() -> String {
    let first = |words: &'static str| words.split(' ').next();
    let openings = ELEMENTS.iter().flat_map(|spec| lexicon::openings(spec)).filter_map(first);
    let facts = ELEMENTS.iter().flat_map(|spec| lexicon::fact_phrases(spec)).filter_map(first);
    format!(r"{}{WORD_ENDS}|(?!{}{WORD_ENDS})\S", one_of(openings), one_of(facts))
}

fn contexts() -> String {
    let comment = rule("Comment", &format!("{BEHIND_BLANK}--"), " context=\"Comment\"");
    let text = format!("{BEHIND_BLANK}(?:\"(?!\\s)[^\"]*\"?|[“”](?!\\s)[^”\"]*[”\"]?)");
    let text = rule("Text", &text, "");

    let mut lines = vec![comment.clone()];
    lines.push(rule(
        "Include",
        &format!("{}{WORD_ENDS}", lexicon::INCLUDE),
        " column=\"0\" context=\"Other\"",
    ));
    lines.extend(ELEMENTS.iter().map(|spec| {
        let pattern = format!("{}{WORD_ENDS}", one_of(lexicon::openings(spec)));
        rule("Element", &pattern, &format!(" column=\"0\" context=\"In {}\"", spec.keyword))
    }));
    lines.push(rule("Normal", r"\S", " lookAhead=\"true\" context=\"Other\""));
    let mut all = context("Lines", STAYS, lines);

    let anew = rule("Normal", &begins_anew(), " column=\"0\" lookAhead=\"true\" context=\"#pop\"");
    all += &context("Element lines", STAYS, [comment.clone(), anew]);
    let other = rule("Normal", r"\S", " firstNonSpace=\"true\" lookAhead=\"true\" context=\"Other\"");
    all += &context("Heading", STAYS, [other, text.clone(), rule("Name", WORD, "")]);

    let values = [
        "<DetectSpaces/>".to_owned(),
        comment,
        text,
        rule("Choice", &marking(), ""),
        rule("Number", &number(), " context=\"Unit\""),
        rule("Choice", "HSS(?=[0-9½¼¾⅛⅜⅝⅞])", " context=\"Unit\""),
    ];
    all += &context("Values", ENDS, values);
    let units = one_of(lexicon::units());
    let unit = [
        rule("Unit", &format!(r" ?{units}(?![\p{{L}}\p{{N}}_/-])\.?"), " context=\"#pop\""),
        rule("Joining", "[xX×](?=[0-9½¼¾⅛⅜⅝⅞])", " context=\"#pop\""),
    ];
    all += &context("Unit", &format!("{ENDS} fallthroughContext=\"#pop\""), unit);
    let rest = [
        "<keyword attribute=\"Joining\" String=\"joining\" weakDeliminator=\"-.\"/>".to_owned(),
        rule("Joining", r"(?<=\s)[xX](?=\s)", ""),
        rule("Choice", r"\p{L}+[0-9]+[xX×][0-9][\p{L}\p{Nd}_.×]*", ""),
        rule("Normal", WORD, ""),
        rule("Joining", "[<>]?=|[<>≤≥/×@]", ""),
    ];
    all += &context("Rest", ENDS, rest);
    let arguments = FACT_NAMES.iter().flat_map(|name| name.arguments()).map(|argument| argument.joined_by);
    let comparing: Phrases = arguments.chain(["half of"]).collect();
    let (facts, cases) = (lexicon::fact_names(), lexicon::cases());
    let named = words_rules(&[("Named fact", &facts), ("Joining", &comparing), ("Choice", &cases)]);
    all += &context("Named facts", ENDS, named);
    let inside = ["<DetectSpaces/>".to_owned(), include("##Alerts")];
    all += &context("Comment", r##"attribute="Comment" lineEndContext="#pop""##, inside);

    let mut behind =
        BTreeMap::from([(Words::default(), "Other".to_owned()), (Words::of(&CLAIMED), "Claim".to_owned())]);
    ELEMENTS.iter().for_each(|spec| all += &element(spec, &mut behind));
    let mut behind: Vec<_> = behind.into_iter().collect();
    behind.sort_by(|(_, name), (_, other)| name.cmp(other));
    behind.iter().for_each(|(words, name)| all += &words.context(name));
    all
}

/// What stands behind the fact of a claim.
const CLAIMED: Form = Form::Words("should be");

/// What each kind of word looks like, as every colour scheme knows it.
const STYLES: &[(&str, &str)] = &[
    ("Normal", "dsNormal"),
    ("Element", "dsKeyword"),
    ("Include", "dsImport"),
    ("Name", "dsFunction"),
    ("Fact", "dsDataType"),
    ("Named fact", "dsVariable"),
    ("Number", "dsDecVal"),
    ("Unit", "dsDecVal"),
    ("Joining", "dsOperator"),
    ("Choice", "dsConstant"),
    ("Text", "dsString"),
    ("Comment", "dsComment"),
];

fn definition() -> String {
    let end = escaped(WORD_ENDS);
    let mut text = format!(
        r#"<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE language [
  <!ENTITY end "{end}">
]>
<!-- Written by `UPDATE=1 cargo test` from the vocabulary; not edited by hand. -->
<language name="Framing" section="Other" version="1" kateversion="5.79" extensions="*.framing" indenter="normal" license="MIT OR Apache-2.0">
  <highlighting>
"#,
    );
    text += "    <list name=\"joining\">\n";
    for word in JOINING.iter().chain(&["plus", "less", "times"]).collect::<BTreeSet<_>>() {
        _ = writeln!(text, "      <item>{word}</item>");
    }
    text += "    </list>\n    <contexts>\n";
    text += &contexts();
    text += "    </contexts>\n    <itemDatas>\n";
    for (name, style) in STYLES {
        let spelled = matches!(*name, "Text" | "Comment");
        _ = writeln!(
            text,
            "      <itemData name=\"{name}\" defStyleNum=\"{style}\" spellChecking=\"{spelled}\"/>"
        );
    }
    text += r#"    </itemDatas>
  </highlighting>
  <general>
    <folding indentationsensitive="true"/>
    <emptyLines>
      <emptyLine regexpr="(?:\s+|\s*--.*)"/>
    </emptyLines>
    <comments>
      <comment name="singleLine" start="--" position="afterwhitespace"/>
    </comments>
    <keywords casesensitive="true"/>
  </general>
</language>
"#;
    text
}

#[test]
fn kate_colours_the_words_of_the_vocabulary() {
    holds("editors/kate/framing.xml", &definition());
}

/// Specs at random for `editors/kate/test/run`, which colours them. Each phrase of each element stands in one of them,
/// but for those of a project, which the samples have.
#[test]
fn the_engine_gets_specs_with_every_phrase() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("kate");
    std::fs::create_dir_all(&folder).unwrap();
    let specs = ELEMENTS.iter().filter(|spec| spec.keyword != "project");
    let phrases = specs.flat_map(|spec| spec.all_facts().map(|fact| (spec.keyword, fact.phrase)));
    let mut missing: BTreeSet<_> = phrases.collect();
    for seed in 0..12 {
        let text = random_specs::every_element(&mut Dice::new(seed));
        for chunk in parse_fresh(&text).chunks {
            let Opening::Element(heading) = &chunk.body.opening else { continue };
            for fact in &chunk.body.facts {
                missing.remove(&(spec_of(heading.kind).keyword, fact.spec.phrase));
            }
        }
        std::fs::write(folder.join(format!("{seed}.framing")), text).unwrap();
    }
    assert!(missing.is_empty(), "{missing:?}");
}
