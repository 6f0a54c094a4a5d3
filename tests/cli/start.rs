//! `storyrod start`, and what it makes: the hook, the scripts, and the very steps of the files for hosted runners.

use std::fs;
use std::path::Path;
use std::process::Output;

use yaml_rust2::{Yaml, YamlLoader};

use crate::git::Repository;
use crate::program::{Ran, folder_with, sample, storyrod_in};

fn start(folder: &Path, arguments: &[&str]) -> Ran {
    storyrod_in(folder, &[&["start"], arguments].concat(), b"")
}

/// A new repository in its first commit, set up as its own page says.
fn started() -> Repository {
    let repository = Repository::with(&[]);
    let ran = start(repository.path(), &["."]);
    assert_eq!((ran.code, ran.log.as_str()), (0, ""));
    passes(&repository.run(&["sh", "ci/set-up.sh"]));
    repository.commit();
    repository
}

fn passes(output: &Output) {
    assert!(output.status.success(), "{}", told(output));
}

fn told(output: &Output) -> String {
    format!("{}{}", String::from_utf8_lossy(&output.stdout), String::from_utf8_lossy(&output.stderr))
}

fn read(repository: &Repository, name: &str) -> String {
    fs::read_to_string(repository.path().join(name)).unwrap_or_default()
}

/// The cabin with joists too deep for its walls.
fn faulty(repository: &Repository) -> String {
    let text = read(repository, "house.framing");
    assert!(text.contains("2x10 SPF"));
    text.replace("2x10 SPF", "2x12 SPF")
}

#[test]
fn a_new_folder_holds_a_clean_house_and_says_what_is_next() {
    let folder = folder_with(&[]);
    let ran = start(folder.path(), &["jobs/cabin", "--name", "Mill Lane 4"]);
    assert_eq!((ran.code, ran.log.as_str()), (0, ""));
    assert!(ran.out.contains("new   jobs/cabin/house.framing\n"), "{}", ran.out);
    assert!(ran.out.contains("next\n  cd jobs/cabin\n  git init\n  sh ci/set-up.sh"), "{}", ran.out);
    let cabin = folder.path().join("jobs/cabin");
    for command in [&["lint"][..], &["format", "--check"], &["lint", "--fail-on", "warning", "house.framing"]]
    {
        let ran = storyrod_in(&cabin, command, b"");
        assert_eq!(ran.code, 0, "{command:?}: {}{}", ran.out, ran.log);
    }
    let spec = fs::read_to_string(cabin.join("house.framing")).unwrap();
    assert_eq!(spec, sample("first.framing").replace("One-room cabin", "Mill Lane 4"));
    assert!(fs::read_to_string(cabin.join("README.md")).unwrap().starts_with("# Mill Lane 4\n"));
    // Again: everything stands.
    let again = start(folder.path(), &["jobs/cabin", "--name", "Mill Lane 4"]);
    assert_eq!((again.code, again.out.contains("new   ")), (0, false), "{}", again.out);
    assert_eq!(again.out.matches("same  ").count(), ran_files(&ran.out), "{}", again.out);
}

/// A shell is given what is told, and comes to the folder.
#[test]
fn what_is_next_is_told_as_a_shell_takes_it() {
    let folder = folder_with(&[]);
    for (name, told) in [
        ("my house", "'my house'"),
        ("-x", "./-x"),
        ("- y", "'./- y'"),
        ("$HOME/it's", "'$HOME/it'\"'s\""),
        ("Mühle", "'Mühle'"),
        ("jobs/plain", "jobs/plain"),
    ] {
        let ran = start(folder.path(), &["--", name]);
        assert_eq!(ran.code, 0, "{name}: {}", ran.log);
        let command = ran.out.lines().find_map(|line| line.strip_prefix("  cd ")).unwrap();
        assert_eq!(command, told);
        let script = format!("cd {command} && pwd -P");
        let output = std::process::Command::new("sh")
            .args(["-c", &script])
            .current_dir(folder.path())
            .output()
            .unwrap();
        let came_to = String::from_utf8(output.stdout).unwrap();
        let meant = folder.path().join(name).canonicalize().unwrap();
        assert_eq!(came_to.trim_end(), meant.to_str().unwrap());
    }
}

fn ran_files(out: &str) -> usize {
    out.matches("new   ").count()
}

#[test]
fn nothing_that_stands_is_written_over() {
    let folder = folder_with(&[("README.md", "mine\n"), ("jobs/barn.framing", &sample("hop-barn.framing"))]);
    #[cfg(unix)]
    std::os::unix::fs::symlink("nowhere", folder.path().join(".gitignore")).unwrap();
    let ran = start(folder.path(), &["."]);
    assert_eq!((ran.code, ran.log.as_str()), (1, ""));
    assert!(ran.out.contains("left  ./README.md: something else stands there\n"), "{}", ran.out);
    assert!(ran.out.contains("there are specs already (jobs/barn.framing): no first one is written"));
    assert_eq!(fs::read_to_string(folder.path().join("README.md")).unwrap(), "mine\n");
    assert!(!folder.path().join("house.framing").exists() && !folder.path().join("nowhere").exists());
    assert!(folder.path().join("ci/check.sh").exists());
    // What it says of files that it did not write, it leaves out.
    assert!(ran.out.contains("  sh ci/set-up.sh") && !ran.out.contains("README.md says"), "{}", ran.out);
    assert!(!ran.out.contains("every number of house.framing"), "{}", ran.out);
}

#[test]
fn what_cannot_be_written_is_said() {
    let folder = folder_with(&[("file", ""), ("house/ci", "no folder\n")]);
    let ran = start(folder.path(), &["file"]);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.log.starts_with("storyrod: can't make the folder file: "), "{}", ran.log);
    let ran = start(folder.path(), &["house"]);
    assert_eq!((ran.code, ran.log.lines().count()), (2, 3), "{}", ran.log);
    assert!(ran.log.contains("can't write house/ci/check.sh: "), "{}", ran.log);
    assert!(folder.path().join("house/.gitlab-ci.yml").exists());
    for name in ["", "  ", "6\" walls", "two\nlines"] {
        let ran = start(folder.path(), &["new", "--name", name]);
        assert_eq!((ran.code, folder.path().join("new").exists()), (2, false), "{name:?}: {}", ran.log);
    }
    assert_eq!(start(folder.path(), &[]).code, 2);
}

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
fn the_commands_of_its_page_run() {
    let repository = started();
    let page = read(&repository, "README.md");
    let commands = page.split("```sh\n").nth(1).and_then(|rest| rest.split("```").next()).unwrap();
    assert!(commands.lines().count() > 3);
    passes(&repository.run(&["sh", "-e", "-c", commands]));
    assert_eq!(repository.git(&["status", "--short"]), "");
    for file in ["house.framing", "ci/check.sh", ".github/workflows/check.yml", ".gitlab-ci.yml"] {
        assert!(page.contains(&format!("`{file}`")) && repository.path().join(file).exists(), "{file}");
    }
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
fn a_diff_there_shows_facts() {
    let repository = started();
    repository.write("house.framing", faulty(&repository));
    let diff = repository.git(&["diff"]);
    assert!(diff.contains("\n+joists J1  size  2x12 SPF No.2\n"), "{diff}");
    assert!(diff.contains("\n+joists J1  bottom  99'-0\"  (derived)\n"), "{diff}");
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
fn what_it_says_to_editors_is_what_they_are_offered() {
    let repository = started();
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let helix = fs::read_to_string(root.join("editors/helix/languages.toml")).unwrap();
    let of_project = read(&repository, ".helix/languages.toml");
    assert!(of_project.lines().count() > 8 && of_project.lines().all(|line| helix.contains(line)));
    let json = |text: &str| serde_json::from_str::<serde_json::Value>(text).unwrap();
    let package = json(&fs::read_to_string(root.join("editors/vscode/package.json")).unwrap());
    let extension =
        format!("{}.{}", package["publisher"].as_str().unwrap(), package["name"].as_str().unwrap());
    let recommended = json(&read(&repository, ".vscode/extensions.json"));
    assert_eq!(recommended["recommendations"], serde_json::json!([extension]));
    let language = package["contributes"]["languages"][0]["id"].as_str().unwrap();
    let settings = json(&read(&repository, ".vscode/settings.json"));
    assert_eq!(settings["files.associations"]["*.framing"], language);
    assert_eq!(settings[format!("[{language}]")]["editor.formatOnSave"], true);
}

/// A file of YAML, as an independent reader has it.
fn yaml(repository: &Repository, name: &str) -> Yaml {
    YamlLoader::load_from_str(&read(repository, name)).unwrap().remove(0)
}

#[test]
fn hooks_for_the_framework_run_what_the_program_has() {
    let hooks = YamlLoader::load_from_str(include_str!("../../.pre-commit-hooks.yaml")).unwrap().remove(0);
    let hooks = hooks.as_vec().unwrap();
    let ids: Vec<_> = hooks.iter().map(|hook| hook["id"].as_str().unwrap()).collect();
    assert_eq!(ids, ["storyrod-format", "storyrod-lint"]);
    let shown = include_str!("../../README.md");
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
