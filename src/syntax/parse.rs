//! Text to tree, keeping what has not changed.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::Arc;

use crate::syntax::elements;
use crate::syntax::facts::FormReaders;
use crate::syntax::lines::{self, TokenSheet};
use crate::syntax::tree::{Body, Chunk, Tree};

/// About so many bytes are read at a time, so that the tokens of a huge text never stand side by side.
const BATCH: usize = 1 << 20;

/// After so many parses, what none of them used is forgotten. A spec of fewer files than this keeps all of them.
const KEPT_FOR: u64 = 256;

/// Chunks as they were read before, by their text.
#[derive(Default)]
pub struct ElementCache {
    bodies: HashMap<Box<str>, Kept>,
    parses: u64,
}

struct Kept {
    body: Arc<Body>,
    last_used: u64,
}

impl ElementCache {
    fn begin_parse(&mut self) {
        self.parses += 1;
        if self.parses.is_multiple_of(KEPT_FOR) {
            let now = self.parses;
            self.bodies.retain(|_, kept| now - kept.last_used <= KEPT_FOR);
        }
    }

    fn body_of(&mut self, chunk: &str) -> Option<Arc<Body>> {
        let kept = self.bodies.get_mut(chunk)?;
        kept.last_used = self.parses;
        Some(kept.body.clone())
    }

    fn keep(&mut self, chunk: &str, body: Arc<Body>) {
        self.bodies.insert(chunk.into(), Kept { body, last_used: self.parses });
    }
}

/// Reads a file. What the cache knows is shared with it, and what it does not know yet is added.
pub fn parse(text: &str, cache: &mut ElementCache) -> Tree {
    cache.begin_parse();
    let chunks = lines::chunks(text);
    let mut tree = Tree { chunks: Vec::with_capacity(chunks.len()) };
    let mut rest = chunks.as_slice();
    while let Some(first) = rest.first() {
        let size = rest.partition_point(|chunk| chunk.end <= first.start + BATCH).max(1);
        let (batch, behind) = rest.split_at(size);
        read_batch(text, batch, cache, &mut tree);
        rest = behind;
    }
    tree
}

/// Reads a file on its own.
pub fn parse_fresh(text: &str) -> Tree {
    parse(text, &mut ElementCache::default())
}

fn read_batch(text: &str, chunks: &[Range<usize>], cache: &mut ElementCache, tree: &mut Tree) {
    let mut sheet = TokenSheet::default();
    let scanned: Vec<_> = chunks
        .iter()
        .map(|range| {
            let chunk = text.get(range.clone()).unwrap_or("");
            let known = cache.body_of(chunk);
            let new = known.is_none().then(|| sheet.scan(chunk));
            (range.start, chunk, known, new)
        })
        .collect();
    let mut readers = FormReaders::default();
    for (start, chunk, known, new) in scanned {
        // A chunk that stands twice in the text was not known yet when both were scanned.
        let body = match (known, new) {
            (Some(body), _) => body,
            (None, Some(new)) => cache.body_of(chunk).unwrap_or_else(|| {
                let body = Arc::new(elements::body(new, &sheet, &mut readers));
                cache.keep(chunk, body.clone());
                body
            }),
            (None, None) => continue,
        };
        tree.chunks.push(Chunk { start: u32::try_from(start).unwrap_or(u32::MAX), body });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::syntax::tree::{Fact, LineKind, Opening};
    use crate::syntax::value::{Section, Side, Term, Value};
    use crate::syntax::vocabulary::{CLAIM, COMMON, ELEMENTS, ElementSpec, Naming};
    use crate::syntax::{Problem, ProblemKind};
    use crate::units::Length;

    fn problems(text: &str) -> Vec<(String, ProblemKind)> {
        let tree = parse_fresh(text);
        let with_text = |chunk: &Chunk, problem: &Problem| {
            let start = (chunk.start + problem.span.start) as usize;
            let end = (chunk.start + problem.span.end) as usize;
            (text[start..end].to_owned(), problem.kind.clone())
        };
        tree.chunks
            .iter()
            .flat_map(|chunk| chunk.body.problems.iter().map(|problem| with_text(chunk, problem)))
            .collect()
    }

    fn facts(text: &str) -> Vec<Fact> {
        assert_eq!(problems(text), [], "{text}");
        parse_fresh(text).chunks.iter().flat_map(|chunk| chunk.body.facts.clone()).collect()
    }

    /// The only value of the only fact of `line` in an element opened by `heading`.
    fn value(heading: &str, line: &str) -> Value {
        let facts = facts(&format!("{heading}\n  {line}\n"));
        assert_eq!((facts.len(), facts[0].parts.len()), (1, 1), "{line}: {facts:?}");
        facts[0].parts[0].value.clone()
    }

    fn heading(spec: &ElementSpec) -> String {
        match spec.naming {
            Naming::Name => format!("{} X1", spec.keyword),
            Naming::Title => format!("{} \"Title\"", spec.keyword),
            Naming::None => spec.keyword.to_owned(),
        }
    }

    #[test]
    fn every_example_of_the_vocabulary_reads() {
        for spec in ELEMENTS {
            let n_lines = spec.example.lines().filter(|line| line.starts_with(' ')).count();
            assert_eq!(facts(spec.example).len(), n_lines, "{}", spec.example);
            for fact in spec.all_facts() {
                let read = facts(&format!("{}\n  {}\n", heading(spec), fact.example));
                assert_eq!(read.len(), 1, "{}", fact.example);
                assert_eq!(read[0].spec, fact, "{}", fact.example);
            }
        }
        assert!(!COMMON.is_empty());
    }

    #[test]
    fn the_sample_specs_read() {
        for (text, n_elements) in [
            (include_str!("../../grammar/samples/first.framing"), 11),
            (include_str!("../../grammar/samples/hop-barn.framing"), 30),
            (include_str!("../../grammar/samples/loon-cove.framing"), 40),
        ] {
            assert_eq!(problems(text), []);
            let elements = parse_fresh(text)
                .chunks
                .into_iter()
                .filter(|chunk| matches!(chunk.body.opening, Opening::Element(_)));
            let elements: Vec<_> = elements.collect();
            assert!(elements.len() >= n_elements, "{}", elements.len());
            assert!(elements.iter().all(|chunk| !chunk.body.facts.is_empty()));
        }
    }

    #[test]
    fn members_as_people_write_them() {
        let inches = Length::inches;
        let sixteenths = Length::sixteenths;
        // plies, section, make, species, grade, treated
        let cases: [(&str, u32, Section, &str, &str, &str, bool); 26] = [
            ("2x8 SPF No.2", 1, Section::Nominal(2, 8), "", "SPF", "No.2", false),
            ("2 x 10 SPF #2", 1, Section::Nominal(2, 10), "", "SPF", "No.2", false),
            ("3-ply 2x10 SPF No. 2", 3, Section::Nominal(2, 10), "", "SPF", "No.2", false),
            ("2 of 2x6 SPF", 2, Section::Nominal(2, 6), "", "SPF", "", false),
            (
                "(3) 1-3/4 x 11-7/8 LVL",
                3,
                Section::Built(sixteenths(1, 12), sixteenths(11, 14)),
                "LVL",
                "",
                "",
                false,
            ),
            (
                "(2) 1-3/4\" x 11-7/8\" LVL 2.0E",
                2,
                Section::Built(sixteenths(1, 12), sixteenths(11, 14)),
                "LVL",
                "",
                "2.0E",
                false,
            ),
            ("2 of 1-3/4 x 16", 2, Section::Built(sixteenths(1, 12), inches(16)), "", "", "", false),
            ("3-ply LV12", 3, Section::Product("LV12".into()), "", "", "", false),
            ("LV12", 1, Section::Product("LV12".into()), "", "", "", false),
            (
                "11-7/8 I-joist class 40",
                1,
                Section::Depth(sixteenths(11, 14)),
                "I-joist",
                "",
                "class 40",
                false,
            ),
            (
                "11-7/8\" I-joist PRI-40",
                1,
                Section::Depth(sixteenths(11, 14)),
                "I-joist",
                "",
                "PRI-40",
                false,
            ),
            (
                "5-1/8 x 12 glulam 24F",
                1,
                Section::Built(sixteenths(5, 2), inches(12)),
                "glulam",
                "",
                "24F",
                false,
            ),
            ("3 x 12 glulam 24F-V4", 1, Section::Built(inches(3), inches(12)), "glulam", "", "24F-V4", false),
            ("W8x24", 1, Section::Rolled("W8X24".into()), "", "", "", false),
            ("W8X24", 1, Section::Rolled("W8X24".into()), "", "", "", false),
            ("W10×49", 1, Section::Rolled("W10X49".into()), "", "", "", false),
            ("HSS 4 x 4 x 3/16", 1, Section::Tube(inches(4), inches(4), sixteenths(0, 3)), "", "", "", false),
            ("HSS4x4x3/16", 1, Section::Tube(inches(4), inches(4), sixteenths(0, 3)), "", "", "", false),
            (
                "HSS 3-1/2x3-1/2x1/4",
                1,
                Section::Tube(sixteenths(3, 8), sixteenths(3, 8), sixteenths(0, 4)),
                "",
                "",
                "",
                false,
            ),
            (
                "pipe 3-1/2 x 0.226",
                1,
                Section::Pipe(sixteenths(3, 8), Length::decimal_inches(0.226)),
                "",
                "",
                "",
                false,
            ),
            ("filled pipe 4", 1, Section::FilledPipe(inches(4)), "", "", "", false),
            ("8x8 DF No.1", 1, Section::Nominal(8, 8), "", "DF", "No.1", false),
            ("1-1/8\" rim board", 1, Section::Depth(sixteenths(1, 2)), "rim board", "", "", false),
            ("2x6 treated", 1, Section::Nominal(2, 6), "", "", "", true),
            ("2x6 treated SYP No.2", 1, Section::Nominal(2, 6), "", "SYP", "No.2", true),
            ("2x10 HF MSR 1650f-1.5E", 1, Section::Nominal(2, 10), "", "HF", "MSR 1650f-1.5E", false),
        ];
        for (text, plies, section, make, species, grade, is_treated) in cases {
            let Value::Member(member) = value("beam B1", &format!("size {text}")) else { panic!("{text}") };
            let words =
                [&member.make, &member.species, &member.grade].map(|word| word.as_deref().unwrap_or(""));
            assert_eq!(
                (member.plies, &member.section, words, member.is_treated),
                (plies, &section, [make, species, grade], is_treated),
                "{text}"
            );
        }
    }

    #[test]
    fn a_bare_square_size_of_a_column_may_be_wood_or_steel() {
        let unclear = ProblemKind::UnclearDimension(vec!["4x4 SPF No.2".into(), "HSS 4 x 4 x 1/4".into()]);
        assert_eq!(problems("column C1\n  size 4x4\n"), [("4x4".to_owned(), unclear)]);
        assert_eq!(problems("column C1\n  size 4x4 treated\n"), []);
        assert_eq!(problems("beam B1\n  size 4x12\n"), []);
    }

    #[test]
    fn a_claim_names_its_fact_value_and_tolerance() {
        let facts =
            facts("column C1\n  cut should be 96-5/16\" within 1/16\"\n  dead load should be 200 lb\n");
        assert!(facts.iter().all(|fact| std::ptr::eq(fact.spec, &CLAIM)));
        let Some(Value::FactName(cut)) = facts[0].part("fact").map(|part| &part.value) else { panic!() };
        assert_eq!((cut.fact.as_ref(), cut.of.len()), ("cut", 0));
        assert_eq!(facts[0].length("value"), Some(Length::sixteenths(96, 5)));
        assert_eq!(facts[0].length("within"), Some(Length::sixteenths(0, 1)));
        let Some(Value::FactName(load)) = facts[1].part("fact").map(|part| &part.value) else { panic!() };
        assert_eq!(load.case.as_deref(), Some("dead"));
        assert_eq!(
            problems("column C1\n  ctu should be 5\"\n")[0].1,
            ProblemKind::UnknownFact(crate::syntax::vocabulary::ElementKind::Column, Some("cut"))
        );
    }

    #[test]
    fn comparisons_are_sums_of_terms() {
        let line = "keep live reaction of B1 on C1 plus 2 times top of W1 less half of half of 3\" >= drop from main to den";
        let Value::Comparison(held) = value("intent \"I\"", line) else { panic!() };
        assert_eq!((held.left.terms.len(), held.right.terms.len(), held.within), (3, 1, None));
        let Term::Fact(reaction) = &held.left.terms[0].1 else { panic!() };
        assert_eq!((reaction.of.len(), reaction.case.as_deref()), (2, Some("live")));
        let Term::Half(half) = &held.left.terms[2].1 else { panic!() };
        assert!(matches!(**half, Term::Half(_)));
        let many = "half of ".repeat(5_000);
        assert_eq!(problems(&format!("intent \"I\"\n  keep {many} 3\" = 1\"\n")).len(), 1);
        let sum = "1\" plus ".repeat(5_000);
        assert_eq!(problems(&format!("intent \"I\"\n  keep {sum} 3\" = 1\"\n")).len(), 0);
    }

    #[test]
    fn a_side_and_a_place_keep_their_spans() {
        let text = "wall W1\n  from A plus 10\" / 3 less 5\" to C/3 -- note\n";
        let Value::Line(line) = value("wall W1", "from A plus 10\" / 3 less 5\" to C/3") else { panic!() };
        assert_eq!((line.from.x.offset, line.from.y.offset), (Length::inches(10), Length::inches(-5)));
        let span = line.to.x.span;
        assert_eq!(&text[span.start as usize..span.end as usize], "C");
        assert_eq!(facts("wall W1\n  grade none\n").len(), 1);
        let facts = facts("door D1\n  hinge east\n");
        assert_eq!(facts[0].side("side"), Some(Side::East));
    }

    #[test]
    fn one_broken_line_costs_that_line() {
        let text = "column C1\n  at B/2\n  size 4;4\n  cap plate 9\" x\n  wobble 3\n  shim 1/8\"\n  shim 1/4\"\n\nbeam B1\n  size W8x24\n";
        let tree = parse_fresh(text);
        let body = &tree.chunks[0].body;
        assert_eq!(body.facts.iter().map(|fact| fact.spec.phrase).collect::<Vec<_>>(), ["at", "shim"]);
        let broken: Vec<_> = body.broken.iter().map(|broken| broken.phrase).collect();
        assert_eq!(broken, [Some("size"), Some("cap"), None]);
        assert_eq!(body.problems.len(), 4);
        assert_eq!(body.lines.iter().filter(|line| line.kind == LineKind::Broken).count(), 4);
        let kinds: Vec<_> = problems(text).into_iter().collect();
        assert_eq!(kinds[0], (";".to_owned(), ProblemKind::StrayCharacter));
        assert_eq!(
            kinds[1],
            (
                String::new(),
                ProblemKind::NotUnderstood {
                    phrase: "cap",
                    expected: vec!["a size in inches".into()],
                    found: None
                }
            )
        );
        assert!(
            matches!(&kinds[3], (text, ProblemKind::FactRepeated("shim", first)) if text == "shim" && first.start > 0)
        );
        assert_eq!(tree.chunks[1].body.facts.len(), 1);
    }

    #[test]
    fn a_fact_that_lost_its_blanks_costs_that_line() {
        let text = "beam B1\n  from A/1 to B/1\nsize W8x24\n  span by grid\n";
        assert_eq!(problems(text), [("size".to_owned(), ProblemKind::UnknownElement(None))]);
        let body = &parse_fresh(text).chunks[0].body;
        assert_eq!(body.facts.len(), 2);
        assert_eq!(body.broken[0].phrase, Some("size"));
    }

    #[test]
    fn what_was_expected_is_told_in_trade_words() {
        for (text, at, expected) in [
            ("wall W1\n  bears on X\n", "bears", None),
            ("beam B1\n  bears on W1 foot\n", "foot", Some(&["`for`", "the end of the line"] as &[&str])),
            ("joists J1\n  spacing 16\" from 3\"\n", "3\"", Some(&["a grid line"])),
            ("stair S1\n  risers many\n", "many", Some(&["a whole number"])),
            ("header H1\n  size oak\" \n", "\"", None),
            ("door D1\n  hinge up\n", "up", Some(&["a side"])),
            ("header H1\n  size 5\n", "", Some(&["`of`", "`x`", "what it is made as"])),
        ] {
            let found = problems(text);
            assert_eq!(found[0].0, at, "{text}");
            if let Some(words) = expected {
                let ProblemKind::NotUnderstood { expected, .. } = &found[0].1 else { panic!("{found:?}") };
                assert_eq!(expected.iter().map(AsRef::as_ref).collect::<Vec<_>>(), words, "{text}");
            }
        }
    }

    #[test]
    fn numbers_without_a_unit_are_refused_where_a_length_stands() {
        let unclear = |readings: &[&str]| {
            ProblemKind::UnclearDimension(readings.iter().map(|reading| (*reading).into()).collect())
        };
        for (text, at, kind) in [
            ("wall W1\n  thick 7.5\n", "7.5", unclear(&["7.5 in", "7.5 ft"])),
            ("wall W1\n  thick 10\n", "10", unclear(&["10 in", "10 ft"])),
            ("wall W1\n  thick 9-1/2\n", "9-1/2", unclear(&["9-1/2\""])),
            ("floor F1\n  subfloor 98.5\n", "98.5", unclear(&["98.5 ft"])),
            ("wall W1\n  thick 12-6\n", "12-6", unclear(&["12'-6\"", "12 less 6"])),
        ] {
            assert_eq!(problems(text), [(at.to_owned(), kind)], "{text}");
        }
        assert_eq!(facts("footing F1\n  size 24 x 10\n").len(), 1);
    }

    #[test]
    fn first_lines() {
        use crate::syntax::vocabulary::ElementKind::{Beam, HoldPoint};
        for (text, at, kind) in [
            ("colum C1\n  at B/2\n  junk\n", "colum", ProblemKind::UnknownElement(Some("column"))),
            ("42\n", "42", ProblemKind::UnknownElement(None)),
            ("beam\n", "beam", ProblemKind::NameMissing(Beam)),
            ("beam \"Girder\"\n", "beam", ProblemKind::NameMissing(Beam)),
            ("beam 5\n", "5", ProblemKind::NameMalformed),
            ("beam W8x24\n", "W8x24", ProblemKind::NameMalformed),
            ("beam wall\n", "wall", ProblemKind::NameReserved),
            ("beam B1 big\n", "big", ProblemKind::HeadingUnclear),
            ("grid \"x\"\n", "\"x\"", ProblemKind::HeadingUnclear),
            ("  at B/2\n  at B/3\n", "at B/2", ProblemKind::FactBeforeElement),
            ("include a.framing\n", "include", ProblemKind::IncludeUnclear),
            ("beam B1 \"open\n", "\"open", ProblemKind::UnclosedText),
        ] {
            assert_eq!(problems(text), [(at.to_owned(), kind)], "{text}");
        }
        let tree =
            parse_fresh("include \"a.framing\" -- why\nhold point \"Steps\"\npost P1\nsquash blocks K1\n");
        let Opening::Include(Some((path, span))) = &tree.chunks[0].body.opening else { panic!() };
        assert_eq!((path.as_ref(), span.start, span.end), ("a.framing", 9, 18));
        let Opening::Element(hold) = &tree.chunks[1].body.opening else { panic!() };
        assert_eq!((hold.kind, hold.title.as_ref().unwrap().0.as_ref()), (HoldPoint, "Steps"));
        let Opening::Element(squash) = &tree.chunks[3].body.opening else { panic!() };
        assert_eq!(squash.name.as_ref().unwrap().0.as_ref(), "K1");
    }

    #[test]
    fn chunks_and_lines_cover_the_text() {
        let sample = include_str!("../../grammar/samples/hop-barn.framing");
        for text in
            [sample, &sample.replace('\n', "\r\n"), &sample.replace('\n', "\r"), &format!("\u{feff}{sample}")]
        {
            let tree = parse_fresh(text);
            let mut at = 0;
            for chunk in &tree.chunks {
                assert_eq!(chunk.start, at);
                let mut in_chunk = 0;
                for line in &chunk.body.lines {
                    assert_eq!(line.span.start, in_chunk);
                    in_chunk = line.span.end;
                }
                assert_eq!(in_chunk, chunk.body.length);
                at += chunk.body.length;
            }
            assert_eq!(at as usize, text.len());
            assert_eq!(problems(text), []);
            assert_eq!(
                tree.chunks.iter().map(|chunk| chunk.body.facts.len()).sum::<usize>(),
                facts(sample).len()
            );
        }
    }

    #[test]
    fn an_edit_reads_only_its_own_chunk_again() {
        let text = include_str!("../../grammar/samples/hop-barn.framing");
        let mut cache = ElementCache::default();
        let before = parse(text, &mut cache);
        let edited = text.replacen("W10x49", "W10x45", 1);
        let after = parse(&edited, &mut cache);
        let shared =
            before.chunks.iter().zip(&after.chunks).filter(|(a, b)| Arc::ptr_eq(&a.body, &b.body)).count();
        assert_eq!(shared, before.chunks.len() - 1);
        assert_eq!(after, parse_fresh(&edited));
    }

    #[test]
    fn bad_input_is_read_in_no_time() {
        let started = std::time::Instant::now();
        let n_problems = |text: &str| {
            parse_fresh(text).chunks.iter().map(|chunk| chunk.body.problems.len()).sum::<usize>()
        };
        assert_eq!(n_problems(&"beam B1\n".repeat(100_000)), 0);
        assert_eq!(n_problems(&"beam B1\n  size \"\n".repeat(500)), 500);
        assert_eq!(n_problems(&"\"x\n".repeat(500)), 500);
        assert_eq!(n_problems(&format!("beam B1\n  size {}\n", "(".repeat(60_000))), 1);
        for stuff in [
            "(",
            "\"",
            "a ",
            "12'-",
            "9 1/",
            "9 - ",
            "1,000,",
            "2x",
            ",",
            "half of ",
            "1\" plus ",
            "should be ",
        ] {
            let line = stuff.repeat(60_000 / stuff.len());
            assert_ne!(n_problems(&format!("beam B1\n  size {line}\nbeam B2\n")), 0, "{stuff}");
            assert_ne!(n_problems(&format!("intent \"I\"\n  keep {line}\n  {line}\n{line}\n")), 0, "{stuff}");
        }
        assert_eq!(n_problems(&format!("beam B1\n  size {}\nbeam B2\n", "a ".repeat(5_000_000))), 1);
        assert_eq!(n_problems(&format!("-- {}\n", "-".repeat(10_000_000))), 0);
        assert_eq!(n_problems(&"  at A/1\n".repeat(100_000)), 1);
        let one_element = format!("beam B1\n{}", "  at A/1\n".repeat(20_000));
        assert_eq!(n_problems(&one_element), 20_000);
        assert_eq!(n_problems(""), 0);
        assert_eq!(n_problems("\0"), 1);
        assert!(started.elapsed().as_secs() < 60, "{:?}", started.elapsed());
    }
}
