//! How many spans a second one core works out. `cargo bench --bench statics` prints the figures: wall time of whole calls,
//! allocations included. The members go in batches; each batch is timed several times and its shortest time counts, so
//! that other work on the machine counts little, and caches and branch prediction are warm.

#![allow(clippy::print_stdout, reason = "the figures are what it is run for")]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a measurement may stop where it fails")]

#[path = "../support/oracle_members.rs"]
#[allow(dead_code, reason = "a measurement compares no results")]
mod oracle_members;

use std::hint::black_box;
use std::time::{Duration, Instant};

use storyrod::statics::continuous::{Hold, Line, Prepared, Prop, Push, Response, Stretch};
use storyrod::statics::pattern::{envelope, patterns};
use storyrod::units::{FlexuralRigidity, Force, Length, LineLoad};

fn main() {
    let members = members(3_000);
    let n_spans: usize = members.iter().map(Spans::n_spans).sum();
    let n_loads: usize = members.iter().map(|(_, pushes)| pushes.len()).sum();
    println!(
        "{} members of 1 to 5 spans on pinned supports, {n_spans} spans, {n_loads} loads, one core",
        members.len()
    );

    let whole = spans_per_second(&members, |(line, pushes)| {
        line.prepare().unwrap().response(pushes).unwrap().extremes()
    });
    println!("from the line and its loads to reactions and all extremes: {whole:.2} million spans a second");
    let making_ready = spans_per_second(&members, |(line, _)| line.prepare().unwrap());
    println!("of that, making ready: {making_ready:.2} million spans a second");
    let prepared: Vec<Ready> = members
        .iter()
        .map(|(line, pushes)| {
            let prepared = line.prepare().unwrap();
            let response = prepared.response(pushes).unwrap();
            Ready { line, pushes, prepared, response }
        })
        .collect();
    let another = spans_per_second(&prepared, |ready| ready.prepared.response(ready.pushes).unwrap());
    println!("of that, reactions and forces of a load set: {another:.2} million spans a second");
    let extremes = spans_per_second(&prepared, |ready| ready.response.extremes());
    println!("of that, extremes with their places: {extremes:.2} million spans a second");

    let house = house();
    let time = shortest_time(&house, |(line, pushes)| {
        let prepared = line.prepare().unwrap();
        let cases = [(); 3].map(|()| prepared.response(pushes).unwrap());
        let steady = Response::sum(&[(1.0, &cases[0]), (1.0, &cases[1]), (0.75, &cases[2])]);
        (steady.extremes(), envelope(&cases[0], &patterns(&prepared, pushes).unwrap(), 0.75))
    });
    println!(
        "a house of {} members, two in three of one span: three cases, a sum and its extremes, the envelope of every \
         pattern: {time:?}",
        house.len()
    );
    let time = shortest_time(&members[..300], |(line, pushes)| {
        let prepared = line.prepare().unwrap();
        let steady = prepared.response(pushes).unwrap();
        envelope(&steady, &patterns(&prepared, pushes).unwrap(), 0.75)
    });
    println!("300 of the members above, the envelope of every pattern: {time:?}");

    let oracle: Vec<Member> = oracle_members::oracle()
        .members
        .iter()
        .map(|member| (oracle_members::line_of(member), oracle_members::pushes_of(member)))
        .collect();
    let time = shortest_time(&oracle, |(line, pushes)| {
        let prepared = line.prepare().unwrap();
        let response = prepared.response(pushes).unwrap();
        Response::sum(&[(1.0, &response), (1.0, &prepared.settling())]).extremes()
    });
    println!("the {} members of the oracle, joints, springs and settlement included: {time:?}", oracle.len());
    // What `tests/oracle/bench.py` reads.
    println!("spans_per_second {:.0}", whole * 1e6);
    println!("oracle_members_per_second {:.0}", oracle.len() as f64 / time.as_secs_f64());
}

type Member = (Line, Vec<Push>);

struct Ready<'a> {
    line: &'a Line,
    pushes: &'a [Push],
    prepared: Prepared,
    response: Response,
}

/// Whatever has spans.
trait Spans {
    fn n_spans(&self) -> usize;
}

impl Spans for Member {
    fn n_spans(&self) -> usize {
        self.0.props.len() - 1
    }
}

impl Spans for Ready<'_> {
    fn n_spans(&self) -> usize {
        self.line.props.len() - 1
    }
}

/// Millions.
fn spans_per_second<T: Spans, R>(items: &[T], run: impl FnMut(&T) -> R) -> f64 {
    let n_spans: usize = items.iter().map(Spans::n_spans).sum();
    n_spans as f64 / shortest_time(items, run).as_secs_f64() / 1e6
}

fn shortest_time<T, R>(items: &[T], mut run: impl FnMut(&T) -> R) -> Duration {
    let batches = items.chunks(300);
    batches
        .map(|batch| {
            let times = (0..15).map(|_| {
                let start = Instant::now();
                for item in batch {
                    black_box(run(item));
                }
                start.elapsed()
            });
            times.min().unwrap_or_default()
        })
        .sum()
}

/// Members such as houses have: one to five spans of 6 to 20 ft, at times an overhang, a uniform load along all of it
/// and one to three partial, linear or point loads.
fn members(n_members: usize) -> Vec<Member> {
    let mut dice = Dice(20_260_101);
    (0..n_members)
        .map(|_| {
            let n_spans = dice.between(1, 5);
            member(&mut dice, n_spans)
        })
        .collect()
}

/// Three hundred of them as a house has them: mostly joists and headers of one span, a few girders of more.
fn house() -> Vec<Member> {
    let mut dice = Dice(20_260_102);
    let spans = [(200, 1), (70, 2), (20, 3), (10, 4)];
    spans
        .into_iter()
        .flat_map(|(n_members, n_spans)| std::iter::repeat_n(n_spans, n_members))
        .map(|n_spans| member(&mut dice, n_spans))
        .collect()
}

fn member(dice: &mut Dice, n_spans: i64) -> Member {
    let mut at = if dice.between(1, 4) == 1 { Length::inches(dice.between(12, 48)) } else { Length::ZERO };
    let mut props = vec![Prop { at, hold: Hold::Pinned, settlement: Length::ZERO }];
    for _ in 0..n_spans {
        at += Length::inches(dice.between(72, 240));
        props.push(Prop { at, hold: Hold::Pinned, settlement: Length::ZERO });
    }
    let length = at;
    let rigidity = FlexuralRigidity::lb_in2(1.6e6 * dice.between(50, 600) as f64);
    let line = Line {
        length,
        stretches: vec![Stretch { to: length, rigidity, shear_rigidity: None }],
        props,
        hinges: Vec::new(),
    };
    let load = LineLoad::plf(dice.between(50, 700) as f64);
    let mut pushes = vec![Push::Spread { from: Length::ZERO, to: length, start: load, end: load }];
    for _ in 0..dice.between(1, 3) {
        let [one, other] = [0; 2].map(|_| length.scaled(dice.between(0, 1_000) as f64 / 1_000.0));
        let start = LineLoad::plf(dice.between(50, 700) as f64);
        pushes.push(match dice.between(1, 4) {
            1 | 2 => Push::Point { at: one, force: Force::lb(dice.between(200, 5_000) as f64) },
            3 => Push::Spread { from: one, to: other, start, end: start },
            _ => Push::Spread { from: one, to: other, start, end: LineLoad::ZERO },
        });
    }
    (line, pushes)
}

/// Numbers that look thrown and are the same each time (a linear congruence).
struct Dice(u64);

impl Dice {
    fn between(&mut self, low: i64, high: i64) -> i64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (self.0 >> 33) as i64 % (high - low + 1)
    }
}
