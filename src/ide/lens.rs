//! The governing figures above the elements of a file, in a few words each.
//!
//! A lens has no room for a caution: the hover of the same line carries it, beside the same figures.

use crate::facts::answers::answer;
use crate::facts::{Answer, FactValue};
use crate::house::House;
use crate::ide::figures::{Doubts, checks_of, percent};
use crate::model::element::{Common, ElementId};
use crate::model::stairs::{Foot, Stair};
use crate::snapshot::Snapshot;
use crate::statics::carried_load::by_place;
use crate::statics::cases::ByCase;
use crate::syntax::vocabulary::ElementKind;
use crate::text::{FileId, Span};
use crate::units::Force;
use crate::verify::bearings::heaviest;
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;

/// Figures above one element.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Lens {
    /// The element's name, in its heading.
    pub span: Span,
    /// The element.
    pub element: ElementId,
    /// The figures.
    pub text: String,
    /// What opens behind them.
    pub action: LensAction,
}

/// What opens behind a lens. Elements are named as a person names them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LensAction {
    /// Why an element carries what it does.
    Takedown(Box<str>),
    /// An element's calculation sheet.
    Calculation(Box<str>),
    /// The step between two floors, divided.
    Steps {
        /// The floor it goes up to.
        upper: Box<str>,
        /// The floor it starts from.
        lower: Box<str>,
    },
    /// The rod list: every surface of the house.
    Rod,
}

/// The lenses of a file, in the order of the text.
pub fn lenses(snapshot: &Snapshot, file: FileId) -> Vec<Lens> {
    let house = &snapshot.house;
    let doubts = Doubts::of(house);
    let mut lenses: Vec<Lens> = house
        .model
        .commons()
        .filter(|common| common.name_span.file == file)
        .filter_map(|common| lens(house, &doubts, common))
        .collect();
    lenses.sort_by_key(|lens| lens.span);
    lenses
}

fn lens(house: &House, doubts: &Doubts, common: &Common) -> Option<Lens> {
    let id = common.id;
    let name = || common.name.clone();
    let made = |text, action| Lens { span: common.name_span, element: id, text, action };
    let (figures, action) = match id.kind {
        ElementKind::Column => (carried(house, id), LensAction::Takedown(name())),
        ElementKind::Footing => (footing(house, id), LensAction::Takedown(name())),
        ElementKind::Wall => (wall(house, id), LensAction::Takedown(name())),
        ElementKind::Beam | ElementKind::Joists => (spanning(house, id), LensAction::Calculation(name())),
        ElementKind::Header => (header(house, id), LensAction::Calculation(name())),
        ElementKind::Stair => return Some(made(stair(house, id)?, steps_of(house.model.stair(id)?))),
        ElementKind::Floor => return Some(made(floor(house, id)?, LensAction::Rod)),
        _ => return None,
    };
    let text = match doubts.about(id) {
        Some(why) => format!("not known yet: {why}"),
        None => figures?,
    };
    Some(made(text, action))
}

/// The step that a stair climbs; of one from the ground the heights of everything.
fn steps_of(stair: &Stair) -> LensAction {
    match (stair.from.value(), stair.to.value()) {
        (Some(Foot::Floor(lower)), Some(upper)) => {
            LensAction::Steps { upper: upper.name.clone(), lower: lower.name.clone() }
        }
        (Some(Foot::Floor(_) | Foot::Grade) | None, _) => LensAction::Rod,
    }
}

fn carried(house: &House, id: ElementId) -> Option<String> {
    let load = load_of(&house.forces.load_on(id));
    joined([load.map(|load| format!("carries {load}")), fullest(house, id)])
}

fn footing(house: &House, id: ElementId) -> Option<String> {
    let pads = by_place(&house.model, &house.forces, id);
    let load = match pads.as_slice() {
        [] | [_] => load_of(&house.forces.load_on(id)).map(|load| format!("carries {load}")),
        several => {
            let most = several.iter().filter_map(|pad| heaviest(&pad.total()));
            let most = most
                .map(|pressing| pressing.force)
                .max_by(|one, other| one.to_lb().total_cmp(&other.to_lb()));
            most.map(|most| format!("{} places, at the most {} each", several.len(), Quantity::from(most)))
        }
    };
    joined([load, fullest(house, id)])
}

fn wall(house: &House, id: ElementId) -> Option<String> {
    let Ok(Answer { value: FactValue::Force { whole, each_foot: Some(line) }, .. }) =
        answer(house, "load", &[id])
    else {
        return None;
    };
    if whole == Force::ZERO {
        return fullest(house, id);
    }
    let along = format!("carries {}, {} at the most", Quantity::from(whole), Quantity::from(line));
    joined([Some(along), fullest(house, id)])
}

fn spanning(house: &House, id: ElementId) -> Option<String> {
    let span = answer(house, "span", &[id]).ok().map(|span| format!("spans {}", span.value));
    joined([span, fullest(house, id)])
}

fn header(house: &House, id: ElementId) -> Option<String> {
    let span = house.forces.headers.iter().find(|span| span.header == id);
    let span = span.map(|span| format!("spans {}", span.between.1 - span.between.0));
    joined([span, fullest(house, id)])
}

fn stair(house: &House, id: ElementId) -> Option<String> {
    let flight = house.geometry.flights.get(id.index as usize)?;
    let risers = flight.risers.ok()?;
    let headroom = flight.headroom.ok().map(|headroom| format!("headroom {headroom}"));
    joined([Some(format!("{} risers of {}", risers.count, risers.between)), headroom])
}

fn floor(house: &House, id: ElementId) -> Option<String> {
    let value = |fact: &str| Some(answer(house, fact, &[id]).ok()?.value);
    let finish = value("finish").map(|finish| format!("finish {finish}"));
    let joists = value("joist bottom").zip(value("joist top"));
    let joists = joists.map(|(bottom, top)| format!("joists {bottom} to {top}"));
    joined([finish, joists])
}

fn joined<const N: usize>(parts: [Option<String>; N]) -> Option<String> {
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    (!parts.is_empty()).then(|| parts.join(" · "))
}

fn load_of(force: &ByCase<Force>) -> Option<String> {
    heaviest(force).map(|most| Quantity::from(most.force).to_string())
}

/// The fullest check in short: `soil 96 %`; that nothing could be verified, when nothing could.
fn fullest(house: &House, id: ElementId) -> Option<String> {
    let checks = checks_of(house, id);
    if let Some((verification, check)) = checks.first() {
        let over = if verification.fails() { ", over" } else { "" };
        return Some(format!("{} {}{over}", in_short(verification.limit_state), percent(check.ratio())));
    }
    let not_run = house.verifications.of(id).next()?;
    Some(format!("{} not verified", in_short(not_run.limit_state)))
}

/// What a lens calls a limit state.
const fn in_short(limit_state: LimitState) -> &'static str {
    match limit_state {
        LimitState::LiveDeflection => "live sag",
        LimitState::TotalDeflection => "total sag",
        LimitState::SupportReaction => "reaction",
        LimitState::WoodBearing => "crushing",
        LimitState::PlateBearing => "flat plate",
        LimitState::ConcreteBearing => "concrete",
        LimitState::Web => "web",
        LimitState::CapLength | LimitState::CapBending | LimitState::CapBalance => "cap",
        LimitState::BasePlate => "base plate",
        LimitState::SoilPressure => "soil",
        LimitState::FootingShear => "shear",
        LimitState::FootingBending => "bending",
        LimitState::FootingBars => "bars",
        LimitState::StripPointLoad => "point load",
        LimitState::WallBackfill => "earth",
        LimitState::Bending
        | LimitState::Shear
        | LimitState::Bounce
        | LimitState::Uplift
        | LimitState::Connector
        | LimitState::Compression
        | LimitState::Punching
        | LimitState::LateralSupport
        | LimitState::Cut => limit_state.words(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::cursor::snapshot_of;

    const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");
    const HOP_BARN: &str = include_str!("../../grammar/samples/hop-barn.framing");

    fn lens(text: &str, name: &str) -> (String, LensAction) {
        let snapshot = snapshot_of(text);
        let mut all = lenses(&snapshot, FileId(0)).into_iter();
        let lens = all.find(|lens| snapshot.house.text_at(lens.span) == name).unwrap();
        (lens.text, lens.action)
    }

    fn check(text: &str, name: &str, figures: &str, action: LensAction) {
        assert_eq!(lens(text, name), (figures.to_owned(), action));
    }

    /// The demo houses' own figures. 13,212 lb are 13,136 and the 76 lb of the column, 1,922 of 2,000 psf with them.
    #[test]
    fn the_governing_figures_stand_above_each_element() {
        let takedown = |name: &str| LensAction::Takedown(name.into());
        let calculation = |name: &str| LensAction::Calculation(name.into());
        let steps = |upper: &str, lower: &str| LensAction::Steps { upper: upper.into(), lower: lower.into() };
        check(LOON_COVE, "C1", "carries 13,136 lb · cap 82 %", takedown("C1"));
        check(LOON_COVE, "F1", "carries 13,212 lb · soil 96 %", takedown("F1"));
        check(LOON_COVE, "B1", "spans 17'-9\" · live sag 87 %", calculation("B1"));
        check(LOON_COVE, "J1", "spans 13'-9 1/4\" · bending 83 %", calculation("J1"));
        check(LOON_COVE, "S1", "14 risers of 7-7/16\"~ · headroom 6'-8 7/8\"~", steps("main", "basement"));
        check(LOON_COVE, "S2", "3 risers of 6-1/2\"", steps("main", "sunroom"));
        check(LOON_COVE, "main", "finish 100'-0 3/4\" · joists 99'-2\" to 99'-11 1/4\"", LensAction::Rod);
        check(HOP_BARN, "S2", "2 risers of 6-7/16\"", steps("library", "main"));
        assert!(lens(LOON_COVE, "H1").0.starts_with("spans 12'-4 1/2\" · "));
        assert!(lens(HOP_BARN, "P1").0.starts_with("carries 14,592 lb · "));
    }

    #[test]
    fn a_check_that_could_not_run_is_no_check_that_holds() {
        assert!(lens(LOON_COVE, "W1").0.ends_with("earth not verified"));
    }

    /// The demo house's own figure: on 2'-6" the soil bears 2,277 psf.
    #[test]
    fn what_is_over_its_limit_says_so() {
        let text = LOON_COVE.replace("2'-9\" x 2'-9\" x 14\"", "2'-6\" x 2'-6\" x 14\"");
        assert_eq!(lens(&text, "F1").0, "carries 13,212 lb · soil 114 %, over");
    }

    #[test]
    fn a_figure_that_rests_on_what_cant_be_read_is_not_known_yet() {
        let unread = LOON_COVE.replace("size          W8x24", "size          W8;24");
        for name in ["B1", "C1", "F1"] {
            assert_eq!(lens(&unread, name).0, "not known yet: `size` of beam B1 can't be read");
        }
        assert_eq!(lens(&unread, "J2").0, lens(LOON_COVE, "J2").0);
        let lost = LOON_COVE.replace("bears on      C1 for 10\"", "bears on      C9 for 10\"");
        assert!(lens(&lost, "F1").0.starts_with("not known yet: "));
        let snow = LOON_COVE.replace("42 psf on roof", "42 feet");
        assert_eq!(lens(&snow, "W1").0, "not known yet: `snow` of the project can't be read");
    }

    #[test]
    fn intents_and_sheets_have_none() {
        let snapshot = snapshot_of(LOON_COVE);
        let kinds: Vec<ElementKind> =
            lenses(&snapshot, FileId(0)).iter().map(|lens| lens.element.kind).collect();
        assert!(!kinds.contains(&ElementKind::Sheet) && !kinds.contains(&ElementKind::Project));
        assert!(lenses(&snapshot, FileId(1)).is_empty());
    }
}
