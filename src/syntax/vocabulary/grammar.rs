//! The formal grammar, `grammar/storyrod.ebnf`, rendered from the vocabulary.

use crate::syntax::facts::expressions::CASES;
use crate::syntax::facts::member::{GRADES, MAKES, SPECIES};
use crate::syntax::form::{Form, Kind};
use crate::syntax::lexer::unit_spellings;
use crate::syntax::value::Side;
use crate::syntax::vocabulary::notation::kind_name;
use crate::syntax::vocabulary::{
    CLAIM, COMMON, ELEMENTS, ElementSpec, FACT_NAMES, FactNameSpec, FactSpec, Naming,
};

/// The whole grammar, in the notation of the XML recommendation, section 6.
pub fn grammar() -> String {
    let mut text = HEAD.to_owned();
    text.push_str(&production(
        "element",
        &choice(ELEMENTS.iter().map(|spec| rule_name(spec.keyword) + "-element")),
    ));
    for spec in ELEMENTS {
        text.push_str(&element(spec));
    }
    text.push_str("\n/* Facts of every element */\n\n");
    text.push_str(&production("any-fact", &choice(COMMON.iter().map(|fact| fact_rule("any", fact)))));
    for fact in COMMON {
        text.push_str(&production(&fact_rule("any", fact), &fact_body(fact)));
    }
    // A claim is about its own element, so no name stands behind its fact.
    text.push_str(&production("claim", &format!("claimed-{}", expression(&CLAIM.form))));
    text.push_str(&production("claimed-fact", &claimed_fact()));
    text.push_str("\n/* Facts by name, in comparisons and claims */\n\n");
    text.push_str(&production("fact", &choice(FACT_NAMES.iter().map(fact_name))));
    text.push_str(VALUES);
    let units = ["unit", "load-unit", "stress-unit", "area-unit"].into_iter().zip(unit_spellings());
    for (rule, spellings) in units {
        text.push_str(&production(rule, &choice(spellings.into_iter().map(quoted))));
    }
    text.push_str(&production("side", &choice(Side::ALL.into_iter().map(|side| quoted(side.word())))));
    for (rule, words) in [("case", CASES), ("make", MAKES), ("species", SPECIES), ("named-grade", GRADES)] {
        text.push_str(&production(rule, &choice(words.iter().copied().map(quoted))));
    }
    text
}

fn element(spec: &ElementSpec) -> String {
    let name = rule_name(spec.keyword);
    let mut text = format!("\n/* {} */\n\n", spec.keyword);
    let keyword = choice(std::iter::once(&spec.keyword).chain(spec.also).map(|word| quoted(word)));
    let keyword = if spec.also.is_empty() { keyword } else { format!("({keyword})") };
    let heading = match spec.naming {
        Naming::Name => format!("{keyword} name text?"),
        Naming::Title => format!("{keyword} text?"),
        Naming::None => keyword,
    };
    text.push_str(&production(
        &format!("{name}-element"),
        &format!("{heading} end (inner-line | indent ({name}-fact | any-fact | claim) end)*"),
    ));
    text.push_str(&production(
        &format!("{name}-fact"),
        &choice(spec.facts.iter().map(|fact| fact_rule(&name, fact))),
    ));
    for fact in spec.facts {
        text.push_str(&production(&fact_rule(&name, fact), &fact_body(fact)));
    }
    text
}

fn production(name: &str, body: &str) -> String {
    format!("{name} ::= {body}\n")
}

fn rule_name(keyword: &str) -> String {
    keyword.replace(' ', "-")
}

fn fact_rule(element: &str, fact: &FactSpec) -> String {
    format!("{element}-{}", rule_name(fact.phrase))
}

fn fact_body(fact: &FactSpec) -> String {
    let behind = expression(&fact.form);
    let choice = matches!(fact.form, Form::OneOf(_));
    match (behind.as_str(), choice) {
        ("", _) => quoted(fact.phrase),
        (_, true) => format!("{} ({behind})", quoted(fact.phrase)),
        (_, false) => format!("{} {behind}", quoted(fact.phrase)),
    }
}

fn fact_name(name: &FactNameSpec) -> String {
    let case = if name.takes_case { "case? " } else { "" };
    let arguments: String =
        name.arguments().map(|argument| format!(" {} name", quoted(argument.joined_by))).collect();
    format!("{case}{}{arguments}", quoted(name.words))
}

fn claimed_fact() -> String {
    let facts = FACT_NAMES.iter().filter(|name| name.second.is_none());
    let words =
        facts.map(|name| format!("{}{}", if name.takes_case { "case? " } else { "" }, quoted(name.words)));
    choice(words)
}

fn choice(rules: impl Iterator<Item = String>) -> String {
    rules.collect::<Vec<_>>().join(" | ")
}

fn quoted(words: &str) -> String {
    format!("'{words}'")
}

fn expression(form: &Form) -> String {
    match form {
        Form::Nothing => String::new(),
        Form::Words(words) | Form::Mark(words) => quoted(words),
        Form::Slot(_, kind) => value(kind),
        Form::Comma => "','".to_owned(),
        Form::Sequence(parts) => parts.iter().map(grouped).collect::<Vec<_>>().join(" "),
        Form::Optional(inner) => format!("{}?", bound(inner)),
        Form::OneOf(choices) => choice(choices.iter().map(expression)),
        Form::List(inner) => format!("{} (',' {})*", grouped(inner), grouped(inner)),
    }
}

fn value(kind: &Kind) -> String {
    match kind {
        Kind::Word([word]) => quoted(word),
        Kind::Word(words) => format!("({})", choice(words.iter().map(|word| quoted(word)))),
        Kind::Dimensions(least, most) => {
            let needed = vec!["inches"; *least].join(" 'x' ");
            needed + &" ('x' inches)?".repeat(most.saturating_sub(*least))
        }
        other => kind_name(other).to_owned(),
    }
}

/// An expression that can stand in a sequence.
fn grouped(form: &Form) -> String {
    let text = expression(form);
    if matches!(form, Form::OneOf(_)) { format!("({text})") } else { text }
}

/// An expression that a sign can follow.
fn bound(form: &Form) -> String {
    let text = expression(form);
    if text.contains(' ') && !(text.starts_with('(') && matches!(form, Form::Slot(_, Kind::Word(_)))) {
        format!("({text})")
    } else {
        text
    }
}

const HEAD: &str = r#"/* The format of *.framing files.

   Rendered from the vocabulary; never edited by hand: `UPDATE=1 cargo test` writes it.
   Notation: the XML recommendation's (section 6), as it is or with blanks inside quotes, where one blank stands for
   one or more blanks or tabs. Between the parts of a line blanks may stand; no part goes on over a line's end.
   Words are compared with their case. Of two phrases that fit, the longer is read. `@` says `at`, a multiplication
   sign or an `X` says `x`; in a size it may touch the figures. Primes and typographic quotes mark feet and inches too,
   and fractions may be single characters. A mark behind a number touches it; a comment stands behind a blank or first
   in its line; the last line may end with the file.
   Facts may stand in any order; which must stand and which may repeat is in reference.md. */

file ::= (blank-line | include | element)*
include ::= 'include' text end
end ::= comment? line-end
blank-line ::= comment? line-end
inner-line ::= indent? comment? line-end
comment ::= '--' [^#xA#xD]*
line-end ::= #xA | #xD | #xD #xA
indent ::= (#x20 | #x9)+
"#;

const VALUES: &str = r##"
/* Values */

name ::= letter (letter | digit | '_' | '.' | '-' (letter | digit))*
         /* no 'x' between digits, no '.' at the end, no word that opens an element or joins the parts of a line */
gridline ::= name | digit+ ('.' digit+)?
slug ::= [a-z] [a-z0-9-]*
text ::= '"' ([^ #xA#xD] [^#xA#xD"]*)? '"'
         /* the first quote stands behind a blank; typographic quotes too */
words ::= (word | mark)+
word ::= letter (letter | digit | '_' | '.' | '-' (letter | digit))*
mark ::= number letter (letter | digit | '-' | '.')*
count ::= digit+
number ::= '-'? digit+ ('.' digit+)? ('e' ('-' | '+')? digit+)?
percent ::= number '%'
date ::= digit digit digit digit '-' digit digit '-' digit digit
bar ::= '#' digit+

length ::= '-'? (feet | feet ('-' | ' ')? inch-mark | inch-mark | (number | mixed) ' '? unit '.'?) 'o.c.'?
feet ::= number "'"
inch-mark ::= (number | mixed) '"'
mixed ::= (digit+ ('-' | ' '))? fraction
fraction ::= digit+ '/' digit+
elevation ::= ('EL' | 'EL.')? ('+' | '-' | '(-)')? length | 'EL'? (#xB1 | '+/-') '0'
inches ::= length | mixed | number
load ::= number ' '? load-unit
stress ::= number ' '? stress-unit
area ::= number ' '? area-unit
value ::= length | elevation | load | stress | area | percent | date | number | point | member

grid-ref ::= gridline (('plus' | 'less') length)?
point ::= grid-ref '/' grid-ref
line ::= point 'to' point
rect ::= grid-ref 'to' grid-ref 'by' grid-ref 'to' grid-ref

member ::= plies? (section make? | inches make | name make?) 'treated'? species? grade? 'treated'?
plies ::= digit+ '-ply' | digit+ 'of' | '(' digit+ ')'
section ::= nominal | inches 'x' inches | rolled | tube | pipe
nominal ::= digit+ 'x' digit+
rolled ::= letter letter? number 'x' number
tube ::= 'HSS' inches 'x' inches 'x' inches
pipe ::= 'pipe' inches 'x' inches | 'filled pipe' inches
grade ::= named-grade | mark | bar | 'class' digit+ | 'No.' digit+ | 'PRI-' (letter | digit)+ | 'MSR' mark

comparison ::= expression ('=' | '<' | '<=' | '>' | '>=') expression ('within' (length | load))?
expression ::= term (('plus' | 'less') term)*
term ::= 'half of'* (number 'times' fact | fact | value)

letter ::= [A-Za-z]
           /* and whatever else Unicode calls a letter */
digit ::= [0-9]
"##;

#[cfg(test)]
mod tests {
    use std::collections::HashSet;

    use super::*;

    #[test]
    fn the_committed_grammar_is_the_rendered_one() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/grammar/storyrod.ebnf");
        if std::env::var_os("UPDATE").is_some() {
            std::fs::write(path, grammar()).unwrap();
        }
        let committed = std::fs::read_to_string(path).unwrap_or_default();
        assert!(committed == grammar(), "grammar/storyrod.ebnf is stale: run `UPDATE=1 cargo test`");
    }

    #[test]
    fn every_rule_the_grammar_uses_stands_in_it_once() {
        let text = grammar();
        let mut defined = HashSet::new();
        for line in text.lines() {
            if let Some((name, _)) = line.split_once(" ::= ") {
                assert!(defined.insert(name), "{name} stands twice");
            }
        }
        for (name, used) in text.lines().filter_map(|line| line.split_once(" ::= ")) {
            for word in rule_words(used) {
                assert!(defined.contains(word), "{name} uses {word}");
            }
        }
    }

    /// The rule names in the body of a production: what stands outside quotes, classes and character codes.
    fn rule_words(body: &str) -> Vec<&str> {
        let mut words = Vec::new();
        let mut rest = body;
        while let Some(first) = rest.chars().next() {
            let length = match first {
                '\'' | '"' => rest[1..].find(first).unwrap() + 2,
                '[' => rest.find(']').unwrap() + 1,
                '#' => rest.find([' ', ')']).unwrap_or(rest.len()),
                letter if letter.is_ascii_lowercase() => {
                    let end = rest.find(|c: char| !c.is_ascii_lowercase() && c != '-').unwrap_or(rest.len());
                    words.push(&rest[..end]);
                    end
                }
                other => other.len_utf8(),
            };
            rest = &rest[length..];
        }
        words
    }
}
