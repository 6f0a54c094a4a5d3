//! Base plates and caps of steel columns: how thick they must be, and how long.

use crate::design::NotCovered;
use crate::design::steel::grades::A36;
use crate::design::steel::plates::{self, LoadOnConcrete, overhang};
use crate::design::wood::bearing::required_length;
use crate::geometry::bearing;
use crate::geometry::plan_contacts::{cap_length, cap_width};
use crate::model::framing::{Base, Beam, Cap, Column};
use crate::model::stuff::Values;
use crate::products::rolled::{Outline, Rolled};
use crate::statics::member_line::MemberLine;
use crate::units::Length;
use crate::verify::Known;
use crate::verify::bearings::Pressing;
use crate::verify::bearings::layer;
use crate::verify::bearings::members::most_on;
use crate::verify::bearings::standing::heaviest_place;
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::footings::Worst;
use crate::verify::limit_state::LimitState;

/// Nothing that lies on a cap has less than this: NDS and the residential code's bearing on wood or metal, from memory.
const LEAST_ON_CAP: Length = Length::sixteenths(1, 8);

/// Nobody states the steel of a plate.
const PLATE_STEEL: &str = "plate steel A36";

/// Verifies the base plate and the cap of every column.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut all = Vec::new();
    for column in &known.model.columns {
        all.extend(base_plate(known, column));
        all.extend(cap(known, column));
    }
    all
}

/// What the plate sees of a column: a listed shape or a pipe.
fn outline(known: &Known<'_>, column: &Column) -> Option<plates::Column> {
    let member = column.size.value()?;
    match known.model.stuff_of(member).ok()?.values {
        Values::Rolled(shape) => Some(of_shape(shape)),
        Values::FilledPipe(pipe) => Some(plates::Column::Pipe { outside: pipe.outside }),
        Values::Wood(_) | Values::IJoist(_) | Values::DeclaredSteel(_) => None,
    }
}

const fn of_shape(shape: &Rolled) -> plates::Column {
    match shape.outline {
        Outline::WideFlange { depth, flange_width, .. } => plates::Column::WideFlange { depth, flange_width },
        Outline::Tube { depth, width, .. } => plates::Column::Tube { along: depth, across: width },
        Outline::Pipe { outside, .. } => plates::Column::Pipe { outside },
    }
}

fn base_plate(known: &Known<'_>, column: &Column) -> Option<Verification> {
    let id = column.common.id;
    let Some(Base::Plate([one, other, thickness], _)) = column.base.value() else { return None };
    let outline = outline(known, column)?;
    let pressing = heaviest_place(known, id)?;
    let outcome = match outline {
        plates::Column::WideFlange { .. } => Err(NotCovered::NoRule {
            what: "a base plate between the flanges of a W shape",
            clause: "AISC Design Guide 1",
        }
        .into()),
        plates::Column::Tube { .. } | plates::Column::Pipe { .. } => {
            // The strength of the concrete decides only between the flanges of a W shape.
            let load = LoadOnConcrete { load: pressing.force, allowable: pressing.force };
            let turned = [[*one, *other], [*other, *one]];
            let needed = turned.map(|sides| plates::base(outline, sides, load, A36.yield_strength));
            thicker(needed).map(|needed| Check {
                demand: needed.thickness.into(),
                capacity: (*thickness).into(),
                combination: pressing.combination,
                pattern: None,
                at: None,
                clause: "AISC Design Guide 1",
                steps: vec![
                    Step::read("Pa", pressing.force, "takedown"),
                    Step::worked(
                        "fp",
                        "Pa / ( B N )",
                        vec![("Pa", pressing.force.into()), ("B", (*one).into()), ("N", (*other).into())],
                        needed.pressure,
                        "AISC Design Guide 1",
                    ),
                    Step::read("m", needed.governing, "how far the plate reaches past the column"),
                    Step::read("Fy", A36.yield_strength, "the usual grade, assumed"),
                    Step::worked(
                        "t",
                        "m sqrt( 3.34 fp / Fy )",
                        vec![
                            ("m", needed.governing.into()),
                            ("fp", needed.pressure.into()),
                            ("Fy", A36.yield_strength.into()),
                        ],
                        needed.thickness,
                        "AISC 360 F11, factor 1.67",
                    ),
                ],
                assumed: vec![PLATE_STEEL.into()],
            })
        }
    };
    let against = column.stands_on.value().and_then(|stand| stand.on.reference()?.target);
    Some(Verification { of: id, part: None, against, limit_state: LimitState::BasePlate, outcome })
}

/// No line says how an oblong plate is turned: the turning that needs more.
fn thicker(turned: [Result<plates::BasePlate, NotCovered>; 2]) -> Result<plates::BasePlate, NotVerified> {
    let [one, other] = turned;
    let (one, other) = (one?, other?);
    Ok(if one.thickness >= other.thickness { one } else { other })
}

/// One member that lies on a cap.
struct OnCap<'a> {
    beam: &'a Beam,
    line: &'a MemberLine,
    seat: usize,
    /// What it has of the cap.
    length: Length,
}

fn cap(known: &Known<'_>, column: &Column) -> Vec<Verification> {
    let id = column.common.id;
    let thickness = match column.cap.value() {
        Some(Cap::Plate([_, _, thickness], _)) => Some(*thickness),
        Some(Cap::Saddle(_, thickness)) => *thickness,
        Some(Cap::Seat(_) | Cap::None) | None => return Vec::new(),
    };
    let (mut lengths, mut bendings) = (Worst::default(), Worst::default());
    for on in on_cap(known, column) {
        let pressing = match most_on(on.line, on.seat, 1.0) {
            Ok(Some(pressing)) => pressing,
            Ok(None) => continue,
            Err(why) => {
                lengths.take_at(Err(why), None, Some(on.beam.common.id));
                continue;
            }
        };
        let against = Some(on.beam.common.id);
        lengths.take_at(long_enough(known, &on, &pressing), None, against);
        if let Some((outline, thickness)) = outline(known, column).zip(thickness) {
            bendings.take_at(bent(known, column, &on, &pressing, outline, thickness), None, against);
        }
    }
    let length = lengths.verification(id, LimitState::CapLength);
    length.into_iter().chain(bendings.verification(id, LimitState::CapBending)).collect()
}

fn on_cap<'a>(known: &Known<'a>, column: &Column) -> Vec<OnCap<'a>> {
    let id = column.common.id;
    let mut found = Vec::new();
    for beam in &known.model.beams {
        for line in known.forces.lines_of(beam.common.id) {
            for (seat, place) in line.seats.iter().enumerate() {
                let support = beam.supports.get(place.support);
                let contact = support.and_then(|support| bearing::of_beam(known.model, beam, support).ok());
                if let Some(contact) = contact.filter(|_| place.on.element() == Some(id)) {
                    found.push(OnCap { beam, line, seat, length: contact.of_each });
                }
            }
        }
    }
    found
}

/// Wood needs what its reaction asks of its fibres; everything needs the least.
fn long_enough(known: &Known<'_>, on: &OnCap<'_>, pressing: &Pressing) -> Result<Check, NotVerified> {
    let id = on.beam.common.id;
    let member = on.beam.size.value().ok_or(NotVerified::Missing(id, "size"))?;
    let breadth = if on.beam.is_laid_flat { member.depth() } else { member.width() };
    let breadth = breadth.ok_or(NotVerified::Missing(id, "size"))?;
    let mut steps = vec![Step::read("R", pressing.force, "takedown")];
    let mut needed = LEAST_ON_CAP;
    if member.is_steel() == Some(false)
        && let Some(wood) = layer::of_member(known, member, String::new(), None)?
    {
        let by_stress = required_length(pressing.force, breadth, wood.allowable)?;
        steps.push(wood.step);
        steps.push(Step::worked(
            "lb",
            "R / ( Fc-perp' b )",
            vec![("R", pressing.force.into()), ("Fc-perp'", wood.allowable.into()), ("b", breadth.into())],
            by_stress,
            "NDS 2018 3.10.2",
        ));
        needed = needed.max(by_stress);
    }
    steps.push(Step::read("least", LEAST_ON_CAP, "common practice"));
    Ok(Check {
        demand: needed.into(),
        capacity: on.length.into(),
        combination: pressing.combination,
        pattern: pressing.pattern.clone(),
        at: None,
        clause: "NDS 2018 3.10.2",
        steps,
        assumed: Vec::new(),
    })
}

/// The plate past the column, under what lies there spread evenly.
fn bent(
    known: &Known<'_>,
    column: &Column,
    on: &OnCap<'_>,
    pressing: &Pressing,
    outline: plates::Column,
    thickness: Length,
) -> Result<Check, NotVerified> {
    let id = column.common.id;
    let missing = NotVerified::Missing(id, "cap");
    let length = cap_length(column, on.line.axis, known.model).ok_or(missing.clone())?;
    let width = match cap_width(column, on.line.axis, known.model) {
        Some(width) => width,
        // A saddle is made as wide as its beam.
        None => on.beam.size.value().and_then(|size| size.width()).ok_or(missing)?,
    };
    let [along, across] = outline.held();
    let reach = (length - along.min(across)).half().max(Length::ZERO);
    let fy = A36.yield_strength;
    let needed = overhang(reach, width, pressing.force, on.length, fy)?;
    Ok(Check {
        demand: needed.thickness.into(),
        capacity: thickness.into(),
        combination: pressing.combination,
        pattern: pressing.pattern.clone(),
        at: None,
        clause: "AISC 360 F11",
        steps: vec![
            Step::read("R", pressing.force, "takedown"),
            Step::read("m", needed.reach, "how far the cap reaches past the column"),
            Step::worked(
                "w",
                "R / l",
                vec![("R", pressing.force.into()), ("l", on.length.into())],
                needed.line,
                "spread evenly, common practice",
            ),
            Step::read("M", needed.moment, "statics of the overhang"),
            Step::read("Fy", fy, "the usual grade, assumed"),
            Step::worked(
                "t",
                "sqrt( 4 ( 1.67 M ) / ( b Fy ) )",
                vec![("M", needed.moment.into()), ("b", width.into()), ("Fy", fy.into())],
                needed.thickness,
                "AISC 360 F11",
            ),
        ],
        assumed: vec![PLATE_STEEL.into()],
    })
}
