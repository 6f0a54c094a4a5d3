//! The words for a change that every form of the report shares.

use crate::compare::{Change, Consequence, FactKey, Outcome, Standing, Stated, TradeChange, Whole};
use crate::facts::FactValue;
use crate::report::counted;
use crate::syntax::vocabulary::{ElementKind, FACT_NAMES};

/// So many names are told one by one; more are counted.
const MOST_NAMES: usize = 8;

/// A fact without the element that it stands under: `top`, `live reaction on C1`.
pub(in crate::report) fn fact(key: &FactKey) -> String {
    let spec =
        FACT_NAMES.iter().find(|spec| *spec.words == *key.words && spec.arguments().count() == key.of.len());
    let joined = spec.into_iter().flat_map(|spec| spec.arguments()).zip(&key.of).skip(1);
    // Behind `gap between A` and so on `and B` says nothing without the first.
    let word = |joined_by: &'static str| if joined_by == "and" { "to" } else { joined_by };
    let further: String =
        joined.map(|(argument, name)| format!(" {} {name}", word(argument.joined_by))).collect();
    let case = key.case.as_ref().map(|case| format!("{case} ")).unwrap_or_default();
    format!("{case}{}{further}", key.words)
}

/// Before and now, and how far apart: `99'-2" → 99'-0" (2" lower)`.
pub(super) fn moved(was: Option<&FactValue>, is: Option<&FactValue>) -> String {
    match (was, is) {
        (Some(was), Some(is)) => format!("{was} → {is}{}", difference(was, is)),
        (None, Some(is)) => format!("{is}, had no value"),
        (Some(was), None) => format!("{was} → has no value"),
        (None, None) => String::new(),
    }
}

fn difference(was: &FactValue, is: &FactValue) -> String {
    let (Some(before), Some(now)) = (was.as_length(), is.as_length()) else { return String::new() };
    let by = now - before;
    let way = match (was, by.is_negative()) {
        (FactValue::Elevation(_), true) => "lower",
        (FactValue::Elevation(_), false) => "higher",
        (_, true) => "less",
        (_, false) => "more",
    };
    format!(" ({} {way})", by.abs())
}

/// What somebody wrote, without the element.
pub(super) fn stated(what: &Stated) -> String {
    let shown = |side: &Option<String>| match side.as_deref() {
        Some("") => "stated".to_owned(),
        Some(text) => text.to_owned(),
        None => "not stated".to_owned(),
    };
    match what {
        Stated::Came(_) => "new".to_owned(),
        Stated::Went(_) => "gone".to_owned(),
        Stated::Title(was, is) => format!("title  \"{was}\" → \"{is}\""),
        Stated::Line(phrase, Some(was), Some(is)) => {
            let (was, is) = items_that_differ(was, is).unwrap_or((was.clone(), is.clone()));
            format!("{phrase}  {} → {}", shown(&Some(was)), shown(&Some(is)))
        }
        Stated::Line(phrase, was, is) => format!("{phrase}  {} → {}", shown(was), shown(is)),
        Stated::Unread(was, is) => format!("a line that can't be read  {} → {}", shown(was), shown(is)),
    }
}

/// Of two lists with as many items those that differ, so that nobody has to look for them. `None` when most do.
fn items_that_differ(was: &str, is: &str) -> Option<(String, String)> {
    let (was, is): (Vec<&str>, Vec<&str>) = (was.split(", ").collect(), is.split(", ").collect());
    let differing: Vec<(&str, &str)> =
        was.iter().copied().zip(is.iter().copied()).filter(|(was, is)| was != is).collect();
    let is_clearer = was.len() == is.len() && !differing.is_empty() && 2 * differing.len() < was.len();
    let joined = |items: Vec<&str>| items.join(", ");
    let (was, is) = differing.into_iter().unzip();
    is_clearer.then(|| (joined(was), joined(is)))
}

/// The lines of what came or went.
pub(super) fn lines(what: &Stated) -> &[String] {
    match what {
        Stated::Came(lines) | Stated::Went(lines) => lines,
        Stated::Title(..) | Stated::Line(..) | Stated::Unread(..) => &[],
    }
}

/// What became of a spec that is in one of the two states only.
pub(super) fn whole(whole: Whole) -> &'static str {
    match whole {
        Whole::Came => "a new spec",
        Whole::Went => "this spec is gone",
    }
}

/// `nothing that matters changed in 3 more specs`. `None` when one spec was asked for.
pub(super) fn same(n_same: Option<usize>, n_changed: usize) -> Option<String> {
    let n_same = n_same.filter(|n| *n > 0 || n_changed == 0)?;
    let more = if n_changed > 0 { " more" } else { "" };
    let specs = if n_same == 1 { "spec" } else { "specs" };
    Some(format!("nothing that matters changed in {n_same}{more} {specs}"))
}

/// Where it follows too, by the same numbers: `, and so JK1 on W1`; of another neighbour of the same element the name.
pub(super) fn also(consequence: &Consequence) -> (String, String) {
    let Outcome::Moved(key, ..) = &consequence.outcome else { return Default::default() };
    let (of_it, onward): (Vec<_>, Vec<_>) =
        consequence.also.iter().partition(|other| other.of.first() == key.of.first());
    let names: String = of_it.iter().filter_map(|other| Some(format!(", {}", other.of.get(1)?))).collect();
    let onward: Vec<String> = onward
        .iter()
        .filter_map(|other| Some(format!("{} on {}", other.of.first()?, other.of.get(1)?)))
        .collect();
    let onward = if onward.is_empty() { String::new() } else { format!("; so also {}", onward.join(", ")) };
    (names, onward)
}

/// `poured 2027-04-02`
pub(super) fn standing(standing: Standing) -> String {
    match standing.since {
        Some(since) => format!("{} {since}", standing.stage.word()),
        None => standing.stage.word().to_owned(),
    }
}

/// What somebody must know of an element that is bought or stands, when a consequence moves it.
pub(super) fn is_pressing(consequence: &Consequence) -> Option<Standing> {
    let is_pressing = match consequence.outcome {
        Outcome::Fails(_) | Outcome::StillFails(..) => true,
        Outcome::Passes(_) | Outcome::Waived(_) | Outcome::Stale(_) => false,
        Outcome::Moved(..) => !consequence.ways_out.is_empty(),
    };
    consequence.standing.filter(|_| is_pressing)
}

/// The words with a capital.
pub(super) fn with_capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// What no fact and no finding changed of: `walls W1, W2; 12 joists`. `None` when there is nothing.
pub(super) fn untouched(trade: &TradeChange) -> Option<String> {
    let kinds: Vec<String> =
        trade.untouched.iter().map(|(kind, names)| named_or_counted(*kind, names)).collect();
    (!kinds.is_empty()).then(|| kinds.join("; "))
}

fn named_or_counted(kind: ElementKind, names: &[String]) -> String {
    match names {
        _ if names.len() > MOST_NAMES => format!("{} {}", names.len(), kind.plural()),
        [name] if name == kind.word() => name.clone(),
        [name] => format!("{} {name}", kind.word()),
        names => format!("{} {}", kind.plural(), names.join(", ")),
    }
}

/// Those for whom nothing follows: `stairs, plumber`. `None` when something follows for each, and of a spec that is in one
/// state only.
pub(super) fn without_consequence(change: &Change) -> Option<String> {
    if change.whole.is_some() {
        return None;
    }
    let still = change.trades.iter().filter(|trade| trade.consequences.is_empty());
    let still: Vec<&str> = still.map(|trade| trade.trade.word()).collect();
    (!still.is_empty()).then(|| still.join(", "))
}

/// The line under the list that says what was left out.
pub(super) fn slight(n_slight: usize) -> Option<String> {
    (n_slight > 0).then(|| {
        format!("{} of a force or a ratio, less than 1 %: not listed", counted(n_slight, "slight change"))
    })
}

#[cfg(test)]
mod tests {
    use super::items_that_differ;

    #[test]
    fn of_a_list_only_what_differs_is_told() {
        let told = |was, is| items_that_differ(was, is);
        let both = |was: &str, is: &str| Some((was.to_owned(), is.to_owned()));
        assert_eq!(told("A 0', B 8', C 17'-9\"", "A 0', B 9', C 17'-9\""), both("B 8'", "B 9'"));
        assert_eq!(told("W1, W2, W3, W4, W5", "W9, W2, W3, W4, W8"), both("W1, W5", "W9, W8"));
        // Another number of items, most of them, or only the spelling.
        assert_eq!(told("A 0', B 8', C 9'", "A 0', B 8', C 9', D 12'"), None);
        assert_eq!(told("W1, W2", "W1, W3"), None);
        assert_eq!(told("W1, W2, W3", "W1, W2, W3"), None);
        assert_eq!(told("linoleum", "cork"), None);
    }
}
