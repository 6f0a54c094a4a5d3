//! `storyrod lint --shard`, and `storyrod gather` of what the shards wrote.

use std::fs;
use std::path::Path;

use serde_json::Value;

use crate::many::write_projects;
use crate::program::{Ran, faulty_cabin, folder_with, sample, storyrod_in};
use crate::repository::Repository;

const FORMATS: [&str; 3] = ["json", "sarif", "junit"];

fn lint(folder: &Path, format: &str, arguments: &[&str]) -> Ran {
    storyrod_in(folder, &[&["lint", "--format", format], arguments].concat(), b"")
}

/// Runs every shard, the last first, and gathers what they wrote.
fn gathered(folder: &Path, count: usize, format: &str, arguments: &[&str]) -> Ran {
    let place = tempfile::tempdir().unwrap();
    let results: Vec<String> = (1..=count)
        .rev()
        .map(|number| {
            let shard = format!("{number}/{count}");
            let ran = lint(folder, format, &[arguments, &["--shard", &shard]].concat());
            let path = place.path().join(format!("{number}.result"));
            fs::write(&path, ran.out).unwrap();
            path.to_str().unwrap().to_owned()
        })
        .collect();
    let results: Vec<&str> = results.iter().map(String::as_str).collect();
    storyrod_in(folder, &[&["gather"], &results[..]].concat(), b"")
}

/// Projects of which some are faulty, names that mean something in a format, a faulty configuration, files that can't be
/// used, and a part that stands alone.
fn projects() -> Repository {
    let mut repository = Repository::new();
    write_projects(repository.path(), 20);
    let cabin = sample("first.framing");
    for (name, text) in [
        ("odd & <é>/100% [a](b).framing", faulty_cabin().as_str()),
        ("odd & <é>/{0} \"b\".framing", "beem \"]]> \u{1b}[31m\"\nfooting F1\n  topp 1'\n"),
        ("a.b/c.framing", &cabin),
        ("a/b.framing", &cabin),
        ("a b.framing", "-- nothing yet\n"),
        ("empty.framing", ""),
        ("wrong/storyrod.toml", "y = 1\nx = 1\n"),
        ("wrong/1.framing", &cabin),
        ("wrong/2.framing", &cabin),
        ("wrong/3.framing", &cabin),
        ("shared/storyrod.toml", ""),
        ("shared/one.framing", "project \"1\"\ninclude \"walls.framing\"\n"),
        ("shared/two.framing", "project \"2\"\ninclude \"walls.framing\"\n"),
        ("shared/walls.framing", "wall W1\n"),
        ("not usable", &cabin),
    ] {
        let path = repository.path().join(name);
        fs::create_dir_all(path.parent().unwrap()).unwrap();
        fs::write(path, text).unwrap();
    }
    repository.commit();
    repository
}

#[test]
fn what_is_gathered_is_what_a_whole_run_writes() {
    let repository = projects();
    for name in ["job-0003/house.framing", "job-0004/house.framing", "shared/walls.framing"] {
        let path = repository.path().join(name);
        let text = fs::read_to_string(&path).unwrap();
        fs::write(path, text + "\n-- changed\n").unwrap();
    }
    let all: &[&str] = &[".", "none.framing", "not usable", "nowhere"];
    for format in FORMATS {
        for (counts, arguments) in [
            (1..=8, all),
            (3..=3, &["--fail-on", "advice", "a b.framing", "a", "job-0001"]),
            (2..=2, &["a", "--rules-address", "https://example.org/rules#"]),
            (4..=4, &["--changed-since", "HEAD"]),
            (4..=4, &["--changed-since", "HEAD", "a"]),
        ] {
            // The address of rules is SARIF's alone.
            let whole = lint(repository.path(), format, arguments);
            assert!(!whole.out.is_empty(), "{format} {arguments:?}: {}", whole.log);
            for count in counts {
                let ran = gathered(repository.path(), count, format, arguments);
                assert!(ran.out == whole.out, "{format} {count} {arguments:?}: {}", ran.log);
                assert_eq!(ran.code, whole.code, "{format} {count} {arguments:?}");
            }
        }
    }
}

#[test]
fn a_shard_has_its_own_specs_wherever_it_runs() {
    let repository = projects();
    let names = |folder: &Path, number: usize, arguments: &[&str]| -> Vec<String> {
        let shard = format!("{number}/3");
        let ran = lint(folder, "json", &[arguments, &["--shard", &shard]].concat());
        let output: Value = serde_json::from_str(&ran.out).unwrap();
        output["specs"]
            .as_array()
            .unwrap()
            .iter()
            .map(|spec| spec["file"].as_str().unwrap().to_owned())
            .collect()
    };
    // Another place on disk, another spec less: every other one stays where it is.
    let other = projects();
    fs::remove_file(other.path().join("a/b.framing")).unwrap();
    for number in 1..=3 {
        let (mut here, there) = (names(repository.path(), number, &[]), names(other.path(), number, &[]));
        assert!(here.len() > 5);
        here.retain(|name| name != "a/b.framing");
        assert_eq!(here, there);
        // Named from a folder of the repository they are the same.
        let inside = names(&repository.path().join("shared"), number, &[]);
        let inside: Vec<_> = inside.iter().map(|name| format!("shared/{name}")).collect();
        let outside: Vec<_> = names(repository.path(), number, &["shared"]);
        assert_eq!(inside, outside);
    }
}

/// The schemas of what the shards write are held by `tests/reports/` and `tests/clients/`; this is JSON's.
#[test]
fn a_shard_says_which_it_is() {
    let schema: Value = serde_json::from_str(include_str!("../../grammar/lint-output.schema.json")).unwrap();
    let schema = jsonschema::validator_for(&schema).unwrap();
    let folder = folder_with(&[("house.framing", &sample("first.framing")), ("empty.framing", "")]);
    let mut n_looked_at = 0;
    for shard in ["1/2", "2/2"] {
        let ran = lint(folder.path(), "json", &["--shard", shard, "--today", "2027-06-01"]);
        let output: Value = serde_json::from_str(&ran.out).unwrap();
        assert!(schema.is_valid(&output), "{}", ran.out);
        let number: u32 = shard[..1].parse().unwrap();
        let asked = output["shard"]["asked"].as_str().unwrap();
        assert!(asked.len() == 16 && asked.chars().all(|digit| digit.is_ascii_hexdigit()), "{asked}");
        let mark = serde_json::json!(
            {"number": number, "count": 2, "day": "2027-06-01", "level": "error", "asked": asked}
        );
        assert_eq!(output["shard"], mark);
        let is_mine = output["specs"].as_array().unwrap().len() == 1;
        n_looked_at += usize::from(is_mine);
        let text = lint(folder.path(), "lines", &["--shard", shard]).out;
        let sentence = match is_mine {
            true => format!("1 spec looked at: no other is in shard {shard}\n"),
            false => format!("no spec looked at: none is in shard {shard}\n"),
        };
        assert!(text.contains(&sentence), "{text}");
    }
    assert_eq!(n_looked_at, 1);
}

#[test]
fn arguments_that_name_no_shard_are_refused() {
    let folder = folder_with(&[("house.framing", &sample("first.framing")), ("known.toml", "")]);
    for (arguments, why) in [
        (&["--shard", "0/4"][..], "shards are counted from 1: the first is 1/4"),
        (&["--shard", "5/4"], "there is no shard 5 of 4: the last is 4/4"),
        (&["--shard", "1/10001"], "there are at most 10000 shards"),
        (&["--shard", "x"], "which of how many is wanted, as 1/4"),
        (&["--shard", "1/2", "-"], "standard input is none"),
        (&["--shard", "1/2", "-", "--stdin-filename", "house.framing"], "cannot be used with"),
        (&["--shard", "1/2", "--baseline", "known.toml", "--update-baseline"], "cannot be used with"),
    ] {
        let ran = lint(folder.path(), "json", arguments);
        assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{arguments:?}");
        assert!(ran.log.contains(why), "{arguments:?}: {}", ran.log);
    }
}

#[test]
fn a_baseline_is_shared_by_the_shards() {
    let folder = folder_with(&[("known.toml", "")]);
    for name in ["a", "b", "c", "d", "e"] {
        fs::write(folder.path().join(format!("{name}.framing")), faulty_cabin()).unwrap();
    }
    fs::remove_file(folder.path().join("known.toml")).unwrap();
    let baseline = ["--baseline", "known.toml"];
    lint(folder.path(), "json", &[&baseline[..], &["--update-baseline"]].concat());
    fs::remove_file(folder.path().join("e.framing")).unwrap();
    fs::write(folder.path().join("d.framing"), sample("first.framing")).unwrap();
    let mut advice = String::new();
    for shard in ["1/2", "2/2"] {
        let ran = lint(folder.path(), "json", &[&baseline[..], &["--shard", shard]].concat());
        assert_eq!(ran.code, 0, "{}", ran.log);
        advice += &ran.log;
    }
    // What is mended is told once.
    for name in ["d.framing", "e.framing"] {
        let told = advice.lines().filter(|line| line.contains("takes it out") && line.contains(name));
        let whole = lint(folder.path(), "json", &baseline).log;
        assert_eq!(told.count(), whole.lines().filter(|line| line.contains(name)).count(), "{advice}");
    }
}

#[test]
fn results_that_make_up_no_whole_are_refused() {
    let folder = folder_with(&[("a.framing", &faulty_cabin()), ("b.framing", &sample("first.framing"))]);
    let path = folder.path();
    let day = ["--today", "2027-06-01"];
    let write = |name: &str, format: &str, arguments: &[&str]| {
        let ran = lint(path, format, &[&day[..], arguments].concat());
        fs::write(path.join(name), ran.out).unwrap();
    };
    for format in FORMATS {
        write("1", format, &["--shard", "1/3"]);
        write("2", format, &["--shard", "2/3"]);
        write("3", format, &["--shard", "3/3"]);
        write("whole", format, &[]);
        write("of 4", format, &["--shard", "3/4"]);
        write("of 1000", format, &["--shard", "1/1000"]);
        let text = fs::read_to_string(path.join("of 1000")).unwrap();
        fs::write(path.join("of 4294967295"), text.replace("1000", "4294967295")).unwrap();
        write("beyond", format, &["--shard", "1000/1000"]);
        let text = fs::read_to_string(path.join("beyond")).unwrap();
        let text = text.replace("\"count\": 1000", "\"count\": 3");
        fs::write(path.join("beyond"), text.replace("\"shards\" value=\"1000\"", "\"shards\" value=\"3\""))
            .unwrap();
        write("level", format, &["--shard", "3/3", "--fail-on", "advice"]);
        let later = lint(path, format, &["--shard", "3/3", "--today", "2027-06-02"]);
        fs::write(path.join("later"), later.out).unwrap();
        let text = fs::read_to_string(path.join("3")).unwrap();
        fs::write(path.join("newer"), text.replace(env!("CARGO_PKG_VERSION"), "9.0.0")).unwrap();
        fs::write(path.join("cut"), &text[..text.len() - 30]).unwrap();
        fs::write(path.join("empty"), "").unwrap();
        fs::write(path.join("words"), "a.framing: nothing found\n").unwrap();
        fs::write(path.join("latin"), b"{ \xe9").unwrap();
        let other = if format == "json" { "sarif" } else { "json" };
        write("other", other, &["--shard", "3/3"]);
        let formats = format!("1 and other are of different runs: the format is {format} and {other}");
        for (results, why) in [
            (&["1", "2"][..], "the result of shard 3/3 is missing"),
            (&["2"], "the results of shards 1/3, 3/3 are missing"),
            (
                &["of 1000"],
                "the results of shards 2/1000, 3/1000, 4/1000, 5/1000, 6/1000 and 994 more are missing",
            ),
            (&["of 4294967295"], "the results of shards 2/4294967295, "),
            (&["beyond"], "beyond: not as `lint` wrote it: there is no shard 1000 of 3"),
            (&["1", "2", "1", "3"], "1 and 1 are both of shard 1/3"),
            (&["1", "2", "of 4"], "1 and of 4 are of different runs: the number of shards is 3 and 4"),
            (
                &["1", "2", "later"],
                "1 and later are of different runs: the day of `--today` is 2027-06-01 and 2027-06-02",
            ),
            (
                &["1", "2", "level"],
                "1 and level are of different runs: the severity of `--fail-on` is error and advice",
            ),
            (&["1", "2", "other"], &formats),
            (&["1", "2", "whole"], "whole: no result of a shard: `lint --shard` did not write it"),
            (&["1", "2", "empty"], "empty: the file is empty: its shard did not come to its end"),
            (&["1", "2", "words"], "words: no result of `lint` as json, sarif or junit"),
            (&["1", "2", "newer"], "newer: storyrod 9.0.0 wrote it"),
            (&["1", "2", "cut"], "cut: not as `lint` wrote it: "),
            (&["1", "2", "none"], "none: "),
            (&["1", "2", "latin"], "latin: "),
            (&["1", "2", "."], ".: "),
        ] {
            let ran = storyrod_in(path, &[&["gather"], results].concat(), b"");
            assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{format} {results:?}");
            assert!(ran.log.starts_with(&format!("storyrod: {why}")), "{format} {results:?}: {}", ran.log);
        }
        // Somebody took something out.
        for number in ["1", "2", "3"] {
            let text = fs::read_to_string(path.join(number)).unwrap();
            let less = text.replace("tests=\"", "tests=\"1").replace("\"results\": ", "\"results\": 1");
            let less = less.replace("\"counts\"", "\"count\"");
            if less != text && text.contains("a.framing") {
                fs::write(path.join("less"), less).unwrap();
                let ran = storyrod_in(path, &["gather", "less"], b"");
                assert_eq!((ran.code, ran.out.as_str()), (2, ""), "{format}");
                assert!(ran.log.starts_with("storyrod: less: not as `lint` wrote it: "), "{}", ran.log);
            }
        }
        // Another severity than the shards were told of.
        let ran = |level: &str| storyrod_in(path, &["gather", "--fail-on", level, "3", "2", "1"], b"");
        assert_eq!(ran("error").code, 1, "{format}: {}", ran("error").log);
        match format {
            "junit" => {
                assert_eq!((ran("advice").code, ran("advice").out.as_str()), (2, ""));
                let why = "these tests failed by `--fail-on error`: tell each shard another";
                assert!(ran("advice").log.contains(why), "{}", ran("advice").log);
            }
            _ => assert_eq!(ran("advice").out, ran("error").out),
        }
    }
    assert_eq!(storyrod_in(path, &["gather"], b"").code, 2);
}

/// Each of these decides what is found, and none of them stands in the names of the specs.
#[test]
fn shards_that_were_asked_something_else_are_refused() {
    let mut repository = Repository::new();
    let path = repository.path().to_owned();
    let write = |name: &str, text: &str| {
        fs::create_dir_all(path.join(name).parent().unwrap()).unwrap();
        fs::write(path.join(name), text).unwrap();
    };
    write("a/a.framing", &faulty_cabin());
    write("b/b.framing", &sample("first.framing"));
    write("storyrod.toml", "");
    repository.commit();
    write("b/b.framing", &faulty_cabin());
    repository.commit();
    let result = |name: &str, format: &str, arguments: &[&str]| {
        let ran = lint(&path, format, &[&["--today", "2027-06-01"], arguments].concat());
        write(&format!("results/{name}"), &ran.out);
        format!("results/{name}")
    };
    for format in FORMATS {
        write("known.toml", "");
        let first = |arguments: &[&str]| result("1", format, &[&["--shard", "1/2"], arguments].concat());
        let second = |arguments: &[&str]| result("2", format, &[&["--shard", "2/2"], arguments].concat());
        let gather = |one: &str, other: &str| storyrod_in(&path, &["gather", one, other], b"");
        let refused = |one: &str, other: &str, what: &str| {
            let ran = gather(one, other);
            let why = "are of different runs: the mark of paths, `storyrod.toml`, baseline and commits is ";
            assert!(ran.code == 2 && ran.log.contains(why), "{format} {what}: {}", ran.log);
        };
        // In another order and by other ways they are the same paths.
        assert_eq!(gather(&first(&["a", "b"]), &second(&["./b", "a", "b/../a"])).code, 1, "{format}");
        refused(&first(&["a", "b"]), &second(&["a"]), "paths");
        let known = ["--baseline", "known.toml"];
        let one = first(&known);
        write("known.toml", "# another\n");
        refused(&one, &second(&known), "baseline");
        let one = first(&[]);
        write("storyrod.toml", "leave-out = [\"a\"]\n");
        refused(&one, &second(&[]), "configuration");
        write("storyrod.toml", "");
        let branch = |revision: &str| {
            let commit = repository.git.revparse_single(revision).unwrap();
            repository.git.reference("refs/heads/base", commit.id(), true, "").unwrap();
        };
        branch("r0");
        let one = first(&["--changed-since", "base"]);
        branch("r1");
        refused(&one, &second(&["--changed-since", "base"]), "commit");
    }
}
