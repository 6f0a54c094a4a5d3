//! Values in the net, token by token.

use crate::syntax::facts::member::{GRADES, MAKES, SPECIES};
use crate::syntax::form::Kind;
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::names;
use crate::syntax::next::net::{Net, StateId, Step, Takes, is_name};
use crate::syntax::next::{GridAxis, What};
use crate::syntax::value::Side;
use crate::syntax::vocabulary::{Argument, ElementKind, FACT_NAMES};

/// Words that narrow a fact to one load case.
const CASES: &[&str] = &["dead", "live", "snow", "all"];

const LENGTH: &Kind = &Kind::Length;
const LOAD: &Kind = &Kind::Load;
const MEMBER: &Kind = &Kind::Member;

impl Net {
    /// The place where a value begins.
    pub fn value(&mut self, kind: &'static Kind, slot: Option<usize>, then: StateId) -> StateId {
        match kind {
            Kind::Length => self.length(slot, then),
            Kind::Elevation | Kind::Load | Kind::Stress | Kind::Area => self.with_unit(kind, slot, then),
            Kind::Date
            | Kind::Text
            | Kind::Count
            | Kind::Number
            | Kind::Percent
            | Kind::Side
            | Kind::Slug
            | Kind::Bar => self.single(kind, slot, then),
            Kind::Name(kinds) => self.name(kinds, slot, then),
            Kind::GridLine => self.grid_line(GridAxis::Either, slot, then),
            Kind::GridRef => self.grid_ref(GridAxis::Either, slot, then),
            Kind::Point => self.point(slot, then),
            Kind::Rect => {
                let mut then = then;
                for (axis, before) in [(GridAxis::Y, "by"), (GridAxis::X, "")] {
                    then = self.grid_ref(axis, slot, then);
                    then = self.words("to", slot, then);
                    then = self.grid_ref(axis, slot, then);
                    if !before.is_empty() {
                        then = self.words(before, slot, then);
                    }
                }
                then
            }
            Kind::Line => {
                let to = self.point(slot, then);
                let joined = self.words("to", slot, to);
                self.point(slot, joined)
            }
            Kind::Dimensions(least, most) => self.dimensions(kind, *least, *most, slot, then),
            Kind::Member => self.member(slot, then),
            Kind::Word(words) => {
                let choices = words.iter().map(|words| self.words(words, slot, then)).collect();
                self.fork(choices)
            }
            Kind::FreeWords => {
                let more = self.fork(vec![then]);
                let word = self.take(step(Some(What::Value(kind)), is_free_word), slot, more);
                self.also(more, word);
                word
            }
            Kind::FactName => self.fact_name(slot, then),
            Kind::Comparison => self.comparison(slot, then),
            Kind::AnyValue => self.any_value(kind, slot, then),
        }
    }

    /// A value of one token.
    fn single(&mut self, kind: &'static Kind, slot: Option<usize>, then: StateId) -> StateId {
        let takes = match kind {
            Kind::Date => |token: &Token<'_>| matches!(token.kind, TokenKind::Date(_)),
            Kind::Text => |token: &Token<'_>| token.kind == TokenKind::Text,
            Kind::Count => |token: &Token<'_>| matches!(token.kind, TokenKind::Whole(_)),
            Kind::Number => is_number,
            Kind::Percent => |token: &Token<'_>| matches!(token.kind, TokenKind::Percent(_)),
            Kind::Side => |token: &Token<'_>| Side::ALL.iter().any(|side| token.is_word(side.word())),
            Kind::Bar => |token: &Token<'_>| matches!(token.kind, TokenKind::Bar(_)),
            _ => |token: &Token<'_>| token.kind == TokenKind::Word,
        };
        self.take(step(Some(What::Value(kind)), takes), slot, then)
    }

    fn name(&mut self, kinds: &'static [ElementKind], slot: Option<usize>, then: StateId) -> StateId {
        self.take(step(Some(What::Name(kinds)), is_name), slot, then)
    }

    fn length(&mut self, slot: Option<usize>, then: StateId) -> StateId {
        let on_centre = self.quiet_words("o.c.", slot, then);
        let behind = self.fork(vec![on_centre, then]);
        self.with_unit(LENGTH, slot, behind)
    }

    /// A number with its unit in one token, or a number that still lacks it.
    fn with_unit(&mut self, kind: &'static Kind, slot: Option<usize>, then: StateId) -> StateId {
        let takes = match kind {
            Kind::Length => |token: &Token<'_>| matches!(token.kind, TokenKind::Length(_)),
            Kind::Elevation => {
                |token: &Token<'_>| matches!(token.kind, TokenKind::Length(_) | TokenKind::Elevation(_))
            }
            Kind::Load => |token: &Token<'_>| matches!(token.kind, TokenKind::Load(_)),
            Kind::Stress => |token: &Token<'_>| matches!(token.kind, TokenKind::Stress(_)),
            _ => |token: &Token<'_>| matches!(token.kind, TokenKind::Area(_)),
        };
        let whole = self.take(step(Some(What::Value(kind)), takes), slot, then);
        let unit = Step { what: Some(What::Unit(kind)), takes: Takes::Nothing };
        let unit = self.take(unit, slot, then);
        let number = self.take(step(None, is_number), slot, unit);
        self.fork(vec![whole, number])
    }

    fn grid_ref(&mut self, axis: GridAxis, slot: Option<usize>, then: StateId) -> StateId {
        let offset = self.length(slot, then);
        let plus = self.words("plus", slot, offset);
        let less = self.words("less", slot, offset);
        let behind = self.fork(vec![then, plus, less]);
        self.grid_line(axis, slot, behind)
    }

    fn point(&mut self, slot: Option<usize>, then: StateId) -> StateId {
        let y = self.grid_ref(GridAxis::Y, slot, then);
        let slash = self.take(step(Some(What::Slash), |token| token.kind == TokenKind::Slash), slot, y);
        self.grid_ref(GridAxis::X, slot, slash)
    }

    fn dimensions(
        &mut self,
        kind: &'static Kind,
        least: usize,
        most: usize,
        slot: Option<usize>,
        then: StateId,
    ) -> StateId {
        let side = step(Some(What::Value(kind)), is_side);
        // Behind each side, the last one's first.
        let mut behind = then;
        let mut behind_next = then;
        for n_read in (1..most).rev() {
            let next = self.take(side, slot, behind);
            let more = self.words("x", slot, next);
            behind_next = behind;
            behind = if n_read >= least { self.fork(vec![then, more]) } else { more };
        }
        let first = self.take(side, slot, behind);
        // `9x12` may be one token.
        let two = self.take(step(None, is_nominal), slot, behind_next);
        self.fork(vec![first, two])
    }

    fn any_value(&mut self, kind: &'static Kind, slot: Option<usize>, then: StateId) -> StateId {
        let plain = self.take(step(Some(What::Value(kind)), is_plain_value), slot, then);
        let point = self.point(slot, then);
        // Behind a length the words of a member would be read as something else.
        self.is_quiet = true;
        let member = self.member(slot, then);
        self.is_quiet = false;
        let unit = Step { what: Some(What::Unit(kind)), takes: Takes::Nothing };
        let unit = self.take(unit, slot, then);
        let behind = self.fork(vec![then, unit]);
        let number = self.take(step(None, is_number), slot, behind);
        self.fork(vec![plain, number, point, member])
    }

    fn fact_name(&mut self, slot: Option<usize>, then: StateId) -> StateId {
        let mut names = Vec::new();
        let mut by_case = Vec::new();
        for spec in FACT_NAMES {
            let mut then = then;
            let arguments: Vec<&'static Argument> = spec.arguments().collect();
            for argument in arguments.into_iter().rev() {
                then = self.name(argument.kinds, slot, then);
                then = self.words(argument.joined_by, slot, then);
            }
            let mut words = spec.words.rsplit(' ').peekable();
            while let Some(word) = words.next() {
                let what = if words.peek().is_none() { What::Fact(spec) } else { What::Words(word) };
                then = self.take(Step { what: Some(what), takes: Takes::Word(word) }, slot, then);
            }
            names.push(then);
            if spec.takes_case {
                by_case.push(then);
            }
        }
        let narrowed = self.fork(by_case);
        for case in CASES {
            names.push(self.words(case, slot, narrowed));
        }
        self.fork(names)
    }

    fn comparison(&mut self, slot: Option<usize>, then: StateId) -> StateId {
        let length = self.length(slot, then);
        let load = self.with_unit(LOAD, slot, then);
        let tolerance = self.fork(vec![length, load]);
        let within = self.words("within", slot, tolerance);
        let end = self.fork(vec![then, within]);
        let right = self.expression(slot, end);
        let relation = step(Some(What::Relation), |token| matches!(token.kind, TokenKind::Relation(_)));
        let relation = self.take(relation, slot, right);
        self.expression(slot, relation)
    }

    fn expression(&mut self, slot: Option<usize>, then: StateId) -> StateId {
        let behind = self.fork(vec![then]);
        let fact = self.fact_name(slot, behind);
        let value = self.any_value(&Kind::AnyValue, slot, behind);
        let times = self.words("times", slot, fact);
        let number = self.take(step(None, is_number), slot, times);
        let term = self.fork(vec![fact, value, number]);
        let half = self.words("half of", slot, term);
        self.also(term, half);
        let plus = self.words("plus", slot, term);
        let less = self.words("less", slot, term);
        self.also(behind, plus);
        self.also(behind, less);
        term
    }

    fn member(&mut self, slot: Option<usize>, then: StateId) -> StateId {
        let show = Some(What::Value(MEMBER));
        let stuff = self.stuff(slot, then);
        let last_side = self.take(step(show, is_side), slot, stuff);
        let by = self.quiet_words("x", slot, last_side);
        let middle_side = self.take(step(show, is_side), slot, by);
        let by_middle = self.quiet_words("x", slot, middle_side);

        // Where any value can stand, a plain name is no member.
        let named = if self.is_quiet { is_mark } else { is_name };
        let mut sections =
            vec![self.take(step(show, is_nominal), slot, stuff), self.take(step(None, named), slot, stuff)];
        let first_side = self.take(step(None, is_side), slot, by_middle);
        let pair = self.take(step(None, is_nominal), slot, by);
        let sides = self.fork(vec![first_side, pair]);
        sections.push(self.quiet_words("HSS", slot, sides));
        let outside = self.take(step(show, is_side), slot, by);
        sections.push(self.quiet_words("pipe", slot, outside));
        sections.push(self.quiet_words("filled pipe", slot, last_side));
        sections.push(self.take(step(None, is_side), slot, by));
        let made = self.makes(slot, stuff);
        let made = self.fork(made);
        sections.push(self.take(step(None, is_side), slot, made));

        let section = self.fork(sections);
        let of = self.quiet_words("of", slot, section);
        let close = self.take(step(None, |token| token.kind == TokenKind::Close), slot, section);
        let inside = self.take(step(None, is_whole), slot, close);
        let plies = vec![
            self.take(step(None, |token| matches!(token.kind, TokenKind::Ply(_))), slot, section),
            self.take(step(None, is_whole), slot, of),
            self.take(step(None, |token| token.kind == TokenKind::Open), slot, inside),
        ];
        for way in plies {
            self.also(section, way);
        }
        section
    }

    fn makes(&mut self, slot: Option<usize>, then: StateId) -> Vec<StateId> {
        MAKES.iter().map(|make| self.words(make, slot, then)).collect()
    }

    /// What it is made as, of which wood and grade, and treated.
    fn stuff(&mut self, slot: Option<usize>, then: StateId) -> StateId {
        let treated = self.words("treated", slot, then);
        let treated = self.fork(vec![then, treated]);

        let number = self.take(step(None, is_whole), slot, treated);
        let mark = self.take(step(None, |token| token.kind == TokenKind::Marking), slot, treated);
        let mut grades: Vec<StateId> = GRADES.iter().map(|grade| self.words(grade, slot, treated)).collect();
        grades.push(self.quiet_words("class", slot, number));
        grades.push(self.quiet_words("No.", slot, number));
        grades.push(self.quiet_words("MSR", slot, mark));
        grades.push(mark);
        grades.push(self.take(
            step(None, |token| matches!(token.kind, TokenKind::Bar(1..=3))),
            slot,
            treated,
        ));
        grades.push(self.take(step(None, |token| token.text.starts_with("PRI-")), slot, treated));
        grades.push(treated);
        let grade = self.fork(grades);

        let mut species: Vec<StateId> = SPECIES.iter().map(|stamp| self.words(stamp, slot, grade)).collect();
        species.push(grade);
        let species = self.fork(species);
        let treated = self.words("treated", slot, species);
        let treated = self.fork(vec![species, treated]);
        let mut makes = self.makes(slot, treated);
        makes.push(treated);
        self.fork(makes)
    }
}

fn step(what: Option<What>, takes: fn(&Token<'_>) -> bool) -> Step {
    Step { what, takes: Takes::That(takes) }
}

/// A mill's mark: no name can be one.
fn is_mark(token: &Token<'_>) -> bool {
    token.kind == TokenKind::Word && !names::may_name(token.text) && !names::is_reserved(token.text)
}

fn is_whole(token: &Token<'_>) -> bool {
    matches!(token.kind, TokenKind::Whole(_))
}

fn is_number(token: &Token<'_>) -> bool {
    matches!(token.kind, TokenKind::Whole(_) | TokenKind::Decimal(_))
}

fn is_nominal(token: &Token<'_>) -> bool {
    matches!(token.kind, TokenKind::Nominal(_))
}

/// One side of a size.
fn is_side(token: &Token<'_>) -> bool {
    token.kind.is_size() && !is_nominal(token)
}

fn is_free_word(token: &Token<'_>) -> bool {
    matches!(token.kind, TokenKind::Word | TokenKind::Marking) && !token.is_word("source")
}

fn is_plain_value(token: &Token<'_>) -> bool {
    matches!(
        token.kind,
        TokenKind::Length(_)
            | TokenKind::Elevation(_)
            | TokenKind::Load(_)
            | TokenKind::Stress(_)
            | TokenKind::Area(_)
            | TokenKind::Percent(_)
            | TokenKind::Date(_)
    )
}
