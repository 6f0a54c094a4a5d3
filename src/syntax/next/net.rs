//! Forms as a net of states, and tokens that walk it.

use crate::syntax::form::{Form, Kind};
use crate::syntax::lexer::{Token, TokenKind};
use crate::syntax::names;
use crate::syntax::next::{GridAxis, Next, Walk, What};

/// Forms as a net of states.
#[derive(Default)]
pub(super) struct Net {
    states: Vec<State>,
    slots: Vec<(&'static str, &'static Kind)>,
    start: StateId,
    /// What is added now is read but not offered.
    pub(super) is_quiet: bool,
}

pub(super) type StateId = usize;

/// A place between two tokens.
enum State {
    /// The same place as each of these.
    Fork(Vec<StateId>),
    /// A token that fits goes on to another place.
    Take { step: Step, slot: Option<usize>, then: StateId },
    /// Everything has been read.
    End,
}

/// A token that fits somewhere.
#[derive(Clone, Copy)]
pub(super) struct Step {
    /// What is said to be able to stand here; `None` for what nobody needs to be offered.
    pub what: Option<What>,
    /// What does.
    pub takes: Takes,
}

/// Tokens that fit a step.
#[derive(Clone, Copy)]
pub(super) enum Takes {
    /// This word.
    Word(&'static str),
    /// What this tells of a token.
    That(fn(&Token<'_>) -> bool),
    /// None: it shows what is missing.
    Nothing,
}

impl Takes {
    fn fits(self, token: &Token<'_>) -> bool {
        match self {
            Self::Word(word) => token.is_word(word),
            Self::That(fits) => fits(token),
            Self::Nothing => false,
        }
    }
}

impl Net {
    /// The net of some forms, one behind the other.
    pub fn of(forms: &[&'static Form]) -> Self {
        let mut net = Self::default();
        let mut firsts = Vec::new();
        for form in forms {
            firsts.push(net.slots.len());
            net.number(form);
        }
        let mut then = net.put(State::End);
        for (form, first) in forms.iter().zip(firsts).rev() {
            then = net.form(form, first, then);
        }
        net.start = then;
        net
    }

    /// Numbers the values of a form from the left.
    fn number(&mut self, form: &'static Form) {
        match form {
            Form::Nothing | Form::Words(_) | Form::Mark(_) | Form::Comma => {}
            Form::Slot(label, kind) => self.slots.push((label, kind)),
            Form::Sequence(forms) | Form::OneOf(forms) => forms.iter().for_each(|form| self.number(form)),
            Form::Optional(form) | Form::List(form) => self.number(form),
        }
    }

    /// The place where a form begins, whose first value has this number, and that ends where `then` begins.
    fn form(&mut self, form: &'static Form, first: usize, then: StateId) -> StateId {
        match form {
            Form::Nothing => then,
            Form::Words(words) => self.words(words, None, then),
            Form::Mark(words) => self.words(words, None, then),
            Form::Slot(_, kind) => self.value(kind, Some(first), then),
            Form::Comma => self.comma(then),
            Form::Sequence(forms) => {
                let mut end = first + forms.iter().map(n_slots).sum::<usize>();
                let mut then = then;
                for form in forms.iter().rev() {
                    end -= n_slots(form);
                    then = self.form(form, end, then);
                }
                then
            }
            Form::Optional(form) => {
                let inner = self.form(form, first, then);
                self.fork(vec![inner, then])
            }
            Form::OneOf(forms) => {
                let mut at = first;
                let mut choices = Vec::new();
                for form in *forms {
                    choices.push(self.form(form, at, then));
                    at += n_slots(form);
                }
                self.fork(choices)
            }
            Form::List(form) => {
                let behind = self.fork(vec![then]);
                let item = self.form(form, first, behind);
                let comma = self.comma(item);
                self.also(behind, comma);
                item
            }
        }
    }

    fn comma(&mut self, then: StateId) -> StateId {
        let takes = Takes::That(|token| token.kind == TokenKind::Comma);
        self.take(Step { what: Some(What::Comma), takes }, None, then)
    }

    /// These words, one behind the other.
    pub fn words(&mut self, words: &'static str, slot: Option<usize>, then: StateId) -> StateId {
        let mut then = then;
        let mut end = words.len();
        for word in words.rsplit(' ') {
            let start = end - word.len();
            let rest = words.get(start..).unwrap_or(words);
            end = start.saturating_sub(1);
            let step = Step { what: Some(What::Words(rest)), takes: Takes::Word(word) };
            then = self.take(step, slot, then);
        }
        then
    }

    /// These words, of which nobody needs to be told.
    pub fn quiet_words(&mut self, words: &'static str, slot: Option<usize>, then: StateId) -> StateId {
        words
            .rsplit(' ')
            .fold(then, |then, word| self.take(Step { what: None, takes: Takes::Word(word) }, slot, then))
    }

    pub fn take(&mut self, step: Step, slot: Option<usize>, then: StateId) -> StateId {
        let what = step.what.filter(|_| !self.is_quiet);
        self.put(State::Take { step: Step { what, ..step }, slot, then })
    }

    pub fn fork(&mut self, ways: Vec<StateId>) -> StateId {
        self.put(State::Fork(ways))
    }

    /// One way more from a fork.
    pub fn also(&mut self, fork: StateId, way: StateId) {
        if let Some(State::Fork(ways)) = self.states.get_mut(fork) {
            ways.push(way);
        }
    }

    fn put(&mut self, state: State) -> StateId {
        self.states.push(state);
        self.states.len() - 1
    }

    /// Moves through the net as far as the tokens fit.
    pub fn walk(self, tokens: &[Token<'_>]) -> Walk {
        let mut seen = vec![usize::MAX; self.states.len()];
        let mut here = Vec::new();
        self.enter(self.start, None, 0, &mut seen, &mut here);
        let mut n_read = 0;
        for (at, token) in tokens.iter().enumerate() {
            let mut there = Vec::new();
            for place in &here {
                let Some(State::Take { step, slot, then }) = self.states.get(place.state) else { continue };
                if step.takes.fits(token) {
                    let since = slot.map(|slot| (slot, place.since));
                    self.enter(*then, since, at + 1, &mut seen, &mut there);
                }
            }
            here = there;
            if here.is_empty() {
                break;
            }
            n_read = at + 1;
        }
        let mut next: Vec<Next> = Vec::new();
        for place in here {
            let (what, slot) = match self.states.get(place.state) {
                Some(State::Take { step, slot, .. }) => (step.what, *slot),
                Some(State::End) => (Some(What::End), None),
                Some(State::Fork(_)) | None => (None, None),
            };
            if let Some(what) = what {
                let found = Next { what, slot, since: place.since };
                if !next.contains(&found) {
                    next.push(found);
                }
            }
        }
        Walk { slots: self.slots, n_read, next }
    }

    /// Adds a place and all that is the same place to those behind token `at`. `since` is the value that was being read,
    /// and the token with which it began.
    fn enter(
        &self,
        state: StateId,
        since: Option<(usize, usize)>,
        at: usize,
        seen: &mut [usize],
        places: &mut Vec<Place>,
    ) {
        let mut waiting = vec![state];
        while let Some(state) = waiting.pop() {
            match seen.get_mut(state) {
                Some(last) if *last != at => *last = at,
                Some(_) | None => continue,
            }
            match self.states.get(state) {
                Some(State::Fork(ways)) => waiting.extend(ways.iter().rev()),
                Some(State::Take { slot, .. }) => {
                    let begun = since.filter(|(of, _)| *slot == Some(*of)).map(|(_, since)| since);
                    places.push(Place { state, since: begun.unwrap_or(at) });
                }
                Some(State::End) => places.push(Place { state, since: at }),
                None => {}
            }
        }
    }
}

/// A place that has been reached.
struct Place {
    state: StateId,
    /// The token with which its value began.
    since: usize,
}

fn n_slots(form: &Form) -> usize {
    match form {
        Form::Nothing | Form::Words(_) | Form::Mark(_) | Form::Comma => 0,
        Form::Slot(..) => 1,
        Form::Sequence(forms) | Form::OneOf(forms) => forms.iter().map(n_slots).sum(),
        Form::Optional(form) | Form::List(form) => n_slots(form),
    }
}

/// True of a word that can name an element.
pub(super) fn is_name(token: &Token<'_>) -> bool {
    token.kind == TokenKind::Word && !names::is_reserved(token.text)
}

/// True of a word or number that can name a grid line.
fn is_grid_line(token: &Token<'_>) -> bool {
    match token.kind {
        TokenKind::Word => names::may_name(token.text),
        TokenKind::Whole(_) => true,
        TokenKind::Decimal(number) => number >= 0.0,
        _ => false,
    }
}

impl Net {
    /// The name of a grid line.
    pub fn grid_line(&mut self, axis: GridAxis, slot: Option<usize>, then: StateId) -> StateId {
        let step = Step { what: Some(What::GridLine(axis)), takes: Takes::That(is_grid_line) };
        self.take(step, slot, then)
    }
}
