//! What an editor does with names: go where they lead, see where they stand, change them.

use std::path::Path;

use serde_json::{Value, json};

use crate::session::Session;
use crate::text::{byte, position, slice};

/// Two projects that share a file. Every name stands behind a character that each encoding counts otherwise.
const FILES: [(&str, &str); 3] = [
    (
        "one.framing",
        "project \"One\"\r\ninclude \"pads.framing\"\r\ncolumn C1 \"😀\"\r\n  stands on F1 -- 漢\r\nintent \"é\"\r\n  keep half of top of F1 = top of F1\r\n",
    ),
    (
        "two.framing",
        "-- 😀\nproject \"Two\"\ninclude \"pads.framing\"\nsheet A-1\n  shows top of F1 = 9'\nfooting F7\n",
    ),
    ("pads.framing", "-- 漢😀\nfooting F1 \"é\"\n  top 91'-4\"\n"),
];

/// The projects on disk and a session in which some files are open.
struct Job {
    folder: tempfile::TempDir,
    session: Session,
    encoding: &'static str,
}

impl Job {
    fn new(encoding: &'static str, capabilities: &Value, open: &[&str]) -> Self {
        let folder = tempfile::tempdir().unwrap();
        for (name, text) in FILES {
            std::fs::write(folder.path().join(name), text).unwrap();
        }
        let mut capabilities = capabilities.clone();
        capabilities["general"] = json!({"positionEncodings": [encoding]});
        let mut session = Session::start();
        let root = uri(folder.path());
        session.initialize(&json!({"processId": null, "rootUri": root, "capabilities": capabilities}));
        let mut job = Self { folder, session, encoding };
        for name in open {
            let uri = job.uri(name);
            job.session.open(&uri, text_of(name));
        }
        job
    }

    fn uri(&self, name: &str) -> String {
        uri(&self.folder.path().canonicalize().unwrap().join(name))
    }

    /// Asks about the place of `$0` in a piece of a file.
    fn ask(&mut self, method: &str, name: &str, piece: &str, more: Value) -> Value {
        let text = text_of(name);
        let at = text.find(&piece.replace("$0", "")).unwrap() + piece.find("$0").unwrap();
        let mut params = json!({
            "textDocument": {"uri": self.uri(name)},
            "position": position(text, at, self.encoding),
        });
        if let Value::Object(more) = more {
            params.as_object_mut().unwrap().extend(more);
        }
        self.session.ask(&format!("textDocument/{method}"), &params)
    }

    /// `file: line with the place in square brackets`, of every location.
    fn places(&self, locations: &Value) -> Vec<String> {
        let locations = locations.as_array().expect("there are locations");
        locations.iter().map(|it| self.place(&it["uri"], &it["range"])).collect()
    }

    fn place(&self, uri: &Value, range: &Value) -> String {
        let name = self.name(uri);
        let text = text_of(name);
        let [start, end] = ["start", "end"].map(|side| byte(text, &range[side], self.encoding));
        let first = text[..start].rfind('\n').map_or(0, |at| at + 1);
        let last = end + text[end..].find(['\r', '\n']).unwrap_or(0);
        let line = format!("{}[{}]{}", &text[first..start], &text[start..end], &text[end..last]);
        format!("{name}: {}", line.trim())
    }

    fn name(&self, uri: &Value) -> &'static str {
        let names = FILES.map(|(name, _)| name);
        names.into_iter().find(|name| *uri == json!(self.uri(name))).expect("a file of the job")
    }

    /// The files that an edit changes, with the texts that it leaves.
    fn changed(&self, edit: &Value) -> Vec<(&'static str, String)> {
        let files: Vec<(&Value, Value)> = match edit["documentChanges"].as_array() {
            Some(files) => {
                files.iter().map(|file| (&file["edits"], file["textDocument"]["uri"].clone())).collect()
            }
            None => {
                let changes = edit["changes"].as_object().expect("there are changes");
                changes.iter().map(|(uri, edits)| (edits, json!(uri))).collect()
            }
        };
        let mut changed: Vec<_> = files
            .into_iter()
            .map(|(edits, uri)| {
                let name = self.name(&uri);
                let text = text_of(name);
                let mut edits: Vec<_> = edits.as_array().unwrap().iter().collect();
                edits.sort_by_key(|edit| byte(text, &edit["range"]["start"], self.encoding));
                let mut changed = text.to_owned();
                for edit in edits.into_iter().rev() {
                    let [start, end] =
                        ["start", "end"].map(|side| byte(text, &edit["range"][side], self.encoding));
                    changed.replace_range(start..end, edit["newText"].as_str().unwrap());
                }
                (name, changed)
            })
            .collect();
        changed.sort_unstable();
        changed
    }
}

fn uri(path: &Path) -> String {
    format!("file://{}", path.display())
}

fn text_of(name: &str) -> &'static str {
    FILES.iter().find(|(file, _)| *file == name).unwrap().1
}

/// Every file with another name for what it calls `F1`.
fn with_name(name: &str) -> Vec<(&'static str, String)> {
    let mut files: Vec<_> = FILES.iter().map(|(file, text)| (*file, text.replace("F1", name))).collect();
    files.sort_unstable();
    files
}

const ENCODINGS: [&str; 2] = ["utf-8", "utf-16"];

#[test]
fn a_name_leads_to_its_declaration_in_another_file() {
    for encoding in ENCODINGS {
        let mut job = Job::new(encoding, &json!({}), &["one.framing"]);
        for method in ["definition", "declaration", "implementation"] {
            let places = match method {
                "implementation" => job.ask(method, "one.framing", "column C$01", Value::Null),
                _ => job.ask(method, "one.framing", "stands on F1$0 --", Value::Null),
            };
            assert_eq!(job.places(&places["result"]), ["pads.framing: footing [F1] \"é\""]);
        }
        let file = job.ask("definition", "one.framing", "pads$0.framing", Value::Null);
        assert_eq!(job.places(&file["result"]), ["pads.framing: []-- 漢😀"]);
        let stated = job.ask("definition", "one.framing", "half of to$0p of", Value::Null);
        assert_eq!(job.places(&stated["result"]), ["pads.framing: [top] 91'-4\""]);
        for method in ["definition", "declaration", "typeDefinition", "implementation", "references"] {
            let nothing =
                job.ask(method, "one.framing", "-- $0漢", json!({"context": {"includeDeclaration": true}}));
            assert_eq!(nothing["result"], Value::Null, "{method}");
        }
    }
}

#[test]
fn a_client_that_takes_links_sees_where_the_jump_begins_and_all_of_its_end() {
    let links = json!({"textDocument": {"definition": {"linkSupport": true}}});
    for encoding in ENCODINGS {
        let mut job = Job::new(encoding, &links, &["one.framing", "pads.framing"]);
        let answer = job.ask("definition", "one.framing", "of top of F$01 = top", Value::Null);
        let link = &answer["result"][0];
        assert_eq!(slice(text_of("one.framing"), &link["originSelectionRange"], encoding), "F1");
        let target = |range: &str| slice(text_of("pads.framing"), &link[range], encoding);
        assert_eq!(link["targetUri"], json!(job.uri("pads.framing")));
        assert_eq!(target("targetSelectionRange"), "F1");
        assert_eq!(target("targetRange"), "footing F1 \"é\"\n  top 91'-4\"");
        let plain = job.ask("declaration", "one.framing", "of top of F$01 = top", Value::Null);
        assert_eq!(job.places(&plain["result"]), ["pads.framing: footing [F1] \"é\""]);
    }
}

#[test]
fn references_are_those_of_every_project_that_shares_the_file() {
    for encoding in ENCODINGS {
        let mut job = Job::new(encoding, &json!({}), &["pads.framing"]);
        let declared = "pads.framing: footing [F1] \"é\"";
        let one = [
            "one.framing: stands on [F1] -- 漢",
            "one.framing: keep half of top of [F1] = top of F1",
            "one.framing: keep half of top of F1 = top of [F1]",
        ];
        let two = "two.framing: shows top of [F1] = 9'";
        for with_declaration in [true, false] {
            let context = json!({"context": {"includeDeclaration": with_declaration}});
            let answer = job.ask("references", "pads.framing", "footing $0F1", context);
            let mut places = job.places(&answer["result"]);
            places.sort();
            let mut expected = [&one[..], &[two]].concat();
            expected.extend(with_declaration.then_some(declared));
            expected.sort_unstable();
            assert_eq!(places, expected);
        }
    }
}

#[test]
fn highlights_are_those_of_the_file_and_say_which_gives_the_name() {
    for encoding in ENCODINGS {
        let mut job = Job::new(encoding, &json!({}), &["one.framing", "pads.framing"]);
        let uses = job.ask("documentHighlight", "one.framing", "stands on $0F1", Value::Null);
        let kinds: Vec<_> = uses["result"].as_array().unwrap().iter().map(|it| it["kind"].clone()).collect();
        assert_eq!(kinds, [json!(2), json!(2), json!(2)]);
        let declared = job.ask("documentHighlight", "pads.framing", "footing $0F1", Value::Null);
        assert_eq!(declared["result"].as_array().unwrap().len(), 1);
        assert_eq!(declared["result"][0]["kind"], json!(3));
        assert_eq!(slice(text_of("pads.framing"), &declared["result"][0]["range"], encoding), "F1");
    }
}

#[test]
fn a_name_changes_in_every_project_that_shares_it() {
    for encoding in ENCODINGS {
        // Nothing of the second project is open, and no file that it has.
        let mut job = Job::new(encoding, &json!({}), &["one.framing"]);
        let name = job.ask("prepareRename", "one.framing", "stands on F$01", Value::Null);
        assert_eq!(name["result"]["placeholder"], json!("F1"));
        assert_eq!(slice(text_of("one.framing"), &name["result"]["range"], encoding), "F1");
        let edit = job.ask("rename", "one.framing", "stands on F$01", json!({"newName": "Fuß-9"}));
        assert_eq!(job.changed(&edit["result"]), with_name("Fuß-9"));

        let taken = job.ask("rename", "one.framing", "stands on F$01", json!({"newName": "F7"}));
        assert_eq!(
            taken["error"]["message"],
            json!("`F7` is taken: footing F7 has that name, in two.framing")
        );
        let own = job.ask("rename", "one.framing", "stands on F$01", json!({"newName": "C1"}));
        assert_eq!(own["error"]["message"], json!("`C1` is taken: column C1 has that name"));
        let none = job.ask("rename", "one.framing", "col$0umn C1", json!({"newName": "F9"}));
        assert_eq!(
            none["error"]["message"],
            json!("only names of elements and of grid lines can be changed")
        );
        let none = job.ask("prepareRename", "one.framing", "col$0umn C1", Value::Null);
        assert_eq!(none["result"], Value::Null);
    }
}

#[test]
fn changes_are_for_the_version_that_was_looked_at() {
    let versions = json!({"workspace": {"workspaceEdit": {"documentChanges": true}}});
    for encoding in ENCODINGS {
        let mut job = Job::new(encoding, &versions, &["pads.framing"]);
        let edit = job.ask("rename", "pads.framing", "footing F$01", json!({"newName": "F2"}));
        assert_eq!(job.changed(&edit["result"]), with_name("F2"));
        for file in edit["result"]["documentChanges"].as_array().unwrap() {
            let document = &file["textDocument"];
            let version = if job.name(&document["uri"]) == "pads.framing" { json!(1) } else { Value::Null };
            assert_eq!(document["version"], version);
        }
    }
}

#[test]
fn includes_follow_the_files_that_move() {
    for encoding in ENCODINGS {
        let mut job = Job::new(encoding, &json!({}), &["two.framing"]);
        let (from, to) = (job.uri("pads.framing"), job.uri("parts/é.framing"));
        let to = to.replace('é', "%C3%A9");
        let moved = json!({"files": [{"oldUri": from, "newUri": to}]});
        let edit = job.session.ask("workspace/willRenameFiles", &moved);
        let follow = |name: &str| text_of(name).replace("pads.framing", "parts/é.framing");
        let expected = ["one.framing", "two.framing"].map(follow);
        let changed: Vec<_> = job.changed(&edit["result"]).into_iter().map(|(_, text)| text).collect();
        assert_eq!(changed, expected);

        let other = json!({"files": [{"oldUri": job.uri("x.framing"), "newUri": job.uri("y.framing")}]});
        assert_eq!(job.session.ask("workspace/willRenameFiles", &other)["result"], Value::Null);
    }
}

#[test]
fn a_client_is_told_that_names_can_be_asked_about_only_when_it_asks() {
    let offered = |capabilities: Value| {
        let mut session = Session::start();
        session.initialize(&json!({"processId": null, "rootUri": null, "capabilities": capabilities}))
            ["capabilities"]["renameProvider"]
            .clone()
    };
    assert_eq!(offered(json!({})), json!(true));
    let asks = json!({"textDocument": {"rename": {"prepareSupport": true}}});
    assert_eq!(offered(asks), json!({"prepareProvider": true}));
}
