//! The reference of the format, `grammar/reference.md`, rendered from the vocabulary.

use std::fmt::Write;

use crate::syntax::form::Kind;
use crate::syntax::vocabulary::notation::{kind_name, notation};
use crate::syntax::vocabulary::{
    CLAIM, COMMON, ELEMENTS, ElementKind, ElementSpec, FACT_NAMES, FactNameSpec, FactSpec, Naming, Presence,
};

/// The whole reference.
pub fn reference() -> String {
    let mut text = HEAD.to_owned();
    text.push_str(&contents());
    text.push_str("\n## Facts of every element\n\n");
    text.push_str(&facts(COMMON));
    text.push_str("\n### Claims\n\n");
    text.push_str(CLAIMS);
    text.push_str(&facts(std::slice::from_ref(&CLAIM)));
    for spec in ELEMENTS {
        text.push_str(&element(spec));
    }
    text.push_str("\n## Facts by name\n\n");
    text.push_str(NAMES);
    text.push_str(&fact_names());
    text.push_str("\n## Values\n\n");
    text.push_str("| value | what it is | as written |\n| --- | --- | --- |\n");
    for (kind, meaning, examples) in VALUES {
        row(&mut text, &[kind_name(kind).to_uppercase(), (*meaning).to_owned(), code_list(examples)]);
    }
    text
}

/// One element's page: what it is, an example, its facts.
pub fn element(spec: &ElementSpec) -> String {
    let mut text = format!("\n## {}\n\n{}\n", spec.keyword, spec.summary);
    let heading = match spec.naming {
        Naming::Name => " NAME [\"title\"]",
        Naming::Title => " [\"title\"]",
        Naming::None => "",
    };
    put(&mut text, format_args!("Opened by `{}{heading}`", spec.keyword));
    if !spec.also.is_empty() {
        put(&mut text, format_args!("; also by {}", code_list(spec.also)));
    }
    put(&mut text, format_args!(".\n\n```framing\n{}```\n\n", spec.example));
    text.push_str(&facts(spec.facts));
    let claimable: Vec<_> = spec.claimable().map(|name| name.words).collect();
    if !claimable.is_empty() {
        put(&mut text, format_args!("\nMay be claimed: {}.\n", code_list(&claimable)));
    }
    text
}

/// What a kind of value is, and values as they are written; `None` of what its form says by itself.
pub fn value_meaning(kind: &Kind) -> Option<(&'static str, &'static [&'static str])> {
    let same = |of: &Kind| std::mem::discriminant(of) == std::mem::discriminant(kind);
    VALUES.iter().find(|(of, ..)| same(of)).map(|(_, meaning, written)| (*meaning, *written))
}

fn contents() -> String {
    let links =
        ELEMENTS.iter().map(|spec| format!("[{0}](#{1})", spec.keyword, spec.keyword.replace(' ', "-")));
    links.collect::<Vec<_>>().join(" · ") + "\n"
}

fn facts(specs: &[FactSpec]) -> String {
    let mut text = String::from(
        "| fact | value | | without it | meaning | example |\n| --- | --- | --- | --- | --- | --- |\n",
    );
    for fact in specs {
        let value = match notation(&fact.form) {
            value if value.is_empty() => value,
            value => code(&value),
        };
        row(
            &mut text,
            &[
                code(fact.phrase),
                value,
                presence(fact),
                fact.default.to_owned(),
                fact.meaning.to_owned(),
                code(fact.example),
            ],
        );
    }
    text
}

fn presence(fact: &FactSpec) -> String {
    let word = match fact.presence {
        Presence::Required => "required",
        Presence::Optional => "optional",
        Presence::Derived => "derived",
    };
    if fact.repeatable { format!("{word}, may repeat") } else { word.to_owned() }
}

fn fact_names() -> String {
    let mut text = String::from("| fact | gives | of | meaning |\n| --- | --- | --- | --- |\n");
    for name in FACT_NAMES {
        let of: Vec<_> = name.arguments().map(|argument| kinds(argument.kinds)).collect();
        let of = if of.windows(2).all(|pair| pair.first() == pair.last()) {
            of.into_iter().take(1).collect()
        } else {
            of
        };
        row(
            &mut text,
            &[
                code(&pattern(name)),
                kind_name(&name.gives).to_owned(),
                of.join("; "),
                name.meaning.to_owned(),
            ],
        );
    }
    text
}

fn pattern(name: &FactNameSpec) -> String {
    let case = if name.takes_case { "[CASE] " } else { "" };
    let arguments: String = name
        .arguments()
        .zip(["X", "Y"])
        .map(|(argument, of)| format!(" {} {of}", argument.joined_by))
        .collect();
    format!("{case}{}{arguments}", name.words)
}

fn kinds(kinds: &[ElementKind]) -> String {
    let is_any =
        ELEMENTS.iter().filter(|spec| spec.naming == Naming::Name).all(|spec| kinds.contains(&spec.kind));
    if is_any {
        return "any named element".to_owned();
    }
    kinds.iter().map(|kind| kind.word()).collect::<Vec<_>>().join(", ")
}

fn row(text: &mut String, cells: &[String]) {
    put(text, format_args!("| {} |\n", cells.join(" | ").replace("  |", " |")));
}

fn code(text: &str) -> String {
    format!("`{text}`")
}

fn code_list(texts: &[&str]) -> String {
    texts.iter().map(|text| code(text)).collect::<Vec<_>>().join(", ")
}

fn put(text: &mut String, piece: std::fmt::Arguments<'_>) {
    // Writing to a `String` cannot fail.
    let _ = text.write_fmt(piece);
}

const HEAD: &str = r#"# Reference of the format

Rendered from the vocabulary; never edited by hand: `UPDATE=1 cargo test` writes it.
The formal grammar is `storyrod.ebnf`, the limits of each profile are in `limits.md`, whole houses in `samples/`.

A spec is a list of elements.
A line that begins in the first column opens an element; each indented line below gives it one fact, in any order.
`--` begins a comment.
`include "foundation.framing"` in the first column takes in another file.

In the tables, words are typed as they stand; CAPITALS are values, explained at the end; `[…]` may be left out; `·` parts choices; `…` means more of the same.
A fact that is *derived* follows from the rest and is checked when stated.
Once, unless it *may repeat*.

The tool checks arithmetic and published rules; it replaces neither a licensed engineer nor the building official.

"#;

const CLAIMS: &str = "A claim is compared with what follows from everything else and never used.\n\
Each element below lists what may be claimed of it.\n\
Without `within`, numbers agree when they differ by less than the profile's tolerance.\n\n";

const NAMES: &str = "Sheets, intents, hold points and claims name facts in one way.\n\
A claim leaves out what its own element is: `top should be 99'-0\"`.\n\
CASE is `dead`, `live` or `snow` for one load case and `all` for the plain sum; without it the governing combination is meant.\n\n";

const VALUES: &[(&Kind, &str, &[&str])] = &[
    (
        &Kind::Length,
        "A length. `in`, `ft`, `mm` and `m` may stand behind a number; a bare number is refused.",
        &["9-1/2\"", "3/4\"", "12'", "12'-6 1/2\"", "2.5 ft", "240 mm"],
    ),
    (&Kind::Elevation, "A height above the datum, of a named surface.", &["98'-10 3/8\"", "-1'-2\""]),
    (
        &Kind::Load,
        "A load or weight; its unit says on what: an area, a length, a point, or by volume.",
        &["40 psf", "250 plf", "6500 lb", "12 kip", "150 pcf", "1.9 kPa", "3.6 kN/m"],
    ),
    (&Kind::Stress, "A stress or modulus.", &["875 psi", "1.4e6 psi", "50 ksi", "12 MPa"]),
    (&Kind::Area, "An area in plan.", &["256 sq ft"]),
    (&Kind::Date, "A day: year, month, day.", &["2027-03-01"]),
    (&Kind::Text, "Words in quotes. There are no escapes: write `in.` inside.", &["\"Center girder\""]),
    (&Kind::Count, "A whole number.", &["3"]),
    (&Kind::Number, "A number, whole or decimal.", &["6", "7.5"]),
    (&Kind::Percent, "A share of a hundred.", &["19%"]),
    (
        &Kind::Name(&[]),
        "The name of an element: a letter, then letters, digits, `_`, `-`, `.`. A floor, a beam and so on in capitals asks for the name of one.",
        &["B1", "main", "A-301"],
    ),
    (&Kind::GridLine, "The name of a grid line.", &["A", "3", "3.4"]),
    (&Kind::GridRef, "A grid line, maybe with an offset: `plus` counts north or east.", &["3", "3 less 5\""]),
    (&Kind::Point, "A place in plan: x first.", &["B/3", "B plus 2'-6\" / 3"]),
    (&Kind::Line, "A straight line in plan.", &["A/1 to C/1"]),
    (&Kind::Rect, "An upright rectangle in plan: x first.", &["A to C by 1 to 3"]),
    (
        &Kind::Side,
        "A side of the compass, or a hand of a line walked from its beginning.",
        &["north", "left"],
    ),
    (
        &Kind::Member,
        "A member's size and stuff: nominal lumber, built-up plies, a depth and what it is made as, a rolled shape, a tube, a pipe, or a declared product.",
        &[
            "2x10 SPF No.2",
            "3-ply 2x10 SPF No.2",
            "11-7/8 I-joist class 40",
            "5-1/8 x 12 glulam 24F",
            "W8x24",
            "HSS 4 x 4 x 1/4",
            "filled pipe 4",
            "LV12",
        ],
    ),
    (&Kind::Slug, "The name of a rule, a limit or a profile.", &["bearing-short", "irc-2021"]),
    (&Kind::FreeWords, "Words of your own.", &["fir plank"]),
    (&Kind::Bar, "A reinforcing bar by its number.", &["#5"]),
    (&Kind::FactName, "A fact by name.", &["top of W2", "drop from main to den"]),
    (
        &Kind::Comparison,
        "Two sums of values and facts, and what holds between them.",
        &[
            "top of T1 = top of W4 within 1/4\"",
            "riser of S2 <= 7\"",
            "top of B1 less half of 9\" >= bottom of J1",
        ],
    ),
    (&Kind::AnyValue, "A single value: a length, a load, a number.", &["96-5/16\"", "256 sq ft", "480"]),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_committed_reference_is_the_rendered_one() {
        let path = concat!(env!("CARGO_MANIFEST_DIR"), "/grammar/reference.md");
        if std::env::var_os("UPDATE").is_some() {
            std::fs::write(path, reference()).unwrap();
        }
        let committed = std::fs::read_to_string(path).unwrap_or_default();
        assert!(committed == reference(), "grammar/reference.md is stale: run `UPDATE=1 cargo test`");
    }
}
