//! Text to tokens, one line at a time. Every byte belongs to a token: the texts of a line's tokens, joined, are the line.
//!
//! `numbers` reads figures and units exactly, `mixed` numbers with fractions, `dimensions` the ways people write a
//! length.

mod dimensions;
mod mixed;
mod numbers;

use logos::{Lexer, Logos};

use crate::syntax::value::{Date, Load, Relation};
use crate::syntax::{Problem, ProblemKind};
use crate::text::LocalSpan;
use crate::units::{Area, Length, Stress};

/// One token.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Token<'t> {
    /// What it is, with the value it stands for.
    pub kind: TokenKind,
    /// Its text.
    pub text: &'t str,
    /// Where it stands.
    pub span: LocalSpan,
}

impl Token<'_> {
    /// True for blanks, comments and line ends, which mean nothing to a fact.
    pub fn is_silent(&self) -> bool {
        matches!(self.kind, TokenKind::Blank | TokenKind::Comment | TokenKind::LineEnd)
    }

    /// The text between its quotes; its whole text when it has none.
    pub fn unquoted(&self) -> &str {
        let quotes = ['"', '“', '”'];
        let inside = self.text.strip_prefix(quotes).and_then(|rest| rest.strip_suffix(quotes));
        inside.unwrap_or(self.text)
    }

    /// True when it is this word or sign. `@` says `at`, `×` says `x`.
    pub fn is_word(&self, word: &str) -> bool {
        match self.text {
            "@" => word == "at",
            "×" | "X" => word == "x" || word == self.text,
            text => text == word,
        }
    }
}

/// What a token is. The values are decoded: a length is exact, a load has its unit.
#[derive(Clone, Copy, Debug, PartialEq, Logos)]
#[logos(extras = Notes)]
#[logos(subpattern digit = r"[0-9½¼¾⅛⅜⅝⅞]")]
#[logos(subpattern sign = r"(-|−|\(-\) ?|±|\+/-|\+)")]
pub enum TokenKind {
    /// Blanks and tabs.
    #[regex(r"[ \t\u{a0}\u{feff}]+")]
    Blank,
    /// LF, CRLF or a lone CR.
    #[regex(r"\r\n|\n|\r")]
    LineEnd,
    /// From `--` to the line's end.
    #[token("--", comment)]
    Comment,
    /// Words in quotes, the quotes included.
    #[regex("[\"“”]", text)]
    Text,
    /// A word or a name.
    #[regex(r"\p{Alphabetic}([\p{Alphabetic}\p{Nd}_.×]|-[\p{Alphabetic}\p{Nd}_.])*", word)]
    #[token("×")]
    #[token("@")]
    Word,
    /// A mark that begins with a digit: `24F-V4`.
    Marking,
    /// A length with its unit.
    Length(Length),
    /// A length that can only be an elevation: `EL 98'-10"`, `±0`.
    Elevation(Length),
    /// A whole number.
    Whole(u32),
    /// A number with a decimal point, or below zero.
    Decimal(f64),
    /// A fraction without a unit, as it would be in inches.
    Fraction(Length),
    /// A load or weight.
    Load(Load),
    /// A stress or modulus.
    Stress(Stress),
    /// An area.
    Area(Area),
    /// A share of a hundred.
    Percent(f64),
    /// A day.
    Date(Date),
    /// A bar's number.
    #[regex("#[0-9]{1,3}", |lex| lex.slice().get(1..).and_then(|digits| digits.parse().ok()))]
    Bar(u32),
    /// A nominal size: `2x10`.
    Nominal((u32, u32)),
    /// `3-ply`.
    Ply(u32),
    /// `,`
    #[token(",")]
    Comma,
    /// `/` between blanks or names.
    #[token("/")]
    Slash,
    /// `(`
    #[token("(")]
    Open,
    /// `)`
    #[token(")")]
    Close,
    /// `=`, `<` and their like.
    #[regex("[<>]?=|[<>≤≥]", |lex| relation(lex.slice()))]
    Relation(Relation),
    /// What can't be read; [`Tokens::problems`] says why.
    #[regex(r"(?&digit)", quantity)]
    #[regex(r"(?&sign)(?&digit)", signed)]
    #[regex(r"EL\.?([ \t]+(?&sign)?|(?&sign))(?&digit)", elevation)]
    Wrong,
}

impl TokenKind {
    /// Can it be one side of a size?
    pub fn is_size(self) -> bool {
        matches!(
            self,
            Self::Length(_) | Self::Fraction(_) | Self::Whole(_) | Self::Decimal(_) | Self::Nominal(_)
        )
    }
}

/// The tokens of one line.
pub struct Tokens<'t> {
    lexer: Lexer<'t, TokenKind>,
    /// The last token can be one side of a size.
    is_behind_size: bool,
}

impl<'t> Tokens<'t> {
    /// The tokens of `line`, its line end included, whose first byte is byte `start` of its chunk.
    pub fn of(line: &'t str, start: u32) -> Self {
        Self { lexer: Lexer::with_extras(line, Notes { start, ..Notes::default() }), is_behind_size: false }
    }

    /// What was wrong or odd in the tokens read so far.
    pub fn problems(self) -> Vec<Problem> {
        self.lexer.extras.problems
    }
}

impl<'t> Iterator for Tokens<'t> {
    type Item = Token<'t>;

    fn next(&mut self) -> Option<Token<'t>> {
        let token = self.size_mark().or_else(|| self.whole_token())?;
        self.is_behind_size = token.kind.is_size();
        Some(token)
    }
}

impl<'t> Tokens<'t> {
    /// The `x` that touches a size on both sides: `9"x12"`. A word would swallow the figures behind it.
    fn size_mark(&mut self) -> Option<Token<'t>> {
        let rest = self.lexer.remainder();
        let figures = rest.strip_prefix(['x', 'X', '×']).filter(|_| self.is_behind_size)?;
        figures
            .starts_with(dimensions::begins)
            .then(|| self.token(TokenKind::Word, rest.len() - figures.len()))
    }

    fn whole_token(&mut self) -> Option<Token<'t>> {
        let kind = self.lexer.next()?;
        let kind = kind.unwrap_or_else(|()| stray(&mut self.lexer));
        let Some(kept) = self.lexer.extras.kept.take() else {
            return Some(Token { kind, text: self.lexer.slice(), span: span(&self.lexer) });
        };
        // The library's lexer can't give bytes back: begin again where the token begins.
        let start = self.lexer.span().start;
        self.lexer = Lexer::with_extras(self.lexer.source(), std::mem::take(&mut self.lexer.extras));
        self.lexer.bump(start);
        Some(self.token(kind, kept))
    }

    /// A token of the next `length` bytes.
    fn token(&mut self, kind: TokenKind, length: usize) -> Token<'t> {
        let start = self.lexer.span().end;
        self.lexer.bump(length);
        let text = self.lexer.source().get(start..start + length).unwrap_or("");
        let start = self.lexer.extras.start.saturating_add(u32::try_from(start).unwrap_or(u32::MAX));
        let end = start.saturating_add(u32::try_from(length).unwrap_or(u32::MAX));
        Token { kind, text, span: LocalSpan::new(start, end) }
    }
}

/// The spellings of the units of lengths, loads, stresses and areas, in this order.
pub fn unit_spellings() -> [Vec<&'static str>; 4] {
    numbers::unit_spellings()
}

/// What the lexer carries along.
#[derive(Default)]
pub struct Notes {
    start: u32,
    problems: Vec<Problem>,
    /// How many bytes of the token to keep, when its end belongs to the next one.
    kept: Option<usize>,
}

/// What `dimensions` and `numbers` make of a text's beginning.
struct Reading {
    /// How many bytes of the text it is.
    length: usize,
    kind: TokenKind,
    problem: Option<ProblemKind>,
}

fn span(lexer: &Lexer<'_, TokenKind>) -> LocalSpan {
    let at = |byte: usize| lexer.extras.start.saturating_add(u32::try_from(byte).unwrap_or(u32::MAX));
    LocalSpan::new(at(lexer.span().start), at(lexer.span().end))
}

fn note(lexer: &mut Lexer<'_, TokenKind>, kind: ProblemKind) {
    let span = span(lexer);
    lexer.extras.problems.push(Problem { span, kind });
}

fn stray(lexer: &mut Lexer<'_, TokenKind>) -> TokenKind {
    note(lexer, ProblemKind::StrayCharacter);
    TokenKind::Wrong
}

/// The character before the token; `None` at the line's start.
fn before(lexer: &Lexer<'_, TokenKind>) -> Option<char> {
    lexer.source().get(..lexer.span().start)?.chars().next_back()
}

fn is_blank(character: char) -> bool {
    matches!(character, ' ' | '\t' | '\u{a0}' | '\u{feff}')
}

/// The rest of the line behind the token, without its end.
fn line_rest<'t>(lexer: &Lexer<'t, TokenKind>) -> &'t str {
    let rest = lexer.remainder();
    rest.split(['\r', '\n']).next().unwrap_or(rest)
}

fn comment(lexer: &mut Lexer<'_, TokenKind>) -> TokenKind {
    if before(lexer).is_some_and(|character| !is_blank(character)) {
        return stray(lexer);
    }
    lexer.bump(line_rest(lexer).len());
    TokenKind::Comment
}

fn text(lexer: &mut Lexer<'_, TokenKind>) -> TokenKind {
    let opens = before(lexer).is_none_or(is_blank);
    if !opens || lexer.remainder().chars().next().is_none_or(is_blank) {
        return stray(lexer);
    }
    let rest = line_rest(lexer);
    let closing: &[char] = if lexer.slice() == "\"" { &['"'] } else { &['”', '"'] };
    match rest.split_once(closing) {
        Some((inside, behind)) => {
            let quote = rest.len() - behind.len() - inside.len();
            lexer.bump(inside.len() + quote);
            TokenKind::Text
        }
        None => {
            lexer.bump(rest.trim_end_matches(is_blank).len());
            note(lexer, ProblemKind::UnclosedText);
            TokenKind::Wrong
        }
    }
}

fn word(lexer: &mut Lexer<'_, TokenKind>) -> TokenKind {
    // `HSS4x4x1/4`: the figures begin behind the letters.
    let figures = lexer.slice().strip_prefix("HSS").filter(|rest| rest.starts_with(dimensions::begins));
    if let Some(figures) = figures {
        lexer.extras.kept = Some(lexer.slice().len() - figures.len());
    }
    TokenKind::Word
}

fn quantity(lexer: &mut Lexer<'_, TokenKind>) -> TokenKind {
    settle(lexer, dimensions::quantity)
}

fn signed(lexer: &mut Lexer<'_, TokenKind>) -> TokenKind {
    if before(lexer).is_some_and(|character| !is_blank(character) && !matches!(character, '(' | ',' | '=')) {
        return stray(lexer);
    }
    settle(lexer, dimensions::signed)
}

fn elevation(lexer: &mut Lexer<'_, TokenKind>) -> TokenKind {
    settle(lexer, dimensions::elevation)
}

fn settle(lexer: &mut Lexer<'_, TokenKind>, read: fn(&str) -> Reading) -> TokenKind {
    let reading = read(lexer.source().get(lexer.span().start..).unwrap_or(""));
    lexer.bump(reading.length.saturating_sub(lexer.slice().len()));
    if let Some(problem) = reading.problem {
        note(lexer, problem);
    }
    reading.kind
}

fn relation(sign: &str) -> Option<Relation> {
    match sign {
        "=" => Some(Relation::Equal),
        "<" => Some(Relation::Less),
        "<=" | "≤" => Some(Relation::AtMost),
        ">" => Some(Relation::More),
        ">=" | "≥" => Some(Relation::AtLeast),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn tokens(line: &str) -> (Vec<Token<'_>>, Vec<Problem>) {
        let mut tokens = Tokens::of(line, 0);
        let all = tokens.by_ref().collect();
        (all, tokens.problems())
    }

    /// The one token of `text`, with what is wrong with it.
    fn one(text: &str) -> (TokenKind, Option<ProblemKind>) {
        let (tokens, problems) = tokens(text);
        assert_eq!(tokens.len(), 1, "{text}: {tokens:?}");
        assert!(problems.len() <= 1, "{text}: {problems:?}");
        (tokens[0].kind, problems.into_iter().next().map(|problem| problem.kind))
    }

    fn sixteenths(whole: i64, part: i64) -> Length {
        Length::sixteenths(whole, part)
    }

    /// Every spelling here is common practice on drawings and in framers' notes; the values are plain arithmetic.
    #[test]
    fn lengths_as_people_write_them() {
        let foot = 12;
        for (text, length) in [
            ("9-1/2\"", sixteenths(9, 8)),
            ("9 1/2\"", sixteenths(9, 8)),
            ("9½\"", sixteenths(9, 8)),
            ("9-½\"", sixteenths(9, 8)),
            ("9.5\"", sixteenths(9, 8)),
            ("9-1/2 in.", sixteenths(9, 8)),
            ("3/4\"", sixteenths(0, 12)),
            ("¾\"", sixteenths(0, 12)),
            ("5⅛”", sixteenths(5, 2)),
            ("14in", sixteenths(14, 0)),
            ("14 in", sixteenths(14, 0)),
            ("14 in.", sixteenths(14, 0)),
            ("2.5 ft", sixteenths(30, 0)),
            ("98.5ft", sixteenths(98 * foot + 6, 0)),
            ("2-1/2 ft", sixteenths(30, 0)),
            ("0'-9 1/2\"", sixteenths(9, 8)),
            ("12'-6\"", sixteenths(150, 0)),
            ("12' 6\"", sixteenths(150, 0)),
            ("12'6\"", sixteenths(150, 0)),
            ("12'-6 1/2\"", sixteenths(150, 8)),
            ("12'-6-1/2\"", sixteenths(150, 8)),
            ("12'6-1/2\"", sixteenths(150, 8)),
            ("12' 6 1/2\"", sixteenths(150, 8)),
            ("12'-0 1/2\"", sixteenths(144, 8)),
            ("12'-1/2\"", sixteenths(144, 8)),
            ("12'", sixteenths(144, 0)),
            ("8 '", sixteenths(96, 0)),
            ("2.5'", sixteenths(30, 0)),
            ("12'-0\"", sixteenths(144, 0)),
            ("7'-6.5\"", sixteenths(90, 8)),
            ("12’-6 1/2”", sixteenths(150, 8)),
            ("12′-6½″", sixteenths(150, 8)),
            ("12'-6''", sixteenths(150, 0)),
            ("12’-6’’", sixteenths(150, 0)),
            ("-13 5/8\"", sixteenths(-13, -10)),
            ("-1'-2\"", sixteenths(-14, 0)),
            ("−5'", sixteenths(-60, 0)),
            ("0'", Length::ZERO),
            ("240 mm", Length::millimetres(240)),
            ("240mm", Length::millimetres(240)),
            ("2.4 m", Length::millimetres(2400)),
        ] {
            assert_eq!(one(text), (TokenKind::Length(length), None), "{text}");
        }
    }

    #[test]
    fn elevations_that_say_so() {
        for (text, length) in [
            ("±0", Length::ZERO),
            ("+/-0'-0\"", Length::ZERO),
            ("EL. +100'-0\"", Length::feet(100)),
            ("EL 98'-10 3/8\"", sixteenths(98 * 12 + 10, 6)),
            ("EL +98.5 ft", sixteenths(98 * 12 + 6, 0)),
            ("EL -1'-2\"", Length::inches(-14)),
            ("EL ±0", Length::ZERO),
            ("+100'-0\"", Length::feet(100)),
            ("(-)1'-1 5/8\"", sixteenths(-13, -10)),
        ] {
            assert_eq!(one(text), (TokenKind::Elevation(length), None), "{text}");
        }
    }

    #[test]
    fn what_can_be_read_in_several_ways_is_refused() {
        for (text, readings) in [
            ("12-6", &["12'-6\"", "12 less 6"] as &[&str]),
            ("12-6\"", &["12'-6\"", "12 less 6\""]),
            ("11/2\"", &["1-1/2\"", "5-1/2\""]),
            ("11/2", &["1-1/2\"", "5-1/2\""]),
            ("115/16\"", &["1-15/16\"", "11-5/16\"", "7-3/16\""]),
            ("12' - 6\"", &["12'-6\"", "11'-6\""]),
            ("12' -6\"", &["12'-6\"", "11'-6\""]),
            ("12'- 6\"", &["12'-6\"", "11'-6\""]),
            ("9 - 1/2\"", &["9-1/2\""]),
            ("3/0\"", &[]),
            ("±12'-0\"", &["12'-0\"", "within 12'-0\""]),
            ("±1/4", &["1/4", "within 1/4"]),
            ("EL 98.5", &["EL 98.5 ft"]),
        ] {
            let readings = readings.iter().map(|reading| (*reading).into()).collect();
            let expected = (TokenKind::Wrong, Some(ProblemKind::UnclearDimension(readings)));
            assert_eq!(one(text), expected, "{text}");
        }
    }

    #[test]
    fn odd_but_clear_spellings_are_read_and_noted() {
        for (text, length, plain) in [
            ("12'13\"", Length::inches(157), "13'-1\""),
            ("12'-13\"", Length::inches(157), "13'-1\""),
            ("12'6", Length::inches(150), "12'-6\""),
            ("12'-6", Length::inches(150), "12'-6\""),
            ("12'-6 1/2", sixteenths(150, 8), "12'-6 1/2\""),
        ] {
            let expected = (TokenKind::Length(length), Some(ProblemKind::OddDimension(plain.into())));
            assert_eq!(one(text), expected, "{text}");
        }
    }

    #[test]
    fn numbers_that_are_refused() {
        for (text, problem) in [
            ("12,000", ProblemKind::CommaInNumber("12000".into())),
            ("1,200,000", ProblemKind::CommaInNumber("1200000".into())),
            ("1/3\"", ProblemKind::NotExact("21/64\"".into(), "11/32\"".into())),
            ("2'-0 1/3\"", ProblemKind::NotExact("2'-0 21/64\"".into(), "2'-0 11/32\"".into())),
            ("0.333333\"", ProblemKind::NotExact("0.33\"".into(), "0.34\"".into())),
            ("2.0001 ft", ProblemKind::NotExact("2 ft".into(), "2.01 ft".into())),
            ("0.00001 mm", ProblemKind::NotExact("0 mm".into(), "0.001 mm".into())),
            ("1234567890123456789012345678901234567890", ProblemKind::NumberTooLarge),
            ("1234567890123456789012345678901234567890'", ProblemKind::NumberTooLarge),
            ("0.1234567890123456789012345678901234567890\"", ProblemKind::NumberTooLarge),
            ("99999999999'", ProblemKind::NumberTooLarge),
            ("9999999999", ProblemKind::NumberTooLarge),
            ("2027-02-30", ProblemKind::NoSuchDay),
        ] {
            let (tokens, problems) = tokens(text);
            assert_eq!(tokens[0].kind, TokenKind::Wrong, "{text}");
            assert_eq!(problems[0].kind, problem, "{text}");
        }
    }

    #[test]
    fn quantities_sizes_and_marks() {
        use crate::units::{AreaLoad, Density, Force, LineLoad};
        for (text, kind) in [
            ("40 psf", TokenKind::Load(Load::Area(AreaLoad::psf(40.0)))),
            ("250plf", TokenKind::Load(Load::Line(LineLoad::plf(250.0)))),
            ("6500 lb", TokenKind::Load(Load::Point(Force::lb(6500.0)))),
            ("12 kip", TokenKind::Load(Load::Point(Force::kip(12.0)))),
            ("1.9 kPa", TokenKind::Load(Load::Area(AreaLoad::kpa(1.9)))),
            ("3.6 kN/m", TokenKind::Load(Load::Line(LineLoad::kn_per_m(3.6)))),
            ("3.6 kN", TokenKind::Load(Load::Point(Force::kn(3.6)))),
            ("150 pcf", TokenKind::Load(Load::Volume(Density::pcf(150.0)))),
            ("-200 lb", TokenKind::Load(Load::Point(Force::lb(-200.0)))),
            ("875 psi", TokenKind::Stress(Stress::psi(875.0))),
            ("1.4e6 psi", TokenKind::Stress(Stress::psi(1.4e6))),
            ("1e3 sq ft", TokenKind::Area(Area::sq_ft(1000.0))),
            ("50 ksi", TokenKind::Stress(Stress::ksi(50.0))),
            ("12 MPa", TokenKind::Stress(Stress::mpa(12.0))),
            ("256 sq ft", TokenKind::Area(Area::sq_ft(256.0))),
            ("19%", TokenKind::Percent(19.0)),
            ("2027-03-01", TokenKind::Date(Date { year: 2027, month: 3, day: 1 })),
            ("#5", TokenKind::Bar(5)),
            ("2x10", TokenKind::Nominal((2, 10))),
            ("2×10", TokenKind::Nominal((2, 10))),
            ("3-ply", TokenKind::Ply(3)),
            ("24F-V4", TokenKind::Marking),
            ("24F", TokenKind::Marking),
            ("2x", TokenKind::Marking),
            ("16d", TokenKind::Marking),
            ("3", TokenKind::Whole(3)),
            ("7.5", TokenKind::Decimal(7.5)),
            ("9-1/2", TokenKind::Fraction(sixteenths(9, 8))),
            ("W8x24", TokenKind::Word),
            ("No.2", TokenKind::Word),
            ("o.c.", TokenKind::Word),
            ("A-301", TokenKind::Word),
            ("\"Center girder\"", TokenKind::Text),
            ("\"\"", TokenKind::Text),
            ("“Center girder”", TokenKind::Text),
            ("\"a -- b\"", TokenKind::Text),
            (">=", TokenKind::Relation(Relation::AtLeast)),
            ("-- 5'- 3\"", TokenKind::Comment),
        ] {
            assert_eq!(one(text), (kind, None), "{text}");
        }
    }

    #[test]
    fn what_does_not_fit_stays_a_token_of_its_own() {
        let texts = |line| tokens(line).0.iter().map(|token| token.text).collect::<Vec<_>>();
        assert_eq!(texts("2e1 ft"), ["2e1", " ", "ft"]);
        assert_eq!(texts("3-plywood"), ["3", "-", "plywood"]);
    }

    #[test]
    fn built_sizes_are_lengths_parted_by_x() {
        for line in [
            "3-1/2 x 3-1/2 x 1/4",
            "3-1/2x3-1/2x1/4",
            "9\"x9\"x1/2\"",
            "4x4x1/4",
            "9\" × 9\" × 1/2\"",
            "2'-9\"X2'-9\"X14\"",
        ] {
            let (tokens, problems) = tokens(line);
            let loud: Vec<_> = tokens.iter().filter(|token| !token.is_silent()).collect();
            assert_eq!(problems, [], "{line}");
            assert_eq!(loud.len(), 5, "{line}: {loud:?}");
            assert!(loud[1].is_word("x") && loud[3].is_word("x"), "{line}");
        }
        let (tube, _) = tokens("HSS4x4x1/4");
        assert_eq!(
            tube.iter().map(|token| token.text).collect::<Vec<_>>(),
            ["HSS", "4", "x", "4", "x", "1/4"]
        );
    }

    #[test]
    fn quotes_open_text_only_behind_a_blank() {
        let kinds = |line| {
            tokens(line)
                .0
                .iter()
                .filter(|token| !token.is_silent())
                .map(|token| token.kind)
                .collect::<Vec<_>>()
        };
        assert_eq!(kinds("12\" \"words\""), [TokenKind::Length(Length::inches(12)), TokenKind::Text]);
        assert_eq!(tokens("load \"open -- c\r\n").1[0].kind, ProblemKind::UnclosedText);
        assert_eq!(tokens("a \" b").1[0].kind, ProblemKind::StrayCharacter);
        assert_eq!(tokens("a;b").1[0].kind, ProblemKind::StrayCharacter);
    }

    #[test]
    fn grid_places_keep_their_parts() {
        let texts = |line| {
            tokens(line)
                .0
                .iter()
                .filter(|token| !token.is_silent())
                .map(|token| token.text)
                .collect::<Vec<_>>()
        };
        assert_eq!(texts("B plus 2'-6\" / 3 less 5\""), ["B", "plus", "2'-6\"", "/", "3", "less", "5\""]);
        assert_eq!(texts("A/3.4"), ["A", "/", "3.4"]);
        assert_eq!(texts("1 -5', 2 14'-0\", 3 0'"), ["1", "-5'", ",", "2", "14'-0\"", ",", "3", "0'"]);
        assert_eq!(texts("2 of 1-3/4 x 16 -- two"), ["2", "of", "1-3/4", "x", "16"]);
    }

    proptest! {
        #[test]
        fn tokens_cover_every_byte(line in "([ -~½¾’”′″×±\t]|12'-6 1/2\"|--|EL|[0-9'\"/x -]){0,40}(\r\n|\n|\r)?") {
            let joined: String = tokens(&line).0.iter().map(|token| token.text).collect();
            prop_assert_eq!(&joined, &line);
            let mut at = 0;
            for token in tokens(&line).0 {
                prop_assert_eq!(token.span.start, at);
                at = token.span.end;
            }
        }

        #[test]
        fn a_printed_length_reads_back(sixteenth in -40_000i64..40_000) {
            let length = Length::sixteenths(0, sixteenth);
            for text in [length.in_feet().to_string(), length.in_inches().to_string()] {
                prop_assert_eq!(one(&text), (TokenKind::Length(length), None));
            }
        }
    }
}
