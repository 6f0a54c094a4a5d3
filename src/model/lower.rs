//! From the trees of a spec to its model.
//!
//! First every element gets its id and its name; then the project, the grid and the declared products are read,
//! because all others need them; then all others, in the order of the text.

mod every;
#[cfg(test)]
mod examples;
mod foundation;
mod framing;
mod members;
mod names;
mod openings;
mod plan;
mod promises;
mod reader;
mod site;
mod stairs;
mod supports;

use crate::model::Model;
use crate::model::lower::names::{Entry, Lowering};
use crate::model::lower::reader::Reader;
use crate::syntax::Tree;
use crate::syntax::vocabulary::ElementKind;

impl Model {
    /// The house that the trees of a spec describe. A tree's place in the slice is its file's number; the root file
    /// comes first.
    pub fn of(trees: &[Tree]) -> Self {
        let (mut lowering, entries) = Lowering::of(trees);
        let (first, rest): (Vec<_>, Vec<_>) =
            entries.into_iter().partition(|entry| is_read_first(entry.id.kind));
        let mut first = first;
        first.sort_by_key(|entry| entry.id);
        for entry in first.iter().chain(&rest) {
            lower(&mut lowering, entry);
        }
        lowering.finished()
    }
}

/// True for what other elements' facts are read by.
const fn is_read_first(kind: ElementKind) -> bool {
    matches!(kind, ElementKind::Project | ElementKind::Grid | ElementKind::Product)
}

fn lower<'t>(lowering: &mut Lowering<'t>, entry: &Entry<'t>) {
    let reader = &mut Reader::new(lowering, entry);
    match entry.id.kind {
        ElementKind::Project => {
            let project = site::project(reader);
            lowering.model.project = Some(project);
        }
        ElementKind::Grid => plan::read_grid(reader),
        ElementKind::Product => {
            let product = framing::product(reader);
            lowering.model.products.push(product);
        }
        ElementKind::Floor => {
            let floor = site::floor(reader);
            lowering.model.floors.push(floor);
        }
        ElementKind::Area => {
            let area = site::area(reader);
            lowering.model.areas.push(area);
        }
        ElementKind::Joists => {
            let joists = framing::joists(reader);
            lowering.model.joists.push(joists);
        }
        ElementKind::Opening => {
            let opening = openings::opening(reader);
            lowering.model.openings.push(opening);
        }
        ElementKind::Wall => {
            let wall = foundation::wall(reader);
            lowering.model.walls.push(wall);
        }
        ElementKind::Shelf => {
            let shelf = foundation::shelf(reader);
            lowering.model.shelves.push(shelf);
        }
        ElementKind::Pocket => {
            let pocket = foundation::pocket(reader);
            lowering.model.pockets.push(pocket);
        }
        ElementKind::Ledger => {
            let ledger = foundation::ledger(reader);
            lowering.model.ledgers.push(ledger);
        }
        ElementKind::Beam => {
            let beam = framing::beam(reader);
            lowering.model.beams.push(beam);
        }
        ElementKind::Column => {
            let column = framing::column(reader);
            lowering.model.columns.push(column);
        }
        ElementKind::Footing => {
            let footing = foundation::footing(reader);
            lowering.model.footings.push(footing);
        }
        ElementKind::Slab => {
            let slab = foundation::slab(reader);
            lowering.model.slabs.push(slab);
        }
        ElementKind::Stair => {
            let stair = stairs::stair(reader);
            lowering.model.stairs.push(stair);
        }
        ElementKind::Landing => {
            let landing = stairs::landing(reader);
            lowering.model.landings.push(landing);
        }
        ElementKind::Stoop => {
            let stoop = stairs::stoop(reader);
            lowering.model.stoops.push(stoop);
        }
        ElementKind::Door => {
            let door = openings::door(reader);
            lowering.model.doors.push(door);
        }
        ElementKind::Window => {
            let window = openings::window(reader);
            lowering.model.windows.push(window);
        }
        ElementKind::Header => {
            let header = openings::header(reader);
            lowering.model.headers.push(header);
        }
        ElementKind::Jacks => {
            let jacks = openings::jacks(reader);
            lowering.model.jacks.push(jacks);
        }
        ElementKind::Squash => {
            let squash = openings::squash(reader);
            lowering.model.squashes.push(squash);
        }
        ElementKind::Roof => {
            let roof = site::roof(reader);
            lowering.model.roofs.push(roof);
        }
        ElementKind::Load => {
            let load = site::load(reader);
            lowering.model.loads.push(load);
        }
        ElementKind::Drain => {
            let drain = openings::drain(reader);
            lowering.model.drains.push(drain);
        }
        ElementKind::Hole => {
            let hole = openings::hole(reader);
            lowering.model.holes.push(hole);
        }
        ElementKind::Notch => {
            let notch = openings::notch(reader);
            lowering.model.notches.push(notch);
        }
        ElementKind::Duct => {
            let duct = openings::duct(reader);
            lowering.model.ducts.push(duct);
        }
        ElementKind::Intent => {
            let intent = promises::intent(reader);
            lowering.model.intents.push(intent);
        }
        ElementKind::Sheet => {
            let sheet = promises::sheet(reader);
            lowering.model.sheets.push(sheet);
        }
        ElementKind::HoldPoint => {
            let hold_point = promises::hold_point(reader);
            lowering.model.hold_points.push(hold_point);
        }
    }
}

#[cfg(test)]
mod tests {
    use std::time::{Duration, Instant};

    use crate::model::Model;
    use crate::model::element::Stage;
    use crate::model::field::Field;
    use crate::model::plan::Axis;
    use crate::model::problem::ModelProblemKind::{self, *};
    use crate::syntax::parse_fresh;
    use crate::syntax::vocabulary::ElementKind;
    use crate::text::{FileId, Span};
    use crate::units::Length;

    /// The samples that the reference shows are whole houses without a mistake.
    #[test]
    fn the_samples_make_sense() {
        for name in ["first", "loon-cove", "hop-barn"] {
            let path = format!("{}/grammar/samples/{name}.framing", env!("CARGO_MANIFEST_DIR"));
            let text = std::fs::read_to_string(path).unwrap();
            let model = Model::of(&[parse_fresh(&text)]);
            assert_eq!(all_told(&text), [], "{name}");
            assert_eq!(model.commons().count(), model.by_name.len() + 2 + model.intents.len());
            assert!(model.commons().all(|common| model.common(common.id) == Some(common)));
        }
    }

    const GRID: &str = "project \"House\"\ngrid\n  x   A 0', B 16'\n  y   1 0', 2 12'\n";

    /// What is told of some elements in a house with a grid, missing facts aside: the text at its place, and what.
    fn told(elements: &str) -> Vec<(String, ModelProblemKind)> {
        let mut told = all_told(&format!("{GRID}{elements}"));
        told.retain(|(_, kind)| !matches!(kind, FactMissing(_)));
        told
    }

    fn all_told(text: &str) -> Vec<(String, ModelProblemKind)> {
        let model = Model::of(&[parse_fresh(text)]);
        let place = |span: Span| text[span.start as usize..span.end as usize].to_owned();
        model.problems.into_iter().map(|problem| (place(problem.span), problem.kind)).collect()
    }

    fn missing(text: &str) -> Vec<&'static str> {
        let facts = all_told(text).into_iter().filter_map(|(_, kind)| match kind {
            FactMissing(phrase) => Some(phrase),
            _ => None,
        });
        facts.collect()
    }

    /// One problem of the second line's name or value: its text and kind.
    fn one(elements: &str) -> (String, ModelProblemKind) {
        let mut told = told(elements);
        assert_eq!(told.len(), 1, "{elements}: {told:#?}");
        told.remove(0)
    }

    fn name(text: &str) -> Option<Box<str>> {
        Some(Box::from(text))
    }

    fn span(start: u32, end: u32) -> Span {
        Span::new(FileId(0), start, end)
    }

    #[test]
    fn a_spec_has_one_project_and_one_grid() {
        assert_eq!(all_told(""), [(String::new(), NoProject)]);
        let text = "project \"One\"\n  profile  irc-2021\n  datum  main subfloor 100'\nproject \"Two\"\nfloor main\n  on SL1\n\
                    slab SL1\n  fill A to B by 1 to 2\n  top 1'\n  thick 4\"\ngrid\n  x A 0', B 1'\n  y 1 0', 2 1'\ngrid\n";
        let kinds: Vec<_> = all_told(text).into_iter().map(|(_, kind)| kind).collect();
        let grid = u32::try_from(text.find("grid").unwrap()).unwrap();
        assert_eq!(
            kinds,
            [
                SecondOfItsKind(ElementKind::Project, span(0, 7)),
                SecondOfItsKind(ElementKind::Grid, span(grid, grid + 4))
            ]
        );
    }

    #[test]
    fn of_two_with_one_name_the_first_counts() {
        let text = "project\nbeam B1\ncolumn B1\n";
        let model = Model::of(&[parse_fresh(text)]);
        let reused = model.problems.iter().filter(|problem| matches!(problem.kind, NameReused(..)));
        let reused: Vec<_> = reused.map(|problem| (problem.span, problem.kind.clone())).collect();
        assert_eq!(reused, [(span(23, 25), NameReused(Box::from("B1"), span(13, 15)))]);
        assert_eq!(model.named("B1").map(|id| id.kind), Some(ElementKind::Beam));
        assert_eq!(model.columns.len(), 1);
    }

    #[test]
    fn a_name_must_be_known_and_fit() {
        let (at, kind) = one("beam B1\n  bears on  W12\nwall W1\nwall B12\n");
        assert!(at == "W12" && matches!(kind, UnknownName(_, nearest) if nearest == name("W1")));
        let (at, kind) = one("floor main\n  on  W1\nwall W1\n");
        assert!(at == "W1" && matches!(kind, WrongKind([ElementKind::Slab], ElementKind::Wall, _)));
        let (at, kind) = one("floor main\n  steps up  from main by 2 risers\n");
        assert_eq!((at.as_str(), kind), ("main", RefersToItself));
        // What carries itself is a circle in the load path, which a rule reports.
        assert_eq!(told("beam B1\n  bears on  B1\n"), []);
        let (at, kind) = one("intent\n  keep  W1 step-free to main\nwall W1\nfloor main\n");
        assert!(at == "W1" && matches!(kind, WrongKind(_, ElementKind::Wall, _)));
        let (at, kind) = one("sheet A-1\n  shows  half of drop from main to W1 = 1'\nwall W1\nfloor main\n");
        assert!(at == "W1" && matches!(kind, WrongKind([ElementKind::Floor], ElementKind::Wall, _)));
        let (at, kind) = one("intent\n  nothing below  bottom of B1\nbeam B1\n");
        assert_eq!((at.as_str(), kind), ("bottom of B1", UnknownWord("level", name("ceiling"))));
    }

    /// The keyword is at fault, and the text says so; the uses of the name are not.
    #[test]
    fn a_misspelt_keyword_does_not_make_its_name_unknown() {
        assert_eq!(told("colum C1\n  at  A/1\nbeam B1\n  bears on  C1\n"), []);
    }

    #[test]
    fn a_place_is_on_lines_of_the_grid() {
        let (at, kind) = one("column C1\n  at  a/1\n");
        assert_eq!((at.as_str(), kind), ("a", UnknownGridLine(name("A"))));
        let (at, kind) = one("joists J1\n  run  along y\n  spacing  16\" from 1\n");
        assert_eq!((at.as_str(), kind), ("1", GridLineOfOtherAxis(Axis::X)));
        let (at, kind) = one("beam B1\n  from  A/1 to A plus 0\"/1\n");
        assert_eq!((at.as_str(), kind), ("A/1 to A plus 0\"/1", NoExtent("from")));
        let (at, kind) = one("slab SL1\n  fill  A to B by 1 plus 12' to 2\n");
        assert_eq!((at.as_str(), kind), ("A to B by 1 plus 12' to 2", NoExtent("fill")));
        let (at, kind) = one("shelf SH1\n  in  W1 from north face from B to A plus 16'\nwall W1\n");
        assert_eq!((at.as_str(), kind), ("B to A plus 16'", NoExtent("in")));
    }

    #[test]
    fn places_are_exact() {
        let text =
            format!("{GRID}column C1\n  at  A plus 1/64\"/2 less 1 mm\nslab SL1\n  fill  B to A by 2 to 1\n");
        let model = Model::of(&[parse_fresh(&text)]);
        let at = model.columns[0].at.get().unwrap();
        assert_eq!(at.x, Length::sixty_fourths(0, 1));
        assert_eq!(at.y, Length::feet(12) - Length::millimetres(1));
        assert_eq!(model.slabs[0].fill[0].x, (Length::ZERO, Length::feet(16)));
    }

    #[test]
    fn a_mistake_in_the_grid_is_told_once() {
        let column = "column C1\n  at  A/1\ncolumn C2\n  at  A/1\n";
        let of_places = |text: &str| {
            let told = all_told(text).into_iter().map(|(_, kind)| kind);
            told.filter(|kind| matches!(kind, UnknownGridLine(_))).count()
        };
        assert_eq!(of_places(&format!("project\n{column}")), 1);
        assert_eq!(of_places(&format!("project\ngrid\n  x  A 0', B\n  y  1 0'\n{column}")), 0);
        let mut told = all_told("project\ngrid\n  x  A 0', B 0'\n  y  1 0', A 1'\n");
        told.retain(|(_, kind)| !matches!(kind, FactMissing(_)));
        assert_eq!(
            told,
            [("B".to_owned(), GridNotAscending), ("A".to_owned(), GridLineReused(span(18, 19)))]
        );
    }

    #[test]
    fn a_kind_asks_for_its_own_facts() {
        let wall = "  from A/1 to B/1\n  line centre\n  stands on F1\nfooting F1\n  size 16\" x 8\"\n  top 1'\n  under W1\n";
        let of_kind = |kind: &str| {
            missing(&format!("{GRID}  north along y\nwall W1\n  kind {kind}\n{wall}"))[2..].to_vec()
        };
        assert_eq!(of_kind("concrete"), ["thick", "top"]);
        assert_eq!(of_kind("framed"), ["studs", "bearing", "weight"]);
        assert_eq!(of_kind("pony"), ["studs", "weight"]);
        assert_eq!(missing("floor main\n"), ["deck", "live", "dead"]);
        assert_eq!(missing("floor main\n  on SL1\n"), Vec::<&str>::new());
        assert_eq!(missing("floor main\n  deck 3/4\n  live 40 psf\n  dead 12 psf\n"), Vec::<&str>::new());
        assert_eq!(missing("window WN1\n"), ["at", "size"]);
        assert_eq!(missing("window WN1\n  att B/1\n"), Vec::<&str>::new());
        assert_eq!(missing("footing F1\n  kind pad\n"), ["size", "top", "at"]);
        assert_eq!(missing("product P1\n  kind I-joist 12\"\n"), ["values", "source", "width"]);
        assert_eq!(missing("beam B1\n"), ["size", "from", "set"]);
    }

    #[test]
    fn a_size_is_in_a_table_or_declared() {
        let (at, kind) = one("joists J1\n  size  2x11\n");
        assert!(at == "2x11" && matches!(&kind, UnknownSize(nearest) if &*nearest[0] == "2x10"));
        let (at, kind) = one("beam B1\n  size  3-ply LV41\nproduct LV14\n");
        assert!(at == "3-ply LV41" && matches!(&kind, UnknownSize(nearest) if &*nearest[0] == "LV14"));
        let (at, kind) = one("footing F1\n  under W1\n  size  2' x 2' x 10\"\nwall W1\n");
        assert_eq!((at.as_str(), kind), ("2' x 2' x 10\"", SizeOfOtherKind("width x thickness")));
    }

    #[test]
    fn a_declared_product_gives_its_section() {
        let text = format!(
            "{GRID}beam B1\n  size  3-ply LV14\nproduct LV14\n  kind  composite lumber 1-3/4 x 14\n  weight  6.7 plf\n"
        );
        let model = Model::of(&[parse_fresh(&text)]);
        let size = model.beams[0].size.value().unwrap();
        let section = size.section.unwrap();
        assert_eq!(
            (&*size.text, section.width(), section.depth),
            ("3-ply LV14", Length::sixteenths(5, 4), Length::inches(14))
        );
        assert!((section.weight().to_plf() - 20.1).abs() < 1e-9);
        let at = u32::try_from(text.find("LV14").unwrap()).unwrap();
        assert!(
            model.mentions.iter().any(|mention| mention.span == span(at, at + 4) && !mention.is_declaration)
        );
    }

    #[test]
    fn a_number_that_must_be_something_is() {
        for (elements, phrase) in [
            ("floor main\n  deck  0\"\n", "deck"),
            ("joists J1\n  spacing  -16\" from A\n", "spacing"),
            ("stair S1\n  risers  0\n", "risers"),
            ("floor main\n  steps down  from den by 0 risers\nfloor den\n", "steps down"),
            ("pocket PK1\n  plate  7\" x 0\" x 1\"\n", "plate"),
            ("wall W1\n  sill  0 of 2x6\n", "sill"),
            ("beam B1\n  size  0\" x 16\"\n", "size"),
            ("footing F1\n  soil  0 psf\n", "soil"),
        ] {
            assert_eq!(one(elements).1, NotPositive(phrase), "{elements}");
        }
        assert_eq!(one("pocket PK1\n  grout  -1\"\n").1, Negative("grout"));
        assert_eq!(told("pocket PK1\n  grout  0\"\n"), []);
        assert_eq!(one("floor main\n  live  40 plf\n").1, LoadOfOtherKind("psf"));
    }

    #[test]
    fn one_fact_decides() {
        let text = format!("{GRID}floor main\n  subfloor  100'\n  finish at  100'-1\"\n");
        let at = u32::try_from(text.find("subfloor").unwrap()).unwrap();
        let told: Vec<_> = told(&text[GRID.len()..]);
        assert_eq!(told, [("finish at  100'-1\"".to_owned(), DecidedTwice("subfloor", span(at, at + 14)))]);
    }

    #[test]
    fn limits_come_from_a_known_profile() {
        let told = |line: &str| {
            let mut told = all_told(&format!("project\n  {line}\n"));
            told.retain(|(_, kind)| !matches!(kind, FactMissing(_)));
            told
        };
        assert_eq!(
            told("profile  irc-202l"),
            [("irc-202l".to_owned(), UnknownWord("profile", name("irc-2021")))]
        );
        let misspelt = ("riser-differenc".to_owned(), UnknownWord("limit", name("riser-difference")));
        assert_eq!(told("limit  riser-differenc 3/8\""), [misspelt]);
        assert_eq!(
            told("limit  riser-difference 3 psf"),
            [("3 psf".to_owned(), LimitOfOtherKind("a length"))]
        );
        assert_eq!(told("limit  deflection-live 480"), []);
    }

    #[test]
    fn what_is_not_said_is_assumed_or_missing_or_broken() {
        let text = "project\n  status  poured 2027-04-02\nfloor main\n  live  40\nwall W1\n  kind  framed\n  studs  2x6 SPF at 16\"\n";
        let model = Model::of(&[parse_fresh(text)]);
        let floor = &model.floors[0];
        assert!(floor.live.is_broken() && floor.dead.is_missing());
        assert_eq!(floor.use_.value().map(|use_| &**use_), Some("living"));
        assert!(matches!(&floor.common.status, Field::Assumed(status, _) if status.stage == Stage::Poured));
        assert_eq!(model.walls[0].thick.get(), Some(Length::sixteenths(5, 8)));
        assert!(model.walls[0].plates.value().is_some_and(|plates| plates.count == 2));
        assert!(
            model.project.is_some_and(|project| project.soil.value().is_some_and(|soil| soil.is_assumed))
        );
    }

    #[test]
    fn mentions_lie_in_the_order_of_the_text() {
        let text = "project\n  datum  main subfloor 100'\nfloor main\n";
        let model = Model::of(&[parse_fresh(text)]);
        let places: Vec<_> = model.mentions.iter().map(|it| (it.span.start, it.is_declaration)).collect();
        assert_eq!(places, [(17, false), (42, true)]);
    }

    /// A hundred thousand elements of one name, each using a name that nothing has.
    #[test]
    fn a_huge_mistake_takes_no_minute() {
        let text = "project\n".to_owned() + &"beam B1\n  bears on  B2\n".repeat(100_000);
        let tree = parse_fresh(&text);
        let begin = Instant::now();
        let model = Model::of(&[tree]);
        assert!(begin.elapsed() < Duration::from_secs(20), "{:?}", begin.elapsed());
        let reused = model.problems.iter().filter(|problem| matches!(problem.kind, NameReused(..)));
        assert_eq!(reused.count(), 99_999);
    }
}
