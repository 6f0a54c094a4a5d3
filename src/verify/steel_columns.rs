//! Steel columns: tubes, pipes and W shapes in compression, with the moment that unequal beams on the cap put in them;
//! filled pipes by their declared capacities.

mod head;

use crate::design::NotCovered;
use crate::design::steel::Strength;
use crate::design::steel::combined::{amplifier, interaction};
use crate::design::steel::compression::{self, Compression};
use crate::design::steel::flexure::{self, About};
use crate::design::steel::grades::ELASTIC_MODULUS;
use crate::geometry::columns::ColumnStack;
use crate::model::framing::Column;
use crate::model::stuff::{FilledPipe, Values};
use crate::units::{Force, Length, Moment};
use crate::verify::Known;
use crate::verify::check::{Check, NotVerified, Step, Verification};
use crate::verify::limit_state::LimitState;
use crate::verify::steel::{self, Shape, Steel, read, worked};
use crate::verify::steel_columns::head::{HeadLoad, Landing};

/// Verifies every steel column.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut found = Vec::new();
    for (column, stack) in known.model.columns.iter().zip(&known.geometry.columns) {
        let Some(member) = column.size.value() else { continue };
        let kind = match known.model.stuff_of(member).map(|stuff| stuff.values) {
            Ok(Values::Rolled(shape)) => steel::of(member, shape).map(Kind::Bare),
            Ok(Values::FilledPipe(pipe)) => Ok(Kind::Filled(pipe)),
            Ok(Values::DeclaredSteel(_)) => {
                Err(NotCovered::NoRule { what: "a steel shape of a product", clause: "no properties" }.into())
            }
            Ok(Values::Wood(_) | Values::IJoist(_)) | Err(_) => continue,
        };
        found.extend(kind.map_or_else(
            |why| vec![verification(column, LimitState::Compression, Err(why))],
            |kind| of_column(known, column, stack, &kind),
        ));
    }
    found
}

/// What a column is made as.
#[derive(Clone, Debug, PartialEq)]
pub enum Kind {
    /// A listed shape.
    Bare(Steel),
    /// A pipe full of concrete.
    Filled(FilledPipe),
}

/// Verifies one column as if it were of this kind.
pub fn of_column(known: &Known<'_>, column: &Column, stack: &ColumnStack, kind: &Kind) -> Vec<Verification> {
    let landings = head::landings(known, column);
    let loads = head::head_loads(&landings);
    if landings.is_empty() {
        let why = NotVerified::NoForces("no load could be followed to it".into());
        return vec![verification(column, LimitState::Compression, Err(why))];
    }
    let bearing = unbraced(column, stack).and_then(|length| capacity(kind, length));
    let capacity = match bearing {
        Ok(capacity) => capacity,
        Err(why) => return vec![verification(column, LimitState::Compression, Err(why))],
    };
    let mut found = vec![verification(column, LimitState::Compression, compressed(&capacity, &loads))];
    let balance = balance(&capacity, &landings, &loads);
    found.extend(balance.map(|check| verification(column, LimitState::CapBalance, check)));
    found
}

fn verification(
    column: &Column,
    limit_state: LimitState,
    outcome: Result<Check, NotVerified>,
) -> Verification {
    Verification { of: column.common.id, part: None, against: None, limit_state, outcome }
}

/// The clear length between the ends of the column, or between an end and the brace, whichever is longer.
fn unbraced(column: &Column, stack: &ColumnStack) -> Result<Length, NotVerified> {
    let id = column.common.id;
    if column.braced.is_broken() || column.common.may_say("braced") {
        return Err(NotVerified::Missing(id, "braced"));
    }
    let whole = match &stack.cut {
        Ok(cut) => cut.total(),
        Err(unknown) => return Err(NotVerified::Missing(unknown.of.unwrap_or(id), unknown.fact)),
    };
    Ok(match column.braced.get().flatten() {
        Some(at) if Length::ZERO < at && at < whole => at.max(whole - at),
        Some(_) | None => whole,
    })
}

/// What a column bears.
struct Capacity {
    /// Along its axis.
    axial: Force,
    /// In bending, and at which load along the axis it buckles while elastic; `None` where only loads in the axis are
    /// declared.
    bending: Option<(Strength<Moment>, Force)>,
    /// Its shorter side.
    side: Length,
    clause: &'static str,
    steps: Vec<Step>,
    assumed: Vec<Box<str>>,
}

fn capacity(kind: &Kind, length: Length) -> Result<Capacity, NotVerified> {
    match kind {
        Kind::Bare(steel) => of_shape(steel, length),
        Kind::Filled(pipe) => declared(pipe, length),
    }
}

fn of_shape(steel: &Steel, length: Length) -> Result<Capacity, NotVerified> {
    let yield_strength = steel.yield_strength;
    let (compression, bending, side): (Compression, Strength<Moment>, Length) = match &steel.shape {
        Shape::WideFlange(shape) => (
            compression::wide_flange(shape, yield_strength, [length; 2])?,
            flexure::wide_flange_about_minor(shape, yield_strength)?.strength,
            shape.flange_width.min(shape.depth),
        ),
        Shape::Tube(tube) => (
            compression::tube(tube, yield_strength, [length; 2])?,
            flexure::tube(tube, About::Minor, yield_strength, length, 1.0)?.strength,
            tube.width,
        ),
        Shape::Pipe(pipe) => (
            compression::pipe(pipe, yield_strength, length)?,
            flexure::pipe(pipe, yield_strength)?.strength,
            pipe.outside,
        ),
    };
    let rigidity = ELASTIC_MODULUS * steel.shape.weaker_axis().second_moment;
    let elastic = Force::lb(std::f64::consts::PI.powi(2) * rigidity.to_lb_in2() / length.to_inches().powi(2));
    let is_slender_wall = compression.elements.iter().any(|element| element.is_reduced());
    let clause = if is_slender_wall { "AISC 360 E7" } else { "AISC 360 E3" };
    let axial = compression.strength.allowable() * steel.pieces;
    let mut assumed: Vec<Box<str>> = steel.assumed.into_iter().map(Box::from).collect();
    if !steel.shape.is_alike_both_ways() {
        assumed.push("it is bent about its weaker axis".into());
    }
    Ok(Capacity {
        axial,
        bending: Some((
            Strength { nominal: bending.nominal * steel.pieces, ..bending },
            elastic * steel.pieces,
        )),
        side,
        clause,
        steps: vec![
            read("Lc", length, "clear length between its ends or its brace, K 1.0"),
            read(
                "Lc / r",
                compression.buckling.slenderness,
                "AISC 360 E2: 200 at most is advised (from memory)",
            ),
            read("Fy", yield_strength, steel.grade_source()),
            read("Fn", compression.buckling.stress, "AISC 360 E3"),
            read("Ae", compression.effective_area, clause),
            worked(
                "Pa",
                "n Fn Ae / Ω",
                [("n", steel.pieces.into()), ("Ω", compression.strength.safety_factor.into())],
                axial,
                "AISC 360 E1",
            ),
        ],
        assumed,
    })
}

/// Between two declared lengths on a line; below the shortest one what holds there; beyond the longest one nothing.
fn declared(pipe: &FilledPipe, length: Length) -> Result<Capacity, NotVerified> {
    const CLAUSE: &str = "declared by the product";
    let mut values: Vec<(Length, Force)> =
        pipe.capacities.iter().filter_map(|(force, at)| Some(((*at)?, *force))).collect();
    values.sort_by_key(|(at, _)| *at);
    let without_length = pipe.capacities.iter().find(|(_, at)| at.is_none()).map(|(force, _)| *force);
    let mut assumed: Vec<Box<str>> = Vec::new();
    let axial = match (values.first(), values.last(), without_length) {
        (Some(shortest), Some(longest), _) => {
            if length > longest.0 {
                let (value, limit) = (length, longest.0);
                return Err(NotCovered::LengthOutOfRange {
                    quantity: "the length",
                    value,
                    limit,
                    clause: CLAUSE,
                }
                .into());
            }
            let mut pairs = values.iter().zip(values.iter().skip(1));
            let between = pairs.find(|(low, high)| low.0 < length && length <= high.0);
            between.map_or(shortest.1, |(low, high)| {
                low.1 + (high.1 - low.1) * ((length - low.0) / (high.0 - low.0))
            })
        }
        (_, _, Some(force)) => {
            assumed.push("the product's capacity holds at this length: it names none".into());
            force
        }
        (_, _, None) => {
            let what = "a filled pipe whose product declares no capacity";
            return Err(
                NotCovered::NoRule { what, clause: "AISC 360 I2.2 asks for wall and concrete" }.into()
            );
        }
    };
    Ok(Capacity {
        axial,
        bending: None,
        side: pipe.outside,
        clause: CLAUSE,
        steps: vec![
            read("Lc", length, "clear length between its ends or its brace"),
            read("Pa", axial, "the product's capacities, between two lengths on a line"),
        ],
        assumed,
    })
}

/// One load on a column with how full that makes it.
struct Filling<'a> {
    load: &'a HeadLoad,
    axial: f64,
    /// The moments, amplified, over what the column bears.
    bent: [f64; 2],
    amplifier: f64,
    equation: &'static str,
    ratio: f64,
}

fn filling<'a>(capacity: &Capacity, load: &'a HeadLoad) -> Result<Filling<'a>, NotCovered> {
    let axial = load.load / capacity.axial;
    let is_bent = load.moment.iter().any(|moment| moment.abs() > LEAST);
    let Some((bending, elastic)) = capacity.bending.filter(|_| is_bent && axial < 1.0) else {
        return Ok(Filling { load, axial, bent: [0.0; 2], amplifier: 1.0, equation: "", ratio: axial });
    };
    let amplifier = amplifier(load.load.max(Force::ZERO), elastic, MOMENT_AT_ONE_END)?;
    let bent = load.moment.map(|moment| moment.abs() * amplifier / bending.allowable());
    let interaction = interaction(axial.max(0.0), bent)?;
    Ok(Filling { load, axial, bent, amplifier, equation: interaction.equation, ratio: interaction.ratio })
}

/// A moment below this is rounding.
const LEAST: Moment = Moment::lb_in(1.0);

/// Cm of a column bent at its head alone: AISC 360 Eq. A-8-4, 0.6 - 0.4 M1/M2, from memory.
const MOMENT_AT_ONE_END: f64 = 0.6;

/// The load that fills the column most.
fn compressed(capacity: &Capacity, loads: &[HeadLoad]) -> Result<Check, NotVerified> {
    let mut worst: Option<Filling<'_>> = None;
    for load in loads {
        let filling = filling(capacity, load)?;
        if worst.as_ref().is_none_or(|most| filling.ratio > most.ratio || filling.ratio.is_nan()) {
            worst = Some(filling);
        }
    }
    let worst = worst.ok_or(NotVerified::NoForces("no combination acts on it".into()))?;
    let mut steps = vec![read("P", worst.load.load, "statics: what lies on its head")];
    steps.extend(capacity.steps.iter().cloned());
    let (demand, full, clause) = match capacity.bending.filter(|_| !worst.equation.is_empty()) {
        Some((bending, _)) => {
            steps.extend(of_moment(&worst, bending));
            (worst.ratio.into(), 1.0.into(), "AISC 360 H1.1")
        }
        None => (worst.load.load.into(), capacity.axial.into(), capacity.clause),
    };
    Ok(Check {
        demand,
        capacity: full,
        combination: worst.load.combination.name,
        pattern: worst.load.pattern.clone(),
        at: None,
        clause,
        steps,
        assumed: capacity.assumed.clone(),
    })
}

fn of_moment(filling: &Filling<'_>, bending: Strength<Moment>) -> Vec<Step> {
    let [east, north] = filling.load.moment.map(Moment::abs);
    vec![
        read("Mx", east, "statics: reactions on the cap times their arms, along x"),
        read("My", north, "statics: the same along y"),
        read("B1", filling.amplifier, "AISC 360 Eq. A-8-3, Cm 0.6 of a moment at the head alone"),
        worked(
            "Ma",
            "Mn / Ω",
            [("Mn", bending.nominal.into()), ("Ω", bending.safety_factor.into())],
            bending.allowable(),
            "AISC 360 F",
        ),
        worked(
            "H1",
            "P / Pa with B1 M / Ma",
            [
                ("P / Pa", filling.axial.into()),
                ("B1 Mx / Ma", filling.bent[0].into()),
                ("B1 My / Ma", filling.bent[1].into()),
            ],
            filling.ratio,
            "AISC 360 Eq. H1-1a, H1-1b",
        ),
    ]
}

/// How far off the axis the load may act: a sixth of the column in any case (common practice), or as far as the column
/// bears it. `None` where nothing lies off the axis.
fn balance(
    capacity: &Capacity,
    landings: &[Landing],
    loads: &[HeadLoad],
) -> Option<Result<Check, NotVerified>> {
    let mut worst: Option<(f64, Check)> = None;
    for load in loads.iter().filter(|load| load.load > Force::ZERO) {
        let moment = load.moment.iter().fold(Moment::ZERO, |most, moment| most.max(moment.abs()));
        if moment <= LEAST {
            continue;
        }
        let arm = Length::decimal_inches(moment.to_lb_in() / load.load.to_lb());
        let borne = match borne(capacity, load) {
            Ok(borne) => borne,
            Err(why) => return Some(Err(why.into())),
        };
        let sixth = capacity.side.scaled(1.0 / 6.0);
        let allowed = borne.map_or(sixth, |borne| borne.max(sixth));
        let ratio = arm / allowed;
        if worst.as_ref().is_some_and(|(most, _)| ratio <= *most) {
            continue;
        }
        let mut steps: Vec<Step> = Vec::new();
        for (landing, share) in landings.iter().zip(&load.shares) {
            let arm = landing
                .arm
                .iter()
                .fold(Length::ZERO, |most, arm| if arm.abs() > most.abs() { *arm } else { most });
            if arm != Length::ZERO {
                steps.push(read("R", *share, "statics: a beam on the cap"));
                steps.push(read("a", arm, "from the axis to the middle of its bearing"));
            }
        }
        steps.push(worked("e", "sum R a / sum R", [("sum R", load.load.into())], arm, "statics"));
        steps.push(read("c / 6", sixth, "common practice: in the middle third"));
        steps.extend(borne.map(|borne| read("e at H1 = 1", borne, "AISC 360 H1.1")));
        let check = Check {
            demand: arm.into(),
            capacity: allowed.into(),
            combination: load.combination.name,
            pattern: load.pattern.clone(),
            at: None,
            clause: if borne.is_some() { "AISC 360 H1.1" } else { "common practice" },
            steps,
            assumed: capacity.assumed.clone(),
        };
        worst = Some((ratio, check));
    }
    worst.map(|(_, check)| Ok(check))
}

/// How far off the axis the column still bears this load; `None` where no moment is declared.
fn borne(capacity: &Capacity, load: &HeadLoad) -> Result<Option<Length>, NotCovered> {
    let Some((bending, elastic)) = capacity.bending else { return Ok(None) };
    let axial = load.load / capacity.axial;
    if axial >= 1.0 {
        return Ok(Some(Length::ZERO));
    }
    let amplifier = amplifier(load.load, elastic, MOMENT_AT_ONE_END)?;
    // H1-1a and H1-1b turned round.
    let left = if axial >= 0.2 { (1.0 - axial) * 9.0 / 8.0 } else { 1.0 - axial / 2.0 };
    let moment = bending.allowable() * (left / amplifier);
    Ok(Some(Length::decimal_inches(moment.to_lb_in() / load.load.to_lb())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::house::House;
    use crate::testing::rule_check::house;
    use crate::verify::quantity::Quantity;

    const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");
    const HOP_BARN: &str = include_str!("../../grammar/samples/hop-barn.framing");

    fn check(house: &House, name: &str, state: LimitState) -> Result<Check, NotVerified> {
        let of = house.model.named(name).unwrap();
        let mut found = house.verifications.of(of).filter(|verification| verification.limit_state == state);
        found.next().unwrap().outcome.clone()
    }

    fn pounds(quantity: Quantity) -> f64 {
        let Quantity::Force(force) = quantity else { panic!("no force") };
        force.to_lb()
    }

    fn step(check: &Check, symbol: &str) -> Quantity {
        check.steps.iter().find(|step| step.symbol == symbol).unwrap().result
    }

    fn near(found: f64, expected: f64, tolerance: f64) {
        assert!((found - expected).abs() <= tolerance, "{found}, expected {expected}");
    }

    /// By hand: tube 4 x 4 x 3/16 over 96.3", KL/r 62.1, 37.7 ksi x 2.58 / 1.67 = 58,200 lb; load 13,136 lb and 75 lb of its
    /// own weight. With live load on one side only it carries less and is bent: that governs nothing.
    #[test]
    fn a_column_between_even_spans_meets_the_hand_figures() {
        let house = house(LOON_COVE);
        let check = check(&house, "C1", LimitState::Compression).unwrap();
        near(pounds(check.capacity), 58_200.0, 60.0);
        near(pounds(check.demand), 13_136.0 + 75.0, 10.0);
        assert_eq!((check.combination, check.clause, check.pattern), ("D + L", "AISC 360 E3", None));
    }

    /// By hand: tube 4 x 4 x 1/4 over 104.4", 71,500 lb; Z 4.69 in3, 50 x 4.69 / 1.67 = 140.4 kip-in. T1 has 265 + 2 plf of
    /// dead and 960 + 6 of live load, the main joists hanging with spans between faces, and P1 weighs 184 lb. With D + 0.75 L +
    /// 0.75 S the long side brings 19,580 lb, the short one 5,950 lb, and 1,600 lb without its live load; arms 3". With all
    /// live load: 25,640 lb, 40.9 kip-in, 0.359 + 8/9 x 0.291 = 0.62. With that of the long side alone: 21,290 lb, 53.9 kip-in,
    /// 0.298 + 8/9 x 0.384 = 0.639. (Reactions of different combinations, taken together, gave 0.58.)
    #[test]
    fn unequal_beams_on_a_cap_bend_the_column() {
        let house = house(HOP_BARN);
        let combined = check(&house, "C1", LimitState::Compression).unwrap();
        near(pounds(step(&combined, "Pa")), 71_500.0, 60.0);
        near(combined.ratio(), 0.639, 0.003);
        assert_eq!((combined.combination, combined.clause), ("D + 0.75L + 0.75S", "AISC 360 H1.1"));
        assert_eq!(combined.pattern.as_deref(), Some("live load on one side of the cap only"));
        let balance = check(&house, "C1", LimitState::CapBalance).unwrap();
        let Quantity::Length(arm) = balance.demand else { panic!("no length") };
        near(arm.to_inches(), 53.94 / 21.29, 0.03);
        assert!(balance.ratio() < 1.0);
    }

    /// By hand: twice as long a cap has twice the arms; 6" x 17.8 = 106.7 kip-in, and on a tube 3 x 3 x 1/4 (Z 2.48 in3, 74.3
    /// kip-in) that is too much alone.
    #[test]
    fn a_slim_column_under_a_long_cap_is_bent_too_much() {
        let text = HOP_BARN
            .replace("HSS 4 x 4 x 1/4", "HSS 3 x 3 x 1/4")
            .replace("plate 10\" x 12\"", "plate 10\" x 24\"");
        let house = house(&text);
        assert!(check(&house, "C1", LimitState::Compression).unwrap().ratio() > 1.0);
        assert!(check(&house, "C1", LimitState::CapBalance).unwrap().ratio() > 1.0);
    }

    fn with_product(values: &str) -> House {
        let product = format!(
            "\nproduct FP\n  kind filled pipe 4\"\n  weight 14 plf\n  values {values}\n  source \"own\" on 2027-01-15\n"
        );
        house(&(LOON_COVE.replace("size          HSS 4 x 4 x 3/16", "size          FP") + &product))
    }

    /// By hand: 24,000 lb at 8'-0" and 18,000 at 9'-0"; 5/16" beyond 8'-0" is 0.026 of a foot: 23,844 lb.
    #[test]
    fn a_declared_capacity_holds_between_its_lengths_and_not_beyond() {
        let between = check(
            &with_product("capacity 24000 lb at 8', capacity 18000 lb at 9'"),
            "C1",
            LimitState::Compression,
        );
        near(pounds(between.unwrap().capacity), 23_840.0, 15.0);
        let shorter = check(&with_product("capacity 20000 lb at 9'"), "C1", LimitState::Compression).unwrap();
        near(pounds(shorter.capacity), 20_000.0, 0.1);
        let beyond = check(&with_product("capacity 30000 lb at 7'"), "C1", LimitState::Compression);
        assert!(matches!(beyond, Err(NotVerified::NotCovered(_))), "{beyond:?}");
    }

    /// Nobody declared a moment: the load may lie off the axis by a sixth of the pipe.
    #[test]
    fn a_filled_pipe_bears_no_moment_that_nobody_declared() {
        let house = with_product("capacity 24000 lb at 9'");
        let balance = check(&house, "C1", LimitState::CapBalance).unwrap();
        assert!(balance.ratio() > 1.0);
        let Quantity::Length(sixth) = balance.capacity else { panic!("no length") };
        near(sixth.to_inches(), 4.0 / 6.0, 0.001);
    }
}
