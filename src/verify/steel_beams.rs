//! Beams of rolled steel: bending with what holds their compressed edge, shear, sag, and the web at each seat and post.

mod bending;
mod braces;
mod webs;

use crate::design::NotCovered;
use crate::design::steel::flexure::About;
use crate::design::steel::sections::Tube;
use crate::design::steel::shear;
use crate::model::framing::Beam;
use crate::model::stuff::Values;
use crate::profiles::OneIn;
use crate::statics::continuous::Response;
use crate::statics::member_line::{MemberLine, Part};
use crate::units::{Force, Length};
use crate::verify::check::{Check, NotVerified, Verification};
use crate::verify::demands::{self, Demand};
use crate::verify::limit_state::LimitState;
use crate::verify::spanning::{self, Role};
use crate::verify::steel::{self, Shape, Steel, read, worked};
use crate::verify::{Known, uplift};

/// Verifies every steel beam.
pub fn of(known: &Known<'_>) -> Vec<Verification> {
    let mut found = Vec::new();
    for beam in &known.model.beams {
        let Some(member) = beam.size.value() else { continue };
        let steel = match known.model.stuff_of(member).map(|stuff| stuff.values) {
            Ok(Values::Rolled(shape)) => steel::of(member, shape),
            Ok(Values::DeclaredSteel(_)) => {
                Err(NotCovered::NoRule { what: "a steel shape of a product", clause: "no properties" }.into())
            }
            Ok(Values::Wood(_) | Values::IJoist(_) | Values::FilledPipe(_)) | Err(_) => continue,
        };
        let lines = known.forces.lines_of(beam.common.id);
        match steel {
            Ok(steel) => found.extend(of_beam(known, beam, &steel, lines)),
            Err(why) => found.push(verification(beam, None, LimitState::Bending, Err(why))),
        }
    }
    found
}

/// Verifies one beam as if it were of this steel, its pieces with these forces and sags: its own, or those of a size that
/// is tried in its place.
pub fn of_beam(known: &Known<'_>, beam: &Beam, steel: &Steel, lines: &[MemberLine]) -> Vec<Verification> {
    if beam.common.may_say("laid flat") {
        let why = NotVerified::Missing(beam.common.id, "laid flat");
        return vec![verification(beam, None, LimitState::Bending, Err(why))];
    }
    if lines.is_empty() {
        let why = NotVerified::NoForces("no load could be followed to it".into());
        return vec![verification(beam, None, LimitState::Bending, Err(why))];
    }
    let mut found = Vec::new();
    for line in lines {
        let part = part_of(line, lines.len());
        let one = |state, outcome| verification(beam, part.clone(), state, outcome);
        let demands = match demands::of(line) {
            Ok(demands) => demands,
            Err(unstable) => {
                let why = NotVerified::NoForces(unstable.to_string().into());
                found.push(one(LimitState::Bending, Err(why)));
                continue;
            }
        };
        match braces::of(known.model, beam, line) {
            Ok(braces) => {
                let bent = bending::of(beam, steel, &braces, &demands);
                found.extend(bent.into_iter().map(|(state, outcome)| one(state, outcome)));
            }
            Err(why) => found.push(one(LimitState::Bending, Err(why))),
        }
        found.push(one(LimitState::Shear, sheared(beam, steel, &demands)));
        let limits = Role::of_beam(line).limits(known.limits);
        for (state, limit, variable_only) in [
            (LimitState::LiveDeflection, limits.live, true),
            (LimitState::TotalDeflection, limits.total, false),
        ] {
            let sag = sagging(line, &demands, limit, variable_only);
            found.extend(sag.map(|check| one(state, Ok(check))));
        }
        found.extend(uplift::of(known.model, line, &demands, part.as_deref()));
        found.extend(webs::of(known, beam, steel, line, &demands, part.as_deref()));
    }
    found
}

fn verification(
    beam: &Beam,
    part: Option<Box<str>>,
    limit_state: LimitState,
    outcome: Result<Check, NotVerified>,
) -> Verification {
    Verification { of: beam.common.id, part, against: None, limit_state, outcome }
}

/// Which piece a line is, when there are several.
fn part_of(line: &MemberLine, n_lines: usize) -> Option<Box<str>> {
    match line.part {
        Part::Piece(at) if n_lines > 1 => Some(format!("piece {}", at + 1).into()),
        Part::Piece(_) | Part::Strip(..) | Part::Lane(_) => None,
    }
}

/// The worst shear of a piece.
fn sheared(beam: &Beam, steel: &Steel, demands: &[Demand]) -> Result<Check, NotVerified> {
    let (shear, clause) = match steel.shape {
        Shape::WideFlange(_) if beam.is_laid_flat => {
            let what = "shear of a W shape laid flat";
            return Err(NotCovered::NoRule { what, clause: "AISC 360 G6: not here" }.into());
        }
        Shape::WideFlange(shape) => (shear::wide_flange(&shape, steel.yield_strength)?, "AISC 360 G2.1"),
        Shape::Tube(tube) if beam.is_laid_flat => {
            // The walls along the shear are the shorter ones.
            let flat = Tube { depth: tube.width, width: tube.depth, ..tube };
            (shear::tube(&flat, steel.yield_strength)?, "AISC 360 G4")
        }
        Shape::Tube(tube) => (shear::tube(&tube, steel.yield_strength)?, "AISC 360 G4"),
        Shape::Pipe(pipe) => (shear::pipe(&pipe, steel.yield_strength)?, "AISC 360 G5"),
    };
    let shears = demands.iter().map(|demand| (demand, demand.response.extremes().shear));
    let (demand, (force, at)) = shears
        .reduce(|most, other| if other.1.0.abs() > most.1.0.abs() { other } else { most })
        .ok_or(NotVerified::NoForces("it carries nothing".into()))?;
    let capacity = shear.strength.allowable() * steel.pieces;
    Ok(Check {
        demand: force.abs().into(),
        capacity: capacity.into(),
        combination: demand.combination.name,
        pattern: demand.pattern.clone(),
        at: Some(at),
        clause,
        steps: vec![
            read("V", force.abs(), "statics: continuous member"),
            read("Fy", steel.yield_strength, steel.grade_source()),
            read("Aw", shear.area, clause),
            read("Cv", shear.coefficient, clause),
            worked(
                "Va",
                "n 0.6 Fy Aw Cv / Ω",
                [("n", steel.pieces.into()), ("Ω", shear.strength.safety_factor.into())],
                capacity,
                clause,
            ),
        ],
        assumed: steel.assumptions(),
    })
}

/// The worst sag of a piece against a share of its span, of an overhang twice its length.
fn sagging(
    line: &MemberLine,
    demands: &[Demand],
    (limit, clause): (OneIn, &'static str),
    variable_only: bool,
) -> Option<Check> {
    let spans = spanning::spans(line);
    let mut worst: Option<(f64, Check)> = None;
    for demand in demands {
        let response: &Response = if variable_only { &demand.variable } else { &demand.response };
        for stretch in &spans {
            let span = stretch.for_limit();
            let extremes = response.extremes_between(stretch.from, stretch.to);
            let (sag, at) = if extremes.up.0 > extremes.down.0 { extremes.up } else { extremes.down };
            let allowed = span.scaled(1.0 / f64::from(limit.0));
            let ratio = sag / allowed;
            if sag > Length::ZERO && worst.as_ref().is_none_or(|(most, _)| ratio > *most) {
                let source = if stretch.is_overhang() { "twice the overhang" } else { "the span" };
                let check = Check {
                    demand: sag.into(),
                    capacity: allowed.into(),
                    combination: demand.combination.name,
                    pattern: demand.pattern.clone(),
                    at: Some(at),
                    clause,
                    steps: vec![
                        read("l", span, source),
                        worked(
                            "sag / l",
                            "1 / ( l / sag )",
                            [("l / sag", (span / sag).into())],
                            sag / span,
                            clause,
                        ),
                    ],
                    assumed: Vec::new(),
                };
                worst = Some((ratio, check));
            }
        }
    }
    worst.map(|(_, check)| check)
}

/// Which axis a tube bends about.
const fn about(beam: &Beam) -> About {
    if beam.is_laid_flat { About::Minor } else { About::Major }
}

/// The combination that presses hardest, with how hard.
fn hardest<'a>(presses: impl Iterator<Item = (&'a Demand, Force)>) -> Option<(&'a Demand, Force)> {
    presses.reduce(|most, other| if other.1 > most.1 { other } else { most })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::house::House;
    use crate::testing::rule_check::house;
    use crate::verify::quantity::Quantity;

    const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");
    const HOP_BARN: &str = include_str!("../../grammar/samples/hop-barn.framing");

    /// The check of a beam that is the fullest of its kind.
    fn fullest(house: &House, name: &str, state: LimitState) -> Option<Check> {
        let of = house.model.named(name).unwrap();
        let checks = house.verifications.of(of).filter(|verification| verification.limit_state == state);
        checks
            .filter_map(|verification| verification.outcome.clone().ok())
            .max_by(|one, other| one.ratio().total_cmp(&other.ratio()))
    }

    fn kip_ft(quantity: Quantity) -> f64 {
        let Quantity::Moment(moment) = quantity else { panic!("no moment") };
        moment.to_kip_ft()
    }

    /// The span over the sag.
    fn share(house: &House, name: &str, state: LimitState) -> f64 {
        let check = fullest(house, name, state).unwrap();
        let (Quantity::Length(sag), Quantity::Length(span)) = (check.demand, check.steps[0].result) else {
            panic!("no lengths")
        };
        span / sag
    }

    fn step(check: &Check, symbol: &str) -> Quantity {
        check.steps.iter().find(|step| step.symbol == symbol).unwrap().result
    }

    fn near(found: f64, expected: f64, tolerance: f64) {
        assert!((found - expected).abs() <= tolerance, "{found}, expected {expected}");
    }

    /// By hand, two spans of 17'-9" by piece length: D 189 + L 551 = 740 plf, M = 740 x 17.75^2 / 8 = 29.1 kip-ft; W8x24:
    /// 50 x 23.1 / 12 / 1.67 = 57.6 kip-ft; sag of L 5 x 551 / 12 x 213^4 / (384 x 29e6 x 82.7) = 0.513, L/415; end
    /// reaction 740 x 17.75 / 2 = 6,568 lb.
    #[test]
    fn a_girder_of_two_pieces_meets_the_hand_figures() {
        let house = house(LOON_COVE);
        let bending = fullest(&house, "B1", LimitState::Bending).unwrap();
        near(kip_ft(bending.demand), 29.1, 0.06);
        near(kip_ft(bending.capacity), 57.6, 0.05);
        assert_eq!((bending.combination, bending.clause), ("D + L", "AISC 360 F2"));
        assert_eq!(step(&bending, "Lb"), Length::inches(16).into());
        assert!(bending.assumed.contains(&"W shapes of A992 steel, Fy 50 ksi".into()));
        let Quantity::Force(shear) = fullest(&house, "B1", LimitState::Shear).unwrap().demand else {
            panic!()
        };
        near(shear.to_lb(), 6_568.0, 5.0);
        near(share(&house, "B1", LimitState::LiveDeflection), 415.0, 1.0);
        let of = house.model.named("B1").unwrap();
        assert!(house.verifications.of(of).all(Verification::holds));
    }

    /// By hand: 415 x 61.9 / 82.7 = 311, less than 360; the strength, 50 x 17.0 / 12 / 1.67 = 42.4 kip-ft, is there.
    #[test]
    fn a_lighter_girder_is_strong_and_sags() {
        let house = house(&LOON_COVE.replace("W8x24", "W8x18"));
        near(share(&house, "B1", LimitState::LiveDeflection), 311.0, 1.0);
        assert!(fullest(&house, "B1", LimitState::LiveDeflection).unwrap().ratio() > 1.0);
        assert!(fullest(&house, "B1", LimitState::Bending).unwrap().ratio() < 1.0);
    }

    /// By hand, on the span of 20 ft: D 267 + L 966 plf, and at 16 ft D 4,024 + S 10,752 lb; with D + 0.75 L + 0.75 S the
    /// west end has 12,330 lb, and 12,330^2 / (2 x 991.3) = 76.7 kip-ft at 12.4 ft of 50 x 60.4 / 12 / 1.67 = 150.7. (75.9 from
    /// D 265 + L 960 plf of joists by piece length and a post without weight.) Sag of 0.75 (L + S) L/483, of all L/344 by the
    /// same older loads: a share less here.
    #[test]
    fn a_beam_that_takes_a_post_aside_meets_the_hand_figures() {
        let house = house(HOP_BARN);
        let bending = fullest(&house, "T1", LimitState::Bending).unwrap();
        near(kip_ft(bending.demand), 76.7, 0.05);
        near(kip_ft(bending.capacity), 150.7, 0.05);
        assert_eq!(bending.combination, "D + 0.75L + 0.75S");
        near(bending.at.unwrap().to_inches() / 12.0, 12.4, 0.1);
        near(share(&house, "T1", LimitState::LiveDeflection), 483.0, 3.0);
        near(share(&house, "T1", LimitState::TotalDeflection), 344.0 * 75.9 / 76.7, 1.0);
    }

    /// By hand: L/344 x 171 / 272 = L/216 against 240; 50 x 38.8 / 12 / 1.67 = 96.8 kip-ft are enough.
    #[test]
    fn a_lighter_one_is_strong_and_sags() {
        let house = house(&HOP_BARN.replace("W10x49", "W10x33"));
        near(share(&house, "T1", LimitState::TotalDeflection), 216.0, 2.0);
        assert!(fullest(&house, "T1", LimitState::TotalDeflection).unwrap().ratio() > 1.0);
        let bending = fullest(&house, "T1", LimitState::Bending).unwrap();
        near(kip_ft(bending.capacity), 96.8, 0.05);
        assert!(bending.ratio() < 1.0);
    }

    fn floor_on_a_beam(beam: &str, more: &str) -> House {
        house(&format!(
            "project \"P\"\n  datum main subfloor 100'\ngrid\n  x A 0', B 18', C 36'\n  y 1 0', 2 12', 3 24'\n\
             floor main\n  subfloor 100'\n  deck 3/4\"\n  live 40 psf\n  dead 12 psf\n\
             {beam}{more}"
        ))
    }

    const POSTS: &str = "column C1\n  at A/2\n  size HSS 4 x 4 x 1/4\n  length 8'\n  cap plate 6\" x 6\" x 1/2\"\n\
         column C2\n  at B/2\n  size HSS 4 x 4 x 1/4\n  length 8'\n  cap plate 6\" x 6\" x 1/2\"\n\
         column C3\n  at C/2\n  size HSS 4 x 4 x 1/4\n  length 8'\n  cap plate 6\" x 6\" x 1/2\"\n";

    fn joists(on: &str, to: &str) -> String {
        format!(
            "joists J1\n  floor main\n  size 2x10 SPF No.2\n  fill A to {to} by 1 to 3\n  run along y\n  \
             spacing 16\" from A\n  {on}\n  bears on W1\n  bears on W2\n\
             wall W1\n  kind framed\n  from A/1 to {to}/1\n  line centre\n  studs 2x6 SPF No.2 at 16\"\n  bearing yes\n\
             wall W2\n  kind framed\n  from A/3 to {to}/3\n  line centre\n  studs 2x6 SPF No.2 at 16\"\n  bearing yes\n"
        )
    }

    const ONE_SPAN: &str =
        "beam B1\n  size W8x24\n  from A/2 to B/2\n  set dropped under main\n  bears on C1\n  bears on C2\n";

    /// Published, AISC Manual tables 3-1 and 3-2, read in a secondary copy: Cb 1.14 of a uniform load without brace; W8x24:
    /// Lp 5.69 ft, Lr 18.9 ft.
    #[test]
    fn joists_on_a_bare_flange_hold_nothing() {
        let house = floor_on_a_beam(ONE_SPAN, &format!("{POSTS}{}", joists("bears on B1", "B")));
        let bending = fullest(&house, "B1", LimitState::Bending).unwrap();
        let Quantity::Factor(gradient) = step(&bending, "Cb") else { panic!() };
        near(gradient, 1.14, 0.005);
        assert_eq!(step(&bending, "Lb"), Length::feet(18).into());
        let lateral = fullest(&house, "B1", LimitState::LateralSupport).unwrap();
        let Quantity::Length(plastic) = lateral.capacity else { panic!() };
        near(plastic.to_inches() / 12.0, 5.69, 0.01);
        assert!(lateral.ratio() > 1.0);
    }

    #[test]
    fn a_nailer_or_a_word_of_the_text_settles_it() {
        for fact in ["nailer 2x6 SPF flat on top, bolted", "braced at 4'", "braced none", "braced by J1"] {
            let beam = format!("{ONE_SPAN}  {fact}\n");
            let house = floor_on_a_beam(&beam, &format!("{POSTS}{}", joists("bears on B1", "B")));
            assert_eq!(fullest(&house, "B1", LimitState::LateralSupport), None, "{fact}");
            let bending = fullest(&house, "B1", LimitState::Bending).unwrap();
            let length = match fact.split_once(' ') {
                Some(("nailer", _)) | Some((_, "by J1")) => Length::inches(16),
                Some((_, "at 4'")) => Length::feet(4),
                _ => Length::feet(18),
            };
            assert_eq!(step(&bending, "Lb"), length.into(), "{fact}");
        }
    }

    #[test]
    fn a_beam_over_a_post_hogs_with_nothing_that_holds_its_bottom() {
        let beam = "beam B1\n  size W8x24\n  from A/2 to C/2\n  set dropped under main\n  bears on C1\n  bears on C2\n  \
                    bears on C3\n  nailer 2x6 SPF flat on top, bolted\n";
        let house = floor_on_a_beam(beam, &format!("{POSTS}{}", joists("bears on B1", "C")));
        let bending = fullest(&house, "B1", LimitState::Bending).unwrap();
        assert_eq!(step(&bending, "Lb"), Length::feet(18).into());
        assert_eq!(bending.at, Some(Length::feet(18)));
    }

    /// A stair that reaches up to the beam on one side, with no joists on the other.
    #[test]
    fn an_opening_along_a_beam_takes_its_joists_away() {
        let hung = joists("hangs from B1 by hanger 1000 lb \"h\" source \"s\"", "B")
            .replace("by 1 to 3", "by 1 to 2");
        let opening = "opening O1\n  floor main\n  fill A plus 4' to A plus 14' by 2 less 3' to 2\n";
        let house = floor_on_a_beam(ONE_SPAN, &format!("{POSTS}{hung}{opening}"));
        let bending = fullest(&house, "B1", LimitState::Bending).unwrap();
        assert_eq!(step(&bending, "Lb"), (Length::feet(10) + Length::inches(32)).into());
    }

    /// By hand, W8x24 of k 0.794, tw 0.245 on 7" at its end: 50 x 0.245 x (2.5 x 0.794 + 7) / 1.5 = 73.4 kip.
    #[test]
    fn a_web_is_verified_over_each_seat_and_under_each_post() {
        let house = house(LOON_COVE);
        let webs: Vec<&Verification> = house.verifications.on(LimitState::Web).collect();
        let parts: Vec<&str> = webs.iter().filter_map(|web| web.part.as_deref()).collect();
        assert_eq!(parts, ["piece 1, over PK1", "piece 1, over C1", "piece 2, over C1", "piece 2, over PK2"]);
        let Quantity::Force(yielding) = step(webs[0].outcome.as_ref().unwrap(), "Ry") else { panic!() };
        near(yielding.to_kip(), 73.4, 0.05);
        let barn = self::house(HOP_BARN);
        let post = barn
            .verifications
            .on(LimitState::Web)
            .find(|web| web.part.as_deref() == Some("piece 1, under P1"));
        let Quantity::Force(load) = post.unwrap().outcome.as_ref().unwrap().demand else { panic!() };
        near(load.to_lb(), 14_592.0, 250.0);
    }

    /// By hand: 500 plf of live load on 10 ft and 6 ft past C2. On the overhang alone C1 pulls 500 x 6 x 3 / 10 = 900 lb; 24 plf
    /// of its own weight leave 24 x (5 - 6 x 3 / 10) = 77 lb of it.
    #[test]
    fn a_beam_that_lifts_off_its_column_says_so() {
        let house = house(
            "grid\n  x A 0', B 10', C 16'\n  y 1 0'\nbeam B1\n  size W8x24\n  from A/1 to C/1\n  bears on C1\n  \
             bears on C2\n  load 500 plf live\ncolumn C1\n  at A/1\n  size HSS 4 x 4 x 1/4\n  cap plate 6\" x 6\" x 1/2\"\n\
             column C2\n  at B/1\n  size HSS 4 x 4 x 1/4\n  cap plate 6\" x 6\" x 1/2\"\n",
        );
        let uplift = fullest(&house, "B1", LimitState::Uplift).unwrap();
        let Quantity::Force(pull) = uplift.demand else { panic!() };
        near(pull.to_lb(), 900.0 - 76.8, 1.0);
        assert_eq!(uplift.pattern.as_deref(), Some("live load on span 2"));
    }
}
