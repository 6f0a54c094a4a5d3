//! `ci/check.sh`, and the very steps of the files for hosted runners.

use std::fs;
use std::path::Path;
use std::process::Output;

use yaml_rust2::{Yaml, YamlLoader};

use crate::git::Repository;
use crate::program::{folder_with, sample};
use crate::start::{faulty, passes, read, started, told};

/// A file of YAML, as an independent reader has it.
fn yaml(repository: &Repository, name: &str) -> Yaml {
    YamlLoader::load_from_str(&read(repository, name)).unwrap().remove(0)
}

/// The keys of a map of YAML.
fn keys(map: &Yaml) -> Vec<&str> {
    map.as_hash().unwrap().keys().map(|key| key.as_str().unwrap()).collect()
}

/// The lines of a step, the variables it is given, and whether it runs after a step that failed too.
type Step = (String, Vec<(String, String)>, bool);

/// The steps of the workflow that a shell runs. `base` is the revision that a change goes onto.
fn workflow_steps(repository: &Repository, base: &str) -> Vec<Step> {
    let workflow = yaml(repository, ".github/workflows/check.yml");
    // `on` is a word of YAML 1.1 for true: a reader may have it as one.
    assert_eq!(workflow["on"]["push"]["branches"][0].as_str(), Some("main"));
    assert!(keys(&workflow["on"]).contains(&"pull_request"));
    assert_eq!(workflow["permissions"]["contents"].as_str(), Some("read"));
    let job = &workflow["jobs"]["check"];
    assert_eq!(keys(job), ["runs-on", "steps"]);
    let steps = job["steps"].as_vec().unwrap();
    assert_eq!(steps[0]["with"]["fetch-depth"].as_i64(), Some(0));
    let value_of = |written: &str| match written {
        "${{ github.event.pull_request.base.sha }}" => base.to_owned(),
        "${{ vars.STORYROD_SOURCE }}" => String::new(),
        other => panic!("what does the host put in place of {other}?"),
    };
    let mut runs = Vec::new();
    for step in steps {
        let known = ["name", "uses", "with", "run", "env", "if"];
        assert!(keys(step).iter().all(|key| known.contains(key)), "{step:?}");
        assert!(step["uses"].is_badvalue() != step["run"].is_badvalue(), "{step:?}");
        let Some(run) = step["run"].as_str() else { continue };
        let given = step["env"].as_hash().into_iter().flatten();
        let given =
            given.map(|(name, value)| (name.as_str().unwrap().to_owned(), value_of(value.as_str().unwrap())));
        let is_always = step["if"].as_str().is_some_and(|when| when.starts_with("always()"));
        runs.push((run.to_owned(), given.collect(), is_always));
    }
    runs
}

/// Runs the workflow as the host does: `sh -e`, step by step. Is it passed, what was told, and the page of the run.
fn run_workflow(repository: &Repository, base: &str) -> (bool, String, String) {
    let page = repository.path().join(".git/page-of-the-run");
    _ = fs::remove_file(&page);
    let (mut is_passed, mut log) = (true, String::new());
    for (run, given, is_always) in workflow_steps(repository, base) {
        if !is_passed && !is_always {
            continue;
        }
        let output = in_shell(repository, &run, &given, &page);
        log += &told(&output);
        is_passed &= output.status.success();
    }
    (is_passed, log, fs::read_to_string(&page).unwrap())
}

fn in_shell(repository: &Repository, run: &str, given: &[(String, String)], page: &Path) -> Output {
    let program = assert_cmd::cargo::cargo_bin!("storyrod");
    let path = format!("{}:{}", program.parent().unwrap().display(), std::env::var("PATH").unwrap());
    let mut variables = vec![("PATH", path.as_str()), ("GITHUB_STEP_SUMMARY", page.to_str().unwrap())];
    variables.extend(given.iter().map(|(name, value)| (name.as_str(), value.as_str())));
    repository.run_with(&variables, &["sh", "-e", "-c", run])
}

#[test]
fn the_steps_of_the_workflow_pass_a_clean_house_and_fail_a_faulty_one() {
    let repository = started();
    let base = repository.git(&["rev-parse", "HEAD"]).trim().to_owned();
    let (is_passed, log, page) = run_workflow(&repository, "");
    assert!(is_passed, "{log}");
    assert!(page.contains("nothing found in 1 spec") && !page.contains("house.framing"), "{page}");
    // A good change on a branch, while the branch it goes onto has gone on.
    repository.git(&["checkout", "--quiet", "-b", "heavier"]);
    let heavier = read(&repository, "house.framing").replace("dead          12 psf", "dead          15 psf");
    repository.write("house.framing", heavier);
    repository.commit();
    let (is_passed, log, page) = run_workflow(&repository, &base);
    assert!(is_passed, "{log}");
    assert!(page.contains("**floor main** dead  12 psf → 15 psf"), "{page}");
    // A faulty one that went round the hook.
    repository.write("house.framing", faulty(&repository));
    repository.git(&["commit", "--quiet", "--all", "--no-verify", "--message=faulty"]);
    let (is_passed, log, page) = run_workflow(&repository, &base);
    assert!(!is_passed);
    assert!(log.contains("[stack-does-not-close]"), "{log}");
    assert!(page.contains("`stack-does-not-close`") && page.contains("**joists J1** size"), "{page}");
    let sarif: serde_json::Value = serde_json::from_str(&read(&repository, "reports/lint.sarif")).unwrap();
    assert_eq!(sarif["runs"][0]["results"].as_array().unwrap().len(), 1);
    assert!(read(&repository, "reports/lint.xml").contains("<failure"));
    assert_eq!(repository.git(&["status", "--short"]), "");
}

#[test]
fn the_script_of_the_other_host_does_too() {
    let repository = started();
    let base = repository.git(&["rev-parse", "HEAD"]).trim().to_owned();
    let file = yaml(&repository, ".gitlab-ci.yml");
    assert_eq!(keys(&file), ["check"]);
    let job = &file["check"];
    assert_eq!(keys(job), ["image", "rules", "variables", "script", "artifacts"]);
    assert_eq!(job["variables"]["GIT_DEPTH"].as_str(), Some("0"));
    let script: Vec<&str> =
        job["script"].as_vec().unwrap().iter().map(|line| line.as_str().unwrap()).collect();
    let run =
        |given: &[(String, String)]| in_shell(&repository, &script.join("\n"), given, Path::new("/dev/null"));
    let of_review = [("CI_MERGE_REQUEST_DIFF_BASE_SHA".to_owned(), base)];
    passes(&run(&[]));
    passes(&run(&of_review));
    for artifact in [&job["artifacts"]["paths"][0], &job["artifacts"]["reports"]["junit"]] {
        assert!(repository.path().join(artifact.as_str().unwrap()).exists(), "{artifact:?}");
    }
    repository.write("house.framing", faulty(&repository));
    let failed = run(&of_review);
    assert!(
        !failed.status.success() && told(&failed).contains("[stack-does-not-close]"),
        "{}",
        told(&failed)
    );
    assert!(read(&repository, "reports/changes.md").contains("**joists J1** size"));
}

#[test]
fn a_runner_without_the_program_builds_it_or_says_what_it_needs() {
    let repository = started();
    let run = |variables: &[(&str, &str)]| repository.run_with(variables, &["sh", "ci/get-storyrod.sh"]);
    let stopped = run(&[]);
    assert!(!stopped.status.success() && told(&stopped).contains("STORYROD_SOURCE"), "{}", told(&stopped));
    // In place of cargo, a program that says how it was called.
    let tools = folder_with(&[("cargo", "#!/bin/sh\necho cargo \"$@\"\n")]);
    passes(&repository.run(&["chmod", "+x", tools.path().join("cargo").to_str().unwrap()]));
    let path = format!("{}:{}", tools.path().display(), std::env::var("PATH").unwrap());
    let built = run(&[("PATH", &path), ("STORYROD_SOURCE", "https://git.example.org/storyrod")]);
    passes(&built);
    assert_eq!(told(&built), "cargo install --locked --git https://git.example.org/storyrod storyrod\n");
}

#[test]
fn a_spec_that_is_new_and_one_that_is_gone_are_told_apart() {
    let repository = started();
    let base = repository.git(&["rev-parse", "HEAD"]).trim().to_owned();
    repository.write("barn two.framing", sample("hop-barn.framing"));
    repository.git(&["mv", "house.framing", "cabin.framing"]);
    repository.commit();
    let output = repository.run(&["sh", "ci/check.sh", &base]);
    let changes = read(&repository, "reports/changes.md");
    passes(&output);
    assert!(changes.contains("barn two.framing, Hop Barn\n\nA new spec."), "{changes}");
    // It is the same house with another name.
    assert!(!changes.contains("cabin.framing"), "{changes}");
    assert!(changes.contains("Nothing that matters changed in 1 more spec."), "{changes}");
    let unknown = repository.run(&["sh", "ci/check.sh", "none"]);
    assert!(!unknown.status.success(), "{}", told(&unknown));
}
