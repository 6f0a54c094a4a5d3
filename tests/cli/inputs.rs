//! Arguments to specs: files, folders, standard input, includes, and what can't be used.

use std::fs;

use crate::program::{faulty_cabin, folder_with, sample, samples, storyrod, storyrod_in};

#[test]
fn what_can_t_be_used_is_named_on_standard_error_with_exit_code_2() {
    let folder = folder_with(&[
        ("empty.framing", " \n"),
        ("folder/notes.md", ""),
        ("wrong/storyrod.toml", "\nrules = \"off\"\n"),
        ("wrong/cabin.framing", &sample("first.framing")),
    ]);
    fs::write(folder.path().join("latin.framing"), b"-- ferme \xe9l\xe9gante\n").unwrap();
    let cases = [
        (vec!["lint", "none.framing"], "none.framing: there is no such file"),
        (vec!["lint", "empty.framing"], "empty.framing: the file is empty"),
        (vec!["lint", "folder"], "folder: there is no spec (`*.framing`) in this folder or below it"),
        (
            vec!["lint", "latin.framing"],
            "latin.framing: not UTF-8 text: byte 9 (line 1, column 10) fits no character",
        ),
        (vec!["lint", "wrong"], "wrong/storyrod.toml:2:1: `rules` is no key of this file"),
        (vec!["lint", "-"], "standard input: the file is empty"),
        (vec!["format", "none.framing"], "none.framing: there is no such file"),
        (
            vec!["explain", "risers-not-evn"],
            "there is no rule `risers-not-evn`; did you mean `risers-not-even`?",
        ),
    ];
    for (arguments, message) in cases {
        let ran = storyrod_in(folder.path(), &arguments, b"");
        assert_eq!((ran.code, ran.log.trim_end()), (2, &*format!("storyrod: {message}")), "{arguments:?}");
    }
    assert_eq!(storyrod_in(folder.path(), &["lint", "--colour"], b"").code, 2);
}

#[cfg(unix)]
#[test]
fn a_file_without_read_permission_says_so() {
    use std::os::unix::fs::PermissionsExt;
    let folder = folder_with(&[("cabin.framing", &sample("first.framing"))]);
    let path = folder.path().join("cabin.framing");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o000)).unwrap();
    if fs::read(&path).is_ok() {
        return; // An administrator may read everything.
    }
    let ran = storyrod_in(folder.path(), &["lint", "cabin.framing"], b"");
    assert_eq!((ran.code, ran.log.contains("does not let this user read it")), (2, true), "{}", ran.log);
}

#[cfg(unix)]
#[test]
fn a_folder_that_can_t_be_looked_into_says_so() {
    use std::os::unix::fs::PermissionsExt;
    let cabin = sample("first.framing");
    let folder = folder_with(&[("a/cabin.framing", &cabin), ("b/cabin.framing", &cabin)]);
    let closed = folder.path().join("b");
    let set = |mode| fs::set_permissions(&closed, fs::Permissions::from_mode(mode)).unwrap();
    set(0o000);
    // An administrator may look into everything.
    if fs::read_dir(&closed).is_err() {
        for arguments in [&["lint"][..], &["lint", "a", "b"], &["format", "--check"], &["format", "b", "a"]] {
            let ran = storyrod_in(folder.path(), arguments, b"");
            let why = "storyrod: b: the system does not let this user read it\n";
            assert_eq!((ran.code, ran.log.as_str()), (2, why), "{arguments:?}");
            assert_eq!(ran.out.contains("a/cabin.framing: nothing found"), arguments[0] == "lint");
        }
        // What nobody looks at need not be looked into.
        fs::write(folder.path().join("storyrod.toml"), "leave-out = [\"b\"]\n").unwrap();
        assert_eq!(storyrod_in(folder.path(), &["lint"], b"").code, 0);
    }
    set(0o700);
}

#[cfg(unix)]
#[test]
fn a_link_that_leads_nowhere_says_so() {
    let folder = folder_with(&[("cabin.framing", &sample("first.framing"))]);
    std::os::unix::fs::symlink("none.framing", folder.path().join("broken.framing")).unwrap();
    let why = "storyrod: broken.framing: it is a link, and there is no file where it leads\n";
    for arguments in [&["lint"][..], &["lint", "broken.framing", "cabin.framing"], &["format", "--check"]] {
        let ran = storyrod_in(folder.path(), arguments, b"");
        assert_eq!((ran.code, ran.log.as_str()), (2, why), "{arguments:?}");
    }
}

#[test]
fn one_bad_file_keeps_no_other_from_being_checked() {
    let ran = storyrod(&[("cabin.framing", &faulty_cabin())], &["lint", "none.framing", "cabin.framing"]);
    assert_eq!(ran.code, 2);
    assert!(ran.out.contains("stack-does-not-close"), "{}", ran.out);
}

#[test]
fn standard_input_stands_for_the_file_it_is_named_after() {
    let cabin = faulty_cabin();
    let unnamed = storyrod_in(&samples(), &["lint", "-"], cabin.as_bytes());
    assert!(unnamed.out.contains("─[ stdin:"), "{}", unnamed.out);
    let named =
        storyrod_in(&samples(), &["lint", "-", "--stdin-filename", "first.framing"], cabin.as_bytes());
    assert_eq!(named.code, 1);
    assert!(named.out.contains("─[ first.framing:"), "{}", named.out);
}

#[test]
fn standard_input_is_read_once_and_only_when_asked_for() {
    let twice = storyrod_in(&samples(), &["lint", "-", "-"], sample("first.framing").as_bytes());
    assert_eq!((twice.code, twice.log.as_str()), (0, ""), "{}", twice.out);
    let unasked = storyrod_in(&samples(), &["lint", "first.framing", "--stdin-filename", "x.framing"], b"");
    assert_eq!(unasked.code, 2, "{}", unasked.out);
    assert!(unasked.log.contains("no `-` asks for it"), "{}", unasked.log);
}

#[test]
fn a_part_is_checked_in_its_project_and_a_stray_one_alone() {
    let barn = sample("hop-barn.framing");
    let (head, rest) = barn.split_at(barn.find("\nfloor main").unwrap() + 1);
    let root = format!("{head}include \"parts/rest.framing\"\n");
    let folder = folder_with(&[
        ("barn.framing", &root),
        ("parts/rest.framing", rest),
        ("stray.framing", "-- nothing yet\n"),
        ("storyrod.toml", ""),
    ]);
    let part = storyrod_in(folder.path(), &["lint", "parts/rest.framing"], b"");
    assert_eq!(
        (part.code, part.out.lines().next()),
        (0, Some("barn.framing: nothing found, 1 waived")),
        "{}",
        part.log
    );
    let all = storyrod_in(folder.path(), &["lint"], b"");
    assert!(all.out.contains("stray.framing (read alone: no project includes it)"), "{}", all.out);
}

#[test]
fn includes_that_lead_nowhere_are_findings_where_they_stand() {
    let root =
        format!("{}\ninclude \"parts/a.framing\"\ninclude \"none.framing\"\n", sample("first.framing"));
    let files = [("house.framing", root.as_str()), ("parts/a.framing", "include \"../house.framing\"\n")];
    let ran = storyrod(&files, &["lint"]);
    assert_eq!(ran.code, 1, "{}", ran.out);
    assert!(
        ran.out.contains("house.framing → parts/a.framing → house.framing [include-circle]"),
        "{}",
        ran.out
    );
    assert!(ran.out.contains("─[ parts/a.framing:1:10 ]"), "{}", ran.out);
    assert!(ran.out.contains("there is no file `none.framing` [include-not-found]"), "{}", ran.out);
}
