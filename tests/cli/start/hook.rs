//! The checks before a commit: the script in a new repository, and the hooks for the framework.

use std::fs;
use std::process::Output;

use yaml_rust2::YamlLoader;

use crate::git::Repository;
use crate::program::{folder_with, sample, storyrod_in};
use crate::start::{faulty, passes, read, start, started, told};

/// What comes of a commit, through the hook.
fn commit(repository: &Repository, arguments: &[&str]) -> Output {
    repository.run(&[&["git", "commit", "--quiet", "--message=next"], arguments].concat())
}

/// Commits everything below a house's folder; the hook says what `storyrod lint` says there.
fn commits_as_lint_has_it(repository: &Repository, folder: &str, is_clean: bool) {
    let ran = storyrod_in(&repository.path().join(folder), &["lint"], b"");
    assert_eq!(ran.code == 0, is_clean, "{}{}", ran.out, ran.log);
    repository.git(&["add", "--all"]);
    let output = commit(repository, &["--allow-empty"]);
    assert_eq!(output.status.success(), is_clean, "{}", told(&output));
}

#[test]
fn the_hook_judges_what_will_be_committed() {
    let repository = started();
    let clean = read(&repository, "house.framing");
    let commit = |arguments: &[&str]| commit(&repository, arguments);
    // Faulty on disk and in the index.
    repository.write("house.framing", faulty(&repository));
    let stopped = commit(&["--all"]);
    assert!(
        !stopped.status.success() && told(&stopped).contains("[stack-does-not-close]"),
        "{}",
        told(&stopped)
    );
    assert!(told(&stopped).contains("house.framing:39:17"), "{}", told(&stopped));
    // Faulty in the index, mended on disk only.
    repository.git(&["add", "house.framing"]);
    repository.write("house.framing", &clean);
    assert!(!commit(&[]).status.success());
    // Mended in the index, faulty on disk.
    repository.write("house.framing", clean.replace("live          40 psf", "live          41 psf"));
    repository.git(&["add", "house.framing"]);
    repository.write("house.framing", faulty(&repository));
    passes(&commit(&[]));
    assert!(repository.git(&["status", "--short"]).contains(" M house.framing"));
    repository.git(&["checkout", "--quiet", "."]);
    // Not in the one style.
    repository.write("house.framing", read(&repository, "house.framing").replace("  live    ", "  live"));
    let stopped = commit(&["--all"]);
    assert!(!stopped.status.success() && told(&stopped).contains("storyrod format"), "{}", told(&stopped));
    repository.git(&["checkout", "--quiet", "."]);
    // An include that is there, and is forgotten.
    let (head, rest) = clean.split_at(clean.find("floor main").unwrap());
    repository.write("house.framing", format!("{head}include \"rest.framing\"\n"));
    repository.write("rest.framing", rest);
    let stopped = commit(&["--all"]);
    assert!(
        !stopped.status.success() && told(&stopped).contains("[include-not-found]"),
        "{}",
        told(&stopped)
    );
    repository.git(&["add", "--all"]);
    passes(&commit(&[]));
    // Without specs there is nothing to judge; without the program nothing can be.
    repository.git(&["rm", "--quiet", "house.framing", "rest.framing"]);
    passes(&commit(&[]));
    repository.write("notes.md", "no spec");
    repository.git(&["add", "notes.md"]);
    let without = ["git", "commit", "--quiet", "--message=next"];
    let stopped = repository.run_with(&[], &without);
    assert!(told(&stopped).contains("nothing was checked"), "{}", told(&stopped));
    assert!(!stopped.status.success());
}

#[test]
fn the_hook_reads_files_of_any_name() {
    let repository = started();
    let clean = read(&repository, "house.framing");
    let in_parts = |part: &str| {
        let (head, rest) = clean.split_at(clean.find("floor main").unwrap());
        (format!("{head}include \"{part}\"\n"), rest.to_owned())
    };
    let (house, rest) = in_parts("rest.txt");
    repository.write("house.framing", house);
    repository.write("rest.txt", &rest);
    commits_as_lint_has_it(&repository, "", true);
    repository.write("rest.txt", rest.replace("2x10 SPF", "2x12 SPF"));
    commits_as_lint_has_it(&repository, "", false);
    // What it finds there becomes known.
    let settings = read(&repository, "storyrod.toml") + "baseline = \"known.list\"\n";
    repository.write("storyrod.toml", settings);
    passes(&repository.run(&["storyrod", "lint", "--update-baseline"]));
    commits_as_lint_has_it(&repository, "", true);
    // A file that git was told of, and that will not be committed, is not there.
    repository.write("new.framing", "nothing like a spec");
    repository.git(&["add", "--intent-to-add", "new.framing"]);
    passes(&commit(&repository, &["--allow-empty"]));
}

#[cfg(unix)]
#[test]
fn the_hook_follows_links_and_heeds_what_git_ignores() {
    let repository = started();
    let clean = read(&repository, "house.framing");
    let (head, rest) = clean.split_at(clean.find("floor main").unwrap());
    for folder in ["common/parts", "old"] {
        fs::create_dir_all(repository.path().join(folder)).unwrap();
    }
    std::os::unix::fs::symlink("common/parts", repository.path().join("linked")).unwrap();
    repository.write("house.framing", format!("{head}include \"linked/rest.framing\"\n"));
    repository.write("common/parts/rest.framing", rest);
    // Ignored, and in the repository all the same.
    repository.write("old/house.framing", clean.replace("2x10 SPF", "2x12 SPF"));
    repository.write(".gitignore", "/reports/\n/old/\n");
    repository.git(&["add", "--force", "old/house.framing"]);
    commits_as_lint_has_it(&repository, "", true);
    repository.write("common/parts/rest.framing", rest.replace("2x10 SPF", "2x12 SPF"));
    commits_as_lint_has_it(&repository, "", false);
}

#[test]
fn the_hook_reads_submodules_as_they_will_be_committed() {
    let clean = sample("first.framing");
    let (head, rest) = clean.split_at(clean.find("floor main").unwrap());
    let shared = Repository::with(&[("rest.framing", rest), ("notes.md", "walls and floors\n")]);
    shared.commit();
    let repository = started();
    let add = ["git", "-c", "protocol.file.allow=always", "submodule", "--quiet", "add"];
    passes(&repository.run(&[&add[..], &[shared.path().to_str().unwrap(), "parts of all"]].concat()));
    repository.write("house.framing", format!("{head}include \"parts of all/rest.framing\"\n"));
    commits_as_lint_has_it(&repository, "", true);
    // Faulty on disk, which no commit takes along, then in a commit of its own.
    let part = "parts of all/rest.framing";
    repository.write(part, rest.replace("2x10 SPF", "2x12 SPF"));
    passes(&commit(&repository, &["--allow-empty"]));
    repository.git(&["-C", "parts of all", "commit", "--quiet", "--all", "--message=deeper"]);
    commits_as_lint_has_it(&repository, "", false);
    // A submodule that was not fetched stops nothing that does not need it.
    repository.git(&["reset", "--quiet", "--hard"]);
    repository.write("house.framing", &clean);
    repository.git(&["submodule", "--quiet", "deinit", "--force", "parts of all"]);
    commits_as_lint_has_it(&repository, "", true);
}

#[test]
fn the_hook_of_a_folder_below_goes_by_the_configuration_there() {
    let repository = Repository::with(&[("barns/faulty.framing", "project \"½ done\"\n  frost  12-6\n")]);
    assert_eq!(start(repository.path(), &["jobs/my cabin"]).code, 0);
    passes(&repository.run(&["sh", "jobs/my cabin/ci/set-up.sh"]));
    // The barns are no matter of this hook.
    commits_as_lint_has_it(&repository, "jobs/my cabin", true);
    let house = sample("first.framing")
        + "\nproduct LV12\n  kind          composite lumber 1-3/4 x 11-7/8\n  values        E 2.0e6 psi, Fb 2600 psi, Fv 285 psi, Fc-perp 750 psi\n  source        \"invented for this test\" on 2027-01-15\n";
    repository.write("jobs/my cabin/house.framing", house);
    commits_as_lint_has_it(&repository, "jobs/my cabin", true);
    let strict = read(&repository, "jobs/my cabin/storyrod.toml").replace("\"error\"", "\"advice\"");
    repository.write("jobs/my cabin/storyrod.toml", strict);
    commits_as_lint_has_it(&repository, "jobs/my cabin", false);
    // The house is gone: nothing to judge, unless the configuration leads elsewhere.
    repository.git(&["rm", "--quiet", "--force", "jobs/my cabin/house.framing"]);
    passes(&commit(&repository, &[]));
    repository.write("jobs/my cabin/storyrod.toml", "paths = [\"../../barns\"]\n");
    commits_as_lint_has_it(&repository, "jobs/my cabin", false);
    repository.write("barns/faulty.framing", sample("first.framing"));
    commits_as_lint_has_it(&repository, "jobs/my cabin", true);
}

#[test]
fn a_hook_that_was_copied_judges_the_whole_repository() {
    let repository = started();
    repository.git(&["config", "--unset", "core.hooksPath"]);
    fs::create_dir_all(repository.path().join(".git/hooks")).unwrap();
    fs::copy(repository.path().join(".githooks/pre-commit"), repository.path().join(".git/hooks/pre-commit"))
        .unwrap();
    repository.write("notes.md", "clean\n");
    commits_as_lint_has_it(&repository, "", true);
    repository.write("house.framing", faulty(&repository));
    commits_as_lint_has_it(&repository, "", false);
}

#[test]
fn the_hook_judges_a_part_of_the_index_and_a_worktree_too_and_leaves_nothing_behind() {
    let repository = started();
    let folder = folder_with(&[]);
    let worktree = folder.path().join("other");
    repository.git(&["worktree", "add", "--quiet", worktree.to_str().unwrap(), "-b", "other"]);
    let temporary = folder_with(&[]);
    let program = assert_cmd::cargo::cargo_bin!("storyrod");
    let path = format!("{}:{}", program.parent().unwrap().display(), std::env::var("PATH").unwrap());
    let commit = |script: &str| {
        let variables = [("PATH", path.as_str()), ("TMPDIR", temporary.path().to_str().unwrap())];
        let script = format!("cd \"$0\"; {script}");
        repository.run_with(&variables, &["sh", "-e", "-c", &script, worktree.to_str().unwrap()])
    };
    let made = commit(
        "sed 's/2x10 SPF/2x12 SPF/' house.framing > second.framing
        sed 's/live          40/live          41/' house.framing > new
        mv new house.framing
        git add second.framing",
    );
    passes(&made);
    assert!(!commit("git commit --quiet --all --message=all").status.success());
    passes(&commit("git commit --quiet --message=part house.framing"));
    assert!(!commit("cd ci; git commit --quiet --message=rest").status.success());
    assert_eq!(fs::read_dir(temporary.path()).unwrap().count(), 0);
}

#[test]
fn drafts_may_be_faulty() {
    let repository = started();
    fs::create_dir(repository.path().join("drafts")).unwrap();
    repository.write("drafts/house.framing", faulty(&repository));
    repository.commit();
    passes(&repository.run(&["sh", "ci/check.sh", "HEAD"]));
    // Nothing else is there to be judged.
    repository.git(&["rm", "--quiet", "house.framing"]);
    commits_as_lint_has_it(&repository, "", true);
    repository.git(&["mv", "drafts/house.framing", "second.framing"]);
    assert!(!repository.run(&["git", "commit", "--quiet", "--message=next"]).status.success());
}

#[test]
fn hooks_that_stand_already_stay() {
    let repository = started();
    let set_up = || repository.run(&["sh", "ci/set-up.sh"]);
    let folder = || repository.git(&["config", "core.hooksPath"]);
    // Once more changes nothing.
    passes(&set_up());
    assert_eq!(folder(), ".githooks\n");
    repository.git(&["config", "core.hooksPath", "ci"]);
    let output = set_up();
    passes(&output);
    assert_eq!(folder(), "ci\n");
    assert!(told(&output).contains("let its pre-commit call .githooks/pre-commit"), "{}", told(&output));
    repository.git(&["config", "--unset", "core.hooksPath"]);
    repository.write(".git/hooks/commit-msg", "#!/bin/sh\n");
    assert!(told(&set_up()).contains(".git/hooks has hooks already"));
    assert!(!repository.run(&["git", "config", "core.hooksPath"]).status.success());
}

#[test]
fn hooks_for_the_framework_run_what_the_program_has() {
    let hooks = YamlLoader::load_from_str(include_str!("../../../.pre-commit-hooks.yaml")).unwrap().remove(0);
    let hooks = hooks.as_vec().unwrap();
    let ids: Vec<_> = hooks.iter().map(|hook| hook["id"].as_str().unwrap()).collect();
    assert_eq!(ids, ["storyrod-format", "storyrod-lint"]);
    let shown = include_str!("../../../README.md");
    assert!(ids.iter().all(|id| shown.contains(&format!("      - id: {id}\n"))));
    let draft = "project  \"½ done\"\n  frost  12-6\n";
    let folder = folder_with(&[
        ("house.framing", &sample("first.framing").replace("  live    ", "  live")),
        ("drafts/house.framing", draft),
        ("storyrod.toml", "leave-out = [\"drafts/\"]\n"),
    ]);
    for hook in hooks {
        assert_eq!(hook["language"].as_str(), Some("rust"));
        // A file that is named is never left out; and what lint finds hangs on files of any name.
        assert_eq!(hook["pass_filenames"].as_bool(), Some(false));
        let entry = hook["entry"].as_str().unwrap();
        assert_eq!(hook["always_run"].as_bool() == Some(true), entry == "storyrod lint");
        let arguments: Vec<&str> = entry.strip_prefix("storyrod ").unwrap().split(' ').collect();
        let ran = storyrod_in(folder.path(), &arguments, b"");
        assert_eq!(ran.code, 0, "{arguments:?}: {}{}", ran.out, ran.log);
    }
    let after = |name: &str| fs::read_to_string(folder.path().join(name)).unwrap();
    assert_eq!(
        (after("house.framing"), after("drafts/house.framing")),
        (sample("first.framing"), draft.into())
    );
}

#[test]
fn a_folder_inside_a_repository_gets_its_hook_and_a_warning() {
    let repository = Repository::with(&[("notes.md", "more than a house\n")]);
    let ran = start(repository.path(), &["jobs/cabin"]);
    assert_eq!(ran.code, 0);
    assert!(!ran.out.contains("git init"), "{}", ran.out);
    assert!(ran.out.contains("a host looks for .github and .gitlab-ci.yml there"), "{}", ran.out);
    passes(&repository.run(&["sh", "jobs/cabin/ci/set-up.sh"]));
    repository.commit();
    passes(&repository.run(&["sh", "jobs/cabin/ci/check.sh", "HEAD"]));
    let house = sample("first.framing").replace("2x10 SPF", "2x12 SPF");
    repository.write("jobs/cabin/house.framing", house);
    let stopped = repository.run(&["git", "commit", "--quiet", "--all", "--message=next"]);
    assert!(told(&stopped).contains(" house.framing:39:17"), "{}", told(&stopped));
    assert!(told(&stopped).contains("mend this in jobs/cabin and"), "{}", told(&stopped));
}
