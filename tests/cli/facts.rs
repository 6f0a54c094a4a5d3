//! `storyrod facts`, alone and as git's text conversion.

use crate::git::Repository;
use crate::program::{folder_with, sample, storyrod, storyrod_in};

const README: &str = include_str!("../../README.md");

/// The commands by which README lets git show facts.
fn set_up() -> Vec<&'static str> {
    let set_up: Vec<_> = README.lines().filter(|line| line.starts_with("git config diff.framing.")).collect();
    assert_eq!(set_up.len(), 3);
    set_up
}

/// A repository whose diffs of specs go by their facts.
fn repository(files: &[(&str, &str)]) -> Repository {
    let repository = Repository::with(&[&[(".gitattributes", "*.framing diff=framing\n")], files].concat());
    assert!(repository.run(&["sh", "-e", "-c", &set_up().join("\n")]).status.success());
    repository.commit();
    repository
}

#[test]
fn a_new_repository_is_set_up_alike() {
    let script = include_str!("../../src/cli/start/set-up.sh");
    for line in set_up() {
        assert!(script.lines().any(|other| other == line), "{line}");
    }
    let attributes = include_str!("../../src/cli/start/gitattributes");
    assert!(attributes.contains("\n*.framing text eol=lf diff=framing\n"));
}

/// The lines that a diff takes away and puts in.
fn changed(diff: &str) -> Vec<&str> {
    let is_changed =
        |line: &&str| line.starts_with(['-', '+']) && !line.starts_with("---") && !line.starts_with("+++");
    diff.lines().filter(is_changed).collect()
}

#[test]
fn order_comments_and_spelling_are_no_difference() {
    let cabin = sample("first.framing");
    let repository = repository(&[("jobs/cabin.framing", &cabin)]);
    let walls = cabin.find("wall W1").unwrap();
    let other = format!("{}\n{}", &cabin[walls..], &cabin[..walls]);
    let other = other
        .replace("  thick         8\"", "  thick  8 in -- as the forms are")
        .replace("SPF No.2", "SPF #2")
        .replace("  live          40 psf\n  dead          12 psf\n", "\tdead 12psf\n\tlive 40 psf\n")
        .replace('\n', "\r\n");
    repository.write("jobs/cabin.framing", other);
    assert!(repository.git(&["diff", "--no-textconv"]).contains("forms are"));
    assert_eq!(repository.git(&["diff"]), "");
}

#[test]
fn a_deeper_joist_shows_its_size_and_what_moves() {
    let repository = repository(&[("cabin.framing", &sample("first.framing"))]);
    repository.write("cabin.framing", sample("first.framing").replace("2x10 SPF", "2x12 SPF"));
    let diff = repository.git(&["diff"]);
    // By hand: the joists end 100'-0" less 3/4" less 11-1/4" = 99'-0", where it was 9-1/4" and 99'-2".
    for line in [
        "-joists J1  size  2x10 SPF No.2",
        "+joists J1  size  2x12 SPF No.2",
        "-joists J1  bottom  99'-2\"  (derived)",
        "+joists J1  bottom  99'-0\"  (derived)",
        "-floor main  ceiling  99'-2\"  (derived)",
        "+floor main  ceiling  99'-0\"  (derived)",
    ] {
        assert!(changed(&diff).contains(&line), "{line} in {diff}");
    }
    let of: Vec<&str> = changed(&diff).iter().map(|line| line[1..].split("  ").next().unwrap()).collect();
    assert!(of.iter().all(|element| ["joists J1", "floor main"].contains(element)), "{diff}");
    // A hunk says what it is in, of the facts and of the text.
    let few = repository.git(&["diff", "--unified=0"]);
    assert!(few.lines().any(|line| line.ends_with("@@ joists J1")), "{few}");
    let shown = README.split("```diff\n").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    assert!(few.ends_with(shown), "README shows another diff than {few}");
    let raw = repository.git(&["diff", "--no-textconv", "-U1"]);
    assert!(raw.lines().any(|line| line.ends_with("@@ joists J1 \"Floor joists\"")), "{raw}");
}

#[test]
fn a_whole_history_is_shown_whatever_stands_in_it() {
    let cabin = sample("first.framing");
    let repository = repository(&[("house.framing", &cabin)]);
    let versions: [&[u8]; 6] = [
        b"",
        b"\x00\x01\xff\xfe junk \x1b[31m\n",
        b"wall W1\n  thick 8\"\n  sise 9\"\nbeem B1\n  size W8x24\nlost line\n",
        b"wall W1 \"Caf\xe9\"\n  thick 8\"\n",
        b"project \"P\"\ninclude \"part.framing\"\n",
        b"-- nothing but this\n",
    ];
    for version in versions {
        repository.write("house.framing", version);
        repository.commit();
    }
    repository.git(&["rm", "--quiet", "house.framing"]);
    repository.commit();
    let log = repository.git(&["log", "--patch", "--reverse"]);
    let told = changed(&log);
    for line in [
        "+joists J1  size  2x10 SPF No.2",
        "-joists J1  size  2x10 SPF No.2",
        "+wall W1  thick  8\"",
        "+wall W1  sise 9\"  (not read)",
        "+beem B1  (not read)",
        "+beem B1  size W8x24  (not read)",
        "+wall W1  \"Caf\\xE9\"",
        "+(not read)  some bytes are not UTF-8 text: they stand here as \\xNN",
        "+include  \"part.framing\"",
    ] {
        assert!(told.contains(&line), "{line} in {log}");
    }
    assert!(!log.contains(['\u{1b}', '\0']), "{log}");
}

#[test]
fn a_part_and_a_root_with_parts_tell_what_they_state() {
    let files = [
        ("house.framing", "project \"P\"\n  frost 42\"\n\ninclude \"parts/walls.framing\"\n"),
        ("parts/walls.framing", "wall W1\n  thick 8\"\n  thick 9\"\n"),
    ];
    let folder = folder_with(&files);
    let told = |name: &str| {
        let ran = storyrod_in(folder.path(), &["facts", name], b"");
        assert_eq!((ran.code, ran.log.as_str()), (0, ""));
        ran.out
    };
    assert_eq!(
        told("house.framing"),
        "include  \"parts/walls.framing\"\nproject  \"P\"\nproject  frost  42\"\n\
         no derived facts: they need the included files, and a file is read by itself here\n"
    );
    assert_eq!(
        told("parts/walls.framing"),
        "wall W1\nwall W1  thick  8\"\nwall W1  thick 9\"  (not read)\n\
         no derived facts: no project opens in this file\n"
    );
}

#[test]
fn a_file_a_device_and_standard_input() {
    let folder = folder_with(&[("empty.framing", "")]);
    let run = |file: &str, input: &[u8]| storyrod_in(folder.path(), &["facts", file], input);
    for file in ["empty.framing", "/dev/null"] {
        let ran = run(file, b"");
        assert_eq!((ran.code, ran.out.as_str(), ran.log.as_str()), (0, "", ""), "{file}");
    }
    assert_eq!(run("-", b"\xef\xbb\xbfproject \"P\"\n").out, "project  \"P\"\n");
    let ran = run("none.framing", b"");
    assert_eq!(ran.code, 2);
    assert!(ran.log.contains("none.framing: "), "{}", ran.log);
    assert_eq!(run(".", b"").code, 2);
    assert_eq!(storyrod(&[], &["facts"]).code, 2);
}
