//! The loads of a spec: what acts on each element from outside and by its own weight, before anything is handed on.
//!
//! The dead load of a floor or roof is the weight of all of it, joists and rafters with it (common practice); every other
//! member adds its own weight. Concrete weighs 150 pcf (common practice, and the handbook's wall and footing weights).

use std::collections::HashMap;

use crate::geometry::Geometry;
use crate::geometry::surfaces::Surface;
use crate::model::Model;
use crate::model::element::{Common, ElementId};
use crate::model::foundation::{Footing, FootingSize, Pedestal, Wall};
use crate::model::framing::Joists;
use crate::model::plan::{Axis, PlanLine, PlanRect};
use crate::model::site::{DeclaredLoad, Load, LoadPlace, Roof};
use crate::model::support::Carrier;
use crate::statics::action::{Acting, Action, Source, Spot, case_of};
use crate::statics::cases::{ByCase, Case};
use crate::statics::wall::HeaderSpan;
use crate::syntax::value::Load as Amount;
use crate::syntax::vocabulary::ElementKind;
use crate::text::Span;
use crate::units::{AreaLoad, Density, Force, Length, LineLoad};

/// The weight of concrete and masonry.
pub const CONCRETE: Density = Density::pcf(150.0);

/// The loads of a spec.
#[derive(Clone, Debug, Default)]
pub struct Applied {
    /// What acts on each element.
    pub on: HashMap<ElementId, Vec<Action>>,
    /// What the spec states but nothing follows: wind, earth, a load of the wrong kind for its place.
    pub left_out: Vec<LeftOut>,
}

/// A load that is stated and not followed down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LeftOut {
    /// On which element.
    pub on: ElementId,
    /// Where it is stated.
    pub span: Span,
    /// Why.
    pub why: WhyLeftOut,
}

/// Why a stated load is not followed down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WhyLeftOut {
    /// Wind and earth are not followed here.
    Case,
    /// An area load on a line, a point on an area: its unit does not fit its place.
    Unit,
    /// Its place can't be told.
    Place,
}

impl Applied {
    fn put(&mut self, on: ElementId, source: Source, acting: Acting) {
        self.on.entry(on).or_default().push(Action { source, acting });
    }

    fn leave_out(&mut self, on: ElementId, span: Span, why: WhyLeftOut) {
        self.left_out.push(LeftOut { on, span, why });
    }
}

/// Gathers the loads of a spec.
pub fn of(model: &Model, geometry: &Geometry, headers: &[HeaderSpan]) -> Applied {
    let mut applied = Applied::default();
    for joists in &model.joists {
        floor_loads(model, joists, &mut applied);
    }
    for roof in &model.roofs {
        roof_loads(model, roof, &mut applied);
    }
    for beam in &model.beams {
        let id = beam.common.id;
        if let Some((line, axis)) = along(beam.from.value()) {
            let weight =
                beam.size.value().and_then(|size| size.section.as_ref()).map(|section| section.weight());
            if let Some(weight) = weight {
                applied.put(id, Source::Weight, spread(&line, axis, line.on(axis), dead(weight)));
            }
            for load in &beam.loads {
                declared(id, load, &line, axis, &mut applied);
            }
        }
    }
    for header in headers {
        header_loads(model, header, &mut applied);
    }
    for ledger in &model.ledgers {
        let weight =
            ledger.size.value().and_then(|size| size.section.as_ref()).map(|section| section.weight());
        if let (Some((line, axis)), Some(weight)) = (along(ledger.from.value()), weight) {
            applied.put(ledger.common.id, Source::Weight, spread(&line, axis, line.on(axis), dead(weight)));
        }
    }
    for wall in &model.walls {
        wall_loads(geometry, wall, headers, &mut applied);
    }
    for (at, column) in model.columns.iter().enumerate() {
        let Some(spot) = column.at.value().map(Spot::from) else { continue };
        let id = column.common.id;
        let weight =
            column.size.value().and_then(|size| size.section.as_ref()).map(|section| section.weight());
        let cut = geometry.columns.get(at).and_then(|stack| stack.cut.as_ref().ok()).map(|cut| cut.total());
        if let (Some(weight), Some(cut)) = (weight, cut.filter(|cut| cut.is_positive())) {
            let force = ByCase::only(Case::Dead, weight * cut);
            applied.put(id, Source::Weight, Acting::Point { at: spot, force });
        }
        for load in &column.loads {
            match (case_of(&load.case), load.amount) {
                (None, _) => applied.leave_out(id, load.span, WhyLeftOut::Case),
                (Some(case), Amount::Point(force)) => {
                    let force = ByCase::only(case, force);
                    applied.put(id, Source::Declared(load.span), Acting::Point { at: spot, force });
                }
                (Some(_), Amount::Area(_) | Amount::Line(_) | Amount::Volume(_)) => {
                    applied.leave_out(id, load.span, WhyLeftOut::Unit);
                }
            }
        }
    }
    for footing in &model.footings {
        footing_weight(model, geometry, footing, &mut applied);
    }
    for load in &model.loads {
        free_load(load, &mut applied);
    }
    applied
}

fn dead<T: Default>(amount: T) -> ByCase<T> {
    ByCase::only(Case::Dead, amount)
}

fn along(line: Option<&PlanLine>) -> Option<(PlanLine, Axis)> {
    let line = line?;
    Some((*line, line.axis()?))
}

fn spread(line: &PlanLine, axis: Axis, (from, to): (Length, Length), load: ByCase<LineLoad>) -> Acting {
    Acting::Spread { axis, across: line.from.on(axis.across()), from, to, load }
}

/// The load of a floor on one of its fields: the floor's own, and where an area has its own, that one.
fn floor_loads(model: &Model, joists: &Joists, applied: &mut Applied) {
    let floor = joists.floor.value().and_then(|floor| floor.target).and_then(|floor| model.floor(floor));
    let Some(floor) = floor else { return };
    let floor_load = ByCase {
        dead: floor.dead.get().unwrap_or_default(),
        live: floor.live.get().unwrap_or_default(),
        ..ByCase::default()
    };
    let areas = model.areas.iter().filter(|area| {
        let of = area.floor.value().and_then(|of| of.target);
        of == Some(floor.common.id) && (area.live.value().is_some() || area.dead.value().is_some())
    });
    let left_out = model.openings.iter().filter(|opening| {
        opening.keeps_load.get() == Some(false)
            && opening.floor.value().and_then(|of| of.target) == Some(floor.common.id)
    });
    let mut special: Vec<(Option<ElementId>, PlanRect, ByCase<AreaLoad>)> = Vec::new();
    for area in areas {
        let load = ByCase {
            dead: area.dead.get().unwrap_or(floor_load.dead),
            live: area.live.get().unwrap_or(floor_load.live),
            ..ByCase::default()
        };
        special.extend(area.fill.iter().map(|rect| (Some(area.common.id), *rect, load)));
    }
    for opening in left_out {
        special.extend(opening.fill.iter().map(|rect| (None, *rect, ByCase::default())));
    }
    for rect in &joists.fill {
        let mut plain = vec![(rect.x, rect.y)];
        for (of, place, load) in &special {
            let mut rest = Vec::new();
            for part in plain {
                let (common, outside) = cut(part, (place.x, place.y));
                rest.extend(outside);
                if let (Some((x, y)), Some(of)) = (common, of) {
                    let acting = Acting::Area { x, y, load: *load };
                    applied.put(joists.common.id, Source::AreaOf(*of), acting);
                }
            }
            plain = rest;
        }
        for (x, y) in plain {
            let acting = Acting::Area { x, y, load: floor_load };
            applied.put(joists.common.id, Source::AreaOf(floor.common.id), acting);
        }
    }
}

/// The two ranges of an upright rectangle.
type Ranges = ((Length, Length), (Length, Length));

/// What two rectangles have in common, and what of the first lies outside of the second.
fn cut(of: Ranges, by: Ranges) -> (Option<Ranges>, Vec<Ranges>) {
    let ((x0, x1), (y0, y1)) = of;
    let (left, right) = (by.0.0.max(x0), by.0.1.min(x1));
    let (below, above) = (by.1.0.max(y0), by.1.1.min(y1));
    if left >= right || below >= above {
        return (None, vec![of]);
    }
    let parts = [
        ((x0, left), (y0, y1)),
        ((right, x1), (y0, y1)),
        ((left, right), (y0, below)),
        ((left, right), (above, y1)),
    ];
    let outside = parts.into_iter().filter(|(x, y)| x.0 < x.1 && y.0 < y.1).collect();
    (Some(((left, right), (below, above))), outside)
}

/// The load of a roof: its own, and the project's snow where it states none.
fn roof_loads(model: &Model, roof: &Roof, applied: &mut Applied) {
    let project_snow = model.project.as_ref().and_then(|project| project.snow.value());
    let on_roof = project_snow.filter(|snow| !snow.is_ground).map(|snow| snow.load);
    let load = ByCase {
        dead: roof.dead.get().unwrap_or_default(),
        live: AreaLoad::ZERO,
        roof_live: roof.live.get().unwrap_or_default(),
        snow: roof.snow.get().or(on_roof).unwrap_or_default(),
    };
    for rect in &roof.fill {
        let acting = Acting::Area { x: rect.x, y: rect.y, load };
        applied.put(roof.common.id, Source::AreaOf(roof.common.id), acting);
    }
}

fn header_loads(model: &Model, span: &HeaderSpan, applied: &mut Applied) {
    let Some(header) = model.headers.get(span.header.index as usize) else { return };
    let spread = |load: ByCase<LineLoad>| {
        let (from, to) = span.between;
        Acting::Spread { axis: span.axis, across: span.across, from, to, load }
    };
    if let Some(section) = header.size.value().and_then(|size| size.section.as_ref()) {
        applied.put(span.header, Source::Weight, spread(dead(section.weight())));
    }
    for load in &header.loads {
        match (case_of(&load.case), load.amount) {
            (None, _) => applied.leave_out(span.header, load.span, WhyLeftOut::Case),
            (Some(case), Amount::Line(amount)) => {
                applied.put(span.header, Source::Declared(load.span), spread(ByCase::only(case, amount)));
            }
            (Some(case), Amount::Point(force)) => {
                let along = load.at.map_or((span.between.0 + span.between.1).half(), |at| at.at);
                let at = Spot::at(span.axis, along, span.across);
                let acting = Acting::Point { at, force: ByCase::only(case, force) };
                applied.put(span.header, Source::Declared(load.span), acting);
            }
            (Some(_), Amount::Area(_) | Amount::Volume(_)) => {
                applied.leave_out(span.header, load.span, WhyLeftOut::Unit);
            }
        }
    }
}

/// A wall's own weight and its declared loads. Over an opening with a header only the part of the wall above the header
/// weighs.
fn wall_loads(geometry: &Geometry, wall: &Wall, headers: &[HeaderSpan], applied: &mut Applied) {
    let Some((line, axis)) = along(wall.from.value()) else { return };
    let id = wall.common.id;
    for load in &wall.loads {
        declared(id, load, &line, axis, applied);
    }
    let Some(weight) = wall_weight(geometry, wall) else { return };
    let mut parts = vec![(line.on(axis), 1.0)];
    for header in headers.iter().filter(|header| header.wall == id) {
        let (low, high) = header.between;
        parts = parts
            .into_iter()
            .flat_map(|((from, to), share)| {
                [
                    ((from, to.min(low)), share),
                    ((from.max(low), to.min(high)), share * header.weight_share),
                    ((from.max(high), to), share),
                ]
            })
            .filter(|((from, to), share)| from < to && *share > 0.0)
            .collect();
    }
    for (reach, share) in parts {
        applied.put(id, Source::Weight, spread(&line, axis, reach, dead(weight * share)));
    }
}

/// What a wall weighs along its length: what it states, else for concrete and masonry what its thickness and height make.
pub fn wall_weight(geometry: &Geometry, wall: &Wall) -> Option<LineLoad> {
    let surface = |surface| geometry.surfaces.of(wall.common.id, surface).ok().map(|sum| sum.total());
    let height =
        || Some(surface(Surface::Top)? - surface(Surface::Bottom)?).filter(|height| height.is_positive());
    match wall.weight.get() {
        Some(Amount::Line(weight)) => Some(weight),
        Some(Amount::Area(weight)) => Some(weight * height()?),
        Some(Amount::Volume(weight)) => Some(weight * wall.thick.get()? * height()?),
        Some(Amount::Point(_)) => None,
        None if wall.kind.get().is_some_and(|kind| kind.is_mineral()) => {
            Some(CONCRETE * wall.thick.get()? * height()?)
        }
        None => None,
    }
}

/// A footing's own weight, with its pedestal.
fn footing_weight(model: &Model, geometry: &Geometry, footing: &Footing, applied: &mut Applied) {
    let id = footing.common.id;
    let Some(size) = footing.size.get() else { return };
    match size {
        FootingSize::Pad(..) | FootingSize::Round(..) => {
            let Some(pad) = pad_weight(&size) else { return };
            let weight = pad + pedestal_weight(geometry, footing).unwrap_or_default();
            for at in &footing.at {
                let force = dead(weight);
                applied.put(id, Source::Weight, Acting::Point { at: Spot::from(at), force });
            }
        }
        FootingSize::Strip(width, thickness) => {
            let weight = CONCRETE * width * thickness;
            for wall in footing.under.iter().filter_map(|wall| model.wall(wall.target?)) {
                if let Some((line, axis)) = along(wall.from.value()) {
                    applied.put(id, Source::Weight, spread(&line, axis, line.on(axis), dead(weight)));
                }
            }
        }
    }
}

/// What a pad or pier weighs; `None` of a strip.
pub fn pad_weight(size: &FootingSize) -> Option<Force> {
    match size {
        FootingSize::Pad(one, other, thickness) => Some(CONCRETE * *thickness * (*one * *other)),
        FootingSize::Round(diameter, thickness) => {
            let area = *diameter * *diameter * std::f64::consts::FRAC_PI_4;
            Some(CONCRETE * *thickness * area)
        }
        FootingSize::Strip(..) => None,
    }
}

/// What a footing's pedestal weighs, nothing where it has none; `None` where its height is not known.
pub fn pedestal_weight(geometry: &Geometry, footing: &Footing) -> Option<Force> {
    let Some(Pedestal { size: [one, other], .. }) = footing.pedestal.value() else {
        return (!footing.pedestal.is_broken()).then_some(Force::ZERO);
    };
    let level = |surface| geometry.surfaces.of(footing.common.id, surface).ok().map(|sum| sum.total());
    let height = level(Surface::Bearing)? - level(Surface::Top)?;
    height.is_positive().then(|| CONCRETE * height * (*one * *other))
}

fn declared(on: ElementId, load: &DeclaredLoad, line: &PlanLine, axis: Axis, applied: &mut Applied) {
    let Some(case) = case_of(&load.case) else {
        return applied.leave_out(on, load.span, WhyLeftOut::Case);
    };
    let source = Source::Declared(load.span);
    match (load.amount, &load.reach, &load.at) {
        (Amount::Line(amount), reach, None) => {
            let reach = reach.map_or(line.on(axis), |(from, to)| (from.at.min(to.at), from.at.max(to.at)));
            applied.put(on, source, spread(line, axis, reach, ByCase::only(case, amount)));
        }
        (Amount::Point(force), None, Some(at)) => {
            let at = Spot::at(axis, at.at, line.from.on(axis.across()));
            applied.put(on, source, Acting::Point { at, force: ByCase::only(case, force) });
        }
        (Amount::Point(_), ..) => applied.leave_out(on, load.span, WhyLeftOut::Place),
        _ => applied.leave_out(on, load.span, WhyLeftOut::Unit),
    }
}

/// A load that is an element. On a floor it acts on the floor; the takedown finds the field below it.
fn free_load(load: &Load, applied: &mut Applied) {
    let Common { id, span, .. } = load.common;
    let on = match load.on.value() {
        Some(Carrier::Element(reference)) => reference.target,
        Some(Carrier::Outside(_)) | None => None,
    };
    let (Some(on), Some(place), Some(amount), Some(case)) =
        (on, load.place.get(), load.amount.get(), load.case.value())
    else {
        return;
    };
    let Some(case) = case_of(case) else { return applied.leave_out(id, span, WhyLeftOut::Case) };
    let source = Source::Load(id);
    match (place, amount) {
        (LoadPlace::Point(at), Amount::Point(force)) => {
            let force = ByCase::only(case, force);
            applied.put(on, source, Acting::Point { at: Spot::from(&at), force });
        }
        (LoadPlace::Line(line), Amount::Line(amount)) => match line.axis() {
            Some(axis) => {
                let load = ByCase::only(case, amount);
                applied.put(on, source, spread(&line, axis, line.on(axis), load));
            }
            None => applied.leave_out(id, span, WhyLeftOut::Place),
        },
        (LoadPlace::Rect(rect), Amount::Area(amount)) if on.kind != ElementKind::Wall => {
            let load = ByCase::only(case, amount);
            applied.put(on, source, Acting::Area { x: rect.x, y: rect.y, load });
        }
        _ => applied.leave_out(id, span, WhyLeftOut::Unit),
    }
}
