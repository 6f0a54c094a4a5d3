//! A derived number together with the arithmetic that gives it.

use std::fmt;

use crate::model::element::ElementId;
use crate::text::Span;
use crate::units::Length;

/// A derived elevation or length: where it starts and what is added and taken away.
#[derive(Clone, Debug, PartialEq)]
pub struct Sum {
    total: Length,
    terms: Vec<Term>,
}

/// One term of a sum.
#[derive(Clone, Debug, PartialEq)]
pub struct Term {
    /// How much, with its sign.
    pub amount: Length,
    /// What it is, as a person says it: `deck of main`.
    pub what: String,
    /// The element it comes from.
    pub of: ElementId,
    /// Where it stands in the text, when it does.
    pub span: Option<Span>,
}

/// Why a number is not known. It says nothing about the house: whatever caused it is reported once, where it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Unknown {
    /// The element whose fact is not there or could not be read.
    pub of: Option<ElementId>,
    /// The fact's phrase.
    pub fact: &'static str,
}

/// A number that follows from others, when they are known.
pub type Derived = Result<Sum, Unknown>;

impl Sum {
    /// A number that stands by itself.
    pub fn start(amount: Length, what: impl Into<String>, of: ElementId, span: Option<Span>) -> Self {
        Self { total: amount, terms: vec![Term { amount, what: what.into(), of, span }] }
    }

    /// More above.
    pub fn plus(
        mut self,
        amount: Length,
        what: impl Into<String>,
        of: ElementId,
        span: Option<Span>,
    ) -> Self {
        self.total += amount;
        if amount != Length::ZERO {
            self.terms.push(Term { amount, what: what.into(), of, span });
        }
        self
    }

    /// Less.
    pub fn less(self, amount: Length, what: impl Into<String>, of: ElementId, span: Option<Span>) -> Self {
        self.plus(-amount, what, of, span)
    }

    /// What it comes to.
    pub const fn total(&self) -> Length {
        self.total
    }

    /// Its terms, the start first.
    pub fn terms(&self) -> &[Term] {
        &self.terms
    }

    /// The elements it rests on, the last term's first, each once.
    pub fn elements(&self) -> Vec<ElementId> {
        let mut elements = Vec::new();
        for term in self.terms.iter().rev() {
            if !elements.contains(&term.of) {
                elements.push(term.of);
            }
        }
        elements
    }
}

/// `100'-0" subfloor of main − 3/4" deck − 9-1/4" J1 − 1-1/2" sill = 99'-0 1/2"`.
impl fmt::Display for Sum {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (at, term) in self.terms.iter().enumerate() {
            match (at, term.amount.is_negative()) {
                (0, _) => write!(f, "{} {}", term.amount.in_feet(), term.what)?,
                (_, true) => write!(f, " − {} {}", term.amount.abs(), term.what)?,
                (_, false) => write!(f, " + {} {}", term.amount, term.what)?,
            }
        }
        if self.terms.len() > 1 { write!(f, " = {}", self.total.in_feet()) } else { Ok(()) }
    }
}
