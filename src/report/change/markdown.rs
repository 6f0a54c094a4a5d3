//! A change as a comment on a review.

use std::io::{self, Write};

use crate::compare::{Consequence, Outcome, TradeChange};
use crate::report::CAUTION;
use crate::report::change::{ShownChange, ShownChanges, words};
use crate::report::markdown_text::markdown_text as plain;

/// Writes what changed, what follows trade by trade, and what stayed.
///
/// # Errors
/// What the stream says.
pub fn write_markdown(shown: &ShownChanges<'_>, out: &mut impl Write) -> io::Result<()> {
    for one in shown.specs {
        if shown.n_same.is_some() || one.change.whole.is_some() {
            let title =
                if one.change.title.is_empty() { String::new() } else { format!(", {}", one.change.title) };
            writeln!(out, "# {}{}\n", plain(one.spec), plain(&title))?;
        }
        write_one(one, out)?;
    }
    if let Some(same) = words::same(shown.n_same, shown.specs.len()) {
        writeln!(out, "{}\n", sentence_of(&same))?;
    }
    match shown.specs.iter().all(|one| one.change.is_empty()) {
        true => Ok(()),
        false => writeln!(out, "{CAUTION}"),
    }
}

/// With a capital and a stop.
fn sentence_of(words: &str) -> String {
    words::with_capital(words) + "."
}

fn write_one(shown: &ShownChange<'_>, out: &mut impl Write) -> io::Result<()> {
    let change = shown.change;
    if change.is_empty() {
        return writeln!(out, "Nothing that matters changed.");
    }
    if let Some(whole) = change.whole {
        writeln!(out, "{}\n", sentence_of(words::whole(whole)))?;
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
            for line in words::lines(&stated.what) {
                writeln!(out, "  - {}", plain(line))?;
            }
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
    Ok(())
}

fn write_trade(trade: &TradeChange, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "## {}\n", words::with_capital(trade.trade.word()))?;
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
        Outcome::Stale(message) => format!("**stale**: {}", plain(message)),
        Outcome::Moved(key, was, is) => {
            let (names, onward) = words::also(consequence);
            let fact = words::fact(key) + &names;
            let moved = words::moved(was.as_ref(), is.as_ref()) + &onward;
            format!("{} {} {}", plain(&consequence.element), plain(&fact), plain(&moved))
        }
    }
}
