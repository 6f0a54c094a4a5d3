//! README.md shows what the program really prints, and its picture is that print in colour.
//!
//! A `framing` block of README.md goes on with `first.framing`; a `console` block holds a command behind `$ ` and what
//! it prints. `UPDATE=1 cargo test --test readme` writes the prints and the picture anew.
#![cfg(unix)]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)] // helpers of tests

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const SAMPLES: &str = "grammar/samples";
const PICTURE: &str = "docs/terminal.svg";

#[test]
fn the_blocks_are_what_the_program_prints() {
    let readme = read("README.md");
    let folder = working_folder();
    let mut spec = String::new();
    let mut rewritten = String::new();
    let mut lines = readme.lines();
    while let Some(line) = lines.next() {
        writeln!(rewritten, "{line}").unwrap();
        match line {
            "```framing" => {
                for line in lines.by_ref().take_while(|line| *line != "```") {
                    writeln!(rewritten, "{line}").unwrap();
                    writeln!(spec, "{line}").unwrap();
                }
                rewritten.push_str("```\n");
                fs::write(folder.path().join("first.framing"), &spec).unwrap();
                spec.push('\n');
            }
            "```console" => {
                let block: Vec<_> = lines.by_ref().take_while(|line| *line != "```").collect();
                let printed = printed(folder.path(), block[0].strip_prefix("$ ").unwrap());
                write!(rewritten, "{}\n{printed}```\n", block[0]).unwrap();
            }
            _ => {}
        }
    }
    agree("README.md", &rewritten);
    assert_eq!(
        spec.trim(),
        read("grammar/samples/first.framing").trim(),
        "the tutorial builds the first sample"
    );
}

#[test]
fn the_picture_is_what_the_program_prints() {
    let readme = read("README.md");
    let command = readme.lines().find_map(|line| line.strip_prefix("$ ")).unwrap();
    let folder = working_folder();
    let coloured = printed(folder.path(), &command.replace("storyrod lint", "storyrod --color always lint"));
    agree(PICTURE, &picture_of(&format!("$ {command}\n{coloured}")));
}

fn agree(name: &str, now: &str) {
    if std::env::var_os("UPDATE").is_some() {
        fs::write(root().join(name), now).unwrap();
    }
    assert!(read(name) == now, "{name} is stale: run `UPDATE=1 cargo test --test readme`");
}

fn read(name: &str) -> String {
    fs::read_to_string(root().join(name)).unwrap_or_default()
}

fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// A folder that has the samples where README.md says they are.
fn working_folder() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::create_dir_all(folder.path().join(SAMPLES)).unwrap();
    for sample in fs::read_dir(root().join(SAMPLES)).unwrap() {
        let sample = sample.unwrap().path();
        fs::copy(&sample, folder.path().join(SAMPLES).join(sample.file_name().unwrap())).unwrap();
    }
    folder
}

fn printed(folder: &Path, command: &str) -> String {
    let program = assert_cmd::cargo::cargo_bin!("storyrod");
    let path = format!("{}:{}", program.parent().unwrap().display(), std::env::var("PATH").unwrap());
    let mut shell = Command::new("sh");
    shell.current_dir(folder).env("PATH", path).args(["-c", command]);
    let output = shell.output().unwrap();
    assert_eq!(String::from_utf8_lossy(&output.stderr), "", "{command}");
    String::from_utf8(output.stdout).unwrap()
}

const CELL: f64 = 8.0;
const LINE: f64 = 18.0;
const MARGIN: f64 = 14.0;

/// Text with colour codes as a drawing: one word of SVG for each stretch of one colour.
fn picture_of(text: &str) -> String {
    let text = text.trim_end();
    let columns = text.lines().map(columns_of).max().unwrap_or(0);
    let width = 2.0 * MARGIN + CELL * f64::from(columns);
    let height = 2.0 * MARGIN + LINE * f64::from(u32::try_from(text.lines().count()).unwrap());
    let mut svg = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\">\n\
         <rect width=\"100%\" height=\"100%\" rx=\"6\" fill=\"#1b1e24\"/>\n\
         <g font-family=\"monospace\" font-size=\"13\" xml:space=\"preserve\">\n"
    );
    let mut y = MARGIN - 5.0;
    for line in text.lines() {
        y += LINE;
        let mut column = 0;
        for (style, stretch) in stretches(line) {
            let length = columns_of(&stretch);
            let x = MARGIN + CELL * f64::from(column);
            column += length;
            if !stretch.trim().is_empty() {
                let escaped = stretch.replace('&', "&amp;").replace('<', "&lt;");
                let length = CELL * f64::from(length);
                writeln!(svg, "<text x=\"{x}\" y=\"{y}\" textLength=\"{length}\" {style}>{escaped}</text>")
                    .unwrap();
            }
        }
    }
    svg.push_str("</g>\n</svg>\n");
    svg
}

/// The stretches of a line, each with its style. Codes that change nothing part nothing.
fn stretches(line: &str) -> Vec<(String, String)> {
    let mut found: Vec<(String, String)> = Vec::new();
    let mut style = style_of("0");
    for (at, part) in line.split('\u{1b}').enumerate() {
        let text = match (at, part.split_once('m')) {
            (0, _) | (_, None) => part,
            (_, Some((code, text))) => {
                style = style_of(code.trim_start_matches('['));
                text
            }
        };
        match found.last_mut() {
            Some((last, stretch)) if *last == style => stretch.push_str(text),
            _ => found.push((style.clone(), text.to_owned())),
        }
    }
    found
}

fn style_of(code: &str) -> String {
    let fill = match code {
        "31" | "1;31" => "#f2777a",
        "33" | "1;33" => "#e6c06c",
        "34" => "#82aaff",
        "36" | "1;36" => "#66cccc",
        "1" => "#ffffff",
        "2" | "38;5;240" | "38;5;246" => "#8a919c",
        _ => "#d3d7de",
    };
    let weight = if code == "1" || code.starts_with("1;") { " font-weight=\"bold\"" } else { "" };
    format!("fill=\"{fill}\"{weight}")
}

fn columns_of(text: &str) -> u32 {
    let shown = text.split('\u{1b}').enumerate().map(|(at, part)| match (at, part.split_once('m')) {
        (1.., Some((_, text))) => text.chars().count(),
        _ => part.chars().count(),
    });
    u32::try_from(shown.sum::<usize>()).unwrap()
}
