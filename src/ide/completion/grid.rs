//! Grid lines and points, with what stands there.

use crate::house::House;
use crate::ide::completion::plan::{self, Stretch};
use crate::ide::completion::values::Wanted;
use crate::ide::completion::{Completion, CompletionKind, Place};
use crate::model::element::ElementId;
use crate::model::plan::Axis;
use crate::syntax::form::Kind;
use crate::syntax::lexer::TokenKind;
use crate::syntax::next::GridAxis;
use crate::syntax::vocabulary::ElementKind;
use crate::units::Length;

/// More points than this are not offered whole: their lines are.
const MOST_POINTS: usize = 120;

/// The grid lines that can stand at the cursor; where a point begins, whole points too.
pub(super) fn lines(place: &Place<'_>, wanted: &Wanted<'_>, axis: GridAxis, items: &mut Vec<Completion>) {
    let Some(house) = place.house() else { return };
    // In the grid itself lines get their names.
    let gives_names = place.cursor.element().is_some_and(|spec| spec.kind == ElementKind::Grid)
        && wanted.reading.fact.phrase != "line";
    if gives_names {
        return;
    }
    let standing = Standing::of(house, place);
    let x = x_before(wanted, house).filter(|_| axis == GridAxis::Y);
    if axis == GridAxis::X && matches!(wanted.kind, Some(Kind::Point | Kind::Line)) {
        points(place, house, &standing, items);
    }
    for (name, line) in &house.model.grid.lines {
        let is_wanted = match axis {
            GridAxis::X => line.axis == Axis::X,
            GridAxis::Y => line.axis == Axis::Y,
            GridAxis::Either => true,
        };
        if is_wanted {
            let mut detail = format!("at {}", line.at.in_feet());
            if let Some(note) = &line.note {
                detail.push_str(&format!(", {note}"));
            }
            if let Some(there) = x.map(|x| standing.at(x, line.at)).filter(|there| !there.is_empty()) {
                detail.push_str(&format!(": {}", there.join(", ")));
            }
            items.push(place.item(&**name, CompletionKind::Place).detail(detail));
        }
    }
}

/// Where something stands that the element could belong to comes first, then free places, then those that have one.
fn points(place: &Place<'_>, house: &House, standing: &Standing, items: &mut Vec<Completion>) {
    let of_axis = |axis| house.model.grid.lines.iter().filter(move |(_, line)| line.axis == axis);
    let (n_x, n_y) = (of_axis(Axis::X).count(), of_axis(Axis::Y).count());
    if n_x.saturating_mul(n_y) > MOST_POINTS {
        return;
    }
    let kind = place.cursor.element().map(|spec| spec.kind);
    let mut found = Vec::new();
    for (x_name, x) in of_axis(Axis::X) {
        for (y_name, y) in of_axis(Axis::Y) {
            let there = standing.names_at(x.at, y.at);
            let rank = match there.as_slice() {
                [] => 1,
                there if there.iter().any(|(id, _)| Some(id.kind) == kind) => 2,
                _ => 0,
            };
            let item = place.item(format!("{x_name}/{y_name}"), CompletionKind::Place);
            let names: Vec<_> = there.into_iter().map(|(_, name)| name).collect();
            let detail = if names.is_empty() { "nothing stands there".to_owned() } else { names.join(", ") };
            found.push((rank, item.detail(detail)));
        }
    }
    found.sort_by_key(|(rank, _)| *rank);
    items.extend(found.into_iter().map(|(_, item)| item));
}

/// The x of the point whose y is being typed.
fn x_before(wanted: &Wanted<'_>, house: &House) -> Option<Length> {
    let slash = wanted.tokens.iter().rposition(|token| token.kind == TokenKind::Slash)?;
    let before = wanted.tokens.get(..slash)?;
    let grid = &house.model.grid.lines;
    let (line, offset) = match before {
        [.., line, sign, length] if sign.is_word("plus") || sign.is_word("less") => {
            let TokenKind::Length(length) = length.kind else { return None };
            (line, if sign.is_word("less") { -length } else { length })
        }
        [.., line] => (line, Length::ZERO),
        [] => return None,
    };
    Some(grid.get(line.text)?.at + offset)
}

/// What stands where in plan, on a point of its own.
struct Standing {
    at: Vec<(ElementId, String, Vec<Stretch>)>,
}

impl Standing {
    fn of(house: &House, place: &Place<'_>) -> Self {
        let kinds = [ElementKind::Column, ElementKind::Footing, ElementKind::Pocket, ElementKind::Door];
        let standing = house.model.commons().filter(|common| kinds.contains(&common.id.kind));
        let others = standing.filter(|common| Some(common.id) != place.element);
        let at = others.map(|common| {
            let lies = match common.id.kind {
                // A strip lies under walls, not at a point.
                ElementKind::Footing => {
                    let at = house.model.footing(common.id).map(|footing| footing.at.as_slice());
                    at.unwrap_or_default().iter().map(|at| Stretch::at(at.x, at.y)).collect()
                }
                ElementKind::Pocket => {
                    let at = house.model.pocket(common.id).and_then(|pocket| pocket.at.value());
                    at.map(|at| Stretch::at(at.x, at.y)).into_iter().collect()
                }
                _ => plan::of_element(&house.model, common.id),
            };
            (common.id, common.label(), lies)
        });
        Self { at: at.collect() }
    }

    fn names_at(&self, x: Length, y: Length) -> Vec<(ElementId, String)> {
        let here = Stretch::at(x, y);
        let there = self.at.iter().filter(|(_, _, lies)| lies.contains(&here));
        there.map(|(id, name, _)| (*id, name.clone())).collect()
    }

    fn at(&self, x: Length, y: Length) -> Vec<String> {
        self.names_at(x, y).into_iter().map(|(_, name)| name).collect()
    }
}
