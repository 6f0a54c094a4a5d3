//! A change for a terminal.

use std::io::{self, Write};

use crate::compare::{Consequence, Outcome, TradeChange};
use crate::report::change::{ShownChange, ShownChanges, words};
use crate::report::{CAUTION, Palette, counted, printable};

/// Writes what changed, what follows trade by trade, and what stayed.
///
/// # Errors
/// What the stream says.
pub fn write_text(shown: &ShownChanges<'_>, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    for one in shown.specs {
        if shown.n_same.is_some() || one.change.whole.is_some() {
            let title = palette.faint(&printable(&one.change.title));
            writeln!(out, "{}  {title}\n", palette.strong(&printable(one.spec)))?;
        }
        write_one(one, palette, out)?;
        if shown.n_same.is_some() {
            writeln!(out)?;
        }
    }
    if let Some(same) = words::same(shown.n_same, shown.specs.len()) {
        writeln!(out, "{same}")?;
    }
    match shown.specs.iter().all(|one| one.change.is_empty()) {
        true => Ok(()),
        false => writeln!(out, "{CAUTION}"),
    }
}

fn write_one(shown: &ShownChange<'_>, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let change = shown.change;
    if change.is_empty() {
        return writeln!(out, "nothing that matters changed");
    }
    if let Some(whole) = change.whole {
        writeln!(out, "{}\n", words::whole(whole))?;
    }
    if !change.renamed.is_empty() {
        writeln!(out, "{}", palette.strong("renamed"))?;
        for (was, is) in &change.renamed {
            writeln!(out, "  {} is {} now", printable(was), printable(is))?;
        }
        writeln!(out)?;
    }
    if !change.stated.is_empty() {
        writeln!(out, "{}", palette.strong("changed"))?;
        for (stated, place) in shown.stated() {
            let what = words::stated(&stated.what);
            let place = palette.faint(&printable(place));
            writeln!(out, "  {}  {}  {place}", printable(&stated.element), printable(&what))?;
            if let Some(standing) = stated.standing {
                writeln!(out, "      {} it is {}", palette.strong("note"), words::standing(standing))?;
            }
            for line in words::lines(&stated.what) {
                writeln!(out, "      {}", printable(line))?;
            }
        }
        writeln!(out)?;
    }
    for trade in change.trades.iter().filter(|trade| !trade.consequences.is_empty()) {
        write_trade(trade, palette, out)?;
        writeln!(out)?;
    }
    if let Some(still) = words::without_consequence(change) {
        writeln!(out, "nothing follows for: {still}")?;
    }
    if let Some(slight) = words::slight(change.n_slight) {
        writeln!(out, "{slight}")?;
    }
    Ok(())
}

fn write_trade(trade: &TradeChange, palette: Palette, out: &mut impl Write) -> io::Result<()> {
    let n = counted(trade.consequences.len(), "consequence");
    writeln!(out, "{}  {}", palette.strong(trade.trade.word()), palette.faint(&n))?;
    let mut moved_of: Option<&str> = None;
    for consequence in &trade.consequences {
        moved_of = write_consequence(consequence, moved_of, palette, out)?;
    }
    if let Some(untouched) = words::untouched(trade) {
        writeln!(out, "  {} {}", palette.faint("same "), printable(&untouched))?;
    }
    Ok(())
}

/// Writes one; of an element whose facts moved the name stands once. Returns the element whose facts stand last.
fn write_consequence<'c>(
    consequence: &'c Consequence,
    moved_of: Option<&str>,
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<Option<&'c str>> {
    let element = consequence.element.as_str();
    let mut last = None;
    match &consequence.outcome {
        Outcome::Fails(finding) => {
            let word = palette.severity(finding.severity, "fails");
            writeln!(
                out,
                "  {word}  {} {}",
                printable(&finding.message),
                palette.faint(&format!("[{}]", finding.rule))
            )?;
        }
        Outcome::StillFails(was, is) => {
            let rule = palette.faint(&format!("[{}]", is.rule));
            writeln!(out, "  {}  {} {rule}", palette.severity(is.severity, "still"), printable(&is.message))?;
            writeln!(out, "         before: {}", printable(&was.message))?;
        }
        Outcome::Passes(finding) => {
            let rule = palette.faint(&format!("[{}]", finding.rule));
            writeln!(
                out,
                "  {}  no longer: {} {rule}",
                palette.strong("holds"),
                printable(&finding.message)
            )?;
        }
        Outcome::Waived(finding) => {
            let rule = palette.faint(&format!("[{}]", finding.rule));
            writeln!(out, "  {} {} {rule}", palette.strong("waived"), printable(&finding.message))?;
        }
        Outcome::Stale(message) => writeln!(out, "  {}  {}", palette.strong("stale"), printable(message))?,
        Outcome::Moved(key, was, is) => {
            let name = if moved_of == Some(element) {
                " ".repeat(element.chars().count())
            } else {
                printable(element).into_owned()
            };
            let (names, onward) = words::also(consequence);
            let fact = words::fact(key) + &names;
            let moved = words::moved(was.as_ref(), is.as_ref()) + &onward;
            writeln!(out, "  moves  {name}  {}  {}", printable(&fact), printable(&moved))?;
            last = Some(element);
        }
    }
    if let Some(standing) = words::is_pressing(consequence) {
        let word = palette.strong("note");
        writeln!(out, "         {word} {} is {}", printable(element), words::standing(standing))?;
        for way in &consequence.ways_out {
            writeln!(out, "              {}", printable(way))?;
        }
        last = None;
    }
    Ok(last)
}
