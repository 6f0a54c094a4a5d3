//! What each word of a file is: colours that know the house.
//!
//! The reader's own values say what a word means; a line that can't be read is told by its tokens alone.

mod facts;
mod legend;
mod naming;

use crate::house::House;
use crate::ide::outline::{is_element, note_start};
use crate::syntax::lexer::{Token, TokenKind, Tokens};
use crate::syntax::vocabulary::ElementKind;
use crate::syntax::{Body, Chunk, Heading, Line, LineKind, Opening, names};
use crate::text::{FileId, LocalSpan, Span};

pub use legend::{Modifier, Modifiers, WordKind};

/// A word with what it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Word {
    /// Where it stands.
    pub span: Span,
    /// What it is.
    pub kind: WordKind,
    /// What more there is to say of it.
    pub modifiers: Modifiers,
}

/// The words of a file, or of the lines that touch a stretch of it. Invariant: in the order of the text, none empty,
/// none over another, none over a line's end.
pub fn tokens(house: &House, file: FileId, stretch: Option<Span>) -> Vec<Word> {
    let at = file.0 as usize;
    let (Some(tree), Some(source)) = (house.trees.get(at), house.inputs.sources.get(at)) else {
        return Vec::new();
    };
    let (first, last) = stretch.map_or((0, u32::MAX), |stretch| (stretch.start, stretch.end));
    let begun = tree.chunks.partition_point(|chunk| chunk.start <= first).saturating_sub(1);
    let chunks = tree.chunks.get(begun..).unwrap_or_default();
    let mut page = Page { house, file, text: &source.text, start: 0, words: Vec::new() };
    for (at, chunk) in chunks.iter().enumerate().take_while(|(_, chunk)| chunk.start <= last) {
        page.start = chunk.start;
        let is_followed = chunks.get(at + 1).is_some_and(is_element);
        let note = if is_followed { note_start(chunk) } else { chunk.body.length };
        let mut writer = Writer { chunk, note, is_waiving: is_waiving(&chunk.body) };
        for line in lines_between(chunk, first, last) {
            writer.write(&mut page, line);
        }
    }
    page.words
}

/// The lines of a chunk that touch the stretch between two bytes of the file.
fn lines_between(chunk: &Chunk, first: u32, last: u32) -> &[Line] {
    let lines = &chunk.body.lines;
    let from = lines.partition_point(|line| chunk.start.saturating_add(line.span.end) <= first);
    let to = lines.partition_point(|line| chunk.start.saturating_add(line.span.start) <= last);
    lines.get(from..to.max(from)).unwrap_or_default()
}

fn is_waiving(body: &Body) -> bool {
    body.facts.iter().any(|fact| fact.spec.phrase == "waive")
}

/// The words put so far, and the file that they are of.
struct Page<'a> {
    house: &'a House,
    file: FileId,
    text: &'a str,
    /// The first byte of the chunk that is read.
    start: u32,
    words: Vec<Word>,
}

impl<'a> Page<'a> {
    fn place(&self, span: LocalSpan) -> Span {
        span.within(self.file, self.start)
    }

    fn text_at(&self, span: LocalSpan) -> &'a str {
        let place = self.place(span);
        self.text.get(place.start as usize..place.end as usize).unwrap_or("")
    }

    fn put(&mut self, span: LocalSpan, kind: WordKind, modifiers: Modifiers) {
        let span = self.place(span);
        let is_behind = self.words.last().is_none_or(|last| last.span.end <= span.start);
        debug_assert!(is_behind, "{span:?} stands over {:?}", self.words.last());
        if is_behind && span.start < span.end {
            self.words.push(Word { span, kind, modifiers });
        }
    }

    /// Puts a token: as the word that it is, else as what it is alone.
    fn put_token(&mut self, token: &Token<'_>, word: Option<(WordKind, Modifiers)>) {
        match (token.kind, word) {
            (TokenKind::Text, _) => self.put(token.span, WordKind::String, Modifiers::NONE),
            (TokenKind::Comma | TokenKind::Open | TokenKind::Close, _) => {}
            (_, Some((kind, modifiers))) => self.put(token.span, kind, modifiers),
            (_, None) => self.put_alone(token, Modifiers::NONE),
        }
    }

    /// A number, and its unit of letters apart from it. A word alone is nothing.
    fn put_alone(&mut self, token: &Token<'_>, modifiers: Modifiers) {
        let (number, unit) = match token.kind {
            TokenKind::Length(_)
            | TokenKind::Elevation(_)
            | TokenKind::Load(_)
            | TokenKind::Stress(_)
            | TokenKind::Area(_) => parted(token),
            TokenKind::Whole(_)
            | TokenKind::Decimal(_)
            | TokenKind::Fraction(_)
            | TokenKind::Percent(_)
            | TokenKind::Date(_)
            | TokenKind::Bar(_)
            | TokenKind::Nominal(_)
            | TokenKind::Ply(_)
            | TokenKind::Marking => (token.span, None),
            TokenKind::Wrong if token.text.starts_with(['"', '“', '”']) && token.text.len() > 3 => {
                return self.put(token.span, WordKind::String, modifiers);
            }
            TokenKind::Slash | TokenKind::Relation(_) => {
                return self.put(token.span, WordKind::Operator, modifiers);
            }
            TokenKind::Blank
            | TokenKind::LineEnd
            | TokenKind::Comment
            | TokenKind::Text
            | TokenKind::Word
            | TokenKind::Comma
            | TokenKind::Open
            | TokenKind::Close
            | TokenKind::Wrong => return,
        };
        self.put(number, WordKind::Number, modifiers);
        unit.into_iter().for_each(|unit| self.put(unit, WordKind::Type, modifiers));
    }
}

/// Where the number of a token stands and where its unit of letters: `40` and `psf`.
fn parted(token: &Token<'_>) -> (LocalSpan, Option<LocalSpan>) {
    let is_figure = |it: char| it.is_numeric() || "'\"’′”″".contains(it);
    let behind = token.text.trim_end_matches(|it: char| !is_figure(it)).len();
    let rest = token.text.get(behind..).unwrap_or("");
    let blanks = rest.len() - rest.trim_start().len();
    let at = |offset: usize| token.span.start + u32::try_from(offset).unwrap_or(0);
    let unit = LocalSpan::new(at(behind + blanks), token.span.end);
    (LocalSpan::new(token.span.start, at(behind)), (unit.start < unit.end).then_some(unit))
}

/// Writes the lines of one chunk.
struct Writer<'a> {
    chunk: &'a Chunk,
    /// Where the note of the next element begins.
    note: u32,
    is_waiving: bool,
}

impl Writer<'_> {
    fn write(&mut self, page: &mut Page<'_>, line: &Line) {
        let end = line.comment.map_or(line.span.end, |comment| comment.start);
        let span = LocalSpan::new(line.span.start, end);
        if !matches!(line.kind, LineKind::Blank | LineKind::Comment) {
            let tokens: Vec<Token<'_>> =
                Tokens::of(page.text_at(span), span.start).filter(|token| !token.is_silent()).collect();
            self.write_line(page, line, &tokens);
        }
        if let Some(comment) = line.comment {
            let text = page.text_at(comment).trim_end();
            let end = comment.start + u32::try_from(text.len()).unwrap_or(0);
            let is_note = comment.start >= self.note;
            let modifiers = Modifiers::NONE.with_if(is_note, Modifier::Documentation);
            page.put(LocalSpan::new(comment.start, end), WordKind::Comment, modifiers);
        }
    }

    fn write_line(&self, page: &mut Page<'_>, line: &Line, tokens: &[Token<'_>]) {
        let body = &*self.chunk.body;
        match (line.kind, &body.opening) {
            (LineKind::Opening, Opening::Element(heading)) => self.write_heading(page, heading, tokens),
            (LineKind::Opening, Opening::Include(_)) => {
                let (word, path) = tokens.split_at_checked(1).unwrap_or_default();
                word.iter().for_each(|word| page.put(word.span, WordKind::Keyword, Modifiers::NONE));
                write_unread(page, path);
            }
            (LineKind::Opening, Opening::Unknown(..) | Opening::Nothing) => {
                write_unread(page, tokens.get(1..).unwrap_or_default());
            }
            (LineKind::Fact(at), Opening::Element(heading)) => {
                if let Some(fact) = body.facts.get(at) {
                    facts::write(page, heading.kind, fact, tokens);
                }
            }
            _ => self.write_broken(page, line, tokens),
        }
    }

    fn write_heading(&self, page: &mut Page<'_>, heading: &Heading, tokens: &[Token<'_>]) {
        let name = heading.name.as_ref().map(|(_, span)| *span);
        let named = name.and_then(|name| naming::of_mention(page.house, page.place(name)));
        let kind = WordKind::of_name(heading.kind);
        let trade = Modifiers::NONE.with_some(Modifier::of_trade(heading.kind));
        let (kind, of_name) = named.unwrap_or((kind, trade.with(Modifier::Declaration)));
        let is_assumed = match heading.kind {
            ElementKind::Project => naming::assumes_soil(page.house),
            _ => of_name.has(Modifier::Assumed),
        };
        let of_keyword = of_name
            .without(Modifier::Declaration)
            .with_if(is_assumed, Modifier::Assumed)
            .with_if(self.is_waiving, Modifier::Waived);
        page.put(heading.keyword, WordKind::Keyword, of_keyword);
        for token in tokens.iter().filter(|token| token.span.start >= heading.keyword.end) {
            if name == Some(token.span) {
                page.put(token.span, kind, of_name);
            } else {
                write_unread(page, std::slice::from_ref(token));
            }
        }
    }

    /// A line that can't be read: the words of its fact, when they could be, and what the rest says alone.
    fn write_broken(&self, page: &mut Page<'_>, line: &Line, tokens: &[Token<'_>]) {
        let broken = &self.chunk.body.broken;
        let at = broken.partition_point(|broken| broken.span.start < line.span.start);
        let broken = broken.get(at).filter(|broken| broken.span.start < line.span.end);
        let phrase = broken.and_then(|broken| broken.phrase);
        let n_words = phrase.map_or(1, |phrase| phrase.split(' ').count());
        let (words, rest) = tokens.split_at_checked(n_words).unwrap_or((tokens, &[]));
        if let (Some(_), Some(first), Some(last)) = (phrase, words.first(), words.last()) {
            page.put(first.span.to(last.span), WordKind::Property, Modifiers::NONE);
        }
        write_unread(page, rest);
    }
}

/// Tokens of which only the spec's names say more than they say themselves.
fn write_unread(page: &mut Page<'_>, tokens: &[Token<'_>]) {
    for token in tokens {
        let word = match token.kind {
            TokenKind::Word if names::joins(token.text) => Some((WordKind::Operator, Modifiers::NONE)),
            TokenKind::Word => naming::of_word(page.house, token.text),
            _ => None,
        };
        page.put_token(token, word);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, snapshot_of};

    /// Every word of the line on which the cursor stands, as `text kind modifiers`.
    fn line(fixture: &str) -> Vec<String> {
        let (snapshot, file, offset) = at_cursor(fixture);
        let house = &snapshot.house;
        let line = house.line_of(Span::new(file, offset, offset));
        let words = tokens(house, file, None);
        let words =
            words.into_iter().filter(|word| line.start <= word.span.start && word.span.end <= line.end);
        words.map(|word| described(house, &word)).collect()
    }

    fn described(house: &House, word: &Word) -> String {
        let modifiers: String = word.modifiers.iter().map(|one| format!(" {}", one.name())).collect();
        format!("{} {}{modifiers}", house.text_at(word.span), word.kind.name())
    }

    const SPEC: &str = r#"project "House"
  snow          42 psf on roof
grid
  x             A 0', B 16'-0"            -- west to east
  y             1 0', 2 12'-0"
  line          B is "the girder"
product LV14
  kind          composite lumber 1-3/4 x 14

-- Cast first.
wall W1 "South wall"
  kind          concrete
  from          A/1 to B less 4"/1
  line          south face
  grade         99'-0" on south at A
  status        poured 2027-04-02
wall W2
  kind          framed
  status        set
floor main "Main"
  deck          3/4"
  finish        fir plank 3/4"
  live          40 psf
beam B1 "Girder"
  size          3-ply LV14
  from          A/2 to B/2
  bears on      W1 for 3 in
  bears on      W9
  span          by grid
  cut           should be 12'-0" within 1/16"
  waive         bearing-short because "letter" until 2027-05-01
  waive         beam-strength because "letter" until 2028-05-01
beam B2
  size          W8x24
joists J1
  floor         main
  size          2x10 SPF No.2 treated
intent "Level"
  keep          half of top of B1 plus 2" <= clear height under main
  keep          live reaction of B1 on W1 = 900 lb
hold point "Step"
  before        cutting stringers
"#;

    fn check(piece: &str, expected: &[&str]) {
        let without = piece.replace("$0", "");
        assert_eq!(SPEC.matches(&without).count(), 1, "{piece} stands once");
        assert_eq!(line(&SPEC.replace(&without, piece)), expected);
    }

    #[test]
    fn a_heading_says_what_the_element_is_and_how_far_it_has_come() {
        check(
            "wall $0W1",
            &[
                "wall keyword readonly poured foundation",
                "W1 variable declaration readonly poured foundation",
                "\"South wall\" string",
            ],
        );
        check(
            "wall $0W2",
            &["wall keyword readonly set framing", "W2 variable declaration readonly set framing"],
        );
        check(
            "floor $0main \"",
            &["floor keyword framing", "main namespace declaration framing", "\"Main\" string"],
        );
        check("product$0 LV14", &["product keyword", "LV14 class declaration"]);
        check("intent$0 \"", &["intent keyword promise", "\"Level\" string"]);
    }

    #[test]
    fn a_rule_that_is_weighed_otherwise_looks_like_one_that_is_waived() {
        assert_eq!(
            line("project\n  severity beam-strength$0 off because \"a sketch\"\n"),
            [
                "severity property",
                "beam-strength decorator",
                "off enumMember",
                "because operator",
                "\"a sketch\" string",
            ]
        );
    }

    #[test]
    fn an_element_that_waives_a_rule_says_so_and_a_waiver_grows_old() {
        check(
            "beam $0B1",
            &["beam keyword waived framing", "B1 variable declaration framing", "\"Girder\" string"],
        );
        check(
            "because$0 \"letter\" until 2027",
            &[
                "waive property",
                "bearing-short decorator deprecated",
                "because operator",
                "\"letter\" string",
                "until operator",
                "2027-05-01 number",
            ],
        );
        check(
            "because$0 \"letter\" until 2028",
            &[
                "waive property",
                "beam-strength decorator",
                "because operator",
                "\"letter\" string",
                "until operator",
                "2028-05-01 number",
            ],
        );
    }

    #[test]
    fn a_name_is_what_it_means() {
        check(
            "$0bears on      W1",
            &[
                "bears on property",
                "W1 variable readonly poured foundation",
                "for operator",
                "3 number",
                "in type",
            ],
        );
        check("$0bears on      W9", &["bears on property", "W9 variable"]);
        check("$0floor         main", &["floor property", "main namespace framing"]);
        check("3-ply$0 LV14", &["size property", "3-ply number", "LV14 class"]);
    }

    #[test]
    fn a_grid_line_is_given_once_and_used_elsewhere() {
        check(
            "A$0 0', B",
            &[
                "x property",
                "A parameter declaration",
                "0' number",
                "B parameter declaration",
                "16'-0\" number",
                "-- west to east comment",
            ],
        );
        check("B is$0 ", &["line property", "B parameter", "is operator", "\"the girder\" string"]);
        check(
            "A/1 to$0 B less",
            &[
                "from property",
                "A parameter",
                "/ operator",
                "1 parameter",
                "to operator",
                "B parameter",
                "less operator",
                "4\" number",
                "/ operator",
                "1 parameter",
            ],
        );
    }

    #[test]
    fn values_are_told_from_the_words_round_them() {
        check(
            "99'-0\"$0 on",
            &[
                "grade property",
                "99'-0\" number",
                "on operator",
                "south enumMember",
                "at operator",
                "A parameter",
            ],
        );
        check("line    $0      south", &["line property", "south enumMember", "face operator"]);
        check(
            "2x10 SPF$0",
            &["size property", "2x10 number", "SPF enumMember", "No.2 enumMember", "treated enumMember"],
        );
        check("$0W8x24", &["size property", "W8x24 enumMember"]);
        check("fir$0 plank", &["finish property", "fir string", "plank string", "3/4\" number"]);
        check("cutting$0 ", &["before property", "cutting string", "stringers string"]);
        check("by$0 grid", &["span property", "by enumMember", "grid enumMember"]);
        check("poured$0", &["status property", "poured enumMember readonly poured", "2027-04-02 number"]);
        check("42$0 psf", &["snow property", "42 number", "psf type", "on operator", "roof enumMember"]);
    }

    #[test]
    fn a_claim_and_a_promise_name_facts() {
        check(
            "should$0 be",
            &[
                "cut property claim",
                "should be keyword claim",
                "12'-0\" number claim",
                "within operator",
                "1/16\" number",
            ],
        );
        check(
            "half$0 of",
            &[
                "keep property",
                "half operator",
                "of operator",
                "top property",
                "of operator",
                "B1 variable framing",
                "plus operator",
                "2\" number",
                "<= operator",
                "clear property",
                "height property",
                "under operator",
                "main namespace framing",
            ],
        );
        check(
            "live$0 reaction",
            &[
                "keep property",
                "live enumMember",
                "reaction property",
                "of operator",
                "B1 variable framing",
                "on operator",
                "W1 variable readonly poured foundation",
                "= operator",
                "900 number",
                "lb type",
            ],
        );
    }

    #[test]
    fn the_note_of_an_element_documents_it() {
        check("-- Cast$0 first.", &["-- Cast first. comment documentation"]);
    }

    #[test]
    fn a_line_that_cant_be_read_is_told_by_its_tokens() {
        let broken = |piece: &str| line(&format!("{SPEC}beam B8\n  {piece}$0\n"));
        assert_eq!(
            broken("bears on W1 foot 3 in"),
            ["bears on property", "W1 variable readonly poured foundation", "3 number", "in type"]
        );
        assert_eq!(
            broken("wobble A to 12'-6\" -- why"),
            ["A parameter", "to operator", "12'-6\" number", "-- why comment"]
        );
        assert_eq!(broken("source \"open"), ["source property", "\"open string"]);
        assert_eq!(
            line("colum C1 \"Post\"$0\n  at A/1\n"),
            ["\"Post\" string", "/ operator", "1 number"][..1]
        );
        assert_eq!(line("beam 5$0 \"x\"\n"), ["beam keyword framing", "5 number", "\"x\" string"]);
        assert_eq!(
            line("include \"parts.framing\"$0 -- all\n"),
            ["include keyword", "\"parts.framing\" string", "-- all comment"]
        );
    }

    #[test]
    fn characters_of_every_width_keep_their_places() {
        assert_eq!(
            line("beam B1 \"Träger 🏠\"$0 -- é𝄞\n"),
            [
                "beam keyword framing",
                "B1 variable declaration framing",
                "\"Träger 🏠\" string",
                "-- é𝄞 comment"
            ]
        );
        assert_eq!(line("beam B1\n  packing 9½″$0\r\n"), ["packing property", "9½″ number"]);
        assert_eq!(
            line("beam B1\n  load 1.9 kN/m live$0\r\n"),
            ["load property", "1.9 number", "kN/m type", "live enumMember"]
        );
    }

    #[test]
    fn the_lines_of_a_stretch_are_those_of_the_whole() {
        let snapshot = snapshot_of(SPEC);
        let house = &snapshot.house;
        let file = FileId(0);
        let whole = tokens(house, file, None);
        for (start, end) in [(0, 0), (40, 41), (100, 400), (317, 317), (900, 5_000), (5_000, 6_000)] {
            let stretch = Span::new(file, start, end);
            let (first, last) =
                (house.line_of(Span::new(file, start, start)), house.line_of(Span::new(file, end, end)));
            let expected: Vec<_> = whole
                .iter()
                .filter(|word| first.start <= word.span.start && word.span.end <= last.end)
                .copied()
                .collect();
            assert_eq!(tokens(house, file, Some(stretch)), expected, "{start}..{end}");
        }
        assert_eq!(tokens(house, FileId(3), None), []);
    }
}
