//! One chunk: its first line, then its facts, line by line. A line that can't be read costs that line.

use crate::syntax::facts::FormReaders;
use crate::syntax::form::{Form, Kind};
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::lines::{ScannedChunk, ScannedLine, TokenSheet};
use crate::syntax::names;
use crate::syntax::tree::{Body, Broken, Fact, Heading, Line, LineKind, Opening, Part};
use crate::syntax::value::{FactName, Section, Value};
use crate::syntax::vocabulary::{CLAIM, ELEMENTS, ElementKind, ElementSpec, FactNameSpec, FactSpec, Naming};
use crate::syntax::{Problem, ProblemKind};
use crate::text::{LocalSpan, nearest};

/// What stands behind `should be`.
static CLAIMED: Form = Form::Sequence(&[
    Form::Slot("value", Kind::AnyValue),
    Form::Optional(&Form::Sequence(&[Form::Words("within"), Form::Slot("within", Kind::Length)])),
]);

/// Reads a chunk from its tokens.
pub(super) fn body<'t>(
    chunk: ScannedChunk,
    sheet: &'t TokenSheet<'t>,
    readers: &mut FormReaders<'t>,
) -> Body {
    let mut reading = Reading {
        body: Body {
            opening: Opening::Nothing,
            facts: Vec::new(),
            broken: Vec::new(),
            lines: Vec::with_capacity(chunk.lines.len()),
            problems: chunk.problems,
            length: chunk.length,
        },
        facts: Vec::new(),
        first_places: Vec::new(),
        is_lost_fact_reported: false,
    };
    for line in &chunk.lines {
        let tokens = sheet.tokens_of(line);
        let kind = match tokens.first() {
            None if line.is_unreadable => LineKind::Broken,
            None if line.comment.is_some() => LineKind::Comment,
            None => LineKind::Blank,
            Some(first) if !line.is_indented && line.span.start == 0 => reading.open(line, first, tokens),
            Some(_) => reading.fact(line, tokens, readers),
        };
        reading.body.lines.push(Line { span: line.span, kind, comment: line.comment });
    }
    let mut body = reading.body;
    body.problems.sort_by_key(|problem| problem.span.start);
    body
}

/// A chunk that is being read.
struct Reading {
    body: Body,
    /// The facts that the element may have.
    facts: Vec<&'static FactSpec>,
    /// Where each of them stood first.
    first_places: Vec<Option<LocalSpan>>,
    is_lost_fact_reported: bool,
}

/// Why a line is broken, where, and the phrase that was understood.
struct Failure {
    phrase: Option<&'static str>,
    /// `None` when another problem says it already.
    problem: Option<Problem>,
    /// The value that the line would have given is not to be missed.
    is_superfluous: bool,
}

impl Failure {
    fn new(phrase: Option<&'static str>, span: LocalSpan, kind: ProblemKind) -> Self {
        Self { phrase, problem: Some(Problem { span, kind }), is_superfluous: false }
    }

    fn already_told(phrase: Option<&'static str>) -> Self {
        Self { phrase, problem: None, is_superfluous: false }
    }
}

impl Reading {
    fn report(&mut self, span: LocalSpan, kind: ProblemKind) {
        self.body.problems.push(Problem { span, kind });
    }

    fn open(&mut self, line: &ScannedLine, first: &Token<'_>, tokens: &[Token<'_>]) -> LineKind {
        if first.is_word("include") {
            let path = match tokens {
                [_, path] if path.kind == TokenKind::Text => Some(unquoted(path)),
                _ => {
                    if !line.is_unreadable {
                        self.report(first.span, ProblemKind::IncludeUnclear);
                    }
                    None
                }
            };
            self.body.opening = Opening::Include(path);
            return LineKind::Opening;
        }
        let Some((spec, n_words)) = element_opened(tokens) else {
            let name = tokens.get(1).filter(|token| may_name(token));
            self.body.opening = Opening::Unknown(first.span, name.map(|name| name.text.into()));
            if first.kind != TokenKind::Wrong {
                let words = ELEMENTS
                    .iter()
                    .flat_map(|spec| [spec.keyword].into_iter().chain(spec.also.iter().copied()));
                self.report(first.span, ProblemKind::UnknownElement(nearest(first.text, words)));
            }
            return LineKind::Opening;
        };
        let (keyword, rest) = tokens.split_at(n_words);
        let heading = self.heading(spec, covering(keyword), rest);
        self.body.opening = Opening::Element(heading);
        self.facts = spec.all_facts().collect();
        self.first_places = vec![None; self.facts.len()];
        LineKind::Opening
    }

    fn heading(&mut self, spec: &'static ElementSpec, keyword: LocalSpan, rest: &[Token<'_>]) -> Heading {
        let mut rest = rest;
        let mut heading = Heading { kind: spec.kind, keyword, name: None, title: None };
        if spec.naming == Naming::Name {
            match rest.split_first() {
                None => self.report(keyword, ProblemKind::NameMissing(spec.kind)),
                Some((token, _)) if token.kind == TokenKind::Text => {
                    self.report(keyword, ProblemKind::NameMissing(spec.kind));
                }
                Some((token, behind)) => {
                    if token.kind == TokenKind::Word {
                        heading.name = Some((token.text.into(), token.span));
                    }
                    if token.kind != TokenKind::Wrong && names::is_reserved(token.text) {
                        self.report(token.span, ProblemKind::NameReserved);
                    } else if token.kind != TokenKind::Wrong && !may_name(token) {
                        self.report(token.span, ProblemKind::NameMalformed);
                    }
                    rest = behind;
                }
            }
        }
        if spec.naming != Naming::None
            && let Some((token, behind)) = rest.split_first()
            && token.kind == TokenKind::Text
        {
            heading.title = Some(unquoted(token));
            rest = behind;
        }
        if let Some(token) = rest.first()
            && rest.iter().all(|token| token.kind != TokenKind::Wrong)
        {
            self.report(token.span, ProblemKind::HeadingUnclear);
        }
        heading
    }

    fn fact<'t>(
        &mut self,
        line: &ScannedLine,
        tokens: &'t [Token<'t>],
        readers: &mut FormReaders<'t>,
    ) -> LineKind {
        match self.read_fact(line, tokens, readers) {
            Ok(fact) => {
                self.body.facts.push(fact);
                LineKind::Fact(self.body.facts.len() - 1)
            }
            Err(failure) => {
                self.body.problems.extend(failure.problem);
                if !failure.is_superfluous {
                    self.body.broken.push(Broken { phrase: failure.phrase, span: covering(tokens) });
                }
                LineKind::Broken
            }
        }
    }

    fn read_fact<'t>(
        &mut self,
        line: &ScannedLine,
        tokens: &'t [Token<'t>],
        readers: &mut FormReaders<'t>,
    ) -> Result<Fact, Failure> {
        let Opening::Element(Heading { kind, .. }) = self.body.opening else {
            return Err(self.lost_fact(tokens));
        };
        let place = self.longest_phrase(tokens);
        let phrase = place.map(|(_, spec, _)| spec.phrase);
        if line.is_unreadable {
            return Err(Failure::already_told(phrase));
        }
        if !line.is_indented {
            let word = tokens.first().map(|token| token.span).unwrap_or_default();
            return Err(Failure::new(phrase, word, ProblemKind::UnknownElement(None)));
        }
        if let Some(should) = claim_at(tokens) {
            return claim(kind, tokens, should, readers);
        }
        let Some((index, spec, n_words)) = place else { return Err(self.unknown_fact(kind, tokens)) };
        let (phrase_tokens, rest) = tokens.split_at(n_words);
        let phrase_span = covering(phrase_tokens);
        let parts = read(&spec.form, spec.phrase, tokens, n_words, readers)?;
        if let Some(readings) = wood_or_steel(kind, spec, &parts) {
            return Err(Failure::new(
                Some(spec.phrase),
                covering(rest),
                ProblemKind::UnclearDimension(readings),
            ));
        }
        let span = covering(tokens);
        if let Some(first) = self.first_places.get_mut(index) {
            match first {
                Some(first) if !spec.repeatable => {
                    let repeated = ProblemKind::FactRepeated(spec.phrase, *first);
                    let failure = Failure::new(Some(spec.phrase), phrase_span, repeated);
                    return Err(Failure { is_superfluous: true, ..failure });
                }
                Some(_) => {}
                None => *first = Some(span),
            }
        }
        let value = if rest.is_empty() { phrase_span } else { covering(rest) };
        Ok(Fact { spec, phrase: phrase_span, value, span, parts })
    }

    /// A fact that belongs to no element. Under a word that opens nothing, that word is the one mistake.
    fn lost_fact(&mut self, tokens: &[Token<'_>]) -> Failure {
        let is_told = self.is_lost_fact_reported || matches!(self.body.opening, Opening::Unknown(..));
        self.is_lost_fact_reported = true;
        if is_told {
            Failure::already_told(None)
        } else {
            Failure::new(None, covering(tokens), ProblemKind::FactBeforeElement)
        }
    }

    /// The fact with the longest phrase that begins the line: its place in the list, and how many words it has.
    fn longest_phrase(&self, tokens: &[Token<'_>]) -> Option<(usize, &'static FactSpec, usize)> {
        let fits = self.facts.iter().enumerate();
        fits.filter_map(|(at, spec)| Some((at, *spec, words_at_start(spec.phrase, tokens)?)))
            .max_by_key(|(_, _, n_words)| *n_words)
    }

    fn unknown_fact(&self, kind: ElementKind, tokens: &[Token<'_>]) -> Failure {
        let phrases = self.facts.iter().filter_map(|spec| {
            let n_words = spec.phrase.split(' ').count();
            nearest(&joined(tokens.get(..n_words)?), [spec.phrase])
        });
        let span = tokens.first().map(|token| token.span).unwrap_or_default();
        Failure::new(None, span, ProblemKind::UnknownFact(kind, phrases.max_by_key(|phrase| phrase.len())))
    }
}

/// The parts that `form` finds behind the first `n_words` tokens.
fn read<'t>(
    form: &'static Form,
    phrase: &'static str,
    tokens: &'t [Token<'t>],
    n_words: usize,
    readers: &mut FormReaders<'t>,
) -> Result<Vec<Part>, Failure> {
    let rest = tokens.get(n_words..).unwrap_or_default();
    readers.read(form, rest).map_err(|misread| {
        let found = rest.get(misread.at);
        let end = covering(tokens).end;
        let span = found.map_or(LocalSpan::new(end, end), |token| token.span);
        let kind = match found.and_then(|token| readings_of_bare(token, &misread.expected)) {
            Some(readings) => ProblemKind::UnclearDimension(readings),
            None => {
                let found = found.map(|token| token.text.into());
                ProblemKind::NotUnderstood { phrase, expected: misread.expected, found }
            }
        };
        Failure::new(Some(phrase), span, kind)
    })
}

/// The readings of a number without a unit where a length should stand. An elevation is never meant in inches.
fn readings_of_bare(token: &Token<'_>, expected: &[Box<str>]) -> Option<Vec<Box<str>>> {
    let expects = |words: &str| expected.iter().any(|expected| **expected == *words);
    let of = |unit: &str| Box::from(format!("{}{unit}", token.text));
    match token.kind {
        TokenKind::Fraction(_) if expects("a length") => Some(vec![of("\"")]),
        TokenKind::Whole(_) | TokenKind::Decimal(_) if expects("a length") => {
            Some(vec![of(" in"), of(" ft")])
        }
        TokenKind::Whole(_) | TokenKind::Decimal(_) if expects("an elevation") => Some(vec![of(" ft")]),
        _ => None,
    }
}

/// Where `should be` begins behind words.
fn claim_at(tokens: &[Token<'_>]) -> Option<usize> {
    let words = tokens.iter().take_while(|token| token.kind == TokenKind::Word).count();
    let tokens = tokens.get(..words)?;
    let should =
        tokens.windows(2).position(|two| matches!(two, [a, b] if a.is_word("should") && b.is_word("be")))?;
    (should > 0).then_some(should)
}

fn claim<'t>(
    kind: ElementKind,
    tokens: &'t [Token<'t>],
    should: usize,
    readers: &mut FormReaders<'t>,
) -> Result<Fact, Failure> {
    let (fact, rest) = tokens.split_at(should);
    let span = covering(fact);
    let claimable = || crate::syntax::vocabulary::spec_of(kind).claimable();
    let Some((spec, case)) = claimable().find_map(|spec| Some((spec, claimed_case(spec, fact)?))) else {
        let words = nearest(&joined(fact), claimable().map(|spec| spec.words));
        return Err(Failure::new(None, span, ProblemKind::UnknownFact(kind, words)));
    };
    let value = Value::FactName(Box::new(FactName { fact: spec.words.into(), of: Vec::new(), case, span }));
    let mut parts = vec![Part { label: "fact", value, span }];
    parts.extend(read(&CLAIMED, CLAIM.phrase, tokens, should + 2, readers)?);
    let phrase = covering(rest.get(..2).unwrap_or_default());
    let value = covering(rest.get(2..).unwrap_or_default());
    Ok(Fact { spec: &CLAIM, phrase, value, span: covering(tokens), parts })
}

/// When these words are the fact, the load case before it.
fn claimed_case(spec: &FactNameSpec, words: &[Token<'_>]) -> Option<Option<Box<str>>> {
    if words_at_start(spec.words, words) == Some(words.len()) {
        return Some(None);
    }
    let (case, rest) = words.split_first()?;
    let is_case = spec.takes_case && ["dead", "live", "snow", "all"].contains(&case.text);
    (is_case && words_at_start(spec.words, rest) == Some(rest.len())).then(|| Some(case.text.into()))
}

/// A bare `4x4` under `column` can be wood or a steel tube: both readings.
fn wood_or_steel(kind: ElementKind, spec: &FactSpec, parts: &[Part]) -> Option<Vec<Box<str>>> {
    let [Part { value: Value::Member(member), .. }] = parts else { return None };
    let Section::Nominal(width, depth) = member.section else { return None };
    let names_wood =
        member.species.is_some() || member.grade.is_some() || member.is_treated || member.plies > 1;
    (kind == ElementKind::Column && spec.phrase == "size" && !names_wood && width.min(depth) > 2).then(|| {
        vec![format!("{width}x{depth} SPF No.2").into(), format!("HSS {width} x {depth} x 1/4").into()]
    })
}

/// The element whose keyword begins the line, and how many words that is.
fn element_opened(tokens: &[Token<'_>]) -> Option<(&'static ElementSpec, usize)> {
    let keywords = |spec: &'static ElementSpec| [spec.keyword].into_iter().chain(spec.also.iter().copied());
    ELEMENTS
        .iter()
        .flat_map(|spec| keywords(spec).filter_map(|words| Some((*spec, words_at_start(words, tokens)?))))
        .max_by_key(|(_, n_words)| *n_words)
}

/// How many words `words` has, when the tokens begin with them.
fn words_at_start(words: &str, tokens: &[Token<'_>]) -> Option<usize> {
    let mut n_words = 0;
    for word in words.split(' ') {
        if !tokens.get(n_words)?.is_word(word) {
            return None;
        }
        n_words += 1;
    }
    Some(n_words)
}

fn may_name(token: &Token<'_>) -> bool {
    token.kind == TokenKind::Word && names::may_name(token.text)
}

fn joined(tokens: &[Token<'_>]) -> String {
    tokens.iter().map(|token| token.text).collect::<Vec<_>>().join(" ")
}

/// The inside of a text in quotes, and where it stands.
fn unquoted(token: &Token<'_>) -> (Box<str>, LocalSpan) {
    let inside = token.unquoted();
    let quote = token.text.chars().next().map_or(0, char::len_utf8);
    let start = token.span.start + u32::try_from(quote).unwrap_or(0);
    (inside.into(), LocalSpan::new(start, start + u32::try_from(inside.len()).unwrap_or(0)))
}

fn covering(tokens: &[Token<'_>]) -> LocalSpan {
    match (tokens.first(), tokens.last()) {
        (Some(first), Some(last)) => first.span.to(last.span),
        _ => LocalSpan::default(),
    }
}
