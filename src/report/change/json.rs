//! A change for a program: the shape that `grammar/change-output.schema.json` describes.

use std::io::{self, Write};

use serde::Serialize;

use crate::compare::{Consequence, FactKey, Outcome, Standing, Stated, TradeChange, Whole};
use crate::facts::FactValue;
use crate::report::CAUTION;
use crate::report::change::{ShownChange, ShownChanges, words};

/// Raised when a program that reads the old shape could misread the new one.
const SCHEMA: u32 = 2;

/// Writes what changed as one JSON text.
///
/// # Errors
/// What the stream says.
pub fn write_json(shown: &ShownChanges<'_>, out: &mut impl Write) -> io::Result<()> {
    let output = Output {
        schema: SCHEMA,
        version: env!("CARGO_PKG_VERSION"),
        caution: CAUTION,
        specs: shown.specs.iter().map(SpecOut::of).collect(),
        same: shown.n_same.unwrap_or(0),
    };
    serde_json::to_writer_pretty(&mut *out, &output)?;
    writeln!(out)
}

#[derive(Serialize)]
struct Output<'a> {
    schema: u32,
    version: &'static str,
    caution: &'static str,
    specs: Vec<SpecOut<'a>>,
    same: usize,
}

#[derive(Serialize)]
struct SpecOut<'a> {
    spec: &'a str,
    title: &'a str,
    whole: Option<&'static str>,
    renamed: Vec<Renamed<'a>>,
    changed: Vec<StatedOut<'a>>,
    trades: Vec<TradeOut<'a>>,
    slight: usize,
}

impl<'a> SpecOut<'a> {
    fn of(shown: &ShownChange<'a>) -> Self {
        let change = shown.change;
        let stated = shown.stated().map(|(stated, place)| StatedOut {
            element: &stated.element,
            place,
            standing: stated.standing.map(words::standing),
            what: WhatOut::of(&stated.what),
        });
        Self {
            spec: shown.spec,
            title: &change.title,
            whole: change.whole.map(|whole| match whole {
                Whole::Came => "came",
                Whole::Went => "went",
            }),
            renamed: change.renamed.iter().map(|(from, to)| Renamed { from, to }).collect(),
            changed: stated.collect(),
            trades: change.trades.iter().map(TradeOut::of).collect(),
            slight: change.n_slight,
        }
    }
}

#[derive(Serialize)]
struct Renamed<'a> {
    from: &'a str,
    to: &'a str,
}

#[derive(Serialize)]
struct StatedOut<'a> {
    element: &'a str,
    place: &'a str,
    standing: Option<String>,
    #[serde(flatten)]
    what: WhatOut<'a>,
}

#[derive(Serialize)]
#[serde(tag = "kind", rename_all = "lowercase")]
enum WhatOut<'a> {
    Came { lines: &'a [String] },
    Went { lines: &'a [String] },
    Title { before: &'a str, now: &'a str },
    Line { phrase: &'a str, before: Option<&'a str>, now: Option<&'a str> },
    Unread { before: Option<&'a str>, now: Option<&'a str> },
}

impl<'a> WhatOut<'a> {
    fn of(what: &'a Stated) -> Self {
        match what {
            Stated::Came(lines) => Self::Came { lines },
            Stated::Went(lines) => Self::Went { lines },
            Stated::Title(before, now) => Self::Title { before, now },
            Stated::Line(phrase, before, now) => {
                Self::Line { phrase, before: before.as_deref(), now: now.as_deref() }
            }
            Stated::Unread(before, now) => Self::Unread { before: before.as_deref(), now: now.as_deref() },
        }
    }
}

#[derive(Serialize)]
struct TradeOut<'a> {
    trade: &'static str,
    consequences: Vec<ConsequenceOut<'a>>,
    untouched: Vec<UntouchedOut<'a>>,
}

impl<'a> TradeOut<'a> {
    fn of(trade: &'a TradeChange) -> Self {
        let untouched = trade.untouched.iter();
        Self {
            trade: trade.trade.word(),
            consequences: trade.consequences.iter().map(ConsequenceOut::of).collect(),
            untouched: untouched.map(|(kind, names)| UntouchedOut { kind: kind.word(), names }).collect(),
        }
    }
}

#[derive(Serialize)]
struct UntouchedOut<'a> {
    kind: &'static str,
    names: &'a [String],
}

#[derive(Serialize)]
struct ConsequenceOut<'a> {
    element: &'a str,
    #[serde(flatten)]
    outcome: OutcomeOut<'a>,
    standing: Option<String>,
    ways_out: &'a [String],
}

#[derive(Serialize)]
#[serde(tag = "outcome", rename_all = "lowercase")]
enum OutcomeOut<'a> {
    Fails { rule: &'static str, severity: &'static str, message: &'a str },
    Still { rule: &'static str, severity: &'static str, message: &'a str, before: &'a str },
    Holds { rule: &'static str, severity: &'static str, before: &'a str },
    Waived { rule: &'static str, severity: &'static str, message: &'a str },
    Stale { message: &'a str },
    Moves { fact: String, before: Option<String>, now: Option<String>, also: Vec<Also<'a>> },
}

/// The same fact between other elements, with the same numbers.
#[derive(Serialize)]
struct Also<'a> {
    of: &'a str,
    on: &'a str,
}

impl<'a> Also<'a> {
    fn of(key: &'a FactKey) -> Option<Self> {
        match key.of.as_slice() {
            [of, on] => Some(Self { of, on }),
            _ => None,
        }
    }
}

impl<'a> ConsequenceOut<'a> {
    fn of(consequence: &'a Consequence) -> Self {
        let outcome = match &consequence.outcome {
            Outcome::Fails(is) => {
                OutcomeOut::Fails { rule: is.rule, severity: is.severity.word(), message: &is.message }
            }
            Outcome::StillFails(was, is) => OutcomeOut::Still {
                rule: is.rule,
                severity: is.severity.word(),
                message: &is.message,
                before: &was.message,
            },
            Outcome::Passes(was) => {
                OutcomeOut::Holds { rule: was.rule, severity: was.severity.word(), before: &was.message }
            }
            Outcome::Waived(is) => {
                OutcomeOut::Waived { rule: is.rule, severity: is.severity.word(), message: &is.message }
            }
            Outcome::Stale(message) => OutcomeOut::Stale { message },
            Outcome::Moved(key, was, is) => OutcomeOut::Moves {
                fact: words::fact(key),
                before: was.as_ref().map(FactValue::to_string),
                now: is.as_ref().map(FactValue::to_string),
                also: consequence.also.iter().filter_map(Also::of).collect(),
            },
        };
        let standing: Option<Standing> = consequence.standing;
        Self {
            element: &consequence.element,
            outcome,
            standing: standing.map(words::standing),
            ways_out: &consequence.ways_out,
        }
    }
}
