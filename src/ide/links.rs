//! What in a file leads elsewhere: include paths, and addresses in sources and comments.

use crate::house::House;
use crate::inputs::IncludeOutcome;
use crate::syntax::value::Value;
use crate::syntax::{Chunk, Opening};
use crate::text::{FileId, LocalSpan, Span};

/// A place that leads elsewhere.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link {
    /// The place, without quotes.
    pub span: Span,
    /// Where it leads.
    pub target: LinkTarget,
    /// What is there, in a few words.
    pub tooltip: String,
}

/// Where a link leads.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LinkTarget {
    /// To a file of the spec.
    File(FileId),
    /// To an address.
    Address(String),
}

/// The links of a file, in the order of the text. An include that leads to no file that can be read has none.
pub fn links(house: &House, file: FileId) -> Vec<Link> {
    let Some(tree) = house.trees.get(file.0 as usize) else { return Vec::new() };
    let includes = house.inputs.includes.iter().filter(|include| include.file == file);
    let mut links: Vec<Link> = includes
        .filter_map(|include| {
            let (IncludeOutcome::Read(target) | IncludeOutcome::Again(target)) = include.outcome else {
                return None;
            };
            let span = Span::new(file, include.span.start, include.span.end);
            Some(Link { span, target: LinkTarget::File(target), tooltip: about(house, target) })
        })
        .collect();
    for chunk in &tree.chunks {
        for span in texts(chunk) {
            links.extend(addresses(house, span.within(file, chunk.start)));
        }
    }
    links.sort_by_key(|link| link.span);
    links
}

/// A file's name, and how much stands in it.
fn about(house: &House, file: FileId) -> String {
    let at = file.0 as usize;
    let name = house.inputs.sources.get(at).map_or("", |source| &source.name);
    let chunks = house.trees.get(at).into_iter().flat_map(|tree| &tree.chunks);
    match chunks.filter(|chunk| matches!(chunk.body.opening, Opening::Element(_))).count() {
        1 => format!("{name}, 1 element"),
        n_elements => format!("{name}, {n_elements} elements"),
    }
}

/// Words in quotes and comments.
fn texts(chunk: &Chunk) -> impl Iterator<Item = LocalSpan> {
    let parts = chunk.body.facts.iter().flat_map(|fact| &fact.parts);
    let quoted = parts.filter(|part| matches!(part.value, Value::Text(_))).map(|part| part.span);
    quoted.chain(chunk.body.lines.iter().filter_map(|line| line.comment))
}

/// The addresses of the web in a text.
fn addresses(house: &House, span: Span) -> Vec<Link> {
    let text = house.text_at(span);
    let starts = text.match_indices("http").filter_map(|(at, _)| {
        let rest = text.get(at..)?;
        let scheme = ["https://", "http://"].into_iter().find(|scheme| rest.starts_with(scheme))?;
        let address = rest.split(|it: char| it.is_whitespace() || "\"“”<>".contains(it)).next()?;
        let address = address.trim_end_matches(['.', ',', ';', ':', ')', '!', '?', '\'']);
        (address.len() > scheme.len()).then_some((at, address))
    });
    let link = |(at, address): (usize, &str)| {
        let start = span.start + u32::try_from(at).unwrap_or(0);
        let end = start + u32::try_from(address.len()).unwrap_or(0);
        Link {
            span: Span::new(span.file, start, end),
            target: LinkTarget::Address(address.to_owned()),
            tooltip: "opens in the browser".to_owned(),
        }
    };
    let mut links: Vec<Link> = Vec::new();
    for found in starts.map(link) {
        // An address in the query of another one is part of it.
        if links.last().is_none_or(|last| last.span.end <= found.span.start) {
            links.push(found);
        }
    }
    links
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::snapshot_of;

    fn all(spec: &str) -> Vec<String> {
        let snapshot = snapshot_of(spec);
        let house = &snapshot.house;
        let told = links(house, FileId(0)).into_iter().map(|link| {
            let target = match link.target {
                LinkTarget::File(file) => house.inputs.sources[file.0 as usize].name.to_string(),
                LinkTarget::Address(address) => address,
            };
            format!("{} -> {target} ({})", house.text_at(link.span), link.tooltip)
        });
        told.collect()
    }

    #[test]
    fn an_include_leads_to_its_file_when_it_can_be_read() {
        let spec = "project\ninclude \"parts/b.framing\"\ninclude \"gone.framing\"\n-- file parts/b.framing\nbeam B1\nbeam B2\n";
        assert_eq!(all(spec), ["parts/b.framing -> parts/b.framing (parts/b.framing, 2 elements)"]);
    }

    #[test]
    fn sources_and_comments_may_be_addresses() {
        let spec = "-- see https://example.org/a?b=http://c, or https://\nbeam B1\n  source \"http://example.org/table 4\" on 2027-01-01 -- (https://example.org/é).\n";
        assert_eq!(
            all(spec),
            [
                "https://example.org/a?b=http://c -> https://example.org/a?b=http://c (opens in the browser)",
                "http://example.org/table -> http://example.org/table (opens in the browser)",
                "https://example.org/é -> https://example.org/é (opens in the browser)",
            ]
        );
    }
}
