//! The facts of each element in the order that the vocabulary lists them.

use crate::diagnostic::Edit;
use crate::house::lines::place_of;
use crate::ide::actions::difference::difference;
use crate::ide::actions::{Action, ActionKind, Change};
use crate::ide::formatting::formatting;
use crate::snapshot::Snapshot;
use crate::syntax::vocabulary::{ElementSpec, spec_of};
use crate::syntax::{Body, Chunk, Fact, LineKind, Opening, Tree};
use crate::text::FileId;

/// Facts that make one list of the model, in which their order counts: each group keeps its own.
const LISTS: [&[&str]; 4] = [
    &["bears on", "hangs from"],
    &["keep", "nothing below", "no column"],
    &["steps down", "steps up"],
    &["x", "y"],
];

/// The action, when the order is another one.
pub fn organize(snapshot: &Snapshot, file: FileId) -> Option<Action> {
    let (tree, text) = tree_and_text(snapshot, file)?;
    if tree.chunks.iter().all(|chunk| is_in_order(chunk, text)) {
        return None;
    }
    let action = Action::new("order facts as the reference lists them", ActionKind::Organize, Vec::new());
    Some(Action { change: Change::Organize, ..action })
}

/// The lines that move, in the formatter's style. Comments go with the fact below them, or with their own line; a blank line
/// parts what is ordered by itself; an element with a line that can't be read stays as it is.
pub fn edits(snapshot: &Snapshot, file: FileId) -> Vec<Edit> {
    let Some((tree, text)) = tree_and_text(snapshot, file) else { return Vec::new() };
    let ordered = ordered(tree, text);
    let formatted = applied(&ordered);
    difference(file, text, &formatted)
}

/// The text as the formatter writes it, with the line ends it has.
fn applied(text: &str) -> String {
    let mut formatted = text.to_owned();
    for change in formatting(text).iter().rev() {
        formatted.replace_range(change.start as usize..change.end as usize, &change.text);
    }
    formatted
}

fn tree_and_text(snapshot: &Snapshot, file: FileId) -> Option<(&Tree, &str)> {
    let at = file.0 as usize;
    Some((snapshot.house.trees.get(at)?, &snapshot.inputs.sources.get(at)?.text))
}

fn ordered(tree: &Tree, text: &str) -> String {
    tree.chunks.iter().map(|chunk| ordered_chunk(chunk, text)).collect()
}

fn is_in_order(chunk: &Chunk, text: &str) -> bool {
    let start = chunk.start as usize;
    text.get(start..start + chunk.body.length as usize) == Some(&ordered_chunk(chunk, text))
}

/// The lines of a chunk: of each stretch without a blank line the facts in order, each with the comments above it.
fn ordered_chunk(chunk: &Chunk, text: &str) -> String {
    let body = &chunk.body;
    let line_text = |line: &crate::syntax::Line| {
        let (start, end) = (chunk.start + line.span.start, chunk.start + line.span.end);
        text.get(start as usize..end as usize).unwrap_or("").to_owned()
    };
    let spec = match &body.opening {
        Opening::Element(heading) if body.problems.is_empty() && body.broken.is_empty() => {
            spec_of(heading.kind)
        }
        Opening::Element(_) | Opening::Nothing | Opening::Include(_) | Opening::Unknown(..) => {
            return body.lines.iter().map(line_text).collect();
        }
    };
    let mut out = String::new();
    let mut stretch: Vec<(usize, String)> = Vec::new();
    let mut above = String::new();
    for line in &body.lines {
        let written = line_text(line);
        match line.kind {
            LineKind::Fact(index) => {
                let place = body.facts.get(index).map_or(0, |fact| rank(spec, body, fact));
                above.push_str(&written);
                stretch.push((place, std::mem::take(&mut above)));
            }
            LineKind::Comment => above.push_str(&written),
            LineKind::Blank | LineKind::Opening | LineKind::Broken => {
                flush(&mut stretch, &mut above, &mut out);
                out.push_str(&written);
            }
        }
    }
    flush(&mut stretch, &mut above, &mut out);
    out
}

/// Writes a stretch in order; a last line without an end gets the end of the others.
fn flush(stretch: &mut Vec<(usize, String)>, above: &mut String, out: &mut String) {
    let is_open = stretch.last().is_some_and(|(_, lines)| !lines.ends_with(['\n', '\r']));
    let is_moved = !stretch.is_sorted_by_key(|(place, _)| *place);
    if is_open && is_moved {
        let end = if out.contains("\r\n") { "\r\n" } else { "\n" };
        if let Some((_, last)) = stretch.last_mut() {
            last.push_str(end);
        }
    }
    stretch.sort_by_key(|(place, _)| *place);
    out.extend(stretch.drain(..).map(|(_, lines)| lines));
    out.push_str(above);
    above.clear();
}

/// Where a fact comes; those of one list all where the first of them does.
fn rank(spec: &'static ElementSpec, body: &Body, fact: &Fact) -> usize {
    let phrase = fact.spec.phrase;
    let list = LISTS.iter().find(|list| list.contains(&phrase));
    let places = list.into_iter().flat_map(|list| {
        let of_list = body.facts.iter().filter(|other| list.contains(&other.spec.phrase));
        of_list.map(|other| place_of(spec, other))
    });
    places.min().unwrap_or_else(|| place_of(spec, fact))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ide::actions::tests::after;
    use crate::model::Model;
    use crate::testing::cursor::snapshot_of;

    fn organized(text: &str) -> String {
        after(text, &edits(&snapshot_of(text), FileId(0)))
    }

    #[test]
    fn facts_stand_as_listed_and_comments_go_with_them() {
        let text = "project\nwall W1\n  stands on     F1 -- the strip\n  -- eight feet\n  thick         8\"\n  kind          concrete\n  -- end\n\nfooting F1\n";
        assert_eq!(
            organized(text),
            "project\n\nwall W1\n  kind          concrete\n  -- eight feet\n  thick         8\"\n  stands on     F1                        -- the strip\n  -- end\n\nfooting F1\n"
        );
    }

    #[test]
    fn what_is_in_order_offers_nothing() {
        let text = "project\n\nwall W1\n  kind          concrete\n  thick         8\"\n";
        assert_eq!(organize(&snapshot_of(text), FileId(0)), None);
        let turned = "project\nwall W1\n  thick 8\"\n  kind concrete";
        assert_eq!(organized(turned), text);
    }

    #[test]
    fn an_unreadable_line_keeps_its_element_as_it_is() {
        let text = "project\n\nwall W1\n  thick         8\"\n  wobble 3\n  kind          concrete\n";
        assert_eq!(organized(text), text);
    }

    #[test]
    fn the_samples_mean_the_same() {
        for sample in [
            include_str!("../../../grammar/samples/first.framing"),
            include_str!("../../../grammar/samples/alley-house.framing"),
            include_str!("../../../grammar/samples/hill-studio.framing"),
            include_str!("../../../grammar/samples/hop-barn.framing"),
            include_str!("../../../grammar/samples/loon-cove.framing"),
        ] {
            let reversed = reversed(sample);
            for text in [sample, &reversed] {
                let organized = organized(text);
                assert_eq!(said(&organized), said(text));
                assert_eq!(super::tests::organized(&organized), organized);
            }
        }
    }

    /// Each element's facts upside down, but for lists, which say something by their order.
    fn reversed(text: &str) -> String {
        let mut out: Vec<&str> = Vec::new();
        let mut facts: Vec<&str> = Vec::new();
        let is_list = |line: &str| {
            let repeated = ["bears on", "hangs from", "keep", "nothing", "no column", "steps", "x ", "y "];
            repeated.iter().any(|phrase| line.trim_start().starts_with(phrase))
        };
        for line in text.lines() {
            let is_fact = line.starts_with("  ") && !line.trim_start().starts_with("--");
            if is_fact && !is_list(line) {
                facts.push(line);
                continue;
            }
            out.extend(facts.drain(..).rev());
            out.push(line);
        }
        out.extend(facts.drain(..).rev());
        out.join("\n") + "\n"
    }

    /// The model without places.
    fn said(text: &str) -> String {
        let model: Model = snapshot_of(text).house.model;
        let lists = format!(
            "{:?}",
            (
                (&model.project, &model.grid, &model.products, &model.floors, &model.areas, &model.joists),
                (&model.openings, &model.walls, &model.shelves, &model.pockets, &model.ledgers, &model.beams),
                (
                    &model.columns,
                    &model.footings,
                    &model.slabs,
                    &model.stairs,
                    &model.landings,
                    &model.stoops
                ),
                (&model.doors, &model.windows, &model.headers, &model.jacks, &model.squashes, &model.roofs),
                (&model.loads, &model.drains, &model.holes, &model.notches, &model.ducts),
                (&model.intents, &model.sheets, &model.hold_points),
            )
        );
        let mut plain = String::new();
        let mut rest = lists.as_str();
        while let Some((before, after)) = rest.split_once("Span {") {
            plain.push_str(before);
            rest = after.split_once('}').map_or("", |(_, rest)| rest);
        }
        plain + rest
    }
}
