//! How long an editor waits. `cargo bench --bench server` prints the figures: a real session over pipes, each time taken
//! from the moment before a message is written to the moment after the answer is read.

#![allow(clippy::print_stdout, reason = "the figures are what it is run for")]
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a measurement may stop where it fails"
)]

#[path = "../support/dice.rs"]
mod dice;
#[path = "../support/houses.rs"]
mod houses;
#[path = "../server/session.rs"]
#[allow(dead_code, reason = "a measurement asks less than a test")]
mod session;

use std::time::{Duration, Instant};

use serde_json::{Value, json};

use crate::session::Session;

const SAMPLE: &str = include_str!("../../grammar/samples/loon-cove.framing");
const URI: &str = "untitled:house";

fn main() {
    let long = houses::long_spec(1, 10_000);
    for (name, text) in [("the sample house", SAMPLE), ("a long spec", &long)] {
        println!("{name}, {} lines", text.lines().count());
        cold_starts(text);
        let mut session = started(text);
        keystrokes(&mut session, text);
        for (method, place) in [
            ("textDocument/hover", "column C1"),
            ("textDocument/completion", "stands on     "),
            ("textDocument/definition", "F1"),
            ("textDocument/codeAction", "column C1"),
        ] {
            requests(&mut session, text, method, place);
        }
        for method in
            ["semanticTokens/full", "documentSymbol", "foldingRange", "codeLens", "inlayHint", "formatting"]
        {
            requests(&mut session, text, &format!("textDocument/{method}"), "column C1");
        }
        println!("  memory: {} MB at the most", peak_memory_kb() / 1024);
    }
}

/// The most memory that a child of this process had; the servers of all rounds are such.
fn peak_memory_kb() -> u64 {
    let children = std::fs::read_to_string("/proc/thread-self/children").unwrap_or_default();
    let peak = |child: &str| {
        let status = std::fs::read_to_string(format!("/proc/{child}/status")).ok()?;
        let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"))?;
        line.split_whitespace().next()?.parse().ok()
    };
    children.split_whitespace().filter_map(peak).max().unwrap_or(0)
}

fn started(text: &str) -> Session {
    let mut session = Session::plain();
    session.open(URI, text);
    session.diagnostics(URI, Some(1));
    session
}

/// From the start of the process to its findings.
fn cold_starts(text: &str) {
    let times = (0..9).map(|_| {
        let start = Instant::now();
        drop(started(text));
        start.elapsed()
    });
    print("cold start to first diagnostics", times.collect());
}

/// A letter typed into the comment behind the middle line, and taken away again; each makes all findings anew.
fn keystrokes(session: &mut Session, text: &str) {
    let middle = text.lines().count() / 2;
    let line = text.lines().nth(middle).unwrap();
    let end = line.encode_utf16().count();
    let mut times = Vec::new();
    for version in 2..202 {
        let is_typed = version % 2 == 0;
        let range = json!({
            "start": {"line": middle, "character": end},
            "end": {"line": middle, "character": if is_typed { end } else { end + 5 }},
        });
        let change = json!([{"range": range, "text": if is_typed { " -- x" } else { "" }}]);
        let start = Instant::now();
        session.change(URI, version, &change);
        session.diagnostics(URI, Some(version));
        times.push(start.elapsed());
    }
    print("keystroke to diagnostics", times);
}

fn requests(session: &mut Session, text: &str, method: &str, place: &str) {
    let at = text.find(place).unwrap_or_default() + place.len();
    let before = &text[..at];
    let line = before.matches('\n').count();
    let column = before.rsplit('\n').next().unwrap_or_default().encode_utf16().count();
    let position = json!({"line": line, "character": column});
    let params = json!({
        "textDocument": {"uri": URI},
        "position": position,
        "range": {"start": {"line": line, "character": 0}, "end": {"line": line + 60, "character": 0}},
        "context": {"diagnostics": [], "triggerKind": 1},
        "options": {"tabSize": 2, "insertSpaces": true},
    });
    let times = (0..60).map(|_| {
        let start = Instant::now();
        let answer = session.ask(method, &params);
        assert!(answer["error"] == Value::Null, "{method}: {answer}");
        start.elapsed()
    });
    print(method.trim_start_matches("textDocument/"), times.collect());
}

fn print(what: &str, mut times: Vec<Duration>) {
    times.sort();
    let at = |share: f64| times[((times.len() - 1) as f64 * share).round() as usize].as_secs_f64() * 1e3;
    println!("  {what}: p50 {:.2} ms, p95 {:.2} ms, most {:.2} ms", at(0.5), at(0.95), at(1.0));
}
