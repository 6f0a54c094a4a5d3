//! Floor openings: their tails, headers and trimmers, and what these hang on.
//!
//! The takedown lets the floor's load run through an opening, as the stair in it weighs and lives the same; here the opening
//! is framed as it is built: tails hang from headers, headers from trimmers, trimmers reach from support to support. The
//! floor's own load counts, not that of walls or posts beside the opening.

use crate::design::loads::{Combination, duration_factor};
use crate::design::wood::bending::bending_stress;
use crate::design::wood::i_joist::moment_capacity;
use crate::design::wood::rectangle::section_modulus;
use crate::design::wood::repetitive::Row;
use crate::model::Model;
use crate::model::framing::Joists;
use crate::model::member::Member;
use crate::model::openings::Opening;
use crate::model::plan::PlanRect;
use crate::model::stuff::Values;
use crate::model::support::Connector;
use crate::statics::cases::ByCase;
use crate::statics::continuous::{Hold, Line, Prop, Push, Stretch, Unstable};
use crate::statics::joists;
use crate::statics::member_line::REFERENCE;
use crate::units::{AreaLoad, Force, Length, LineLoad, Moment};
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::demands::combinations;
use crate::verify::limit_state::LimitState;
use crate::verify::quantity::Quantity;
use crate::verify::wood_values::Adjusting;

/// Verifies every opening in a framed floor.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    known.model.openings.iter().flat_map(|opening| of_opening(known, opening)).collect()
}

/// An opening as its framing meets it.
struct Framed {
    /// From the support below along the joists to the header, and from the other header to the support above.
    tails: [Length; 2],
    /// Between the trimmers.
    width: Length,
    /// Between the supports.
    trimmer_span: Length,
    /// From the lower support to each header.
    headers_at: [Length; 2],
    /// From joist to joist.
    spacing: Length,
    /// Of the floor, by the combination that makes it most.
    load: AreaLoad,
    combination: &'static Combination,
    duration: f64,
}

fn of_opening(known: &Known<'_>, opening: &Opening) -> Vec<Verification> {
    let Some(rect) = opening.fill.first() else { return Vec::new() };
    let Some(framed) = framed(known.model, opening, rect) else { return Vec::new() };
    let mut found = Vec::new();
    let mut take = |part: &str, limit_state: LimitState, outcome: Result<Check, NotVerified>| {
        found.push(Verification {
            of: opening.common.id,
            part: Some(part.into()),
            against: None,
            limit_state,
            outcome,
        });
    };
    let longest = framed.tails[0].max(framed.tails[1]);
    let on_tail: Force = framed.load * framed.spacing * longest * 0.5;
    if let Some(connector) = opening.tails.value() {
        take("tails", LimitState::Connector, hanger(&framed, connector, on_tail));
    }
    let on_header: LineLoad = framed.load * longest * 0.5;
    let end_of_header: Force = on_header * framed.width * 0.5;
    if let Some(headers) = opening.headers.value() {
        if let Some(connector) = &headers.by {
            take("headers", LimitState::Connector, hanger(&framed, connector, end_of_header));
        }
        let moment = on_header * framed.width * framed.width * 0.125;
        take(
            "headers",
            LimitState::Bending,
            bending(known.model, &framed, (headers.count, &headers.member), moment),
        );
    }
    if let Some((count, member)) = opening.trimmers.value() {
        let outcome = trimmer_moment(&framed)
            .and_then(|moment| bending(known.model, &framed, (*count, member), moment));
        take("trimmers", LimitState::Bending, outcome);
    }
    found
}

fn framed(model: &Model, opening: &Opening, rect: &PlanRect) -> Option<Framed> {
    let floor = opening.floor.value()?.target?;
    let run_through = |joists: &&Joists| {
        joists.floor.value().and_then(|of| of.target) == Some(floor)
            && joists.fill.iter().any(|fill| {
                fill.x.0 <= rect.x.0 && rect.x.1 <= fill.x.1 && fill.y.0 <= rect.y.0 && rect.y.1 <= fill.y.1
            })
    };
    let joists = model.joists.iter().find(run_through)?;
    let field = joists::field(model, joists, REFERENCE).ok()?;
    let (low, high) = rect.on(field.run);
    let across = rect.on(field.run.across());
    let middle = (across.0 + across.1).half();
    let reaching =
        field.supports.iter().filter(|support| support.reach.0 <= middle && middle <= support.reach.1);
    let stations: Vec<Length> = reaching.map(|support| (support.strip.0 + support.strip.1).half()).collect();
    let below = stations.iter().copied().filter(|station| *station <= low).max()?;
    let above = stations.iter().copied().filter(|station| *station >= high).min()?;
    let floor = model.floor(floor)?;
    let load = ByCase { dead: floor.dead.get()?, live: floor.live.get()?, ..ByCase::default() };
    let acts = [load.dead > AreaLoad::ZERO, load.live > AreaLoad::ZERO, false, false];
    let factored = |combination: &Combination| load.factored([combination.dead, combination.live, 0.0, 0.0]);
    let combination = combinations(acts)
        .max_by(|one, other| factored(one).to_psf().total_cmp(&factored(other).to_psf()))?;
    Some(Framed {
        tails: [low - below, above - high],
        width: across.1 - across.0,
        trimmer_span: above - below,
        headers_at: [low - below, high - below],
        spacing: joists.spacing.get()?.step,
        load: factored(combination),
        combination,
        duration: duration_factor(combination, acts),
    })
}

fn hanger(framed: &Framed, connector: &Connector, reaction: Force) -> Result<Check, NotVerified> {
    let capacity = match connector {
        Connector::Hanger { capacity, .. } | Connector::Clip { capacity, .. } => *capacity,
        Connector::Ledger(_) | Connector::None => None,
    };
    let capacity =
        capacity.ok_or_else(|| NotVerified::NoForces("its connector declares no capacity".into()))?;
    let steps = vec![
        Step::read("w", framed.load, "load of the floor"),
        Step::read("R", reaction, "half of what the piece carries"),
        Step::read("capacity", capacity, "declared"),
    ];
    Ok(check(framed, reaction.into(), capacity.into(), "declared", steps, Vec::new()))
}

fn check(
    framed: &Framed,
    demand: Quantity,
    capacity: Quantity,
    clause: &'static str,
    steps: Vec<Step>,
    assumed: Vec<Box<str>>,
) -> Check {
    let combination = framed.combination.name;
    Check { demand, capacity, combination, pattern: None, at: None, clause, steps, assumed }
}

/// The moment in a trimmer: half a bay of floor on each side outside of the opening's stretch, both headers' ends on it.
fn trimmer_moment(framed: &Framed) -> Result<Moment, NotVerified> {
    let refused = |why: Unstable| NotVerified::NoForces(why.to_string().into());
    let prop = |at: Length| Prop { at, hold: Hold::Pinned, settlement: Length::ZERO };
    let line = Line {
        length: framed.trimmer_span,
        stretches: vec![Stretch {
            to: framed.trimmer_span,
            rigidity: REFERENCE.rigidity,
            shear_rigidity: None,
        }],
        props: vec![prop(Length::ZERO), prop(framed.trimmer_span)],
        hinges: Vec::new(),
    };
    let strip = framed.load * framed.spacing;
    let mut pushes =
        vec![Push::Spread { from: Length::ZERO, to: framed.trimmer_span, start: strip, end: strip }];
    for (at, tail) in framed.headers_at.iter().zip(framed.tails) {
        let force: Force = framed.load * tail * 0.5 * framed.width * 0.5;
        pushes.push(Push::Point { at: *at, force });
    }
    let response = line.prepare().and_then(|prepared| prepared.response(&pushes)).map_err(refused)?;
    Ok(response.extremes().sagging.0)
}

/// Bending of so many pieces of a member side by side; the deck holds their upper edge.
fn bending(
    model: &Model,
    framed: &Framed,
    (count, member): (u32, &Member),
    moment: Moment,
) -> Result<Check, NotVerified> {
    let stuff = model.stuff_of(member)?;
    let pieces = stuff.section.pieces.saturating_mul(count);
    match &stuff.values {
        Values::Wood(wood) => {
            let adjusting = Adjusting::of(model, &stuff, wood)?;
            let row = Row { members: pieces, spacing: Length::ZERO, is_joined: true };
            let allowable = adjusting.bending(framed.duration, row, false, false)?;
            let breadth = stuff.section.piece_width * i64::from(pieces);
            let modulus = section_modulus(breadth, stuff.section.depth);
            let stress = bending_stress(moment, modulus);
            let steps = vec![
                Step::read("M", moment, "statics of the opening's framing"),
                Step::worked(
                    "fb",
                    "M / S",
                    vec![("M", moment.into()), ("S", modulus.into())],
                    stress,
                    "NDS 2018 3.3.2.1",
                ),
                allowable.step,
            ];
            let capacity = allowable.value.into();
            Ok(check(framed, stress.into(), capacity, "NDS 2018 3.3.1", steps, adjusting.assumed.clone()))
        }
        Values::IJoist(joist) => {
            let reference =
                joist.moment.ok_or_else(|| NotVerified::NoForces("its product declares no moment".into()))?;
            let one = moment_capacity(reference, framed.duration);
            let capacity = one * f64::from(pieces);
            let steps = vec![
                Step::read("M", moment, "statics of the opening's framing"),
                Step::worked(
                    "M'",
                    "n M CD",
                    vec![
                        ("n", f64::from(pieces).into()),
                        ("M", reference.into()),
                        ("CD", framed.duration.into()),
                    ],
                    capacity,
                    "NDS 2018 table 7.3.1",
                ),
            ];
            let assumed = stuff.assumed.clone();
            Ok(check(framed, moment.into(), capacity.into(), "NDS 2018 table 7.3.1", steps, assumed))
        }
        Values::Rolled(_) | Values::DeclaredSteel(_) | Values::FilledPipe(_) => {
            Err(NotVerified::NoForces("steel round a floor opening is not checked here".into()))
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::testing::rule_check::house;
    use crate::verify::limit_state::LimitState;

    const FLOOR: &str = "
grid
  x  A 0', B 20'
  y  1 0', 2 16'
floor main
  subfloor  100'-0\"
  deck      3/4\"
  live      40 psf
  dead      10 psf
joists J1
  floor     main
  size      2x12 SPF No.2
  fill      A to B by 1 to 2
  run       along y
  spacing   16\" from A
  span      by grid
  bears on  W1
  bears on  W2
wall W1
  kind      concrete
  from      A/1 to B/1
  line      centre
  thick     8\"
  stands on outside \"rock\"
wall W2
  kind      concrete
  from      A/2 to B/2
  line      centre
  thick     8\"
  stands on outside \"rock\"
opening O1
  floor     main
  fill      A plus 8' to A plus 12' by 1 plus 10' to 2 less 3'
  trimmers  2 of 2x12 SPF No.2 each side
  headers   2 of 2x12 SPF No.2 by hanger 900 lb \"face mount\" source \"invented\"
  tails     by hanger 300 lb \"face mount\" source \"invented\"
";

    /// By hand, 50 psf: tails of 10'-0" bring 50 x 1.333 x 10 / 2 = 333 lb each to the header, which has 250 plf on 4'-0":
    /// 500 lb at each end, M 500 lb-ft.
    /// Trimmer on 16'-0": 66.7 plf, 500 lb at 10 ft and 150 lb at 13 ft; the shear changes sign at 10 ft:
    /// R = 533.3 + 500 x 6/16 + 150 x 3/16 = 748.9 lb, M at 10 ft 7,489 - 66.67 x 50 = 4,156 lb-ft.
    #[test]
    fn an_opening_by_hand() {
        let house = house(FLOOR);
        let opening = house.model.named("O1").unwrap();
        let found = |part: &str, limit_state: LimitState| {
            house
                .verifications
                .of(opening)
                .find(|it| it.part.as_deref() == Some(part) && it.limit_state == limit_state)
                .unwrap_or_else(|| panic!("{part}"))
        };
        let tails = found("tails", LimitState::Connector).outcome.as_ref().unwrap();
        assert_eq!(tails.demand.to_string(), "333 lb");
        assert!(tails.ratio() > 1.0);
        let headers = found("headers", LimitState::Connector).outcome.as_ref().unwrap();
        assert_eq!(headers.demand.to_string(), "500 lb");
        let bent = found("headers", LimitState::Bending).outcome.as_ref().unwrap();
        assert_eq!(bent.steps.first().unwrap().result.to_string(), "500 lb-ft");
        let trimmers = found("trimmers", LimitState::Bending).outcome.as_ref().unwrap();
        assert_eq!(trimmers.steps.first().unwrap().result.to_string(), "4,156 lb-ft");
    }
}
