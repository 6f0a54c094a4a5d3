//! How long a spec of ten thousand lines takes. `cargo test --release --test speed -- --nocapture` prints the figures;
//! the bounds here are wide enough for a debug build on a busy machine and fail for a step that is quadratic.

#![allow(clippy::print_stdout, reason = "the figures are what the test is run for")]
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may stop where it fails")]

#[path = "support/dice.rs"]
mod dice;
#[path = "support/houses.rs"]
mod houses;

use std::sync::Arc;
use std::time::{Duration, Instant};

use storyrod::house::House;
use storyrod::ide::{self, Made};
use storyrod::inputs::Inputs;
use storyrod::snapshot::{Caches, analyse};
use storyrod::statics::takedown;
use storyrod::syntax::value::Date;
use storyrod::syntax::{ElementCache, parse_fresh};
use storyrod::text::Source;
use storyrod::verify::{self, Known};

/// The shortest of five runs.
fn shortest(mut run: impl FnMut()) -> Duration {
    let times = (0..5).map(|_| {
        let start = Instant::now();
        run();
        start.elapsed()
    });
    times.min().unwrap_or_default()
}

fn analysed(text: &str, caches: &mut Caches) {
    let source = Source::new("long.framing", text);
    let inputs = Inputs { sources: vec![source], includes: Vec::new() };
    let today = Date { year: 2027, month: 6, day: 1 };
    assert!(analyse(&Arc::new(inputs), caches, today, &|| false).is_ok());
}

/// Forces and verifications of a spec with some 300 members.
#[test]
fn three_hundred_members_are_solved_in_a_moment() {
    let text = houses::long_spec(1, 6_500);
    let source = Source::new("estate.framing", text);
    let inputs = Inputs { sources: vec![source], includes: Vec::new() };
    let today = Date { year: 2027, month: 6, day: 1 };
    let house = House::of(&Arc::new(inputs), &mut ElementCache::default(), today);
    let model = &house.model;
    let members = model.joists.len()
        + model.beams.len()
        + model.columns.len()
        + model.headers.len()
        + model.walls.len();
    let statics = shortest(|| assert!(takedown::of(model, &house.geometry).balance.error() <= 1e-9));
    println!(
        "takedown of {members} members: {statics:?}, {:?} a member",
        statics / u32::try_from(members).unwrap()
    );
    let known = Known { model, geometry: &house.geometry, forces: &house.forces, limits: &house.limits };
    let verifying = shortest(|| assert!(verify::of(&known).all().len() < 1_000_000));
    println!("their {} verifications: {verifying:?}", house.verifications.all().len());
    assert!(members >= 300, "{members}");
    assert!(statics < Duration::from_millis(500), "{statics:?}");
}

#[test]
fn ten_thousand_lines_are_read_and_checked_in_linear_time() {
    let (short, long) = (houses::long_spec(1, 2_500), houses::long_spec(1, 10_000));
    let growth = long.len() as f64 / short.len() as f64;

    let parsing = shortest(|| assert!(!parse_fresh(&long).chunks.is_empty()));
    let megabytes = long.len() as f64 / 1e6;
    println!("lex and parse: {parsing:?}, {:.1} MB/s", megabytes / parsing.as_secs_f64());

    let of_short = shortest(|| analysed(&short, &mut Caches::default()));
    let of_long = shortest(|| analysed(&long, &mut Caches::default()));
    println!("read, derive and check from nothing: {of_long:?} ({} lines)", long.lines().count());

    let mut caches = Caches::default();
    let mut texts = [long.clone(), long.replacen("plank 3/4\"", "plank 1/2\"", 1)].into_iter().cycle();
    let again = shortest(|| texts.next().iter().for_each(|text| analysed(text, &mut caches)));
    println!("the same after one changed line: {again:?}");

    // Four times the text may take four times as long; sixteen times would be a quadratic step.
    let ratio = of_long.as_secs_f64() / of_short.as_secs_f64();
    assert!(ratio < 2.5 * growth, "{growth:.1} times the text takes {ratio:.1} times as long");
    assert!(of_long < Duration::from_secs(5), "{of_long:?}");
}

fn long_house() -> House {
    let source = Source::new("long.framing", houses::long_spec(1, 10_000));
    let inputs = Inputs { sources: vec![source], includes: Vec::new() };
    let today = Date { year: 2027, month: 6, day: 1 };
    House::of(&Arc::new(inputs), &mut ElementCache::default(), today)
}

/// One answer about one element, of the elements for which it takes longest.
#[test]
fn a_step_of_the_load_and_all_of_one_size_take_no_time() {
    let house = long_house();
    let ids: Vec<_> = house.model.commons().map(|common| common.id).collect();
    let longest = |answer: &dyn Fn(usize)| {
        let times = (0..ids.len()).map(|at| {
            let start = Instant::now();
            answer(at);
            start.elapsed()
        });
        times.max().unwrap_or_default()
    };
    let up = longest(&|at| assert!(ide::taken_up(&house, ids[at]).len() < 10_000));
    let down = longest(&|at| assert!(ide::handed_on(&house, ids[at]).len() < 10_000));
    let stuff = longest(&|at| assert!(ide::makings_of(&house, &Made::Element(ids[at])).len() < 100));
    println!("load taken up: {up:?}; load handed on: {down:?}; what a member is made of: {stuff:?}");
    for took in [up, down, stuff] {
        assert!(took < Duration::from_millis(300), "{took:?}");
    }
}

/// What an editor asks about the busiest name of a spec.
#[test]
fn ten_thousand_lines_are_asked_about_at_once() {
    let house = long_house();
    let floor = house.model.floors[0].common.name_span;
    let line = house.model.grid.lines[0].span;
    for (what, place) in [("a floor", floor), ("a grid line", line)] {
        let (file, at) = (place.file, place.start);
        let jump = shortest(|| assert!(ide::definition(&house, file, at).is_some()));
        let references = shortest(|| assert!(ide::references(&house, file, at, true).is_some()));
        let rename = shortest(|| assert!(ide::rename(&house, file, at, "Qq7").is_ok()));
        println!("of {what}: definition {jump:?}, references {references:?}, another name {rename:?}");
        assert!(jump < Duration::from_millis(10), "{jump:?}");
        assert!(references < Duration::from_millis(200), "{references:?}");
        assert!(rename < Duration::from_secs(2), "{rename:?}");
    }
}

/// What an editor asks of the look and shape of a whole file.
#[test]
fn ten_thousand_lines_are_shown_at_once() {
    let house = long_house();
    let file = house.files().next().unwrap();
    let text = Arc::clone(&house.inputs.sources[0].text);
    let middle = u32::try_from(text.len() / 2).unwrap();
    let tokens = shortest(|| assert!(ide::tokens(&house, file, None).len() > 10_000));
    let symbols = shortest(|| assert!(!ide::symbols(&house, file).is_empty()));
    let all = ide::spec_symbols(&house);
    let found = shortest(|| assert!(!ide::symbols_like("w1", &all, |it| &it.name).is_empty()));
    let folding = shortest(|| assert!(!ide::folding(&house, file).is_empty()));
    let selection = shortest(|| assert_eq!(ide::selection(&house, file, &[middle]).len(), 1));
    let finished = shortest(|| assert!(ide::formatting_behind_line(&text, middle).len() < 10));
    println!(
        "tokens {tokens:?}, symbols {symbols:?}, search {found:?}, folds {folding:?}, selection {selection:?}, \
         finished line {finished:?}"
    );
    for took in [tokens, symbols, found, folding, selection, finished] {
        assert!(took < Duration::from_millis(500), "{took:?}");
    }
}
