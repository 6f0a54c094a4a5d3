//! What a selection grows to, step by step.

use crate::house::House;
use crate::ide::outline::{Block, outline};
use crate::ide::tokens::tokens;
use crate::syntax::{Body, Fact, LineKind, Opening};
use crate::text::{FileId, LocalSpan, Span};

/// The places that a selection at each offset grows to: word, value, all values of the fact, fact, line, element,
/// element with its note, section, file. Invariant: each place lies in the next, is smaller, and the offset touches it.
pub fn selection(house: &House, file: FileId, offsets: &[u32]) -> Vec<Vec<Span>> {
    let length = house.inputs.sources.get(file.0 as usize).map_or(0, |source| source.text.len());
    let whole = Span::new(file, 0, u32::try_from(length).unwrap_or(u32::MAX));
    let outline = outline(house, file);
    let grown = |offset: &u32| {
        let offset = (*offset).min(whole.end);
        let mut places = words_at(house, file, offset);
        let behind = outline.blocks.partition_point(|block| block.whole().start <= offset);
        if let Some(block) = behind.checked_sub(1).and_then(|at| outline.blocks.get(at)) {
            places.extend(in_block(block, offset));
        }
        let line = house.line_of(Span::new(file, offset, offset));
        places.push(line);
        let comment = outline.comments.partition_point(|comment| comment.start <= offset);
        places.extend(comment.checked_sub(1).and_then(|at| outline.comments.get(at)));
        let section = outline.sections.partition_point(|section| section.span.start <= offset);
        let section = section.checked_sub(1).and_then(|at| outline.sections.get(at));
        places.extend(section.map(|section| section.span));
        places.push(whole);
        nested(places, offset)
    };
    offsets.iter().map(grown).collect()
}

/// Those places that the offset touches and that lie in each other, from the smallest.
fn nested(mut places: Vec<Span>, offset: u32) -> Vec<Span> {
    places.retain(|place| place.touches(offset));
    places.sort_by_key(|place| (place.end - place.start, place.start));
    let mut nested: Vec<Span> = Vec::with_capacity(places.len());
    for place in places {
        let holds = |last: &Span| place.start <= last.start && last.end <= place.end && *last != place;
        // An empty place is no step of growth, but for a file without a byte.
        if nested.last().is_none_or(holds) {
            nested.push(place);
        }
    }
    nested
}

/// The word at the offset; in words of the author's own, one of them and then all, without quotes and with them.
fn words_at(house: &House, file: FileId, offset: u32) -> Vec<Span> {
    let words = tokens(house, file, Some(Span::new(file, offset, offset)));
    // At a border the word behind the cursor is meant, not the one before.
    let Some(word) = words.iter().rev().find(|word| word.span.touches(offset)) else { return Vec::new() };
    let mut places = vec![word.span];
    let text = house.text_at(word.span);
    let inside = text.trim_start_matches(['"', '“', '”']);
    let from = word.span.start + to_u32(text.len() - inside.len());
    let inside = inside.trim_end_matches(['"', '“', '”']);
    if inside.len() + 2 <= text.len() {
        places.push(Span::new(file, from, from + to_u32(inside.len())));
    }
    let at = (offset - word.span.start) as usize;
    if let Some((before, behind)) = text.split_at_checked(at) {
        let is_part = |letter: char| letter.is_alphanumeric() || letter == '_';
        let start = before.len() - before.trim_end_matches(is_part).len();
        let end = behind.len() - behind.trim_start_matches(is_part).len();
        let is_prose = text.contains(char::is_whitespace);
        if is_prose && start + end > 0 {
            places.push(Span::new(file, offset - to_u32(start), offset + to_u32(end)));
        }
    }
    places
}

fn in_block(block: &Block<'_>, offset: u32) -> Vec<Span> {
    let place = |span: LocalSpan| span.within(block.span.file, block.chunk.start);
    let body = &*block.chunk.body;
    let mut places = vec![block.span, block.whole()];
    places.extend(block.note);
    places.extend(opening(body).map(place));
    let at = body.lines.partition_point(|line| place(line.span).start <= offset);
    let line = at.checked_sub(1).and_then(|at| body.lines.get(at));
    if let Some(LineKind::Fact(at)) = line.map(|line| line.kind)
        && let Some(fact) = body.facts.get(at)
    {
        places.extend(in_fact(fact).into_iter().map(place));
    }
    places
}

/// The words of the first line.
fn opening(body: &Body) -> Option<LocalSpan> {
    match &body.opening {
        Opening::Element(heading) => {
            let last = heading.title.as_ref().or(heading.name.as_ref()).map(|(_, span)| *span);
            // A title's span is without its quotes.
            let quote = u32::from(heading.title.is_some());
            let end = last.map_or(heading.keyword.end, |last| last.end + quote);
            Some(LocalSpan::new(heading.keyword.start, end))
        }
        Opening::Include(_) | Opening::Nothing | Opening::Unknown(..) => None,
    }
}

fn in_fact(fact: &Fact) -> Vec<LocalSpan> {
    let mut places: Vec<LocalSpan> = fact.parts.iter().map(|part| part.span).collect();
    places.extend([fact.phrase, fact.value, fact.span]);
    places
}

fn to_u32(length: usize) -> u32 {
    u32::try_from(length).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::at_cursor;

    /// The texts that the selection at the cursor grows to, but for the file; long ones by their first and last line.
    fn grown(fixture: &str) -> Vec<String> {
        let (snapshot, file, offset) = at_cursor(fixture);
        let house = &snapshot.house;
        let places = selection(house, file, &[offset]).remove(0);
        let told = places.into_iter().map(|place| {
            let text = house.text_at(place);
            match (text.lines().next(), text.lines().last()) {
                (Some(first), Some(last)) if text.lines().count() > 1 => format!("{first} … {last}"),
                _ => text.to_owned(),
            }
        });
        let mut told: Vec<String> = told.collect();
        let whole = told.pop().unwrap_or_default();
        assert!(whole.starts_with("project") || told.is_empty(), "{whole}");
        told
    }

    const SPEC: &str = "\
project \"House\"

-- beams

-- Why it is so deep.
beam B1 \"Center girder\"
  from          A plus 4\" / 2 to C/2
  bears on      W1 for 7\" -- on the wall
  waive         bearing-short because \"seat widened, letter\" until 2027-09-01

-- posts
";

    fn check(piece: &str, expected: &[&str]) {
        let without = piece.replace("$0", "");
        assert_eq!(SPEC.matches(&without).count(), 1, "{piece} stands once");
        assert_eq!(grown(&SPEC.replace(&without, piece)), expected);
    }

    const BEAM: &str = "beam B1 \"Center girder\" …   waive         bearing-short because \"seat widened, letter\" until 2027-09-01";
    const NOTED: &str = "-- Why it is so deep. …   waive         bearing-short because \"seat widened, letter\" until 2027-09-01";
    const BEAMS: &str =
        "-- beams …   waive         bearing-short because \"seat widened, letter\" until 2027-09-01";

    #[test]
    fn from_a_value_to_its_file() {
        check(
            "W$01 for",
            &[
                "W1",
                "W1 for 7\"",
                "bears on      W1 for 7\"",
                "  bears on      W1 for 7\" -- on the wall",
                BEAM,
                NOTED,
                BEAMS,
            ],
        );
        check(
            "plus 4$0\" / 2",
            &[
                "4\"",
                "A plus 4\" / 2 to C/2",
                "from          A plus 4\" / 2 to C/2",
                "  from          A plus 4\" / 2 to C/2",
                BEAM,
                NOTED,
                BEAMS,
            ],
        );
    }

    #[test]
    fn from_a_word_of_the_authors_own() {
        check(
            "wide$0ned",
            &[
                "widened",
                "seat widened, letter",
                "\"seat widened, letter\"",
                "bearing-short because \"seat widened, letter\" until 2027-09-01",
                "waive         bearing-short because \"seat widened, letter\" until 2027-09-01",
                "  waive         bearing-short because \"seat widened, letter\" until 2027-09-01",
                BEAM,
                NOTED,
                BEAMS,
            ],
        );
        check(
            "$0Center",
            &[
                "Center",
                "Center girder",
                "\"Center girder\"",
                "beam B1 \"Center girder\"",
                BEAM,
                NOTED,
                BEAMS,
            ],
        );
        check("is $0so", &["so", "-- Why it is so deep.", NOTED, BEAMS]);
    }

    #[test]
    fn at_the_ends_of_a_text() {
        assert_eq!(grown("$0"), [""; 0]);
        assert_eq!(grown("project$0"), [""; 0]);
        assert_eq!(grown("project \"A\"\n$0\nbeam B1\n"), [""; 1]);
    }
}
