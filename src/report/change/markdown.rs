//! A change as a comment on a review.

use std::io::{self, Write};

use crate::compare::{Consequence, Outcome, TradeChange};
use crate::report::CAUTION;
use crate::report::change::{ShownChange, words};
use crate::report::markdown_text::markdown_text as plain;

/// Writes what changed, what follows trade by trade, and what stayed.
///
/// # Errors
/// What the stream says.
pub fn write_markdown(shown: &ShownChange<'_>, out: &mut impl Write) -> io::Result<()> {
    let change = shown.change;
    if change.is_empty() {
        return writeln!(out, "Nothing that matters changed.");
    }
    if !change.renamed.is_empty() || !change.stated.is_empty() {
        writeln!(out, "## Changed\n")?;
        for (was, is) in &change.renamed {
            writeln!(out, "- {} is {} now", plain(was), plain(is))?;
        }
        for (stated, place) in shown.stated() {
            let standing =
                stated.standing.map(|standing| format!(" **It is {}.**", words::standing(standing)));
            let (element, what) = (plain(&stated.element), plain(&words::stated(&stated.what)));
            writeln!(out, "- **{element}** {what} ({}){}", plain(place), standing.unwrap_or_default())?;
        }
        writeln!(out)?;
    }
    let touched = change.trades.iter().filter(|trade| !trade.consequences.is_empty());
    for trade in touched {
        write_trade(trade, out)?;
    }
    if let Some(still) = words::without_consequence(change) {
        writeln!(out, "Nothing follows for: {still}.\n")?;
    }
    if let Some(slight) = words::slight(change.n_slight) {
        writeln!(out, "{}\n", plain(&slight))?;
    }
    writeln!(out, "{CAUTION}")
}

fn write_trade(trade: &TradeChange, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "## For the {}\n", trade.trade.word())?;
    for consequence in &trade.consequences {
        writeln!(out, "- {}", sentence(consequence))?;
        if let Some(standing) = words::is_pressing(consequence) {
            writeln!(out, "  - **{} is {}**", plain(&consequence.element), words::standing(standing))?;
            for way in &consequence.ways_out {
                writeln!(out, "  - {}", plain(way))?;
            }
        }
    }
    if let Some(untouched) = words::untouched(trade) {
        writeln!(out, "- the same: {}", plain(&untouched))?;
    }
    writeln!(out)
}

/// A consequence as a list's item says it.
pub(super) fn sentence(consequence: &Consequence) -> String {
    match &consequence.outcome {
        Outcome::Fails(finding) => {
            format!("**fails** ({}): {} `{}`", finding.severity.word(), plain(&finding.message), finding.rule)
        }
        Outcome::StillFails(was, is) => {
            format!("still fails: {} `{}` (before: {})", plain(&is.message), is.rule, plain(&was.message))
        }
        Outcome::Passes(finding) => {
            format!("**holds now**, no longer: {} `{}`", plain(&finding.message), finding.rule)
        }
        Outcome::Waived(finding) => {
            format!("**waived**: {} `{}`", plain(&finding.message), finding.rule)
        }
        Outcome::Moved(key, was, is) => {
            let moved = words::moved(was.as_ref(), is.as_ref());
            format!("{} {} {}", plain(&consequence.element), plain(&words::fact(key)), plain(&moved))
        }
    }
}
