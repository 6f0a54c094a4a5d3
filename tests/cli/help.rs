//! What shells and manuals are told of the program.

use std::fs;
use std::process::{Command, Stdio};

use crate::program::{storyrod, storyrod_in};

#[test]
fn every_shell_gets_its_completions() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let ran = storyrod(&[], &["completions", shell]);
        assert_eq!((ran.code, ran.log.as_str()), (0, ""), "{shell}");
        for word in ["takedown", "stdin-filename"] {
            assert!(ran.out.contains(word), "{shell} does not complete `{word}`");
        }
    }
    let refused = storyrod(&[], &["completions", "abacus"]);
    assert_eq!((refused.code, refused.out.as_str()), (2, ""));
}

/// The shells that are on this machine read their script without running it.
#[cfg(unix)]
#[test]
fn a_shell_accepts_its_script() {
    for (shell, check) in [("bash", "-n"), ("zsh", "-n"), ("fish", "--no-execute")] {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("storyrod");
        fs::write(&path, storyrod(&[], &["completions", shell]).out).unwrap();
        let read = Command::new(shell).arg(check).arg(&path).stderr(Stdio::piped()).output();
        match read {
            Ok(output) => {
                assert!(output.status.success(), "{shell}: {}", String::from_utf8_lossy(&output.stderr));
            }
            Err(_) => assert_ne!(shell, "bash", "there is no bash to ask"),
        }
    }
}

/// bash itself, with the script read in, asked what may stand behind `storyrod ta` and `--format s`.
#[cfg(unix)]
#[test]
fn bash_completes_commands_and_values() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("storyrod");
    fs::write(&path, storyrod(&[], &["completions", "bash"]).out).unwrap();
    let completed = |words: &str, at: usize, word: &str, before: &str| {
        let ask = format!(
            "source {}; COMP_WORDS=({words}); COMP_CWORD={at}; _storyrod storyrod {word} {before}; echo \"${{COMPREPLY[*]}}\"",
            path.display()
        );
        let output = Command::new("bash").args(["--norc", "-c", &ask]).output().unwrap();
        String::from_utf8(output.stdout).unwrap().trim().to_owned()
    };
    assert_eq!(completed("storyrod ta", 1, "ta", "storyrod"), "takedown");
    assert_eq!(completed("storyrod lint --format s", 3, "s", "--format"), "sarif");
}

#[test]
fn the_manual_is_printed_or_written_for_every_command() {
    let printed = storyrod(&[], &["man"]);
    assert_eq!(printed.code, 0);
    assert!(printed.out.contains(".TH storyrod 1") && printed.out.contains("takedown"), "{}", printed.out);
    let folder = tempfile::tempdir().unwrap();
    let written = storyrod_in(folder.path(), &["man", "share/man1"], b"");
    assert_eq!((written.code, written.out.as_str(), written.log.as_str()), (0, "", ""));
    let read = |page: &str| fs::read_to_string(folder.path().join("share/man1").join(page)).unwrap();
    assert!(read("storyrod.1").contains(".SH SUBCOMMANDS"));
    assert!(read("storyrod-lint.1").contains("\\-\\-stdin\\-filename"), "{}", read("storyrod-lint.1"));
    fs::write(folder.path().join("taken"), "").unwrap();
    let refused = storyrod_in(folder.path(), &["man", "taken"], b"");
    assert_eq!(refused.code, 2);
    assert!(refused.log.starts_with("storyrod: taken: "), "{}", refused.log);
}
