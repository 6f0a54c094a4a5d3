//! What each stretch of a text is, as the reader of the format finds it: what the grammar's colours are held to.

use std::collections::BTreeMap;

use storyrod::syntax::form::{Form, Kind};
use storyrod::syntax::lexer::{Token, TokenKind, Tokens};
use storyrod::syntax::names::JOINING;
use storyrod::syntax::value::{Comparison, FactName, GridRef, Point, Term, Value};
use storyrod::syntax::vocabulary::lexicon;
use storyrod::syntax::{Chunk, Fact, LineKind, Opening, Part, parse_fresh};
use storyrod::text::LocalSpan;

/// What a stretch from one byte to another is.
pub type Span = (u32, u32, &'static str);

/// The spans of a whole text, in its order, none over another.
pub fn spans(text: &str) -> Vec<Span> {
    let tree = parse_fresh(text);
    tree.chunks.iter().flat_map(|chunk| Reading::of(text, chunk)).collect()
}

/// A chunk with the stretches that the tree names, by where they begin.
struct Reading<'t> {
    text: &'t str,
    named: BTreeMap<u32, (u32, &'static str)>,
}

impl<'t> Reading<'t> {
    fn of(text: &'t str, chunk: &Chunk) -> Vec<Span> {
        let text = &text[chunk.start as usize..(chunk.start + chunk.body.length) as usize];
        let mut reading = Self { text, named: BTreeMap::new() };
        match &chunk.body.opening {
            Opening::Element(heading) => {
                reading.put(heading.keyword, "element");
                if let Some((_, span)) = &heading.name {
                    reading.put(*span, "defined");
                }
            }
            Opening::Include(Some(_)) => reading.put(LocalSpan::new(0, 7), "include"),
            _ => {}
        }
        chunk.body.facts.iter().for_each(|fact| reading.fact(fact));
        let mut spans = Vec::new();
        for line in &chunk.body.lines {
            let line_text = &text[line.span.start as usize..line.span.end as usize];
            let is_plain = line.kind == LineKind::Broken;
            spans.extend(reading.line(line_text, line.span.start, is_plain));
        }
        spans.iter_mut().for_each(|(start, end, _)| {
            *start += chunk.start;
            *end += chunk.start;
        });
        spans
    }

    fn put(&mut self, span: LocalSpan, kind: &'static str) {
        let former = self.named.insert(span.start, (span.end, kind));
        assert_eq!(former, None, "two things at one place: {}", self.at(span));
    }

    fn at(&self, span: LocalSpan) -> &'t str {
        &self.text[span.start as usize..span.end as usize]
    }

    /// The spans of a line: what the tree names, and between that what each token is.
    fn line(&self, line: &str, start: u32, is_plain: bool) -> Vec<Span> {
        let mut spans: Vec<Span> = Vec::new();
        for token in Tokens::of(line, start) {
            let is_within = spans.last().is_some_and(|(_, end, _)| token.span.start < *end);
            if is_within || matches!(token.kind, TokenKind::Blank | TokenKind::LineEnd) {
                continue;
            }
            if let Some((end, kind)) = self.named.get(&token.span.start) {
                spans.push((token.span.start, *end, kind));
            } else if !is_plain || matches!(token.kind, TokenKind::Comment | TokenKind::Text) {
                spans.push((token.span.start, token.span.end, kind_of(&token)));
            }
        }
        spans
    }

    fn fact(&mut self, fact: &Fact) {
        let is_claim = fact.spec.phrase == "should be";
        self.put(fact.phrase, if is_claim { "joining" } else { "phrase" });
        for part in &fact.parts {
            self.part(fact, part, is_claim);
        }
    }

    fn part(&mut self, fact: &Fact, part: &Part, is_claim: bool) {
        match &part.value {
            Value::Mark if JOINING.contains(&part.label) => self.put(part.span, "joining"),
            Value::Mark => self.put(part.span, "choice"),
            Value::Word(_) => {
                let kind = match kind_of_slot(&fact.spec.form, part.label) {
                    Some(Kind::Slug) => "rule",
                    Some(Kind::FreeWords) => "own-words",
                    _ if JOINING.contains(&self.at(part.span)) => "joining",
                    _ => "choice",
                };
                self.put(part.span, kind);
            }
            Value::Name(_) => self.put(part.span, "name"),
            Value::Side(_) => self.put(part.span, "side"),
            Value::FactName(name) if is_claim => {
                let case = name.case.as_ref().map_or(0, |case| case.len());
                self.fact_words(name, case, part.span.end);
            }
            Value::Dimensions(_) => self.size_marks(part.span),
            Value::Member(member) => {
                if let Some(span) = member.product_span {
                    self.put(span, "name");
                }
                self.stuff(part.span);
            }
            Value::Comparison(comparison) => self.comparison(comparison, part.span),
            value => self.value(value),
        }
    }

    fn value(&mut self, value: &Value) {
        match value {
            Value::GridRef(grid) => self.grid(grid),
            Value::Point(point) => self.point(point),
            Value::Line(line) => [&line.from, &line.to].into_iter().for_each(|point| self.point(point)),
            Value::Rect(rect) => {
                [&rect.x_from, &rect.x_to, &rect.y_from, &rect.y_to]
                    .into_iter()
                    .for_each(|grid| self.grid(grid));
            }
            Value::FactName(name) => self.fact_name(name),
            _ => {}
        }
    }

    fn grid(&mut self, grid: &GridRef) {
        self.put(grid.span, "name");
    }

    fn point(&mut self, point: &Point) {
        [&point.x, &point.y].into_iter().for_each(|grid| self.grid(grid));
    }

    fn comparison(&mut self, comparison: &Comparison, span: LocalSpan) {
        for (_, term) in comparison.left.terms.iter().chain(&comparison.right.terms) {
            match term.innermost() {
                Term::Fact(fact) | Term::Times(_, fact) => self.fact_name(fact),
                Term::Value(value) => self.value(value),
                Term::Half(_) => {}
            }
        }
        self.stuff(span);
    }

    /// `live reaction of B1 on C1`
    fn fact_name(&mut self, name: &FactName) {
        let case = name.case.as_ref().map_or(0, |case| case.len());
        let end = name.of.first().map_or(name.span.end, |(_, span)| span.start);
        // What joins the first element stands behind the fact's words.
        let words = self.at(LocalSpan::new(name.span.start, end)).trim_end();
        let joined = words.rfind([' ', '\t']).map_or(words, |at| words[..at].trim_end());
        let end = name.span.start + u32::try_from(joined.len()).unwrap();
        self.fact_words(name, case, end);
        for (_, span) in &name.of {
            self.put(*span, "name");
        }
    }

    fn fact_words(&mut self, name: &FactName, case: usize, end: u32) {
        let mut start = name.span.start;
        if case > 0 {
            let case = u32::try_from(case).unwrap();
            self.put(LocalSpan::new(start, start + case), "choice");
            let behind = self.at(LocalSpan::new(start + case, end));
            start = end - u32::try_from(behind.trim_start().len()).unwrap();
        }
        self.put(LocalSpan::new(start, end), "fact");
    }

    /// The words of a member that are no name.
    fn stuff(&mut self, span: LocalSpan) {
        let joining = lexicon::joining();
        let text = self.at(span);
        let tokens: Vec<_> = Tokens::of(text, span.start).collect();
        let mut make: Option<LocalSpan> = None;
        for token in tokens {
            let is_word = token.kind == TokenKind::Word && !joining.contains(token.text);
            let is_stuff =
                is_word && !["x", "o.c.", "half"].contains(&token.text) && self.is_free(token.span);
            match (&mut make, is_stuff) {
                // `rim board` is one thing.
                (Some(words), true) if ["board", "pipe"].contains(&token.text) => words.end = token.span.end,
                (_, true) => {
                    make.into_iter().for_each(|words| self.put(words, "material"));
                    make = Some(token.span);
                }
                _ if token.is_silent() => {}
                _ => make.take().into_iter().for_each(|words| self.put(words, "material")),
            }
        }
        make.into_iter().for_each(|words| self.put(words, "material"));
        self.size_marks(span);
    }

    fn size_marks(&mut self, span: LocalSpan) {
        let tokens: Vec<_> = Tokens::of(self.at(span), span.start).collect();
        for token in tokens.into_iter().filter(|token| token.is_word("x")) {
            self.put(token.span, "size-mark");
        }
    }

    /// Nothing that the tree names stands there.
    fn is_free(&self, span: LocalSpan) -> bool {
        self.named.range(..span.end).next_back().is_none_or(|(_, (end, _))| *end <= span.start)
    }
}

/// The kind of the slot with this label.
fn kind_of_slot(form: &Form, label: &str) -> Option<Kind> {
    match form {
        Form::Slot(name, kind) if *name == label => Some(*kind),
        Form::Optional(inner) | Form::List(inner) => kind_of_slot(inner, label),
        Form::Sequence(parts) | Form::OneOf(parts) => {
            let mut kinds = parts.iter().filter_map(|part| kind_of_slot(part, label));
            kinds.find(|kind| *kind != Kind::Text)
        }
        _ => None,
    }
}

/// What a token is that the tree does not name.
pub fn kind_of(token: &Token<'_>) -> &'static str {
    match token.kind {
        TokenKind::Comment => "comment",
        TokenKind::Text => "text",
        TokenKind::Word => "joining",
        TokenKind::Marking => "material",
        TokenKind::Length(_) | TokenKind::Elevation(_) => "length",
        TokenKind::Whole(_) | TokenKind::Decimal(_) | TokenKind::Fraction(_) => "number",
        TokenKind::Load(_) | TokenKind::Stress(_) | TokenKind::Area(_) | TokenKind::Percent(_) => "quantity",
        TokenKind::Date(_) => "date",
        TokenKind::Bar(_) => "bar",
        TokenKind::Nominal(_) => "size",
        TokenKind::Ply(_) => "plies",
        TokenKind::Comma => "comma",
        TokenKind::Slash => "slash",
        TokenKind::Open | TokenKind::Close => "paren",
        TokenKind::Relation(_) => "relation",
        TokenKind::Blank | TokenKind::LineEnd => "blank",
        TokenKind::Wrong => "wrong",
    }
}
