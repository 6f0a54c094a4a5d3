//! The takedown: from the roof to the soil, each element once, in the order in which load comes down.

use std::collections::{BTreeMap, BTreeSet, HashMap};

use crate::geometry::Geometry;
use crate::geometry::carried::carrying_element;
use crate::model::Model;
use crate::model::element::ElementId;
use crate::model::field::Field as Said;
use crate::model::plan::{Axis, PlanRect};
use crate::model::support::{Carrier, Stand, Support};
use crate::statics::action::{Acting, Action, Handed, Lost, Receiver, Source};
use crate::statics::applied::{self, LeftOut};
use crate::statics::balance::{self, Balance};
use crate::statics::continuous::Unstable;
use crate::statics::field::{self, Outcome};
use crate::statics::member_line::{MemberLine, REFERENCE};
use crate::statics::partial_load::PartialLoad;
use crate::statics::stiffness;
use crate::statics::wall::{self, HeaderSpan};
use crate::statics::{beam, joists, roof};
use crate::syntax::vocabulary::ElementKind;

/// Forces of a whole house.
#[derive(Clone, Debug, Default)]
pub struct Takedown {
    /// What acts on each element.
    pub on: HashMap<ElementId, Vec<Action>>,
    /// What each element hands on.
    pub handed: HashMap<ElementId, Vec<Handed>>,
    /// Each piece and strip of each member, solved.
    pub lines: HashMap<ElementId, Vec<MemberLine>>,
    /// The headers in their walls.
    pub headers: Vec<HeaderSpan>,
    /// How much more live load supports get when only some spans carry it.
    pub partial: PartialLoad,
    /// Members that can't stand, and why.
    pub unstable: Vec<(ElementId, Unstable)>,
    /// Loads that are stated and not followed down.
    pub left_out: Vec<LeftOut>,
    /// What went on, and where it ended.
    pub balance: Balance,
}

impl Takedown {
    /// What acts on an element.
    pub fn on(&self, element: ElementId) -> &[Action] {
        self.on.get(&element).map(Vec::as_slice).unwrap_or_default()
    }

    /// What an element hands on.
    pub fn handed_by(&self, element: ElementId) -> &[Handed] {
        self.handed.get(&element).map(Vec::as_slice).unwrap_or_default()
    }

    /// The pieces and strips of a member.
    pub fn lines_of(&self, element: ElementId) -> &[MemberLine] {
        self.lines.get(&element).map(Vec::as_slice).unwrap_or_default()
    }
}

/// Takes all loads of a house down.
pub fn of(model: &Model, geometry: &Geometry) -> Takedown {
    let headers = wall::headers(model, geometry);
    let applied = applied::of(model, geometry, &headers);
    let mut takedown = Takedown { left_out: applied.left_out, headers, ..Takedown::default() };
    let applied_totals = balance::total_of(applied.on.values().flatten());
    takedown.on = applied.on;
    let order = order(model, &takedown);
    for element in order.down {
        let outcome = through(model, geometry, &takedown.headers, element, takedown.on(element));
        hand_on(&mut takedown, element, outcome);
        let mut partial = std::mem::take(&mut takedown.partial);
        partial.add(element, takedown.on(element), takedown.lines_of(element), takedown.handed_by(element));
        takedown.partial = partial;
    }
    for element in order.in_circles {
        let outcome = lost(takedown.on(element), Lost::Circle);
        hand_on(&mut takedown, element, outcome);
    }
    takedown.balance = balance::of(applied_totals, &takedown.handed);
    takedown
}

fn hand_on(takedown: &mut Takedown, element: ElementId, outcome: Outcome) {
    for handed in &outcome.handed {
        if let Receiver::Element(to) = handed.to {
            let action = Action { source: Source::From(element), acting: handed.acting };
            takedown.on.entry(to).or_default().push(action);
        }
    }
    takedown.unstable.extend(outcome.unstable.into_iter().map(|unstable| (element, unstable)));
    if !outcome.lines.is_empty() {
        takedown.lines.insert(element, outcome.lines);
    }
    if !outcome.handed.is_empty() {
        takedown.handed.insert(element, outcome.handed);
    }
}

fn lost(actions: &[Action], why: Lost) -> Outcome {
    all_to(Receiver::Nothing(why), actions)
}

fn all_to(to: Receiver, actions: &[Action]) -> Outcome {
    let handed = actions.iter().map(|action| Handed { to, acting: action.acting }).collect();
    Outcome { handed, ..Outcome::default() }
}

/// Follows what acts on one element through it. It is the same for all of the load and for any part of it, so that a
/// reaction can be taken apart.
pub fn through(
    model: &Model,
    geometry: &Geometry,
    headers: &[HeaderSpan],
    element: ElementId,
    actions: &[Action],
) -> Outcome {
    let actings = || actions.iter().map(|action| action.acting).collect::<Vec<Acting>>();
    let unreadable = || lost(actions, Lost::Unreadable);
    match element.kind {
        ElementKind::Floor | ElementKind::Area => across_floor(model, element, actions),
        ElementKind::Joists => {
            let Some(joists) = model.joists_of(element) else { return unreadable() };
            let stiffness = stiffness::of(model, joists.size.value()).unwrap_or(REFERENCE);
            match joists::field(model, joists, stiffness) {
                Ok(field) => field::follow(&field, &actings()),
                Err(why) => lost(actions, why),
            }
        }
        ElementKind::Roof => {
            let Some(roof) = model.roofs.get(element.index as usize) else { return unreadable() };
            let stiffness =
                roof.member.as_ref().map(|member| stiffness::of(model, Some(member)).unwrap_or(REFERENCE));
            roof::follow(model, roof, stiffness, &actings())
        }
        ElementKind::Beam => {
            let Some(beam) = model.beam(element) else { return unreadable() };
            let stiffness = stiffness::of_beam(model, beam).unwrap_or(REFERENCE);
            beam::follow(model, geometry, beam, stiffness, &actings())
        }
        ElementKind::Header => match headers.iter().find(|span| span.header == element) {
            Some(span) => {
                let header = model.headers.get(element.index as usize);
                let stiffness = stiffness::of(model, header.and_then(|header| header.size.value()));
                wall::through_header(span, stiffness.unwrap_or(REFERENCE), &actings())
            }
            None => unreadable(),
        },
        ElementKind::Wall => match model.wall(element) {
            Some(wall) => {
                let to = landing(&wall.stands_on, wall.common.may_say("stands on"));
                let handed = wall::follow(wall, to, headers, actions);
                Outcome { handed, ..Outcome::default() }
            }
            None => unreadable(),
        },
        ElementKind::Footing | ElementKind::Slab => all_to(Receiver::Soil, actions),
        _ => all_to(straight_down(model, element), actions),
    }
}

/// What carries an element that passes on all it gets at the same place.
fn straight_down(model: &Model, element: ElementId) -> Receiver {
    let to = |target: Option<ElementId>| match target {
        Some(target) => Receiver::Element(target),
        None => Receiver::Nothing(Lost::Unreadable),
    };
    match element.kind {
        ElementKind::Column => model
            .column(element)
            .map_or(to(None), |column| landing(&column.stands_on, column.common.may_say("stands on"))),
        ElementKind::Jacks => model
            .jacks_of(element)
            .map_or(to(None), |jacks| landing(&jacks.stands_on, jacks.common.may_say("stands on"))),
        ElementKind::Pocket => to(model.pocket(element).and_then(|pocket| pocket.wall.value()?.target)),
        ElementKind::Shelf => to(model.shelf(element).and_then(|shelf| shelf.wall.value()?.target)),
        ElementKind::Ledger => to(model.ledger(element).and_then(|ledger| ledger.on.value()?.target)),
        _ => Receiver::Nothing(Lost::NoSupport),
    }
}

/// What a `stands on` line names: what it says is right below, else the thing itself.
fn landing(stand: &Said<Stand>, may_be_unread: bool) -> Receiver {
    match stand {
        Said::Stated(stand, _) | Said::Assumed(stand, _) => {
            let on = match (&stand.over, &stand.on) {
                (Some(over), _) => over.target,
                (None, Carrier::Element(reference)) => reference.target,
                (None, Carrier::Outside(_)) => return Receiver::Outside,
            };
            on.map_or(Receiver::Nothing(Lost::Unreadable), Receiver::Element)
        }
        Said::Missing if !may_be_unread => Receiver::Nothing(Lost::NoSupport),
        Said::Missing | Said::Broken(_) => Receiver::Nothing(Lost::Unreadable),
    }
}

/// What stands on a floor without saying over what: on a slab it is on the ground, else the field below takes it.
fn across_floor(model: &Model, element: ElementId, actions: &[Action]) -> Outcome {
    let floor = match element.kind {
        ElementKind::Area => model
            .areas
            .get(element.index as usize)
            .and_then(|area| area.floor.value()?.target)
            .and_then(|floor| model.floor(floor)),
        _ => model.floor(element),
    };
    let Some(floor) = floor else { return lost(actions, Lost::Unreadable) };
    if let Some(slab) = floor.on.value() {
        let to = slab.target.map_or(Receiver::Nothing(Lost::Unreadable), Receiver::Element);
        return all_to(to, actions);
    }
    let mut handed = Vec::new();
    for action in actions {
        let mut rest = vec![action.acting];
        let fields = model
            .joists
            .iter()
            .filter(|joists| joists.floor.value().and_then(|of| of.target) == Some(floor.common.id));
        for joists in fields {
            for rect in &joists.fill {
                let mut outside = Vec::new();
                for acting in rest {
                    let (inside, rest) = parted(&acting, rect);
                    let to = Receiver::Element(joists.common.id);
                    handed.extend(inside.map(|acting| Handed { to, acting }));
                    outside.extend(rest);
                }
                rest = outside;
            }
        }
        let to = Receiver::Nothing(Lost::NotReached);
        handed.extend(rest.into_iter().map(|acting| Handed { to, acting }));
    }
    Outcome { handed, ..Outcome::default() }
}

/// The part of a load inside of a rectangle, edges included, and the parts outside.
fn parted(acting: &Acting, rect: &PlanRect) -> (Option<Acting>, Vec<Acting>) {
    let mut outside = Vec::new();
    let mut inside = Some(*acting);
    for axis in [Axis::X, Axis::Y] {
        let Some(part) = inside else { break };
        let (low, high) = rect.on(axis);
        outside.extend(part.below(axis, low));
        outside.extend(part.above(axis, high));
        inside = part.up_to(axis, (low, high));
    }
    (inside, outside)
}

/// The order in which load comes down, and the elements that have none because they carry one another.
struct Order {
    down: Vec<ElementId>,
    in_circles: Vec<ElementId>,
}

fn order(model: &Model, takedown: &Takedown) -> Order {
    let mut below: BTreeMap<ElementId, BTreeSet<ElementId>> = BTreeMap::new();
    let mut waiting: BTreeMap<ElementId, usize> = BTreeMap::new();
    for element in carrying(model).chain(takedown.on.keys().copied()) {
        if below.contains_key(&element) {
            continue;
        }
        let targets: BTreeSet<ElementId> = targets(model, &takedown.headers, element).into_iter().collect();
        waiting.entry(element).or_default();
        for target in &targets {
            *waiting.entry(*target).or_default() += 1;
        }
        below.insert(element, targets);
    }
    let mut ready: Vec<ElementId> =
        waiting.iter().filter(|(_, above)| **above == 0).map(|(element, _)| *element).collect();
    let mut down = Vec::new();
    while let Some(element) = ready.pop() {
        down.push(element);
        waiting.remove(&element);
        for target in below.get(&element).into_iter().flatten() {
            if let Some(above) = waiting.get_mut(target) {
                *above = above.saturating_sub(1);
                if *above == 0 {
                    ready.push(*target);
                }
            }
        }
    }
    Order { down, in_circles: waiting.into_keys().collect() }
}

/// Every element that hands load on.
fn carrying(model: &Model) -> impl Iterator<Item = ElementId> {
    use ElementKind as Kind;
    let kinds = [
        Kind::Roof,
        Kind::Floor,
        Kind::Area,
        Kind::Joists,
        Kind::Wall,
        Kind::Header,
        Kind::Jacks,
        Kind::Beam,
        Kind::Column,
        Kind::Ledger,
        Kind::Pocket,
        Kind::Shelf,
        Kind::Footing,
        Kind::Slab,
    ];
    model.commons().map(|common| common.id).filter(move |id| kinds.contains(&id.kind))
}

/// What an element may hand load to.
fn targets(model: &Model, headers: &[HeaderSpan], element: ElementId) -> Vec<ElementId> {
    let of_supports = |supports: &[Support]| supports.iter().filter_map(carrying_element).collect();
    let at = element.index as usize;
    match element.kind {
        ElementKind::Roof => model.roofs.get(at).map_or(Vec::new(), |roof| of_supports(&roof.supports)),
        ElementKind::Joists => {
            model.joists_of(element).map_or(Vec::new(), |joists| of_supports(&joists.supports))
        }
        ElementKind::Beam => model.beam(element).map_or(Vec::new(), |beam| of_supports(&beam.supports)),
        ElementKind::Header => {
            let span = headers.iter().find(|span| span.header == element);
            span.map_or(Vec::new(), |span| vec![span.jacks.0, span.jacks.1])
        }
        ElementKind::Wall => {
            let own = headers.iter().filter(|span| span.wall == element).map(|span| span.header);
            let wall = model.wall(element);
            let stand = wall.and_then(|wall| landing(&wall.stands_on, false).element());
            own.chain(stand).collect()
        }
        ElementKind::Floor => {
            let slab = model.floor(element).and_then(|floor| floor.on.value()?.target);
            let fields = model
                .joists
                .iter()
                .filter(|joists| joists.floor.value().and_then(|of| of.target) == Some(element))
                .map(|joists| joists.common.id);
            slab.into_iter().chain(fields).collect()
        }
        ElementKind::Area => {
            let floor = model.areas.get(at).and_then(|area| area.floor.value()?.target);
            floor.map_or(Vec::new(), |floor| targets(model, headers, floor))
        }
        ElementKind::Footing | ElementKind::Slab => Vec::new(),
        _ => straight_down(model, element).element().into_iter().collect(),
    }
}
