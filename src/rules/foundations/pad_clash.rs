//! Footings that take each other's place.

use crate::geometry::footing_steps::drops_along;
use crate::geometry::pads::{Pad, pads_of, strips_of};
use crate::geometry::surfaces::Surface;
use crate::house::House;
use crate::model::element::ElementId;
use crate::model::foundation::{Footing, FootingSize};
use crate::model::plan::Axis;
use crate::rules::{Findings, rule};
use crate::text::Span;
use crate::units::Length;

rule! {
    /// A pad or pier overlaps another footing.
    ///
    /// Pads and piers against one another and against strips, in plan and in height. Two footings that touch are fine.
    ///
    /// ## Why
    /// Two footings in one hole are one footing: they share the soil that each was sized for alone, and whichever is
    /// poured first is in the way of the other.
    ///
    /// ## Source
    /// Common practice: the rectangles themselves.
    ///
    /// ## Examples
    /// ```framing,fires
    /// grid
    ///   x           A 0', B 2'
    ///   y           1 0'
    /// footing F1
    ///   kind        pad
    ///   at          A/1
    ///   at          B/1
    ///   size        2'-6" x 2'-6" x 12"
    ///   top         91'-0"
    /// ```
    /// ```framing,passes
    /// grid
    ///   x           A 0', B 2'-6"
    ///   y           1 0'
    /// footing F1
    ///   kind        pad
    ///   at          A/1
    ///   at          B/1
    ///   size        2'-6" x 2'-6" x 12"
    ///   top         91'-0"
    /// ```
    "pad-clash", Advice
}

/// A footing's place in the ground.
struct Body {
    footing: ElementId,
    x: (Length, Length),
    y: (Length, Length),
    z: (Length, Length),
    place: Span,
    is_strip: bool,
}

fn check(house: &House, findings: &mut Findings<'_>) {
    let mut bodies: Vec<Body> =
        house.model.footings.iter().flat_map(|footing| bodies_of(house, footing)).collect();
    bodies.sort_by_key(|body| body.x.0);
    // From west to east: what ends before the next begins cannot meet it nor any later one.
    let mut open: Vec<&Body> = Vec::new();
    for body in &bodies {
        open.retain(|other| other.x.1 > body.x.0);
        for other in &open {
            report(house, other, body, findings);
        }
        open.push(body);
    }
}

fn bodies_of(house: &House, footing: &Footing) -> Vec<Body> {
    let id = footing.common.id;
    let (Some(size), Ok(top)) = (footing.size.get(), house.geometry.surfaces.of(id, Surface::Top)) else {
        return Vec::new();
    };
    let top = top.total();
    if !matches!(size, FootingSize::Strip(..)) {
        let z = (top - size.thickness(), top);
        let body = |pad: Pad| Body {
            footing: id,
            x: pad.rect.x,
            y: pad.rect.y,
            z,
            place: pad.rect.span,
            is_strip: false,
        };
        return pads_of(footing).into_iter().map(body).collect();
    }
    let strips = strips_of(&house.model, footing).into_iter();
    strips
        .filter_map(|strip| {
            let (least, most) = drops_along(&house.model, footing, house.model.wall(strip.wall)?)?;
            Some(Body {
                footing: id,
                x: strip.band.on(Axis::X),
                y: strip.band.on(Axis::Y),
                z: (top - most - size.thickness(), top - least),
                place: footing.common.name_span,
                is_strip: true,
            })
        })
        .collect()
}

fn report(house: &House, one: &Body, other: &Body, findings: &mut Findings<'_>) {
    let shared = |a: (Length, Length), b: (Length, Length)| a.1.min(b.1) - a.0.max(b.0);
    let (x, y, z) = (shared(one.x, other.x), shared(one.y, other.y), shared(one.z, other.z));
    let is_clash = x.is_positive() && y.is_positive() && z.is_positive() && !(one.is_strip && other.is_strip);
    if !is_clash {
        return;
    }
    let (pad, with) = if one.is_strip { (other, one) } else { (one, other) };
    let label =
        |body: &Body| house.model.common(body.footing).map(|common| common.label()).unwrap_or_default();
    let whom = if pad.footing == with.footing { "another of the same mark".to_owned() } else { label(with) };
    findings
        .about(pad.footing, pad.place, format!("{} overlaps {whom} by {x} by {y} in plan", label(pad)))
        .related(with.place, label(with))
        .help("move one of the two, or pour them as one footing and size it for both loads")
        .basis("common practice")
        .suspects(pad.footing, "at");
}

#[cfg(test)]
mod tests {
    use super::RULE;
    use crate::testing::rule_check::check_rule;

    fn house(at: &str, mark: &str) -> String {
        format!(
            "
grid
  x           A 0', B 20'
  y           1 0'
wall W1
  kind        concrete
  from        A/1 to B/1
  thick       8\"
  stands on   F1
footing F1
  kind        strip
  under       W1
  size        16\" x 8\"
  top         92'-0\"
footing F2
  kind        pier
  at          {at}
{mark}  size        24\" round x 5'-0\"
  top         95'-0\"
"
        )
    }

    /// The strip reaches to 8", the pier from 1'-8" less 12" = 8"; an inch nearer it takes 1" of the strip.
    #[test]
    fn a_pier_may_touch_a_strip() {
        check_rule(&RULE, &house("A plus 9' / 1 plus 1'-8\"", ""));
        check_rule(
            &RULE,
            &house(
                "A plus 9' / 1 plus 1'-7\"",
                "--            ^^^^^^^^^^^^^^^^^^^^^^^^ footing F2 overlaps footing F1 by 2'-0\" by 1\" in plan\n",
            ),
        );
    }
}
