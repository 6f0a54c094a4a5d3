//! `storyrod start`, and what it makes.

mod hook;
mod runners;

use std::fs;
use std::path::Path;
use std::process::{Command, Output};

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
        let output = Command::new("sh").args(["-c", &script]).current_dir(folder.path()).output().unwrap();
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
fn a_diff_there_shows_facts() {
    let repository = started();
    repository.write("house.framing", faulty(&repository));
    let diff = repository.git(&["diff"]);
    assert!(diff.contains("\n+joists J1  size  2x12 SPF No.2\n"), "{diff}");
    assert!(diff.contains("\n+joists J1  bottom  99'-0\"  (derived)\n"), "{diff}");
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
