//! The grid, and places in plan as coordinates.

use crate::model::lower::every::common;
use crate::model::lower::names::GridState;
use crate::model::lower::reader::Reader;
use crate::model::plan::{Axis, PlanLine, PlanPoint, PlanRect, Station};
use crate::model::problem::ModelProblemKind;
use crate::model::site::GridLine;
use crate::syntax::value::{GridRef, Point, Value};
use crate::syntax::{Fact, Part};
use crate::text::{Span, nearest};
use crate::units::Length;

/// Reads the grid into the model.
pub fn read_grid(reader: &mut Reader<'_, '_>) {
    reader.lowering.model.grid.common = Some(common(reader));
    for (phrase, axis) in [("x", Axis::X), ("y", Axis::Y)] {
        if let Some(fact) = reader.fact(phrase) {
            read_lines(reader, fact, axis);
        }
    }
    let is_read = !reader.has_unread_lines && reader.fact("x").is_some() && reader.fact("y").is_some();
    reader.lowering.grid = if is_read { GridState::Read } else { GridState::Reported };
    for fact in reader.facts("line") {
        let Some(part) = fact.part("name") else { continue };
        let Value::Name(name) = &part.value else { continue };
        let span = reader.span(part.span);
        if reader.known_line(name, span).is_some() {
            let note = reader.words(fact, "words");
            if let Some(line) = reader.lowering.model.grid.lines.get_mut(name) {
                line.note = note;
            }
        }
    }
}

fn read_lines(reader: &mut Reader<'_, '_>, fact: &Fact, axis: Axis) {
    let mut before: Option<Length> = None;
    let names = fact.parts_of("name");
    for (name, at) in names.zip(fact.parts_of("at")) {
        let (Value::Name(line), Value::Length(at)) = (&name.value, &at.value) else { continue };
        let span = reader.span(name.span);
        if let Some(known) = reader.lowering.model.grid.lines.get(line) {
            let first = known.span;
            reader.report(span, ModelProblemKind::GridLineReused(first));
            continue;
        }
        if before.is_some_and(|before| *at <= before) {
            reader.report(span, ModelProblemKind::GridNotAscending);
        }
        before = Some(*at);
        let entry = GridLine { axis, at: *at, span, note: None };
        reader.lowering.model.grid.lines.insert(line.clone(), entry);
    }
}

impl<'t> Reader<'_, 't> {
    /// A coordinate on the axis that its grid line cuts.
    pub fn station(&mut self, fact: &Fact, label: &str) -> Option<Station> {
        station_in(self, fact.part(label)?)
    }

    /// A coordinate on this axis, or on any where `None` is asked for.
    pub fn station_on(&mut self, fact: &Fact, label: &str, axis: Option<Axis>) -> Option<Station> {
        let part = fact.part(label)?;
        self.on_axis(part, axis)
    }

    /// A coordinate on this axis in a part of a fact.
    pub fn on_axis(&mut self, part: &Part, axis: Option<Axis>) -> Option<Station> {
        let station = station_in(self, part)?;
        match axis {
            Some(axis) if axis != station.axis => {
                self.report(station.span, ModelProblemKind::GridLineOfOtherAxis(axis));
                None
            }
            Some(_) | None => Some(station),
        }
    }

    /// From one coordinate to another on an axis, the smaller first.
    pub fn stretch(&mut self, fact: &Fact, axis: Option<Axis>) -> Option<(Station, Station)> {
        let from = self.station_on(fact, "from", axis)?;
        let to = self.station_on(fact, "to", Some(axis.unwrap_or(from.axis)))?;
        if from.at == to.at {
            self.report(from.span.to(to.span), ModelProblemKind::NoExtent(fact.spec.phrase));
            return None;
        }
        Some(if from.at < to.at { (from, to) } else { (to, from) })
    }

    /// A place in plan.
    pub fn point(&mut self, fact: &Fact, label: &str) -> Option<PlanPoint> {
        let part = fact.part(label)?;
        let Value::Point(point) = &part.value else { return None };
        let span = self.span(part.span);
        self.place(point, span)
    }

    /// An upright rectangle.
    pub fn rect(&mut self, fact: &Fact) -> Option<PlanRect> {
        let part = fact.part("rect")?;
        let Value::Rect(rect) = &part.value else { return None };
        let span = self.span(part.span);
        let x = (self.coordinate(&rect.x_from, Axis::X), self.coordinate(&rect.x_to, Axis::X));
        let y = (self.coordinate(&rect.y_from, Axis::Y), self.coordinate(&rect.y_to, Axis::Y));
        let (x, y) = (in_order(x.0?, x.1?), in_order(y.0?, y.1?));
        if x.0 == x.1 || y.0 == y.1 {
            self.report(span, ModelProblemKind::NoExtent(fact.spec.phrase));
            return None;
        }
        Some(PlanRect { x, y, span })
    }

    /// A straight line.
    pub fn line(&mut self, fact: &Fact) -> Option<PlanLine> {
        let part = fact.part("line")?;
        let Value::Line(line) = &part.value else { return None };
        let span = self.span(part.span);
        let (from, to) = (self.place(&line.from, span), self.place(&line.to, span));
        let (from, to) = (from?, to?);
        if (from.x, from.y) == (to.x, to.y) {
            self.report(span, ModelProblemKind::NoExtent(fact.spec.phrase));
            return None;
        }
        Some(PlanLine { from, to, span })
    }

    /// The grid line of this name.
    fn known_line(&mut self, name: &str, span: Span) -> Option<(Axis, Length)> {
        let grid = &self.lowering.model.grid;
        if let Some(line) = grid.lines.get(name) {
            return Some((line.axis, line.at));
        }
        if self.lowering.grid != GridState::Reported {
            let nearest = nearest(name, grid.lines.keys().map(|name| &**name)).map(Box::from);
            self.report(span, ModelProblemKind::UnknownGridLine(nearest));
        }
        if self.lowering.grid == GridState::None {
            self.lowering.grid = GridState::Reported;
        }
        None
    }

    fn place(&mut self, point: &Point, span: Span) -> Option<PlanPoint> {
        let (x, y) = (self.coordinate(&point.x, Axis::X), self.coordinate(&point.y, Axis::Y));
        Some(PlanPoint { x: x?, y: y?, span })
    }

    fn coordinate(&mut self, place: &GridRef, axis: Axis) -> Option<Length> {
        let span = self.span(place.span);
        let (of_line, at) = self.known_line(&place.line, span)?;
        if of_line != axis {
            self.report(span, ModelProblemKind::GridLineOfOtherAxis(axis));
            return None;
        }
        Some(at + place.offset)
    }
}

fn station_in(reader: &mut Reader<'_, '_>, part: &Part) -> Option<Station> {
    let Value::GridRef(place) = &part.value else { return None };
    let name = reader.span(place.span);
    let (axis, at) = reader.known_line(&place.line, name)?;
    Some(Station { axis, at: at + place.offset, span: reader.span(part.span) })
}

fn in_order(one: Length, other: Length) -> (Length, Length) {
    (one.min(other), one.max(other))
}
