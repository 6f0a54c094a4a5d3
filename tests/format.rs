//! The formatter changes no fact, no value, no comment and no broken line, and has nothing left to do afterwards.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

use proptest::prelude::*;
use storyrod::syntax::vocabulary::ELEMENTS;
use storyrod::syntax::{LineKind, Opening, format, parse_fresh};

const SAMPLES: [&str; 5] = [
    include_str!("../grammar/samples/alley-house.framing"),
    include_str!("../grammar/samples/hill-studio.framing"),
    include_str!("../grammar/samples/first.framing"),
    include_str!("../grammar/samples/hop-barn.framing"),
    include_str!("../grammar/samples/loon-cove.framing"),
];

#[test]
fn samples_are_in_the_one_style() {
    for sample in SAMPLES {
        assert_eq!(format(sample), sample);
    }
    for spec in ELEMENTS {
        assert_eq!(format(spec.example), spec.example);
    }
}

#[test]
fn samples_keep_what_they_say() {
    for sample in SAMPLES {
        assert!(said(sample).len() > 60);
        check(sample).unwrap();
    }
    assert_eq!(format(""), "");
    assert_eq!(format("\n \r\n"), "");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn whatever_stands_there_is_kept(
        sample in 0usize..5,
        start in 0usize..300,
        changes in prop::collection::vec((0usize..2_000, "[ -~½’”×\t\n]{0,3}"), 0..12),
    ) {
        let lines = SAMPLES[sample].split_inclusive('\n').skip(start).take(40).collect::<String>();
        let mut characters: Vec<String> = lines.chars().map(String::from).collect();
        let length = characters.len().max(1);
        for (at, typed) in changes {
            if let Some(character) = characters.get_mut(at % length) {
                *character = typed;
            }
        }
        check(&characters.concat())?;
    }

    #[test]
    fn spacing_says_nothing(sample in 0usize..5, blanks in prop::collection::vec(" |  |\t| \t ", 1..40)) {
        let mut blanks = blanks.iter().cycle();
        let wide: String = SAMPLES[sample].split_inclusive('\n').map(|line| {
            if line.contains(['"', '-']) || line.trim().is_empty() { return line.to_owned() }
            line.replace("  ", &format!(" {}", blanks.next().map_or("", String::as_str)))
        }).collect();
        check(&wide)?;
        prop_assert_eq!(said(&wide).len(), said(SAMPLES[sample]).len());
    }
}
fn check(text: &str) -> Result<(), TestCaseError> {
    let formatted = format(text);
    prop_assert_eq!(said(&formatted), said(text));
    prop_assert_eq!(comments(&formatted), comments(text));
    prop_assert_eq!(&format(&formatted), &formatted);
    Ok(())
}

/// What a text says: headings, facts with their values, broken lines; no places.
fn said(text: &str) -> Vec<String> {
    let mut said = Vec::new();
    for chunk in parse_fresh(text).chunks {
        let start = chunk.start as usize;
        match &chunk.body.opening {
            Opening::Nothing => {}
            Opening::Element(heading) => {
                let name = heading.name.as_ref().map(|(name, _)| name);
                let title = heading.title.as_ref().map(|(title, _)| title);
                said.push(format!("{:?} {name:?} {title:?}", heading.kind));
            }
            Opening::Include(path) => said.push(format!("include {:?}", path.as_ref().map(|(path, _)| path))),
            Opening::Unknown(..) => said.push("unknown".to_owned()),
        }
        for line in &chunk.body.lines {
            match line.kind {
                LineKind::Blank | LineKind::Comment | LineKind::Opening => {}
                LineKind::Fact(index) => {
                    let fact = &chunk.body.facts[index];
                    let parts: Vec<_> = fact.parts.iter().map(|part| (part.label, &part.value)).collect();
                    said.push(format!("{} {}", fact.spec.phrase, without_places(&format!("{parts:?}"))));
                }
                LineKind::Broken => {
                    let place = start + line.span.start as usize..start + line.span.end as usize;
                    said.push(format!("broken {}", text[place].trim_end_matches(['\r', '\n'])));
                }
            }
        }
        let problems =
            chunk.body.problems.iter().map(|problem| without_places(&format!("{:?}", problem.kind)));
        said.extend(problems);
    }
    said
}

fn without_places(debug: &str) -> String {
    let mut parts = debug.split("LocalSpan {");
    let mut text = parts.next().unwrap_or("").to_owned();
    for part in parts {
        text.push_str(part.split_once('}').map_or("", |(_, rest)| rest));
    }
    text
}

fn comments(text: &str) -> Vec<String> {
    let all = parse_fresh(text).chunks.into_iter().flat_map(|chunk| {
        let start = chunk.start;
        let places = chunk.body.lines.iter().filter_map(|line| line.comment).collect::<Vec<_>>();
        places.into_iter().map(move |span| (start + span.start) as usize..(start + span.end) as usize)
    });
    all.map(|place| text[place].trim_end().to_owned()).collect()
}
