//! A change as one page for a browser or a printer: nothing on it is loaded from elsewhere, and nothing runs.

use std::io::{self, Write};

use quick_xml::escape::escape;

use crate::compare::{Consequence, Outcome, Stated, StatedChange, TradeChange};
use crate::report::change::{ShownChange, ShownChanges, words};
use crate::report::{CAUTION, counted, printable};

/// Light and dark as the reader's system asks; on paper black on white, and a consequence stays on one sheet.
const STYLE: &str = "
:root { color-scheme: light dark; --ink: #1c1c1a; --soft: #5d5c57; --paper: #fbfaf7; --rule: #d8d5cc; --bad: #a3201b; --good: #1d6b3a; --mind: #86560a; }
@media (prefers-color-scheme: dark) { :root { --ink: #e9e7e1; --soft: #a9a69d; --paper: #1a1a18; --rule: #45433d; --bad: #ff8f85; --good: #7fd39b; --mind: #f0bd6a; } }
body { margin: 0 auto; padding: 1.2rem 1rem 3rem; max-width: 46rem; background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, sans-serif; overflow-wrap: break-word; }
h1 { font-size: 1.5rem; line-height: 1.25; margin: 0 0 1rem; }
h2 { font-size: 1.15rem; margin: 2rem 0 .4rem; padding-top: .7rem; border-top: 2px solid var(--ink); }
h2 small, .place, .soft, code { color: var(--soft); font-weight: normal; }
h2 small, .place, .soft { font-size: .875rem; }
h3 { font-size: 1rem; margin: 1rem 0 .2rem; }
ul { list-style: none; margin: 0; padding: 0; }
li { padding: .4rem 0; border-top: 1px solid var(--rule); }
li:first-child { border-top: 0; }
li ul { margin: .2rem 0 0 1rem; }
li li { padding: .1rem 0; border: 0; }
b.bad { color: var(--bad); } b.good { color: var(--good); } .mind { color: var(--mind); font-weight: bold; }
code, .figure { white-space: nowrap; }
table { border-collapse: collapse; width: 100%; }
td { padding: .25rem .8rem .25rem 0; border-top: 1px solid var(--rule); vertical-align: top; font-variant-numeric: tabular-nums; }
td:first-child { width: 34%; color: var(--soft); }
tr:first-child td { border-top: 0; }
.caution { margin-top: 2rem; padding: .6rem .9rem; border: 1px solid var(--mind); }
@media print { :root { --ink: #000; --soft: #444; --paper: #fff; --rule: #bbb; --bad: #000; --good: #000; --mind: #000; } body { max-width: none; padding: 0; font-size: 10pt; } li, tr, .caution { break-inside: avoid; } h2, h3 { break-after: avoid; } }
";

/// Writes what changed, what follows trade by trade, and what stayed.
///
/// # Errors
/// What the stream says.
pub fn write_html(shown: &ShownChanges<'_>, out: &mut impl Write) -> io::Result<()> {
    let title = match shown.specs {
        [one] => title_of(one),
        specs => plain(&counted(specs.len(), "spec")),
    };
    writeln!(out, "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">")?;
    writeln!(out, "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">")?;
    writeln!(out, "<title>{title}: what changed</title>\n<style>{STYLE}</style>\n</head>\n<body>")?;
    for one in shown.specs {
        write_one(one, shown.n_same.is_some(), out)?;
    }
    if let Some(same) = words::same(shown.n_same, shown.specs.len()) {
        writeln!(out, "<p class=\"soft\">{same}</p>")?;
    }
    writeln!(out, "<p class=\"caution\">{}</p>\n</body>\n</html>", plain(CAUTION))
}

fn title_of(shown: &ShownChange<'_>) -> String {
    plain(if shown.change.title.is_empty() { "A change" } else { &shown.change.title })
}

fn write_one(shown: &ShownChange<'_>, is_of_several: bool, out: &mut impl Write) -> io::Result<()> {
    let change = shown.change;
    writeln!(out, "<h1>{}: what changed, and what follows</h1>", title_of(shown))?;
    if is_of_several || change.whole.is_some() {
        writeln!(out, "<p class=\"place\">{}</p>", plain(shown.spec))?;
    }
    if let Some(whole) = change.whole {
        writeln!(out, "<p>{}</p>", words::whole(whole))?;
    }
    if change.is_empty() {
        writeln!(out, "<p>Nothing that matters changed.</p>")?;
    } else {
        if !change.renamed.is_empty() || !change.stated.is_empty() {
            write_changed(shown, out)?;
        }
        for trade in change.trades.iter().filter(|trade| !trade.consequences.is_empty()) {
            write_trade(trade, out)?;
        }
        if let Some(still) = words::without_consequence(change) {
            writeln!(out, "<h2>Nothing follows</h2>\n<p>For: {still}.</p>")?;
        }
        if let Some(slight) = words::slight(change.n_slight) {
            writeln!(out, "<p class=\"soft\">{}</p>", told(&slight))?;
        }
    }
    Ok(())
}

/// Text that can't be taken for markup, and turns no direction of writing.
fn plain(text: &str) -> String {
    escape(printable(text)).into_owned()
}

/// The same with its figures whole: `2-1/4"` and `99'-0 9/16"` broken over two lines are misread.
fn told(text: &str) -> String {
    let mut told = String::new();
    let mut words = text.split(' ').peekable();
    while let Some(word) = words.next() {
        let mut figure = word.to_owned();
        let is_fraction =
            |next: &&str| next.starts_with(|first: char| first.is_ascii_digit()) && next.contains('/');
        if word.contains("'-")
            && let Some(fraction) = words.next_if(is_fraction)
        {
            figure = format!("{word} {fraction}");
        }
        let starts = figure.trim_start_matches('(').starts_with(|first: char| first.is_ascii_digit());
        let is_figure = starts && figure.contains('-');
        match is_figure {
            true => told += &format!("<span class=\"figure\">{}</span>", plain(&figure)),
            false => told += &plain(&figure),
        }
        if words.peek().is_some() {
            told.push(' ');
        }
    }
    told
}

fn write_changed(shown: &ShownChange<'_>, out: &mut impl Write) -> io::Result<()> {
    writeln!(out, "<h2>Changed</h2>\n<ul>")?;
    for (was, is) in &shown.change.renamed {
        writeln!(out, "<li>{} is <b>{}</b> now</li>", told(was), told(is))?;
    }
    for (stated, place) in shown.stated() {
        write_stated(stated, place, out)?;
    }
    writeln!(out, "</ul>")
}

fn write_stated(stated: &StatedChange, place: &str, out: &mut impl Write) -> io::Result<()> {
    let mark = match stated.what {
        Stated::Went(_) => " class=\"bad\"",
        Stated::Came(_) => " class=\"good\"",
        Stated::Title(..) | Stated::Line(..) | Stated::Unread(..) => "",
    };
    let (element, what) = (told(&stated.element), told(&words::stated(&stated.what)));
    write!(out, "<li>{element} <b{mark}>{what}</b> <span class=\"place\">{}</span>", plain(place))?;
    if let Some(standing) = stated.standing {
        write!(out, " <span class=\"mind\">it is {}</span>", told(&words::standing(standing)))?;
    }
    let lines = words::lines(&stated.what);
    if !lines.is_empty() {
        let lines: String = lines.iter().map(|line| format!("<li>{}</li>", told(line))).collect();
        write!(out, "<ul>{lines}</ul>")?;
    }
    writeln!(out, "</li>")
}

fn write_trade(trade: &TradeChange, out: &mut impl Write) -> io::Result<()> {
    let n = counted(trade.consequences.len(), "consequence");
    writeln!(out, "<h2>{} <small>{n}</small></h2>", words::with_capital(trade.trade.word()))?;
    let (moved, said): (Vec<_>, Vec<_>) =
        trade.consequences.iter().partition(|it| matches!(it.outcome, Outcome::Moved(..)));
    if !said.is_empty() {
        writeln!(out, "<ul>")?;
        for consequence in said {
            write!(out, "<li>{}", sentence(consequence))?;
            write_ways_out(consequence, out)?;
            writeln!(out, "</li>")?;
        }
        writeln!(out, "</ul>")?;
    }
    for of_one in moved.chunk_by(|one, next| one.element == next.element) {
        let element = of_one.first().map(|first| told(&first.element)).unwrap_or_default();
        writeln!(out, "<h3>{element}</h3>\n<table>")?;
        for consequence in of_one {
            if let Outcome::Moved(key, was, is) = &consequence.outcome {
                let (names, onward) = words::also(consequence);
                let fact = words::fact(key) + &names;
                let moved = words::moved(was.as_ref(), is.as_ref()) + &onward;
                write!(out, "<tr><td>{}</td><td>{}", told(&fact), told(&moved))?;
                write_ways_out(consequence, out)?;
                writeln!(out, "</td></tr>")?;
            }
        }
        writeln!(out, "</table>")?;
    }
    match words::untouched(trade) {
        Some(untouched) => writeln!(out, "<p class=\"soft\">The same: {}</p>", told(&untouched)),
        None => Ok(()),
    }
}

fn sentence(consequence: &Consequence) -> String {
    let said = |message: &str, rule: &str| format!("{} <code>{}</code>", told(message), told(rule));
    match &consequence.outcome {
        Outcome::Fails(is) => {
            format!("<b class=\"bad\">fails</b> ({}): {}", is.severity.word(), said(&is.message, is.rule))
        }
        Outcome::StillFails(was, is) => format!(
            "<b>still fails</b>: {}<br/><span class=\"soft\">before: {}</span>",
            said(&is.message, is.rule),
            told(&was.message)
        ),
        Outcome::Waived(is) => format!("<span class=\"mind\">waived</span>: {}", said(&is.message, is.rule)),
        Outcome::Stale(message) => format!("<span class=\"mind\">stale</span>: {}", told(message)),
        Outcome::Passes(was) => {
            format!("<b class=\"good\">holds now</b>, no longer: {}", said(&was.message, was.rule))
        }
        Outcome::Moved(..) => String::new(),
    }
}

fn write_ways_out(consequence: &Consequence, out: &mut impl Write) -> io::Result<()> {
    let Some(standing) = words::is_pressing(consequence) else { return Ok(()) };
    let (element, standing) = (told(&consequence.element), told(&words::standing(standing)));
    write!(out, "<br/><span class=\"mind\">{element} is {standing}</span>")?;
    if !consequence.ways_out.is_empty() {
        let ways: String = consequence.ways_out.iter().map(|way| format!("<li>{}</li>", told(way))).collect();
        write!(out, "<ul>{ways}</ul>")?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::told;

    #[test]
    fn a_figure_stays_whole() {
        let text = "99'-0 9/16\"~ → 99' (2-1/4\"~ lower) <b>";
        assert_eq!(
            told(text),
            "<span class=\"figure\">99&apos;-0 9/16&quot;~</span> → 99&apos; <span class=\"figure\">(2-1/4&quot;~</span> lower) &lt;b&gt;"
        );
    }
}
