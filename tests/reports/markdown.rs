//! The Markdown summary as its readers see it: through an independent parser.

use proptest::prelude::*;
use pulldown_cmark::{Event, Options, Parser, Tag, TagEnd};
use storyrod::report::{Part, Unusable, printable, write_markdown};

use crate::checked::{EVERY_MISTAKE, House};

fn markdown_of(houses: &[House], unusable: &[Unusable]) -> String {
    let all: Vec<_> = houses.iter().map(House::checked).collect();
    let mut out = Vec::new();
    write_markdown(&all, unusable, Part::default(), &mut out).unwrap();
    String::from_utf8(out).unwrap()
}

fn read(markdown: &str) -> impl Iterator<Item = Event<'_>> {
    Parser::new_ext(markdown, Options::ENABLE_TABLES | Options::ENABLE_STRIKETHROUGH)
}

/// What a reader sees, without any mark.
fn seen(markdown: &str) -> String {
    let mut seen = String::new();
    for event in read(markdown) {
        match event {
            Event::Text(text) | Event::Code(text) => seen.push_str(&text),
            Event::SoftBreak
            | Event::HardBreak
            | Event::End(TagEnd::Item | TagEnd::Paragraph | TagEnd::Heading(_)) => {
                seen.push('\n');
            }
            _ => {}
        }
    }
    seen
}

#[test]
fn every_message_reads_as_it_was_said() {
    for house in EVERY_MISTAKE.iter() {
        let seen = seen(&markdown_of(std::slice::from_ref(house), &[]));
        for finding in house.findings() {
            let words = printable(&finding.message).replace('\n', " ");
            assert!(seen.contains(&words), "{words}\n{seen}");
        }
        for root in &house.snapshot.findings {
            for help in &root.help {
                assert!(seen.contains(&*printable(help)), "{help}\n{seen}");
            }
        }
        assert!(seen.trim_end().ends_with("published values govern"), "{seen}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    /// Whatever a name holds, it opens no mark, no link, no picture and no element of HTML.
    #[test]
    fn a_text_is_a_text(message in "[-+!\\[\\](){}<>*_`~#|&;:.\\\\\"'@$^=a-z0-9 é½]{1,40}") {
        let message = format!("x{message}x");
        let unusable = Unusable { file: "a.framing".to_owned(), place: None, message: message.clone() };
        let markdown = markdown_of(&[], &[unusable]);
        let item: Vec<_> = read(&markdown)
            .skip_while(|event| !matches!(event, Event::Start(Tag::Item)))
            .skip(1)
            .take_while(|event| !matches!(event, Event::End(TagEnd::Item)))
            .collect();
        prop_assert!(item.iter().all(|event| matches!(event, Event::Text(_))), "{item:?}");
        let seen = seen(&markdown);
        prop_assert_eq!(seen.lines().last().unwrap(), format!("a.framing: {message}"));
    }
}

/// The rows of the table: what is said of each spec, as numbers.
#[test]
fn the_table_counts_what_is_found() {
    let markdown = markdown_of(&EVERY_MISTAKE[..20], &[]);
    let mut cells: Vec<String> = Vec::new();
    for event in read(&markdown) {
        match event {
            Event::Start(Tag::TableCell) => cells.push(String::new()),
            Event::Text(text) => {
                if let Some(cell) = cells.last_mut() {
                    cell.push_str(&text);
                }
            }
            Event::End(TagEnd::Table) => break,
            _ => {}
        }
    }
    let rows: Vec<_> = cells.chunks(4).skip(1).collect();
    assert_eq!(rows.len(), 20);
    for (row, house) in rows.iter().zip(EVERY_MISTAKE.iter()) {
        let count = |word: &str| {
            house.findings().filter(|finding| finding.severity.word() == word).count().to_string()
        };
        assert_eq!(row[0], house.names[0]);
        assert_eq!(row[1..], [count("error"), count("warning"), count("advice")]);
    }
}

#[test]
fn a_long_list_is_folded_and_nothing_is_lost() {
    let wrong: String = (0..40).map(|number| format!("footing F{number}\n  topp  1'\n")).collect();
    let houses = [House::of("pads.framing", &wrong)];
    let found = houses[0].snapshot.findings.len();
    assert!(found > 30, "{found}");
    let markdown = markdown_of(&houses, &[]);
    let (open, folded) = markdown.split_once("<details>").unwrap();
    let (folded, behind) = folded.split_once("</details>").unwrap();
    let entries = |part: &str| part.lines().filter(|line| line.starts_with("- **")).count();
    assert_eq!((entries(open), entries(folded), entries(behind)), (10, found - 10, 0));
    assert!(
        folded.starts_with(&format!("\n<summary>{} more findings</summary>\n\n- ", found - 10)),
        "{folded}"
    );
    // Inside the fold it is Markdown still, not a piece of HTML: each entry's severity stands out.
    let strong = read(&markdown).filter(|event| matches!(event, Event::Start(Tag::Strong)));
    assert_eq!(strong.count(), found);
}

#[test]
fn what_was_not_read_is_not_called_clean() {
    let unusable = || [Unusable { file: "a.framing".to_owned(), place: None, message: "gone".to_owned() }];
    let nothing = markdown_of(&[], &unusable());
    assert!(nothing.starts_with("## storyrod: nothing checked, 1 input not usable\n"), "{nothing}");
    let some = markdown_of(&EVERY_MISTAKE[..1], &unusable());
    assert!(some.lines().next().unwrap().ends_with(" in 1 spec, 1 input not usable"), "{some}");
}
