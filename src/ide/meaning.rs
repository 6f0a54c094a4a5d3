//! What the name at a place means, and every place that means the same.

use crate::house::House;
use crate::inputs::IncludeOutcome;
use crate::model::element::{ElementId, Mention};
use crate::model::plan::Axis;
use crate::model::site::Grid;
use crate::rules::{self, Rule};
use crate::syntax::value::{GridRef, Value};
use crate::syntax::vocabulary::ElementKind;
use crate::syntax::{Chunk, Fact, Heading, Opening, Tree};
use crate::text::{FileId, LocalSpan, Span};

/// What a name means.
#[derive(Clone, Debug)]
pub enum Meaning {
    /// An element.
    Element(ElementId),
    /// A line of the grid, by the axis it cuts and its name.
    GridLine(Axis, Box<str>),
    /// A rule, where it is waived or weighed otherwise.
    Rule(&'static Rule),
    /// The file that an include line leads to.
    Include(FileId),
}

impl PartialEq for Meaning {
    /// Rules are the same when their slugs are.
    fn eq(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Element(one), Self::Element(other)) => one == other,
            (Self::GridLine(axis, one), Self::GridLine(across, other)) => axis == across && one == other,
            (Self::Rule(one), Self::Rule(other)) => one.slug == other.slug,
            (Self::Include(one), Self::Include(other)) => one == other,
            (Self::Element(_) | Self::GridLine(..) | Self::Rule(_) | Self::Include(_), _) => false,
        }
    }
}

impl Eq for Meaning {}

/// A place with what its name means.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// The name; of a heading's other words, the keyword or the title.
    pub span: Span,
    /// What it means.
    pub meaning: Meaning,
    /// True where the name is given: in an element's heading, or where the grid says how far off the line is.
    pub is_declaration: bool,
}

/// What the name at a place means; the cursor stands in it or just behind it.
///
/// A heading's keyword and title mean their element too. `None` also for a name that nothing in the spec has.
pub fn named_at(house: &House, file: FileId, offset: u32) -> Option<Named> {
    if let Some(mention) = mention_at(house, file, offset) {
        return Some(named_by(mention));
    }
    let chunk = house.trees.get(file.0 as usize)?.chunk_at(offset)?;
    match &chunk.body.opening {
        Opening::Include(_) => include_at(house, file, offset),
        Opening::Element(heading) => heading_at(house, file, chunk, heading, offset).or_else(|| {
            let named = lines_and_rules_in(&house.model.grid, file, chunk);
            named.into_iter().find(|named| named.span.touches(offset))
        }),
        Opening::Nothing | Opening::Unknown(..) => None,
    }
}

/// Every place that means this, in the order of the text, file by file.
///
/// An element without a name has one place: the keyword that declares it.
pub fn places_of(house: &House, meaning: &Meaning) -> Vec<Named> {
    let mut places: Vec<Named> = match meaning {
        Meaning::Element(id) => {
            let named = house.model.mentions.iter().filter(|mention| mention.target == *id).map(named_by);
            named.collect()
        }
        Meaning::Include(_) => house
            .files()
            .flat_map(|file| house.inputs.includes.iter().filter(move |include| include.file == file))
            .filter_map(|include| include_at(house, include.file, include.span.start))
            .filter(|named| named.meaning == *meaning)
            .collect(),
        Meaning::GridLine(..) | Meaning::Rule(_) => {
            let named = lines_and_rules(&house.model.grid, &house.trees);
            named.filter(|named| named.meaning == *meaning).collect()
        }
    };
    if let (Meaning::Element(id), true) = (meaning, places.is_empty())
        && let Some(common) = house.model.common(*id)
    {
        places.push(Named { span: common.name_span, meaning: meaning.clone(), is_declaration: true });
    }
    places.sort_by_key(|named| named.span);
    places.dedup();
    places
}

/// The element whose text, from its keyword up to the next element, a place lies in.
pub fn element_at(house: &House, file: FileId, offset: u32) -> Option<ElementId> {
    let chunk = house.trees.get(file.0 as usize)?.chunk_at(offset)?;
    match &chunk.body.opening {
        Opening::Element(heading) => element_of(house, file, chunk, heading),
        Opening::Nothing | Opening::Include(_) | Opening::Unknown(..) => None,
    }
}

/// The names of elements in a stretch of text, in the order of the text.
pub fn mentions_in(house: &House, place: Span) -> &[Mention] {
    let mentions = &house.model.mentions;
    let before = |end: u32| {
        mentions.partition_point(|mention| (mention.span.file, mention.span.start) < (place.file, end))
    };
    mentions.get(before(place.start)..before(place.end)).unwrap_or_default()
}

/// The facts of an element that could be read, each with its place.
pub fn facts_of(house: &House, id: ElementId) -> impl Iterator<Item = (&Fact, Span)> {
    let place = house.model.common(id).map(|common| common.span);
    let chunk = place.and_then(|place| house.trees.get(place.file.0 as usize)?.chunk_at(place.start));
    place.zip(chunk).into_iter().flat_map(|(place, chunk)| {
        chunk.body.facts.iter().map(move |fact| (fact, fact.span.within(place.file, chunk.start)))
    })
}

/// Every place of some files where a line of the grid or a rule is named, in the order of the text.
pub fn lines_and_rules<'a>(grid: &'a Grid, trees: &'a [Tree]) -> impl Iterator<Item = Named> + 'a {
    let chunks = (0..).map(FileId).zip(trees);
    let chunks = chunks.flat_map(|(file, tree)| tree.chunks.iter().map(move |chunk| (file, chunk)));
    chunks.flat_map(move |(file, chunk)| lines_and_rules_in(grid, file, chunk))
}

fn named_by(mention: &Mention) -> Named {
    Named {
        span: mention.span,
        meaning: Meaning::Element(mention.target),
        is_declaration: mention.is_declaration,
    }
}

fn mention_at(house: &House, file: FileId, offset: u32) -> Option<&Mention> {
    let mentions = &house.model.mentions;
    let after = mentions.partition_point(|mention| (mention.span.file, mention.span.start) <= (file, offset));
    let last = mentions.get(after.checked_sub(1)?)?;
    (last.span.file == file && last.span.touches(offset)).then_some(last)
}

fn include_at(house: &House, file: FileId, offset: u32) -> Option<Named> {
    let place = |span: LocalSpan| span.within(file, 0);
    let include = house
        .inputs
        .includes
        .iter()
        .find(|include| include.file == file && place(include.span).touches(offset))?;
    match &include.outcome {
        IncludeOutcome::Read(target) | IncludeOutcome::Again(target) => Some(Named {
            span: place(include.span),
            meaning: Meaning::Include(*target),
            is_declaration: false,
        }),
        IncludeOutcome::Missing
        | IncludeOutcome::Outside
        | IncludeOutcome::Cycle(_)
        | IncludeOutcome::Unreadable(_) => None,
    }
}

fn heading_at(house: &House, file: FileId, chunk: &Chunk, heading: &Heading, offset: u32) -> Option<Named> {
    let title = heading.title.as_ref().map(|(_, span)| *span);
    let mut words = [Some(heading.keyword), title].into_iter().flatten();
    let span =
        words.find_map(|span| Some(span.within(file, chunk.start)).filter(|span| span.touches(offset)))?;
    let id = element_of(house, file, chunk, heading)?;
    Some(Named { span, meaning: Meaning::Element(id), is_declaration: true })
}

fn element_of(house: &House, file: FileId, chunk: &Chunk, heading: &Heading) -> Option<ElementId> {
    if let Some((_, span)) = &heading.name {
        let span = span.within(file, chunk.start);
        let mention = mention_at(house, file, span.start)?;
        return (mention.span == span && mention.is_declaration).then_some(mention.target);
    }
    let keyword = heading.keyword.within(file, chunk.start);
    let mut commons = house.model.commons();
    commons.find(|common| common.id.kind == heading.kind && common.name_span == keyword).map(|it| it.id)
}

fn lines_and_rules_in(grid: &Grid, file: FileId, chunk: &Chunk) -> Vec<Named> {
    let Opening::Element(heading) = &chunk.body.opening else { return Vec::new() };
    let place = |span: LocalSpan| span.within(file, chunk.start);
    let line_named = |name: &str, span: LocalSpan, is_declaration: bool| {
        let line = grid.lines.get(name)?;
        Some(Named { span: place(span), meaning: Meaning::GridLine(line.axis, name.into()), is_declaration })
    };
    let mut found = Vec::new();
    for fact in &chunk.body.facts {
        for part in &fact.parts {
            match (&part.value, part.label) {
                (Value::Name(name), "name") if heading.kind == ElementKind::Grid => {
                    found.extend(line_named(name, part.span, says_where(fact)));
                }
                (Value::Word(slug), "rule") if matches!(fact.spec.phrase, "waive" | "severity") => {
                    found.extend(rules::rule_named(slug).map(|rule| Named {
                        span: place(part.span),
                        meaning: Meaning::Rule(rule),
                        is_declaration: false,
                    }));
                }
                (value, _) => {
                    let lines = grid_refs(value).into_iter();
                    found.extend(lines.filter_map(|line| line_named(&line.line, line.span, false)));
                }
            }
        }
    }
    found
}

/// True for the facts of a grid that give its lines their places.
fn says_where(fact: &Fact) -> bool {
    matches!(fact.spec.phrase, "x" | "y")
}

/// The grid lines that a value uses, in the order of the text.
pub(super) fn grid_refs(value: &Value) -> Vec<&GridRef> {
    match value {
        Value::GridRef(line) => vec![line],
        Value::Point(point) => vec![&point.x, &point.y],
        Value::Rect(rect) => vec![&rect.x_from, &rect.x_to, &rect.y_from, &rect.y_to],
        Value::Line(line) => vec![&line.from.x, &line.from.y, &line.to.x, &line.to.y],
        Value::Comparison(comparison) => {
            comparison.left.values().chain(comparison.right.values()).flat_map(grid_refs).collect()
        }
        Value::Mark
        | Value::Length(_)
        | Value::Load(_)
        | Value::Stress(_)
        | Value::Area(_)
        | Value::Date(_)
        | Value::Text(_)
        | Value::Count(_)
        | Value::Number(_)
        | Value::Percent(_)
        | Value::Name(_)
        | Value::Word(_)
        | Value::Side(_)
        | Value::Dimensions(_)
        | Value::Member(_)
        | Value::Bar(_)
        | Value::FactName(_) => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::syntax::names;
    use crate::syntax::value::Section;
    use crate::syntax::vocabulary::{ELEMENTS, Naming, spec_of};
    use crate::testing::cursor::{at_cursor, snapshot_of, text_around};

    /// What the name at the cursor means, as one line, and the places of that meaning, each with a little of its text.
    fn named(fixture: &str) -> Option<(String, Vec<String>)> {
        let (snapshot, file, offset) = at_cursor(fixture);
        let house = &snapshot.house;
        let named = named_at(house, file, offset)?;
        let meaning = match &named.meaning {
            Meaning::Element(id) => house.model.common(*id).unwrap().label(),
            Meaning::GridLine(axis, name) => format!("grid line {name} {axis:?}"),
            Meaning::Rule(rule) => rule.slug.to_owned(),
            Meaning::Include(file) => house.inputs.sources[file.0 as usize].name.to_string(),
        };
        assert!(
            matches!(named.meaning, Meaning::Element(_)) || places_of(house, &named.meaning).contains(&named)
        );
        let places = places_of(house, &named.meaning).into_iter().map(|place| {
            let mark = if place.is_declaration { "declared " } else { "" };
            format!("{mark}{}", text_around(house, place.span))
        });
        Some((format!("{} is {meaning}", house.text_at(named.span)), places.collect()))
    }

    fn check(fixture: &str, meaning: &str, places: &[&str]) {
        let (is, all) = named(fixture).expect("the name means something");
        assert_eq!(is, meaning);
        assert_eq!(all, places);
    }

    const SPEC: &str = r#"project "House"
  datum main subfloor 100'
  severity check-not-run warning
  waive check-not-run because "not yet"
grid
  x A 0', B 16'
  y 1 0', 2 12'
  line B is "the girder"
product LV14
  kind composite lumber 1-3/4 x 14
floor main "Main"
  deck 3/4"
beam B1 "Girder"
  size 3-ply LV14
  from A/2 to B/2
  bears on P1
column P1
  at B less 1'/2
  load 400 lb live
  waive check-not-run because "by hand"
joists J1
  floor main
  spacing 16" from A
intent "Level"
  keep finish of main = top of B1
sheet A-1
  shows half of top of B1 plus 2" = 100'
  schedules B1, P1
"#;

    /// The spec with the cursor at `$0` in a piece of it.
    fn with(piece: &str) -> String {
        let without = piece.replace("$0", "");
        assert_eq!(SPEC.matches(&without).count(), 1, "{piece} stands once");
        SPEC.replace(&without, piece)
    }

    #[test]
    fn a_name_means_its_element_wherever_it_stands() {
        let places = [
            "declared beam [B1] \"Girder\"",
            "keep finish of main = top of [B1]",
            "shows half of top of [B1] plus 2\" = 100'",
            "schedules [B1], P1",
        ];
        for piece in [
            "beam $0B1",
            "beam B1$0 \"Girder",
            "main = top of B$01",
            "half of top of $0B1 plus",
            "schedules B1$0, P1",
        ] {
            check(&with(piece), "B1 is beam B1", &places);
        }
        check(&with("be$0am B1"), "beam is beam B1", &places);
        check(&with("beam B1 \"Gir$0der\""), "Girder is beam B1", &places);
        let floor = [
            "datum [main] subfloor 100'",
            "declared floor [main] \"Main\"",
            "floor [main]",
            "keep finish of [main] = top of B1",
        ];
        check(&with("datum ma$0in"), "main is floor main", &floor);
        check(
            "project\nproduct LV14\nbeam B1\n  size (2)  LV$014 treated\n",
            "LV14 is product LV14",
            &["declared product [LV14]", "size (2)  [LV14] treated"],
        );
        check(
            "project\nproduct L$0V\nbeam B1\n  size should be 3-ply LV\nsheet A-1\n  shows size of B1 = 3-ply LV\n",
            "LV is product LV",
            &["declared product [LV]", "size should be 3-ply [LV]", "shows size of B1 = 3-ply [LV]"],
        );
        let product = ["declared product [LV14]", "size 3-ply [LV14]"];
        check(&with("3-ply LV$014"), "LV14 is product LV14", &product);
    }

    #[test]
    fn what_has_no_name_is_meant_by_its_keyword() {
        check(&with("$0intent \"Level"), "intent is intent Level", &["declared [intent] \"Level\""]);
        check(&with("gri$0d\n"), "grid is grid", &["declared [grid]"]);
        check(&with("\"Ho$0use\""), "House is project House", &["declared [project] \"House\""]);
    }

    #[test]
    fn a_grid_line_is_one_of_its_axis() {
        let two = ["declared y 1 0', [2] 12'", "from A/[2] to B/2", "from A/2 to B/[2]", "at B less 1'/[2]"];
        check(&with("from A/2$0 to"), "2 is grid line 2 Y", &two);
        let b = [
            "declared x A 0', [B] 16'",
            "line [B] is \"the girder\"",
            "from A/2 to [B]/2",
            "at [B] less 1'/2",
        ];
        check(&with("line $0B is"), "B is grid line B X", &b);
        check(&with("at $0B less"), "B is grid line B X", &b);
        let a = ["declared x [A] 0', B 16'", "from [A]/2 to B/2", "spacing 16\" from [A]"];
        check(&with("spacing 16\" from A$0"), "A is grid line A X", &a);
    }

    #[test]
    fn a_rule_is_named_where_it_is_waived_or_weighed_otherwise() {
        let places = [
            "severity [check-not-run] warning",
            "waive [check-not-run] because \"not yet\"",
            "waive [check-not-run] because \"by hand\"",
        ];
        check(&with("check-not$0-run warning"), "check-not-run is check-not-run", &places);
        check(&with("check-not$0-run because \"by"), "check-not-run is check-not-run", &places);
    }

    #[test]
    fn an_include_leads_to_its_file() {
        let spec = "project \"House\"\ninclude \"parts/beams.fr$0aming\"\n-- file parts/beams.framing\nbeam B1\n  from A/1 to B/1\n";
        check(spec, "parts/beams.framing is parts/beams.framing", &["include \"[parts/beams.framing]\""]);
        let spec = "project\ncolumn C1\ninclude \"b.framing\"\n-- file b.framing\nbeam B1\n  bears on C$01\n";
        check(spec, "C1 is column C1", &["declared column [C1]", "bears on [C1]"]);
    }

    #[test]
    fn the_rest_means_nothing() {
        for piece in
            ["de$0ck 3/4", "bears $0on P1", "\"not $0yet\"", "B 16'$0\n", "$0kind composite", "400 l$0b"]
        {
            assert_eq!(named(&with(piece)), None, "{piece}");
        }
        assert_eq!(named("project\nbeam B1\n  bears on W$09\n"), None);
        assert_eq!(named("project\ninclude \"not-$0there.framing\"\n"), None);
        assert_eq!(named("$0"), None);
        let (snapshot, file, _) = at_cursor("project$0\nbeam B1\n");
        assert_eq!(named_at(&snapshot.house, file, u32::MAX), None);
        assert_eq!(named_at(&snapshot.house, FileId(7), 0), None);
    }

    #[test]
    fn what_stands_in_an_element_belongs_to_it() {
        let (snapshot, file, offset) = at_cursor(&with("spacing 16\"$0 from"));
        let id = element_at(&snapshot.house, file, offset).unwrap();
        assert_eq!(snapshot.house.model.common(id).unwrap().label(), "joists J1");
    }

    /// Every name that the reader of a sample finds in its facts is a mention, a grid line, or no element's at all.
    #[test]
    fn no_name_of_the_samples_is_lost() {
        for sample in [
            include_str!("../../grammar/samples/first.framing"),
            include_str!("../../grammar/samples/alley-house.framing"),
            include_str!("../../grammar/samples/hill-studio.framing"),
            include_str!("../../grammar/samples/hop-barn.framing"),
            include_str!("../../grammar/samples/loon-cove.framing"),
        ] {
            no_name_is_lost(sample);
        }
    }

    /// The same of every line that the reference shows, with something of each name declared.
    #[test]
    fn no_name_of_the_reference_is_lost() {
        let grid = spec_of(ElementKind::Grid);
        no_name_is_lost(grid.example);
        for spec in ELEMENTS.iter().filter(|spec| spec.kind != grid.kind) {
            for fact in spec.all_facts() {
                let name = if spec.naming == Naming::Name { " Q1" } else { "" };
                let lines: String = fact.example.lines().map(|line| format!("  {line}\n")).collect();
                let element = format!("{}{name}\n{lines}", spec.keyword);
                let words = element.split(|sign: char| !sign.is_alphanumeric() && !"_-.".contains(sign));
                let names: BTreeSet<&str> = words.filter(|word| names::may_name(word)).collect();
                let letters = names.iter().filter(|name| name.starts_with(char::is_alphabetic));
                let walls: String =
                    letters.filter(|name| **name != "Q1").map(|name| format!("wall {name}\n")).collect();
                let lines = "grid\n  x A 0', B 1', C 2', D 3'\n  y 1 0', 2 1', 3 2', 4 3'\n";
                no_name_is_lost(&format!("{element}{lines}{walls}"));
            }
        }
    }

    fn no_name_is_lost(text: &str) {
        let snapshot = snapshot_of(text);
        let house = &snapshot.house;
        for chunk in &house.trees[0].chunks {
            for part in chunk.body.facts.iter().flat_map(|fact| &fact.parts) {
                let names: Vec<(&str, u32)> = match &part.value {
                    Value::Name(name) => vec![(name, part.span.start)],
                    Value::FactName(fact) => {
                        fact.of.iter().map(|(name, span)| (&**name, span.start)).collect()
                    }
                    Value::Member(member) => match (&member.section, member.product_span) {
                        (Section::Product(name), Some(span)) => vec![(name, span.start)],
                        _ => Vec::new(),
                    },
                    other => {
                        grid_refs(other).into_iter().map(|line| (&*line.line, line.span.start)).collect()
                    }
                };
                for (name, at) in names {
                    let is_known =
                        house.model.named(name).is_some() || house.model.grid.lines.contains_key(name);
                    let named = named_at(house, FileId(0), chunk.start + at);
                    assert_eq!(
                        named.is_some_and(|named| house.text_at(named.span) == name),
                        is_known,
                        "{name} in {:?}",
                        text_around(house, part.span.within(FileId(0), chunk.start))
                    );
                }
            }
        }
    }
}
