//! The way of the load, one step at a time: what hands load to an element, and what takes it on, down to the soil.

use crate::house::House;
use crate::ide::figures::{Doubts, force_in_words};
use crate::ide::implementation::supports;
use crate::ide::meaning::{Meaning, facts_of, mentions_in, named_at};
use crate::model::element::{Common, ElementId};
use crate::report::STRENGTH_CAUTION;
use crate::statics::action::{Action, Lost, Receiver, Source};
use crate::statics::cases::ByCase;
use crate::statics::contributors::{self, Contributor};
use crate::syntax::vocabulary::ElementKind;
use crate::text::{FileId, Span};
use crate::units::Force;
use crate::verify::limit_state::LimitState;

/// A stop on the way of the load: an element, a load of the spec, the soil.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LoadStop {
    /// The element from which the way goes on; `None` where it begins or ends.
    pub element: Option<ElementId>,
    /// What it is: `beam B1`.
    pub label: String,
    /// How much load that is: `13,136 lb by D + L (D 3,359, L 9,777)`.
    pub detail: String,
    /// What the cursor is put on.
    pub name: Span,
    /// All that belongs to it. Invariant: holds `name`.
    pub whole: Span,
}

/// A step on the way of the load.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LoadStep {
    /// The other end of the step.
    pub stop: LoadStop,
    /// Where the upper end of the step says that it goes this way. Invariant: not empty.
    pub said: Vec<Span>,
}

/// The element named at a place, when load comes down on it or goes through it.
pub fn load_stop_at(house: &House, file: FileId, offset: u32) -> Option<LoadStop> {
    match named_at(house, file, offset)?.meaning {
        Meaning::Element(id) => load_stop_of(house, id),
        Meaning::GridLine(..) | Meaning::Rule(_) | Meaning::Include(_) => None,
    }
}

/// An element with all that it carries; `None` for what has no part in carrying.
pub fn load_stop_of(house: &House, element: ElementId) -> Option<LoadStop> {
    let common = house.model.common(element)?;
    let load = house.forces.load_on(element);
    let detail = match Doubts::of(house).about(element) {
        Some(why) => not_known(why),
        None if load == ByCase::default() => common.title.as_deref().unwrap_or_default().to_owned(),
        None => format!("carries {}", force_in_words(&load)),
    };
    (carries(element.kind) || !house.forces.on(element).is_empty())
        .then(|| LoadStop { detail, ..stop_of(common) })
}

/// What hands load to an element, the most first: the members that it carries, and the loads of the spec on it.
pub fn taken_up(house: &House, element: ElementId) -> Vec<LoadStep> {
    let Some(common) = house.model.common(element) else { return Vec::new() };
    let mut loads = Shares::default();
    let mut elements = Shares::default();
    for part in contributors::directly_on(&house.forces, element) {
        match part.from {
            Contributor::Element(from) | Contributor::Load(from) => elements.add(from, part.force),
            Contributor::AreaOf(from, _) if from != element => elements.add(from, part.force),
            from @ (Contributor::AreaOf(..) | Contributor::Weight(_) | Contributor::Declared(..)) => {
                loads.add(from, part.force);
            }
        }
    }
    for above in house.geometry.load_path.carried_by(element) {
        elements.add(*above, ByCase::default());
    }
    let doubts = Doubts::of(house);
    let of_elements = elements.heaviest_first().into_iter().filter_map(|(from, force)| {
        let detail = how_much(&force, doubts.about(from));
        let stop = LoadStop { detail, ..stop_of(house.model.common(from)?) };
        Some(LoadStep { said: places_that_say(house, from, element), stop })
    });
    let of_loads = loads.heaviest_first().into_iter().map(|(from, force)| {
        let (label, said) = match from {
            Contributor::Declared(_, line) => (house.text_at(line).to_owned(), vec![line]),
            Contributor::Weight(_) => (format!("weight of {}", common.label()), vec![common.name_span]),
            Contributor::AreaOf(..) | Contributor::Load(_) | Contributor::Element(_) => {
                (format!("load of {}", common.label()), stated_loads(house, element))
            }
        };
        let name = said.first().copied().unwrap_or(common.name_span);
        let said = if said.is_empty() { vec![name] } else { said };
        let stop = LoadStop { element: None, label, detail: force_in_words(&force), name, whole: name };
        LoadStep { said, stop }
    });
    of_elements.chain(of_loads).collect()
}

/// What takes on the load of an element, the most first: its supports, at last the soil.
pub fn handed_on(house: &House, element: ElementId) -> Vec<LoadStep> {
    let Some(common) = house.model.common(element) else { return Vec::new() };
    let mut ends: Vec<Receiver> = Vec::new();
    let mut elements = Shares::default();
    for handed in house.forces.handed_by(element) {
        match handed.to {
            Receiver::Element(on) => elements.add(on, handed.acting.total()),
            end if ends.contains(&end) => {}
            end => ends.push(end),
        }
    }
    for (on, force) in put_on(house, element) {
        elements.add(on, force);
    }
    for below in house.geometry.load_path.carriers_of(element) {
        elements.add(*below, ByCase::default());
    }
    let doubts = Doubts::of(house);
    let doubt = doubts.about(element);
    let of_elements = elements.heaviest_first().into_iter().filter_map(|(on, force)| {
        let detail = how_much(&force, doubt);
        let stop = LoadStop { detail, ..stop_of(house.model.common(on)?) };
        Some(LoadStep { said: places_that_say(house, element, on), stop })
    });
    let of_ends = ends.into_iter().map(|end| {
        let brought = how_much(&house.forces.reaction(element, end), doubt);
        end_of(house, common, end, brought, doubt.is_some())
    });
    of_elements.chain(of_ends).collect()
}

/// The step from an element to where its load ends.
fn end_of(house: &House, common: &Common, end: Receiver, brought: String, is_doubtful: bool) -> LoadStep {
    let lines = support_facts(house, common.id);
    let stop = |label: &str, detail: String, name: Span, whole: Span| LoadStop {
        element: None,
        label: label.to_owned(),
        detail,
        name,
        whole,
    };
    match end {
        Receiver::Soil => {
            let line = soil_line(house, common.id).unwrap_or(common.name_span);
            let pressure = if is_doubtful { None } else { pressure(house, common.id) };
            let detail = [Some(brought), pressure].into_iter().flatten().collect::<Vec<_>>().join("; ");
            LoadStep { stop: stop("soil", detail, line, line), said: vec![common.name_span] }
        }
        Receiver::Outside => {
            let outside = lines.into_iter().find(|line| mentions_in(house, *line).is_empty());
            let line = outside.unwrap_or(common.name_span);
            LoadStep { stop: stop("outside the spec", brought, line, line), said: vec![line] }
        }
        Receiver::Nothing(why) => {
            let detail = match why {
                Lost::Unreadable => not_known(why.words()),
                _ => format!("{brought}: {}", why.words()),
            };
            let name = common.name_span;
            LoadStep { stop: stop("nothing", detail, name, common.span), said: vec![name] }
        }
        // Elements are steps of their own.
        Receiver::Element(_) => LoadStep { stop: stop_of(common), said: vec![common.name_span] },
    }
}

/// Amounts by where they are from or go to.
struct Shares<T>(Vec<(T, ByCase<Force>)>);

impl<T> Default for Shares<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<T: PartialEq> Shares<T> {
    fn add(&mut self, key: T, force: ByCase<Force>) {
        match self.0.iter_mut().find(|(known, _)| *known == key) {
            Some((_, sum)) => *sum += force,
            None => self.0.push((key, force)),
        }
    }

    fn heaviest_first(mut self) -> Vec<(T, ByCase<Force>)> {
        self.0.sort_by(|(_, one), (_, other)| other.total().to_lb().total_cmp(&one.total().to_lb()));
        self.0
    }
}

fn stop_of(common: &Common) -> LoadStop {
    LoadStop {
        element: Some(common.id),
        label: common.label(),
        detail: String::new(),
        name: common.name_span,
        whole: common.span,
    }
}

fn how_much(force: &ByCase<Force>, doubt: Option<&str>) -> String {
    match doubt {
        Some(why) => not_known(why),
        None if *force == ByCase::default() => "no load".to_owned(),
        None => force_in_words(force),
    }
}

fn not_known(why: &str) -> String {
    format!("how much is not known: {why}")
}

/// Where a floor, a part of one or a load of its own puts what it states.
fn put_on(house: &House, element: ElementId) -> Vec<(ElementId, ByCase<Force>)> {
    let model = &house.model;
    let targets: Vec<ElementId> = match element.kind {
        ElementKind::Floor | ElementKind::Area => {
            let area = model.areas.get(element.index as usize).filter(|_| element.kind == ElementKind::Area);
            let floor = match area {
                Some(area) => area.floor.value().and_then(|floor| floor.target),
                None => Some(element),
            };
            let of_floor = model
                .joists
                .iter()
                .filter(|joists| joists.floor.value().and_then(|of| of.target) == floor && floor.is_some());
            of_floor.map(|joists| joists.common.id).collect()
        }
        ElementKind::Load => named_supports(house, element),
        _ => Vec::new(),
    };
    let is_from = |action: &&Action| matches!(action.source, Source::AreaOf(from) | Source::Load(from) if from == element);
    let put = targets.into_iter().map(|on| {
        let from_here = house.forces.on(on).iter().filter(is_from);
        (on, from_here.fold(ByCase::default(), |sum, action| sum + action.acting.total()))
    });
    put.filter(|(_, force)| *force != ByCase::default()).collect()
}

fn named_supports(house: &House, element: ElementId) -> Vec<ElementId> {
    let lines = support_facts(house, element).into_iter();
    lines.flat_map(|line| mentions_in(house, line)).map(|mention| mention.target).collect()
}

/// The lines of an element that say what carries it.
fn support_facts(house: &House, element: ElementId) -> Vec<Span> {
    let facts = facts_of(house, element);
    facts.filter(|(fact, _)| supports(element.kind).contains(&fact.spec.phrase)).map(|it| it.1).collect()
}

/// Where an element says that its load goes to another: the name in its line of support; of a floor or a part of one the
/// loads that it states; else its own name.
fn places_that_say(house: &House, above: ElementId, below: ElementId) -> Vec<Span> {
    let lines = support_facts(house, above).into_iter();
    let named = lines.flat_map(|line| mentions_in(house, line)).filter(|mention| mention.target == below);
    let mut places: Vec<Span> = named.map(|mention| mention.span).collect();
    if places.is_empty() && matches!(above.kind, ElementKind::Floor | ElementKind::Area) {
        places = stated_loads(house, above);
    }
    if places.is_empty() {
        places.extend(house.model.common(above).map(|common| common.name_span));
    }
    places
}

/// Where a floor, a part of one or a roof says what lies on each foot square of it.
fn stated_loads(house: &House, element: ElementId) -> Vec<Span> {
    let facts = facts_of(house, element);
    let loads = facts.filter(|(fact, _)| matches!(fact.spec.phrase, "live" | "dead" | "snow" | "use"));
    loads.map(|(_, place)| place).collect()
}

/// What is said of the soil: by the footing itself, else by the project.
fn soil_line(house: &House, element: ElementId) -> Option<Span> {
    let own = house.model.footing(element).and_then(|footing| footing.soil.span());
    own.or_else(|| house.model.project.as_ref()?.soil.span())
}

/// The most that a footing presses on the soil, with what that is allowed to be.
fn pressure(house: &House, element: ElementId) -> Option<String> {
    let checks = house.verifications.of(element);
    let checks = checks.filter(|verification| verification.limit_state == LimitState::SoilPressure);
    let ran = checks.filter_map(|verification| verification.outcome.as_ref().ok());
    let worst = ran.max_by(|one, other| one.ratio().total_cmp(&other.ratio()))?;
    Some(format!("{} of {} allowed; {STRENGTH_CAUTION}", worst.demand, worst.capacity))
}

/// True for the kinds of elements that load goes through, or comes from.
const fn carries(kind: ElementKind) -> bool {
    match kind {
        ElementKind::Floor
        | ElementKind::Area
        | ElementKind::Joists
        | ElementKind::Wall
        | ElementKind::Shelf
        | ElementKind::Pocket
        | ElementKind::Ledger
        | ElementKind::Beam
        | ElementKind::Column
        | ElementKind::Footing
        | ElementKind::Slab
        | ElementKind::Header
        | ElementKind::Jacks
        | ElementKind::Roof
        | ElementKind::Load => true,
        ElementKind::Project
        | ElementKind::Grid
        | ElementKind::Product
        | ElementKind::Opening
        | ElementKind::Stair
        | ElementKind::Landing
        | ElementKind::Stoop
        | ElementKind::Door
        | ElementKind::Window
        | ElementKind::Squash
        | ElementKind::Drain
        | ElementKind::Hole
        | ElementKind::Notch
        | ElementKind::Duct
        | ElementKind::Intent
        | ElementKind::Sheet
        | ElementKind::HoldPoint => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::{at_cursor, snapshot_of, text_around};

    const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");

    fn named(house: &House, name: &str) -> ElementId {
        house.model.named(name).unwrap()
    }

    /// Each step with the places that say it: `beam B1: 13,136 lb … [bears on [C1] for 10"]`.
    fn told(house: &House, steps: &[LoadStep]) -> Vec<String> {
        let tell = |step: &LoadStep| {
            let said: Vec<String> = step.said.iter().map(|place| text_around(house, *place)).collect();
            format!("{}: {} / {}", step.stop.label, step.stop.detail, said.join(" / "))
        };
        steps.iter().map(tell).collect()
    }

    /// Loads in plain feet, so that every number can be followed: 10 ft by 12 ft of 40 psf and 10 psf is 4,800 lb and
    /// 1,200 lb, half of it to each side.
    const PORCH: &str = "project\n  profile  irc-2021\n  datum  main subfloor 10'\n  soil  2000 psf gross\ngrid\n  x  A 0', B 12'\n  y  1 0', 2 10'\nfloor main\n  subfloor  10'\n  deck  3/4\"\n  live  40 psf\n  dead  10 psf\njoists J1\n  floor  main\n  size  2x10 SPF No.2\n  fill  A to B by 1 to 2\n  run  along y\n  spacing  16\" from A\n  bears on  W1 for 3\"\n  bears on  W2 for 3\"\nwall W1\n  kind  concrete\n  from  A/1 to B/1\n  line  centre\n  thick  8\"\n  top  9'-2\"\n  grade  none\n  stands on  F1\nwall W2\n  kind  concrete\n  from  A/2 to B/2\n  line  centre\n  thick  8\"\n  top  9'-2\"\n  grade  none\n  stands on  F1\nfooting F1\n  kind  strip\n  under  W1, W2\n  size  16\" x 8\"\n  top  2'\ncolumn C1\n  at  A/1\n  size  6x6 SPF No.2\n  cap  none\n  base  bare\n  length  8'\n  load  500 lb live \"tub\"\n  stands on  outside \"rock\"\n";

    /// By hand: 740 plf of girder over two lengths of 17'-9" bring half of each to C1, 13,136 lb. The column adds 8.03 ft of
    /// 9.42 plf, 76 lb, and the pad 1,323 lb: 14,535 lb on 7.56 sq ft of soil are 1,922 psf.
    #[test]
    fn the_way_from_the_girder_to_the_soil() {
        let snapshot = snapshot_of(LOON_COVE);
        let house = &snapshot.house;
        let load = "13,136 lb by D + L (D 3,359, L 9,777)";
        let column = named(house, "C1");
        assert_eq!(load_stop_of(house, column).unwrap().detail, format!("carries {load}"));
        let above = taken_up(house, column);
        assert_eq!(told(house, &above[..1]), [format!("beam B1: {load} / bears on      [C1] for 10\"")]);
        let below = handed_on(house, column);
        assert_eq!(below.len(), 1);
        let stop = &below[0].stop;
        assert_eq!((&*stop.label, &*stop.detail), ("footing F1", "13,212 lb by D + L (D 3,435, L 9,777)"));
        assert_eq!(text_around(house, below[0].said[0]), "stands on     [F1]");
        let ends = handed_on(house, named(house, "F1"));
        assert_eq!(ends.len(), 1);
        let soil = &ends[0].stop;
        assert_eq!((soil.label.as_str(), soil.element), ("soil", None));
        assert!(soil.detail.contains("1,922 psf of 2,000 psf allowed; strength: have it"), "{}", soil.detail);
        assert_eq!(
            text_around(house, soil.name),
            "soil          [2000 psf] source \"soils report, invented for this sample\""
        );
    }

    /// By hand: the girder has half of the 27'-6 1/2" between the walls, 495.75 sq ft on 36 ft, of 12 and 40 psf. At its ends
    /// half of 740 plf over 17'-9" is 6,568 lb; the 3" of floor beyond each end of the girder are 179 lb more.
    #[test]
    fn every_support_has_its_reaction() {
        let snapshot = snapshot_of(LOON_COVE);
        let house = &snapshot.house;
        let above = taken_up(house, named(house, "B1"));
        assert_eq!(above[0].stop.label, "joists J1");
        assert_eq!(above[0].stop.detail, "25,779 lb by D + L (D 5,949, L 19,830)");
        assert!(text_around(house, above[0].said[0]).starts_with("hangs from    [B1] by hanger 1100 lb"));
        let below = told(house, &handed_on(house, named(house, "B1")));
        assert_eq!(
            below,
            [
                "column C1: 13,136 lb by D + L (D 3,359, L 9,777) / bears on      [C1] for 10\"",
                "pocket PK1: 6,747 lb by D + L (D 1,721, L 5,026) / bears on      [PK1] for 7\"",
                "pocket PK2: 6,747 lb by D + L (D 1,721, L 5,026) / bears on      [PK2] for 7\"",
            ]
        );
    }

    #[test]
    fn loads_of_the_spec_are_where_the_way_begins() {
        let snapshot = snapshot_of(PORCH);
        let house = &snapshot.house;
        let above = taken_up(house, named(house, "J1"));
        assert_eq!(
            told(house, &above),
            ["floor main: 6,000 lb by D + L (D 1,200, L 4,800) / [live  40 psf] / [dead  10 psf]"]
        );
        let from_floor = handed_on(house, named(house, "main"));
        assert_eq!(
            told(house, &from_floor),
            ["joists J1: 6,000 lb by D + L (D 1,200, L 4,800) / [live  40 psf] / [dead  10 psf]"]
        );
        assert_eq!(taken_up(house, named(house, "main")), []);
    }

    /// By hand: 36 ft by 32 ft of 15 and 42 psf.
    #[test]
    fn the_load_of_a_roof_is_its_own() {
        let snapshot = snapshot_of(LOON_COVE);
        let house = &snapshot.house;
        let load = "65,664 lb by D + S (D 17,280, S 48,384)";
        let above = told(house, &taken_up(house, named(house, "R1")));
        assert_eq!(above, [format!("load of roof R1: {load} / [dead          15 psf]")]);
    }

    #[test]
    fn what_stands_outside_of_the_spec_is_an_end() {
        let snapshot = snapshot_of(PORCH);
        let house = &snapshot.house;
        let below = told(house, &handed_on(house, named(house, "J1")));
        assert_eq!(
            below,
            [
                "wall W1: 3,000 lb by D + L (D 600, L 2,400) / bears on  [W1] for 3\"",
                "wall W2: 3,000 lb by D + L (D 600, L 2,400) / bears on  [W2] for 3\"",
            ]
        );
        let below = told(house, &handed_on(house, named(house, "C1")));
        assert_eq!(below, ["outside the spec: 500 lb by D + L (L 500) / [stands on  outside \"rock\"]"]);
    }

    #[test]
    fn a_load_in_the_text_of_an_element_is_one_of_its_own() {
        let snapshot = snapshot_of(PORCH);
        let house = &snapshot.house;
        let above = taken_up(house, named(house, "C1"));
        let tub = "load  500 lb live \"tub\": 500 lb by D + L (L 500) / [load  500 lb live \"tub\"]";
        assert_eq!(told(house, &above), [tub]);
        assert_eq!(above[0].stop.element, None);
    }

    #[test]
    fn without_loads_the_way_is_the_same_and_has_no_number() {
        let spec =
            "project\nbeam B1\n  size  what?\n  bears on  C1\ncolumn C1\n  stands on  F1\nfooting F1\n";
        let snapshot = snapshot_of(spec);
        let house = &snapshot.house;
        let above = told(house, &taken_up(house, named(house, "C1")));
        assert_eq!(
            above,
            ["beam B1: how much is not known: `size` of beam B1 can't be read / bears on  [C1]"]
        );
        let below = told(house, &handed_on(house, named(house, "B1")));
        assert_eq!(
            below,
            ["column C1: how much is not known: `size` of beam B1 can't be read / bears on  [C1]"]
        );
    }

    #[test]
    fn a_circle_goes_on_step_by_step() {
        let snapshot = snapshot_of("project\nbeam B1\n  bears on  B2\nbeam B2\n  bears on  B1\n");
        let house = &snapshot.house;
        for (one, other) in [("B1", "beam B2"), ("B2", "beam B1")] {
            let next = handed_on(house, named(house, one));
            assert_eq!(next[0].stop.label, other);
            assert_eq!(taken_up(house, named(house, one))[0].stop.label, other);
        }
    }

    #[test]
    fn it_begins_at_a_name_and_only_at_what_carries() {
        for (spec, expected) in [
            ("project\ncolumn C1\n  stands on  F$01\nfooting F1\n", Some("footing F1")),
            ("project\ncol$0umn C1\n", Some("column C1")),
            ("project\nproduct P$01\n", None),
            ("project\nintent \"no c$0olumn\"\n", None),
            ("project\ngrid\n  x  A$0 0', B 1'\n", None),
        ] {
            let (snapshot, file, offset) = at_cursor(spec);
            let stop = load_stop_at(&snapshot.house, file, offset);
            assert_eq!(stop.map(|stop| stop.label).as_deref(), expected, "{spec}");
        }
    }

    /// What goes down on one element is what comes from the other, for every element of every sample; every place lies
    /// in the text of the element that says it.
    #[test]
    fn both_directions_tell_of_the_same_steps() {
        for sample in [
            include_str!("../../grammar/samples/first.framing"),
            include_str!("../../grammar/samples/alley-house.framing"),
            include_str!("../../grammar/samples/hill-studio.framing"),
            include_str!("../../grammar/samples/hop-barn.framing"),
            LOON_COVE,
        ] {
            let snapshot = snapshot_of(sample);
            let house = &snapshot.house;
            for common in house.model.commons() {
                let holds = |whole: Span, place: &Span| {
                    whole.file == place.file && whole.start <= place.start && place.end <= whole.end
                };
                for step in handed_on(house, common.id) {
                    assert!(!step.said.is_empty() && step.said.iter().all(|place| holds(common.span, place)));
                    assert!(holds(step.stop.whole, &step.stop.name), "{step:?}");
                    let Some(below) = step.stop.element else { continue };
                    let back = taken_up(house, below);
                    let same = back.iter().find(|step| step.stop.element == Some(common.id));
                    assert_eq!(same.map(|same| &same.stop.detail), Some(&step.stop.detail), "{step:?}");
                }
                for step in taken_up(house, common.id) {
                    let whole = step.stop.element.map_or(common.span, |_| step.stop.whole);
                    assert!(!step.said.is_empty() && step.said.iter().all(|place| holds(whole, place)));
                }
            }
        }
    }
}
