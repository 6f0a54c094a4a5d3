//! Valid houses at random: complete, consistent, their numbers closing exactly.
//!
//! Each house is a basement under a main floor, a beam with a column and pad in its middle, a stair down, and maybe a den
//! some risers lower on walls of its own. The arithmetic is done here, in whole sixteenths of an inch, by the
//! stack-up that framers use, and knows nothing of the library: it can tell whether the library is right. Sizes are
//! chosen so that nothing is near a limit of the residential code (common practice, spans well below the tables').
#![allow(dead_code, reason = "each test takes the part it needs")]

use std::fmt::{self, Display, Write};

use crate::dice::Dice;

/// One house.
pub fn house(seed: u64) -> String {
    estate(seed, 1)
}

/// A spec of at least `lines` lines: as many houses as that takes, corner to corner on one grid.
pub fn long_spec(seed: u64, lines: usize) -> String {
    // No house has as many as 300 lines.
    (lines / 300 + 1..)
        .map(|count| estate(seed, count))
        .find(|text| text.lines().count() >= lines)
        .unwrap_or_default()
}

/// Several houses in one spec, each with names and grid lines of its own.
pub fn estate(seed: u64, count: usize) -> String {
    let mut dice = Dice::new(seed);
    let mut origin = (In(0), In(0));
    let mut houses = Vec::new();
    for number in 0..count {
        let mark = if count == 1 { String::new() } else { format!(".{}", number + 1) };
        let house = House::drawn(&mut dice, mark, number, origin);
        origin = (house.x[2] + In::feet(20), *house.y.last().unwrap() + In::feet(20));
        houses.push(house);
    }
    let mut text = site(&houses);
    for house in &houses {
        house.write(&mut text);
    }
    text
}

/// Sixteenths of an inch.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
struct In(i64);

impl In {
    const fn feet(feet: i64) -> Self {
        Self(feet * 12 * 16)
    }

    const fn inches(whole: i64) -> Self {
        Self(whole * 16)
    }

    /// `whole` inches and `part` sixteenths.
    const fn and(whole: i64, part: i64) -> Self {
        Self(whole * 16 + part)
    }

    fn times(self, count: i64) -> Self {
        Self(self.0 * count)
    }

    /// As a level or a plan distance is written: `12'-6 1/2"`.
    fn long(self) -> String {
        let sign = if self.0 < 0 { "-" } else { "" };
        let all = self.0.abs();
        let (feet, inches, part) = (all / 192, all / 16 % 12, all % 16);
        let fraction = if part == 0 { String::new() } else { format!(" {}", lowest(part)) };
        format!("{sign}{feet}'-{inches}{fraction}\"")
    }
}

/// As a thickness or a size is written: `9-1/2"`.
impl Display for In {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.0 / 16, self.0 % 16) {
            (whole, 0) => write!(f, "{whole}\""),
            (0, part) => write!(f, "{}\"", lowest(part)),
            (whole, part) => write!(f, "{whole}-{}\"", lowest(part)),
        }
    }
}

impl std::ops::Add for In {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }
}

impl std::ops::Sub for In {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self(self.0 - other.0)
    }
}

fn lowest(sixteenths: i64) -> String {
    let (mut top, mut bottom) = (sixteenths, 16);
    while top % 2 == 0 {
        top /= 2;
        bottom /= 2;
    }
    format!("{top}/{bottom}")
}

const SUBFLOOR: In = In::feet(100);
const SILL: In = In::and(1, 8);
const FROST: In = In::inches(42);

/// What the dice decide, and all that follows from it.
struct House {
    /// Behind every name.
    mark: String,
    x_names: [String; 3],
    y_names: Vec<String>,
    x: [In; 3],
    y: Vec<In>,
    joist: Joist,
    deck: In,
    finish: Option<(&'static str, In)>,
    n_sills: i64,
    is_flush: bool,
    is_jointed: bool,
    has_steel_column: bool,
    beam_size: &'static str,
    beam_depth: In,
    wall: In,
    n_risers: i64,
    riser: In,
    basement_finish: In,
    den: Option<Den>,
}

struct Joist {
    size: &'static str,
    depth: In,
    spacing: In,
    rim: Option<&'static str>,
    rim_thick: In,
}

struct Den {
    n_risers: i64,
    riser: In,
    finish: In,
}

/// Both dry as the main floor's do, so that the steps between the two floors stay what they are.
const DEN_SAWN: Joist = Joist {
    size: "2x10 SPF No.2",
    depth: In::and(9, 4),
    spacing: In::inches(12),
    rim: None,
    rim_thick: SILL,
};
const DEN_ENGINEERED: Joist = Joist {
    size: "9-1/2 I-joist class 40",
    depth: In::and(9, 8),
    spacing: In::inches(12),
    rim: Some("1-1/8\" rim board"),
    rim_thick: In::and(1, 2),
};

impl House {
    fn drawn(dice: &mut Dice, mark: String, number: usize, origin: (In, In)) -> Self {
        let is_flush = dice.once_in(2);
        // A flush beam of the joists' own lumber has their depth and moves with them.
        let joist = if is_flush {
            dice.one_of(&[("2x12 SPF No.2", In::and(11, 4), 16), ("2x10 SPF No.2", In::and(9, 4), 12)])
        } else {
            dice.one_of(&[
                ("2x12 SPF No.2", In::and(11, 4), 16),
                ("2x12 SPF No.2", In::and(11, 4), 12),
                ("2x10 SPF No.2", In::and(9, 4), 12),
                ("11-7/8 I-joist class 40", In::and(11, 14), 16),
            ])
        };
        let is_engineered = joist.0.contains("I-joist");
        let joist = Joist {
            size: joist.0,
            depth: joist.1,
            spacing: In::inches(joist.2),
            rim: is_engineered.then_some("1-1/8\" rim board"),
            rim_thick: if is_engineered { In::and(1, 2) } else { SILL },
        };
        let is_shallow = is_flush && joist.depth == In::and(9, 4);
        let beam = if is_shallow {
            ("4-ply 2x10 SPF No.2", In::and(9, 4))
        } else {
            ("4-ply 2x12 SPF No.2", In::and(11, 4))
        };

        let x_bays = [In::inches(dice.between(78, 88)), In::inches(dice.between(78, 88))];
        let y_bays = [In::inches(dice.between(182, 190)), In::inches(dice.between(168, 190))];
        let den = dice.once_in(2).then(|| Den {
            n_risers: dice.between(2, 3),
            riser: In::and(6, 0) + In(dice.between(0, 24)),
            finish: dice.one_of(&[In(0), In::and(0, 6), In::and(0, 10), In::and(0, 12)]),
        });
        let mut y = vec![origin.1, origin.1 + y_bays[0], origin.1 + y_bays[0] + y_bays[1]];
        if den.is_some() {
            y.push(y[2] + In::inches(dice.between(132, 168)));
        }
        let base = number * 10;
        let letters = |letter: &str| {
            format!("{letter}{}", if mark.is_empty() { String::new() } else { (number + 1).to_string() })
        };
        Self {
            x_names: ["A", "B", "C"].map(letters),
            y_names: (1..=y.len()).map(|line| (base + line).to_string()).collect(),
            x: [origin.0, origin.0 + x_bays[0], origin.0 + x_bays[0] + x_bays[1]],
            y,
            joist,
            deck: In::and(0, dice.one_of(&[12, 14])),
            finish: dice.one_of(&[
                None,
                Some(("plank", In::and(0, 12))),
                Some(("cork", In::and(0, 8))),
                Some(("tile on board", In::and(0, 14))),
            ]),
            n_sills: if is_flush { 1 } else { dice.between(1, 2) },
            is_flush,
            is_jointed: dice.once_in(2),
            has_steel_column: dice.once_in(2),
            beam_size: beam.0,
            beam_depth: beam.1,
            wall: In::inches(dice.one_of(&[10, 12])),
            n_risers: 14,
            riser: In::and(7, 4) + In(dice.between(0, 8)),
            basement_finish: dice.one_of(&[In(0), In::and(0, 4), In::and(0, 6)]),
            den,
            mark,
        }
    }

    // The stack, from the main subfloor down.

    fn main_finish(&self) -> In {
        SUBFLOOR + self.finish.map_or(In(0), |(_, thick)| thick)
    }

    fn joist_top(&self) -> In {
        SUBFLOOR - self.deck
    }

    fn joist_bottom(&self) -> In {
        self.joist_top() - self.joist.depth
    }

    fn wall_top(&self) -> In {
        self.joist_bottom() - SILL.times(self.n_sills)
    }

    fn beam_top(&self) -> In {
        if self.is_flush { self.joist_top() } else { self.joist_bottom() }
    }

    fn beam_bottom(&self) -> In {
        self.beam_top() - self.beam_depth
    }

    /// Half of the wall: the beam ends on the wall's line.
    fn beam_bearing(&self) -> In {
        In(self.wall.0 / 2)
    }

    fn seat(&self) -> In {
        self.beam_bottom() - SEAT_PLATE - SEAT_GROUT
    }

    // The stack, from the main finish down the stair.

    fn rise(&self) -> In {
        self.riser.times(self.n_risers)
    }

    fn slab_top(&self) -> In {
        self.main_finish() - self.rise() - self.basement_finish
    }

    fn footing_top(&self) -> In {
        self.slab_top() - SLAB
    }

    /// The top of what the column's base stands on.
    fn column_ground(&self) -> In {
        if self.has_steel_column { self.footing_top() } else { self.slab_top() + PEDESTAL_ABOVE_SLAB }
    }

    fn column_cut(&self) -> In {
        if self.has_steel_column {
            self.beam_bottom() - CAP_PLATE - BASE_PLATE - BASE_GROUT - self.column_ground()
        } else {
            self.beam_bottom() - CAP_SEAT - STANDOFF - self.column_ground()
        }
    }

    // The den, from the main finish down its steps.

    fn den_finish(&self, den: &Den) -> In {
        self.main_finish() - den.riser.times(den.n_risers)
    }

    fn den_subfloor(&self, den: &Den) -> In {
        self.den_finish(den) - den.finish
    }

    fn den_joist(&self) -> &'static Joist {
        if self.joist.rim.is_some() { &DEN_ENGINEERED } else { &DEN_SAWN }
    }

    fn den_joist_bottom(&self, den: &Den) -> In {
        self.den_subfloor(den) - self.deck - self.den_joist().depth
    }

    fn den_wall_top(&self, den: &Den) -> In {
        self.den_joist_bottom(den) - SILL
    }

    /// The ground outside: well below the lowest sill.
    fn grade(&self) -> In {
        match &self.den {
            Some(den) => self.den_wall_top(den) - In::inches(12),
            None => self.wall_top() - In::inches(24),
        }
    }

    fn crawl_ground(&self, den: &Den) -> In {
        self.den_joist_bottom(den) - In::inches(24)
    }
}

const SLAB: In = In::inches(4);
const SEAT_PLATE: In = In::and(0, 8);
const SEAT_GROUT: In = In::inches(1);
const CAP_PLATE: In = In::and(0, 8);
const BASE_PLATE: In = In::and(0, 8);
const BASE_GROUT: In = In::inches(1);
const CAP_SEAT: In = In::and(0, 4);
const STANDOFF: In = In::inches(1);
const PEDESTAL_ABOVE_SLAB: In = In::inches(1);

/// The project and the one grid.
fn site(houses: &[House]) -> String {
    let mut text = String::new();
    let main = houses[0].named("main");
    open(&mut text, "project \"Houses at random\"");
    fact(&mut text, "profile", "irc-2021");
    fact(&mut text, "datum", format_args!("{main} subfloor {}", SUBFLOOR.long()));
    fact(&mut text, "frost", FROST);
    fact(&mut text, "soil", "2000 psf source \"invented\"");
    open(&mut text, "grid");
    let lines = |of: fn(&House) -> Vec<String>| houses.iter().flat_map(of).collect::<Vec<_>>().join(", ");
    fact(&mut text, "x", lines(|house| grid_lines(&house.x_names, &house.x)));
    fact(&mut text, "y", lines(|house| grid_lines(&house.y_names, &house.y)));
    text
}

fn grid_lines(names: &[String], at: &[In]) -> Vec<String> {
    names.iter().zip(at).map(|(name, at)| format!("{name} {}", at.long())).collect()
}

fn open(text: &mut String, heading: impl Display) {
    let gap = if text.is_empty() { "" } else { "\n" };
    writeln!(text, "{gap}{heading}").unwrap();
}

fn fact(text: &mut String, phrase: &str, value: impl Display) {
    writeln!(text, "  {phrase:<13} {value}").unwrap();
}

impl House {
    fn named(&self, name: &str) -> String {
        format!("{name}{}", self.mark)
    }

    fn write(&self, text: &mut String) {
        self.write_floors(text);
        self.write_walls(text);
        self.write_concrete(text);
        self.write_beam_and_column(text);
        self.write_joists(text);
        self.write_stairs(text);
        self.write_promises(text);
    }

    fn write_floors(&self, text: &mut String) {
        open(text, format_args!("floor {} \"Main floor\"", self.named("main")));
        fact(text, "subfloor", SUBFLOOR.long());
        fact(text, "deck", self.deck);
        if let Some((words, thick)) = self.finish {
            fact(text, "finish", format_args!("{words} {thick}"));
        }
        fact(text, "live", "40 psf");
        fact(text, "dead", "12 psf");
        fact(text, "ceiling", "board 1/2\"");
        fact(text, "over", format_args!("basement {}", self.named("basement")));

        open(text, format_args!("floor {} \"Basement\"", self.named("basement")));
        fact(text, "on", self.named("SL1"));
        if self.basement_finish > In(0) {
            fact(text, "finish", self.basement_finish);
        }

        let Some(den) = &self.den else { return };
        open(text, format_args!("floor {} \"Den\"", self.named("den")));
        fact(text, "subfloor", self.den_subfloor(den).long());
        fact(
            text,
            "steps down",
            format_args!("from {} by {} risers at {}", self.named("main"), den.n_risers, den.riser),
        );
        fact(text, "deck", self.deck);
        if den.finish > In(0) {
            fact(text, "finish", format_args!("plank {}", den.finish));
        }
        fact(text, "live", "40 psf");
        fact(text, "dead", "12 psf");
        fact(text, "over", format_args!("crawl, ground {}", self.crawl_ground(den).long()));
        fact(text, "tie", "at step by engineer source \"invented\"");
    }

    fn write_walls(&self, text: &mut String) {
        let [a, _, c] = &self.x_names;
        let (first, third) = (&self.y_names[0], &self.y_names[2]);
        let grade = self.grade();
        let top = self.wall_top();
        let inside_ground = self.den.as_ref().map(|den| self.crawl_ground(den));
        self.write_wall(text, "W1", [a, first, c, first], top, self.n_sills, (grade, "south"));
        self.write_wall(
            text,
            "W2",
            [a, third, c, third],
            top,
            self.n_sills,
            (inside_ground.unwrap_or(grade), "north"),
        );
        self.write_wall(text, "W3", [a, first, a, third], top, self.n_sills, (grade, "west"));
        self.write_wall(text, "W4", [c, first, c, third], top, self.n_sills, (grade, "east"));
        let Some(den) = &self.den else { return };
        let fourth = &self.y_names[3];
        let top = self.den_wall_top(den);
        self.write_wall(text, "W5", [a, fourth, c, fourth], top, 1, (grade, "north"));
        self.write_wall(text, "W6", [a, third, a, fourth], top, 1, (grade, "west"));
        self.write_wall(text, "W7", [c, third, c, fourth], top, 1, (grade, "east"));
    }

    fn write_wall(
        &self,
        text: &mut String,
        name: &str,
        [x1, y1, x2, y2]: [&String; 4],
        top: In,
        n_sills: i64,
        (grade, side): (In, &str),
    ) {
        open(text, format_args!("wall {}", self.named(name)));
        fact(text, "kind", "concrete");
        fact(text, "from", format_args!("{x1}/{y1} to {x2}/{y2}"));
        fact(text, "line", "centre");
        fact(text, "thick", self.wall);
        fact(text, "top", top.long());
        fact(text, "sill", format_args!("{n_sills} of 2x6 treated, centred"));
        fact(text, "grade", format_args!("{} on {side}", grade.long()));
        fact(text, "anchor", "5/8\" x 12\" at 6'-0\"");
        fact(text, "stands on", self.named("F2"));
    }

    fn write_concrete(&self, text: &mut String) {
        let [a, b, c] = &self.x_names;
        let [first, second, third] = [0, 1, 2].map(|line| &self.y_names[line]);
        for (name, wall, side, at) in [("PK1", "W3", "east", a), ("PK2", "W4", "west", c)] {
            open(text, format_args!("pocket {}", self.named(name)));
            fact(text, "in", format_args!("{} from {side} face", self.named(wall)));
            fact(text, "at", format_args!("{at}/{second}"));
            fact(text, "seat", self.seat().long());
            fact(text, "plate", format_args!("{} x 6\" x {SEAT_PLATE}", self.beam_bearing()));
            fact(text, "grout", SEAT_GROUT);
            fact(text, "width", "8\"");
            fact(text, "depth", self.beam_bearing() + In::and(0, 8));
            fact(text, "open", "at top");
        }

        open(text, format_args!("footing {} \"Pad under the column\"", self.named("F1")));
        fact(text, "kind", "pad");
        fact(text, "at", format_args!("{b}/{second}"));
        fact(text, "size", "2'-9\" x 2'-9\" x 12\"");
        fact(text, "top", self.footing_top().long());
        if !self.has_steel_column {
            fact(
                text,
                "pedestal",
                format_args!("12\" x 12\", {PEDESTAL_ABOVE_SLAB} above {}", self.named("SL1")),
            );
        }
        fact(text, "bars", "4 #4 each way, cover 3\"");
        fact(text, "concrete", "2500 psi");

        open(text, format_args!("footing {} \"Strip\"", self.named("F2")));
        fact(text, "kind", "strip");
        let walls = if self.den.is_some() { 7 } else { 4 };
        let walls: Vec<_> = (1..=walls).map(|wall| self.named(&format!("W{wall}"))).collect();
        fact(text, "under", walls.join(", "));
        fact(text, "size", "24\" x 10\"");
        fact(text, "top", self.footing_top().long());
        fact(text, "concrete", "2500 psi");

        open(text, format_args!("slab {}", self.named("SL1")));
        let face = self.beam_bearing();
        fact(
            text,
            "fill",
            format_args!("{a} plus {face} to {c} less {face} by {first} plus {face} to {third} less {face}"),
        );
        fact(text, "top", self.slab_top().long());
        fact(text, "thick", SLAB);
        fact(text, "joint", format_args!("round {}", self.named("C1")));
    }

    fn write_beam_and_column(&self, text: &mut String) {
        let [a, b, c] = &self.x_names;
        let second = &self.y_names[1];
        let (main, column, beam) = (self.named("main"), self.named("C1"), self.named("B1"));
        open(text, format_args!("beam {beam}"));
        fact(text, "size", self.beam_size);
        fact(text, "from", format_args!("{a}/{second} to {c}/{second}"));
        match self.is_flush {
            true => fact(text, "set", format_args!("flush in {main}")),
            false => fact(text, "set", format_args!("dropped under {main}")),
        }
        if self.is_jointed {
            fact(text, "joint", format_args!("over {column}"));
        }
        fact(text, "bears on", format_args!("{} for {}", self.named("PK1"), self.beam_bearing()));
        fact(text, "bears on", format_args!("{column} for 10\""));
        fact(text, "bears on", format_args!("{} for {}", self.named("PK2"), self.beam_bearing()));
        fact(text, "top", format_args!("should be {}", self.beam_top().long()));
        fact(text, "bottom", format_args!("should be {}", self.beam_bottom().long()));

        open(text, format_args!("column {column}"));
        fact(text, "at", format_args!("{b}/{second}"));
        if self.has_steel_column {
            fact(text, "size", "HSS 4 x 4 x 1/4");
            fact(text, "cap", format_args!("plate 7\" x 10\" x {CAP_PLATE}, long side along {beam}"));
            fact(text, "base", format_args!("plate 9\" x 9\" x {BASE_PLATE}, grout {BASE_GROUT}"));
        } else {
            fact(text, "size", "6x6 DF No.1");
            fact(text, "cap", format_args!("saddle 10\" long, {CAP_SEAT} thick"));
            fact(text, "base", format_args!("standoff {STANDOFF}"));
        }
        fact(text, "stands on", self.named("F1"));
        fact(text, "cut", format_args!("should be {}", self.column_cut()));
    }

    fn write_joists(&self, text: &mut String) {
        let [a, _, c] = &self.x_names;
        let [first, second, third] = [0, 1, 2].map(|line| &self.y_names[line]);
        let beam = self.named("B1");
        open(text, format_args!("joists {}", self.named("J1")));
        fact(text, "floor", self.named("main"));
        fact(text, "size", self.joist.size);
        fact(text, "fill", format_args!("{a} to {c} by {first} to {third}"));
        fact(text, "run", "along y");
        fact(text, "spacing", format_args!("{} from {a}", self.joist.spacing));
        if let Some(rim) = self.joist.rim {
            fact(text, "rim", rim);
        }
        fact(text, "joint", format_args!("over {beam}"));
        let bearing = SILL_WIDTH - self.joist.rim_thick;
        fact(text, "bears on", format_args!("{} for {bearing}", self.named("W1")));
        match self.is_flush {
            true => fact(text, "hangs from", format_args!("{beam} by {HANGER}")),
            false => fact(text, "bears on", format_args!("{beam} for 6\"")),
        }
        fact(text, "bears on", format_args!("{} for {bearing}", self.named("W2")));
        if !self.is_flush {
            fact(text, "blocked", format_args!("solid over {beam}"));
        }
        for wall in ["W3", "W4"] {
            fact(text, "blocked", format_args!("solid beside {}", self.named(wall)));
        }

        open(text, format_args!("opening {} \"Stair\"", self.named("O1")));
        fact(text, "floor", self.named("main"));
        fact(
            text,
            "fill",
            format_args!(
                "{a} plus {} to {a} plus {} by {second} less {} to {second} less {HEADER_FROM_BEAM}",
                OPENING_WEST.long(),
                (OPENING_WEST + OPENING_WIDTH).long(),
                (HEADER_FROM_BEAM + OPENING_LENGTH).long(),
            ),
        );
        fact(text, "trimmers", format_args!("2 of {} each side", self.joist.size));
        fact(text, "headers", format_args!("2 of {} by {HANGER}", self.joist.size));
        fact(text, "tails", format_args!("by {HANGER}"));

        let Some(den) = &self.den else { return };
        let fourth = &self.y_names[3];
        let face = self.beam_bearing();
        open(text, format_args!("joists {}", self.named("J2")));
        fact(text, "floor", self.named("den"));
        let joist = self.den_joist();
        fact(text, "size", joist.size);
        fact(text, "fill", format_args!("{a} to {c} by {third} plus {face} to {fourth}"));
        fact(text, "run", "along x");
        fact(text, "spacing", format_args!("{} from {third} plus {}", joist.spacing, face + In::and(0, 12)));
        if let Some(rim) = joist.rim {
            fact(text, "rim", rim);
        }
        let bearing = SILL_WIDTH - joist.rim_thick;
        fact(text, "bears on", format_args!("{} for {bearing}", self.named("W6")));
        fact(text, "bears on", format_args!("{} for {bearing}", self.named("W7")));
        fact(text, "bottom", format_args!("should be {}", self.den_joist_bottom(den).long()));
    }

    fn write_stairs(&self, text: &mut String) {
        let a = &self.x_names[0];
        let [_, second, third] = [0, 1, 2].map(|line| &self.y_names[line]);
        let middle = OPENING_WEST + In(OPENING_WIDTH.0 / 2);
        open(text, format_args!("stair {} \"Basement stair\"", self.named("S1")));
        fact(text, "from", format_args!("{} to {}", self.named("basement"), self.named("main")));
        fact(text, "top", format_args!("at {a} plus {} / {second} less {HEADER_FROM_BEAM}", middle.long()));
        fact(text, "climbs", "north");
        fact(text, "risers", self.n_risers);
        fact(text, "tread", "10\"");
        fact(text, "width", "3'-0\"");
        fact(text, "opening", self.named("O1"));
        fact(text, "nosing", "1\"");
        fact(text, "handrail", "east 36\" high");
        fact(text, "stringers", "2x12 SPF No.2");
        fact(text, "riser", format_args!("should be {}", self.riser));
        fact(text, "rise", format_args!("should be {}", self.rise().long()));

        let Some(den) = &self.den else { return };
        open(text, format_args!("stair {} \"Den steps\"", self.named("S2")));
        fact(text, "from", format_args!("{} to {}", self.named("den"), self.named("main")));
        fact(text, "top", format_args!("at {a} plus 6'-0\" / {third} plus {}", self.beam_bearing()));
        fact(text, "climbs", "south");
        fact(text, "risers", den.n_risers);
        fact(text, "tread", "11\"");
        fact(text, "width", "4'-0\"");
        fact(text, "nosing", "1\"");
        fact(text, "riser", format_args!("should be {}", den.riser));
    }

    fn write_promises(&self, text: &mut String) {
        let name = |name: &str| self.named(name);
        open(text, format_args!("sheet {}", name("S-101")));
        fact(text, "shows", format_args!("top of {} = {}", name("W1"), self.wall_top().long()));
        fact(text, "shows", format_args!("top of {} = {}", name("F1"), self.footing_top().long()));
        fact(text, "shows", format_args!("seat of {} = {}", name("PK1"), self.seat().long()));
        fact(text, "shows", format_args!("cut of {} = {}", name("C1"), self.column_cut()));
        fact(text, "shows", format_args!("riser of {} = {}", name("S1"), self.riser));
        let Some(den) = &self.den else { return };
        let drop = den.riser.times(den.n_risers);
        let step = self.wall_top() - self.den_wall_top(den);
        fact(text, "shows", format_args!("drop from {} to {} = {drop}", name("main"), name("den")));
        fact(text, "shows", format_args!("step from {} to {} = {step}", name("W5"), name("W1")));

        open(text, format_args!("hold point {}", name("HP1")));
        fact(text, "before", format_args!("cutting the stringers of {}", name("S2")));
        fact(text, "shoot", format_args!("top of {}", name("W2")));
        fact(text, "shoot", format_args!("top of {}", name("W6")));
        fact(text, "tolerance", "1/8\"");

        open(text, "intent \"The den lies lower by its steps\"");
        fact(
            text,
            "keep",
            format_args!("finish of {} less {drop} = finish of {}", name("main"), name("den")),
        );
    }
}

const SILL_WIDTH: In = In::and(5, 8);
const HANGER: &str = "hanger 1500 lb \"face mount\" source \"invented\"";
const OPENING_WEST: In = In::inches(24);
const OPENING_WIDTH: In = In::inches(38);
const OPENING_LENGTH: In = In::inches(130);
const HEADER_FROM_BEAM: In = In::inches(9);
