//! What an editor shows as trees: the way of the load, and what is made of what.

use serde_json::{Value, json};

use crate::session::Session;
use crate::text::{byte, position, slice};

const LOON_COVE: &str = include_str!("../../grammar/samples/loon-cove.framing");

/// The sample in two files: the column under the girder, with all that follows it, is included. Titles and comments hold
/// characters that each encoding counts otherwise.
struct Job {
    _folder: tempfile::TempDir,
    session: Session,
    encoding: &'static str,
    /// The files' addresses and texts: the one that is open first.
    files: [(String, String); 2],
}

impl Job {
    fn new(encoding: &'static str) -> Self {
        let at = LOON_COVE.find("column C1").unwrap();
        let (root, included) = LOON_COVE.split_at(at);
        let root = root.replace("\"Centre girder\"", "\"😀 Centre girder\"");
        let root = format!("{root}include \"columns.framing\"\n");
        let included = format!(
            "-- 漢😀\n{}",
            included.replace("status        ordered 2027-04-05", "status        ordered 2027-04-05 -- 😀")
        );
        let folder = tempfile::tempdir().unwrap();
        let files = [("root.framing", root), ("columns.framing", included)].map(|(name, text)| {
            let path = folder.path().canonicalize().unwrap().join(name);
            std::fs::write(&path, &text).unwrap();
            (format!("file://{}", path.display()), text)
        });
        let mut session = Session::with(&json!({"general": {"positionEncodings": [encoding]}}));
        session.open(&files[0].0, &files[0].1);
        Self { _folder: folder, session, encoding, files }
    }

    /// The one item at `$0` in a piece of the open file.
    fn prepare(&mut self, hierarchy: &str, piece: &str) -> Value {
        let (uri, text) = &self.files[0];
        let at = text.find(&piece.replace("$0", "")).unwrap() + piece.find("$0").unwrap();
        let params = json!({"textDocument": {"uri": uri}, "position": position(text, at, self.encoding)});
        let answer = self.session.ask(&format!("textDocument/prepare{hierarchy}Hierarchy"), &params);
        let items = answer["result"].as_array().unwrap();
        assert_eq!(items.len(), 1, "{answer}");
        items[0].clone()
    }

    /// What follows an item.
    fn next(&mut self, method: &str, item: &Value) -> Vec<Value> {
        let answer = self.session.ask(method, &json!({"item": item}));
        answer["result"].as_array().expect("there is an answer").clone()
    }

    /// An item as a person sees it, and the text that it selects.
    fn shown(&self, item: &Value) -> [String; 3] {
        let text = self.text_of(&item["uri"]);
        let [start, end] = ["start", "end"].map(|side| byte(text, &item["range"][side], self.encoding));
        let selected = slice(text, &item["selectionRange"], self.encoding);
        assert!(text[start..end].contains(selected), "{item}");
        [item["name"].as_str().unwrap(), item["detail"].as_str().unwrap_or(""), selected].map(str::to_owned)
    }

    fn text_of(&self, uri: &Value) -> &str {
        &self.files.iter().find(|(address, _)| uri == address).expect("a file of the job").1
    }
}

/// The figures are those worked by hand beside the tests of the way itself: 740 plf over two lengths of 17'-9".
#[test]
fn the_load_goes_down_over_an_include_to_the_soil() {
    for encoding in ["utf-8", "utf-16"] {
        let mut job = Job::new(encoding);
        let girder = job.prepare("Call", "\"😀 Centre gir$0der\"");
        assert_eq!(job.shown(&girder)[0], "beam B1");

        // An edit between the questions: everything stands two lines lower.
        let uri = job.files[0].0.clone();
        job.files[0].1.insert_str(0, "-- 漢\n\n");
        job.session.change(&uri, 2, &json!([{"text": job.files[0].1}]));

        let below = job.next("callHierarchy/outgoingCalls", &girder);
        let column = &below[0]["to"];
        assert_eq!(job.shown(column), ["column C1", "13,136 lb by D + L (D 3,359, L 9,777)", "C1"]);
        assert_eq!(column["uri"], job.files[1].0);
        assert_eq!(slice(&job.files[0].1, &below[0]["fromRanges"][0], encoding), "C1");

        let below = job.next("callHierarchy/outgoingCalls", column);
        let pad = &below[0]["to"];
        assert_eq!(job.shown(pad), ["footing F1", "13,212 lb by D + L (D 3,435, L 9,777)", "F1"]);
        assert_eq!(slice(&job.files[1].1, &below[0]["fromRanges"][0], encoding), "F1");

        let below = job.next("callHierarchy/outgoingCalls", pad);
        let [name, detail, selected] = job.shown(&below[0]["to"]);
        assert_eq!([name.as_str(), selected.as_str()], ["soil", "2000 psf"]);
        assert!(detail.contains("1,922 psf of 2,000 psf allowed; strength: have it checked"), "{detail}");
        assert_eq!(job.next("callHierarchy/outgoingCalls", &below[0]["to"]), [] as [Value; 0]);

        let above = job.next("callHierarchy/incomingCalls", column);
        assert_eq!(job.shown(&above[0]["from"])[0], "beam B1");
        assert_eq!(slice(&job.files[0].1, &above[0]["fromRanges"][0], encoding), "C1");
    }
}

#[test]
fn products_and_sizes_lead_to_their_members_over_an_include() {
    for encoding in ["utf-8", "utf-16"] {
        let mut job = Job::new(encoding);
        let product = job.prepare("Type", "product LV$014");
        assert_eq!(job.shown(&product)[0], "product LV14");
        let members = job.next("typeHierarchy/subtypes", &product);
        assert_eq!(members.len(), 1);
        assert_eq!(job.shown(&members[0]), ["header H1", "size", "H1"]);
        assert_eq!(members[0]["uri"], job.files[1].0);
        let above = job.next("typeHierarchy/supertypes", &members[0]);
        assert_eq!(above.iter().map(|item| job.shown(item)[0].clone()).collect::<Vec<_>>(), ["product LV14"]);

        let size = job.prepare("Type", "2x10 SPF$0 No.2\n  fill");
        assert_eq!(job.shown(&size), ["2x10 SPF No.2", "in 3 elements", "2x10 SPF No.2"]);
        let members = job.next("typeHierarchy/subtypes", &size);
        let members: Vec<_> = members.iter().map(|item| job.shown(item)).collect();
        assert_eq!(
            members,
            [
                ["joists J1", "size", "J1"],
                ["joists J2", "size", "J2"],
                ["opening O1", "trimmers, headers", "O1"]
            ]
        );
    }
}

#[test]
fn the_trees_are_offered_and_hang_on_names_only() {
    let mut session = Session::start();
    let offered = session.initialize(&json!({"processId": null, "rootUri": null, "capabilities": {}}));
    assert_eq!(offered["capabilities"]["callHierarchyProvider"], true);
    assert_eq!(offered["capabilities"]["typeHierarchyProvider"], true);
    session.open("untitled:house", "project\ngrid\n  x  A 0', B 10'\n");
    for hierarchy in ["Call", "Type"] {
        let place =
            json!({"textDocument": {"uri": "untitled:house"}, "position": {"line": 1, "character": 2}});
        let answer = session.ask(&format!("textDocument/prepare{hierarchy}Hierarchy"), &place);
        assert_eq!(answer["result"], Value::Null);
    }
    // An element that is gone, and an item that is not ours.
    let place = json!({"line": 0, "character": 0});
    let range = json!({"start": place, "end": place});
    for data in [
        json!({"uri": "untitled:house", "about": {"element": {"kind": "beam", "name": "B1"}}}),
        json!({"somebody": "else's"}),
    ] {
        let item = json!({"name": "B1", "kind": 1, "uri": "untitled:house", "range": range,
            "selectionRange": range, "data": data});
        for method in ["callHierarchy/incomingCalls", "callHierarchy/outgoingCalls", "typeHierarchy/subtypes"]
        {
            assert_eq!(session.ask(method, &json!({"item": item}))["result"], Value::Null, "{method}");
        }
    }
}
