//! A member's size: its section, what it weighs, the values its design starts from, and where these are from.

use crate::design::wood::rectangle::{second_moment, section_modulus};
use crate::house::House;
use crate::ide::hover::cursor::Cursor;
use crate::ide::hover::markdown::escaped;
use crate::ide::hover::value::in_units;
use crate::ide::hover::{Piece, Worth};
use crate::model::element::ElementId;
use crate::model::framing::Rim;
use crate::model::member::Member;
use crate::model::stuff::{FilledPipe, IJoist, Stuff, Values, Wood, WoodKind};
use crate::products::grades::composite;
use crate::products::grades::{self, glulam};
use crate::products::i_joist::capacities;
use crate::products::rolled::{self, Rolled};
use crate::products::section::{Make, Section};
use crate::syntax::value::Value;
use crate::syntax::vocabulary::ElementKind;
use crate::units::{Force, Length, Stress};
use crate::verify::quantity::Quantity;

/// The member whose size is at the cursor.
pub fn piece(cursor: &Cursor<'_>) -> Option<Piece> {
    let part = cursor.part?;
    let Value::Member(_) = part.value else { return None };
    let span = cursor.span(part.span);
    let element = cursor.element?;
    let member = members_of(cursor.house(), element).into_iter().find(|member| member.span == span)?;
    let mut lines = vec![format!("**{}**", escaped(&member.text)), String::new()];
    lines.extend(in_units(&part.value).map(|nominal| format!("- {nominal}")));
    lines.extend(of_member(cursor.house(), member));
    Some(Piece { span, worth: Worth::Much, text: lines.join("\n"), has_figures: true })
}

/// Every member that an element is made of, its own size first.
pub fn members_of(house: &House, element: ElementId) -> Vec<&Member> {
    let (model, at) = (&house.model, element.index as usize);
    match element.kind {
        ElementKind::Beam => {
            let beam = model.beam(element);
            let nailer = beam.and_then(|beam| beam.nailer.value()).map(|nailer| &nailer.member);
            beam.and_then(|beam| beam.size.value()).into_iter().chain(nailer).collect()
        }
        ElementKind::Joists => {
            let Some(joists) = model.joists_of(element) else { return Vec::new() };
            let rim = joists.rim.value().and_then(|rim| match rim {
                Rim::Member(member) => Some(member),
                Rim::None | Rim::Thick(_) => None,
            });
            joists.size.value().into_iter().chain(rim).collect()
        }
        ElementKind::Column => {
            let Some(column) = model.column(element) else { return Vec::new() };
            let squash = column.squash.value().map(|(_, member)| member);
            column.size.value().into_iter().chain(squash).collect()
        }
        ElementKind::Wall => {
            let Some(wall) = model.wall(element) else { return Vec::new() };
            let plates = [wall.sole.value(), wall.plates.value()].into_iter().flatten();
            let studs = wall.studs.value().map(|studs| &studs.member).into_iter();
            let plates = plates.filter_map(|plates| plates.member.as_ref());
            studs.chain(wall.sill.value().map(|sill| &sill.member)).chain(plates).collect()
        }
        ElementKind::Opening => {
            let Some(opening) = model.opening(element) else { return Vec::new() };
            let headers = opening.headers.value().map(|headers| &headers.member);
            let trimmers = opening.trimmers.value().map(|(_, member)| member);
            trimmers.into_iter().chain(headers).collect()
        }
        ElementKind::Jacks => {
            let Some(jacks) = model.jacks_of(element) else { return Vec::new() };
            [&jacks.size, &jacks.squash]
                .into_iter()
                .filter_map(|field| field.value())
                .map(|(_, member)| member)
                .collect()
        }
        ElementKind::Shelf => model
            .shelf(element)
            .and_then(|shelf| shelf.sill.value())
            .map(|sill| &sill.member)
            .into_iter()
            .collect(),
        ElementKind::Ledger => {
            model.ledger(element).and_then(|ledger| ledger.size.value()).into_iter().collect()
        }
        ElementKind::Header => {
            model.headers.get(at).and_then(|header| header.size.value()).into_iter().collect()
        }
        ElementKind::Squash => model
            .squashes
            .get(at)
            .and_then(|squash| squash.size.value())
            .map(|(_, member)| member)
            .into_iter()
            .collect(),
        ElementKind::Roof => model.roofs.get(at).and_then(|roof| roof.member.as_ref()).into_iter().collect(),
        ElementKind::Stair => {
            model.stair(element).and_then(|stair| stair.stringers.value()).into_iter().collect()
        }
        ElementKind::Landing => {
            model.landings.get(at).and_then(|landing| landing.body.member.as_ref()).into_iter().collect()
        }
        ElementKind::Stoop => {
            model.stoops.get(at).and_then(|stoop| stoop.body.member.as_ref()).into_iter().collect()
        }
        ElementKind::Project
        | ElementKind::Grid
        | ElementKind::Product
        | ElementKind::Floor
        | ElementKind::Area
        | ElementKind::Pocket
        | ElementKind::Footing
        | ElementKind::Slab
        | ElementKind::Door
        | ElementKind::Window
        | ElementKind::Load
        | ElementKind::Drain
        | ElementKind::Hole
        | ElementKind::Notch
        | ElementKind::Duct
        | ElementKind::Intent
        | ElementKind::Sheet
        | ElementKind::HoldPoint => Vec::new(),
    }
}

/// A member's section and values, line by line.
pub fn of_member(house: &House, member: &Member) -> Vec<String> {
    let Some(section) = &member.section else {
        return vec!["- no table and no product has this size".to_owned()];
    };
    let mut lines = vec![in_plan(section), format!("- weighs {:.1} plf", section.weight().to_plf())];
    match &section.make {
        Make::Rolled(shape) => lines.push(of_shape(shape)),
        // An I-joist's rigidity is declared, its web is thin: a rectangle's moduli would mislead.
        Make::IJoist(_) | Make::DeclaredSteel | Make::FilledPipe => {}
        Make::Sawn { .. } | Make::Glulam | Make::Composite | Make::RimBoard => {
            lines.push(of_rectangle(section))
        }
    }
    let stuff = match house.model.stuff_of(member) {
        Ok(stuff) => stuff,
        Err(why) => {
            lines.push(format!("- its values are not known: {}", escaped(&why.to_string())));
            return lines;
        }
    };
    lines.extend(of_values(&stuff.values));
    lines.push(format!("- from {}", escaped(&source_of(house, &stuff))));
    lines.extend(stuff.assumed.iter().map(|assumed| format!("- assumed: {}", escaped(assumed))));
    lines
}

/// Where the values of a member are from, and how sure that is.
pub fn source_of(house: &House, stuff: &Stuff) -> String {
    if let Some(product) = stuff.product.and_then(|product| house.model.common(product)) {
        let source = product.source.value().map(|source| {
            let on = source.on.map(|on| format!(" on {on}")).unwrap_or_default();
            format!(": {}{on}", source.document)
        });
        return format!(
            "{}, declared{}",
            product.label(),
            source.unwrap_or_else(|| " without a source".to_owned())
        );
    }
    let source = match &stuff.values {
        Values::Wood(Wood { kind: WoodKind::Dimension(species, _), .. }) => grades::source(species, false),
        Values::Wood(Wood { kind: WoodKind::Timber, .. }) => match stuff.section.make {
            Make::Sawn { species: Some(species), .. } => grades::source(species, true),
            _ => "the tables of timbers, from memory",
        },
        Values::Wood(Wood { kind: WoodKind::Glulam { .. }, .. }) => glulam::SOURCE,
        Values::Wood(Wood { kind: WoodKind::Composite { .. }, .. }) => composite::SOURCE,
        Values::IJoist(_) => capacities::SOURCE,
        Values::Rolled(_) => rolled::SOURCE,
        Values::DeclaredSteel(_) | Values::FilledPipe(_) => "no product that declares them",
    };
    source.to_owned()
}

fn in_plan(section: &Section) -> String {
    let plies = match section.pieces {
        1 => String::new(),
        pieces => format!(" ({pieces} of {})", inches(section.piece_width)),
    };
    format!("- {}{plies} wide, {} deep", inches(section.width()), inches(section.depth))
}

/// Sixteenths where they are exact, else the published decimals.
fn inches(length: Length) -> String {
    if length.rounded_to(Length::sixteenths(0, 1)) == length {
        length.in_inches().to_string()
    } else {
        let decimals = format!("{:.3}", length.to_inches());
        format!("{}\"", decimals.trim_end_matches('0'))
    }
}

fn of_rectangle(section: &Section) -> String {
    let (width, depth) = (section.width(), section.depth);
    format!(
        "- A {}, S {}, I {}",
        Quantity::from(width * depth),
        Quantity::from(section_modulus(width, depth)),
        Quantity::from(second_moment(width, depth))
    )
}

fn of_shape(shape: &Rolled) -> String {
    format!(
        "- A {}, Ix {}, Sx {}, Zx {}, ry {:.2}\"",
        Quantity::from(shape.area),
        Quantity::from(shape.major.second_moment),
        Quantity::from(shape.major.elastic_modulus),
        Quantity::from(shape.major.plastic_modulus),
        shape.minor.radius.to_inches()
    )
}

/// The values before any adjustment, and that there is one.
fn of_values(values: &Values) -> Vec<String> {
    let known = |values: &[(&str, Option<Quantity>)]| {
        let known = values.iter().filter_map(|(symbol, value)| Some(format!("{symbol} {}", value.as_ref()?)));
        known.collect::<Vec<_>>().join(", ")
    };
    match values {
        Values::Wood(wood) => {
            let stress = |value: Option<Stress>| value.map(Quantity::from);
            let all = [
                ("Fb", stress(wood.bending)),
                ("Ft", stress(wood.tension)),
                ("Fv", stress(wood.shear)),
                ("Fc-perp", stress(wood.bearing)),
                ("Fc", stress(wood.compression)),
                ("E", stress(wood.modulus)),
                ("Emin", stress(wood.modulus_for_stability)),
            ];
            vec![
                format!("- {}", known(&all)),
                "- before adjustment: each check applies its factors of duration, service and size"
                    .to_owned(),
            ]
        }
        Values::IJoist(joist) => vec![of_i_joist(joist)],
        Values::FilledPipe(pipe) => of_filled_pipe(pipe),
        Values::DeclaredSteel(steel) => {
            let all =
                [("Fy", steel.yield_stress.map(Quantity::from)), ("E", steel.modulus.map(Quantity::from))];
            vec![format!("- {}", known(&all))]
        }
        Values::Rolled(_) => Vec::new(),
    }
}

fn of_i_joist(joist: &IJoist) -> String {
    let force = |value: Option<Force>| value.map(Quantity::from);
    let all = [
        ("M", joist.moment.map(Quantity::from)),
        ("V", force(joist.shear)),
        ("end reaction", force(joist.end_reaction)),
        ("inner reaction", force(joist.inner_reaction)),
        ("EI", joist.rigidity.map(Quantity::from)),
    ];
    let known = all.iter().filter_map(|(symbol, value)| Some(format!("{symbol} {}", value.as_ref()?)));
    format!("- {}", known.collect::<Vec<_>>().join(", "))
}

fn of_filled_pipe(pipe: &FilledPipe) -> Vec<String> {
    let declared = pipe.capacities.iter().map(|(force, up_to)| match up_to {
        Some(up_to) => format!("- declared: {} up to {up_to}", Quantity::from(*force)),
        None => format!("- declared: {}", Quantity::from(*force)),
    });
    declared.collect()
}

#[cfg(test)]
mod tests {
    use crate::ide::hover::tests::{LOON_COVE, check};

    /// A 2x10 by PS 20 is 1-1/2 x 9-1/4, by hand 13.875 sq in, 21.39 in3, 98.93 in4; spruce-pine-fir No.2 from memory.
    #[test]
    fn from_memory_a_sawn_size_says_its_section_and_its_values() {
        check(
            LOON_COVE,
            "size          2x10 SP$0F No.2\n  fill",
            "2x10 SPF No.2",
            &[
                "a 2x10 is 1-1/2\" x 9-1/4\"",
                "A 13.9 sq in, S 21.4 in3, I 98.9 in4",
                "Fb 875 psi",
                "Fc-perp 425 psi",
                "E 1,400,000 psi",
                "before adjustment",
                "from NDS Supplement (2018) table 4A, from memory",
                "have it checked",
            ],
        );
    }

    /// AISC Shapes Database v15.0: a W8x24 is 7.93" deep, 6.5" wide, with Ix 82.7 in4, Sx 20.9 in3, Zx 23.1 in3.
    #[test]
    fn a_rolled_shape_says_its_published_properties() {
        check(
            LOON_COVE,
            "size          W8x$024",
            "W8x24",
            &[
                "6-1/2\" wide, 7.93\" deep",
                "weighs 24.0 plf",
                "Ix 82.7 in4, Sx 20.9 in3, Zx 23.1 in3",
                "from AISC Shapes Database v15.0, read in a copy open to the public",
            ],
        );
    }

    #[test]
    fn a_declared_product_says_who_declares_it() {
        let declared = "product LV14, declared: supplier's letter, invented for this sample on 2027-01-15";
        check(LOON_COVE, "size          3-p$0ly LV14", "3-ply LV14", &["Fb 2,600 psi", declared]);
        check(
            LOON_COVE,
            "product LV$014",
            "LV14",
            &["as in 3-ply LV14", "5-1/4\" (3 of 1-3/4\") wide, 14\" deep", declared],
        );
    }
}
