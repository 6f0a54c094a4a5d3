//! `storyrod start`: a new repository of specs, with all that checks it.

use std::borrow::Cow;
use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};

use anyhow::Context;
use clap::Args;

use crate::cli::{Outcome, complain};
use crate::report::{Palette, printable};
use crate::workspace::{self, History, OpenDocuments, real_path};

#[derive(Debug, Args)]
pub(in crate::cli) struct StartArguments {
    /// The folder; it is made if need be
    #[arg(value_name = "DIR")]
    folder: PathBuf,
    /// What the house is called
    #[arg(long, default_value = SAMPLE_NAME, value_parser = title)]
    name: String,
}

/// What the house of the sample is called.
const SAMPLE_NAME: &str = "One-room cabin";

/// A file of a new repository.
struct Template {
    path: &'static str,
    text: &'static str,
    is_program: bool,
}

const fn text(path: &'static str, text: &'static str) -> Template {
    Template { path, text, is_program: false }
}

const fn program(path: &'static str, text: &'static str) -> Template {
    Template { path, text, is_program: true }
}

/// What a person reads first.
const PAGE: &str = "README.md";

/// What git has to be told in every clone.
const SET_UP: &str = "ci/set-up.sh";

/// The first spec. It is left out where specs stand already.
static SPEC: Template = text("house.framing", include_str!("../../grammar/samples/first.framing"));

/// All other files.
static TEMPLATES: &[Template] = &[
    text(PAGE, include_str!("start/README.md")),
    text("storyrod.toml", include_str!("start/storyrod.toml")),
    text(".gitattributes", include_str!("start/gitattributes")),
    text(".gitignore", include_str!("start/gitignore")),
    text(".editorconfig", include_str!("start/editorconfig")),
    program(".githooks/pre-commit", include_str!("start/pre-commit.sh")),
    program(SET_UP, include_str!("start/set-up.sh")),
    program("ci/get-storyrod.sh", include_str!("start/get-storyrod.sh")),
    program("ci/check.sh", include_str!("start/check.sh")),
    text(".github/workflows/check.yml", include_str!("start/workflow.yml")),
    text(".gitlab-ci.yml", include_str!("start/gitlab-ci.yml")),
    text(".vscode/settings.json", include_str!("start/vscode-settings.json")),
    text(".vscode/extensions.json", include_str!("start/vscode-extensions.json")),
    text(".helix/languages.toml", include_str!("start/helix-languages.toml")),
];

/// What became of a file.
enum Written {
    New,
    /// It stands there already, with this very text.
    Same,
    /// Something else stands there.
    Left,
}

pub(in crate::cli) fn run(
    arguments: &StartArguments,
    palette: Palette,
    out: &mut impl Write,
) -> anyhow::Result<Outcome> {
    let folder = &arguments.folder;
    fs::create_dir_all(folder).with_context(|| format!("can't make the folder {}", folder.display()))?;
    let specs = workspace::files_below(folder, &OpenDocuments::default());
    let own = specs.iter().find(|spec| **spec != real_path(&folder.join(SPEC.path)));
    if let Some(spec) = own {
        let name = workspace::name_within(&real_path(folder), spec);
        writeln!(out, "there are specs already ({}): no first one is written", printable(&name))?;
    }
    let first = Some(&SPEC).filter(|_| own.is_none());
    let mut outcome = Outcome::Clean;
    let mut standing = Vec::new();
    for template in first.into_iter().chain(TEMPLATES) {
        let path = folder.join(template.path);
        let shown = path.display().to_string();
        let shown = printable(&shown);
        let written = template.write(&path, &arguments.name);
        if matches!(written, Ok(Written::New | Written::Same)) {
            standing.push(template.path);
        }
        match written {
            Ok(Written::New) => writeln!(out, "{}   {shown}", palette.strong("new"))?,
            Ok(Written::Same) => writeln!(out, "same  {shown}")?,
            Ok(Written::Left) => {
                writeln!(out, "{}  {shown}: something else stands there", palette.strong("left"))?;
                if outcome == Outcome::Clean {
                    outcome = Outcome::Found;
                }
            }
            Err(error) => {
                complain(&format!("can't write {shown}: {error}"));
                outcome = Outcome::Unusable;
            }
        }
    }
    write_next_steps(folder, &standing, palette, out)?;
    Ok(outcome)
}

impl Template {
    fn text_for(&self, name: &str) -> String {
        self.text.replace(SAMPLE_NAME, name)
    }

    /// Writes the file where nothing stands, a link that leads nowhere included.
    fn write(&self, path: &Path, name: &str) -> io::Result<Written> {
        let text = self.text_for(name);
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder)?;
        }
        let mut file = match OpenOptions::new().write(true).create_new(true).open(path) {
            Ok(file) => file,
            Err(error) if error.kind() == ErrorKind::AlreadyExists => {
                let is_same = fs::read(path).is_ok_and(|standing| standing == text.as_bytes());
                return Ok(if is_same { Written::Same } else { Written::Left });
            }
            Err(error) => return Err(error),
        };
        file.write_all(text.as_bytes())?;
        if self.is_program {
            let_run(&file)?;
        }
        Ok(Written::New)
    }
}

/// Lets a file be run as a program, where the system wants to be told.
#[cfg(unix)]
fn let_run(file: &File) -> io::Result<()> {
    use std::os::unix::fs::PermissionsExt;
    let mut permissions = file.metadata()?.permissions();
    // Whoever may read it may run it.
    permissions.set_mode(permissions.mode() | (permissions.mode() & 0o444) >> 2);
    file.set_permissions(permissions)
}

#[cfg(not(unix))]
fn let_run(_: &File) -> io::Result<()> {
    Ok(())
}

/// What to do next, with the files that stand as they were meant.
fn write_next_steps(
    folder: &Path,
    standing: &[&str],
    palette: Palette,
    out: &mut impl Write,
) -> io::Result<()> {
    let repository = History::of(folder).ok().map(|history| history.folder().to_owned());
    writeln!(out, "\n{}", palette.strong("next"))?;
    if real_path(folder) != real_path(Path::new(".")) {
        writeln!(out, "  cd {}", printable(&for_a_shell(folder)))?;
    }
    if repository.is_none() {
        writeln!(out, "  git init")?;
    }
    if standing.contains(&SET_UP) {
        writeln!(out, "  sh {SET_UP}    # facts in `git diff`, and a check before each commit")?;
    }
    writeln!(out, "  storyrod lint")?;
    if standing.contains(&SPEC.path) {
        writeln!(out, "every number of {} is an invented example", SPEC.path)?;
    }
    if standing.contains(&PAGE) {
        writeln!(out, "{PAGE} says the rest")?;
    }
    match repository {
        Some(top) if top != real_path(folder) => writeln!(
            out,
            "the repository begins at {}: a host looks for .github and .gitlab-ci.yml there and not here",
            printable(&top.display().to_string())
        ),
        _ => Ok(()),
    }
}

/// A folder as a shell takes it for one word, and `cd` for no option.
fn for_a_shell(folder: &Path) -> String {
    let shown = folder.display().to_string();
    let shown = if shown.starts_with('-') { format!("./{shown}") } else { shown };
    shlex::try_quote(&shown).map(Cow::into_owned).unwrap_or(shown)
}

/// A name that can stand in quotes: the format has no other way to write a `"`.
fn title(written: &str) -> Result<String, String> {
    let title = written.trim();
    if title.is_empty() {
        return Err("a house needs a name".to_owned());
    }
    match title.chars().find(|character| *character == '"' || character.is_control()) {
        Some('"') => Err("`\"` ends a name in a spec: leave it out".to_owned()),
        Some(_) => Err("a name stands on one line, without control characters".to_owned()),
        None => Ok(title.to_owned()),
    }
}
