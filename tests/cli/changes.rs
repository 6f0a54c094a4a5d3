//! `storyrod compare` and `storyrod try`.

use quick_xml::events::Event;
use serde_json::Value;

use crate::program::{folder_with, sample, storyrod_in};

#[test]
fn a_change_is_told_with_what_follows() {
    let old = sample("loon-cove.framing");
    let new = old.replace("W8x24", "W10x22");
    let folder = folder_with(&[("old.framing", &old), ("new.framing", &new)]);
    let ran = storyrod_in(folder.path(), &["compare", "old.framing", "new.framing"], b"");
    assert!(ran.out.contains("beam B1  size  W8x24 → W10x22  new.framing:"), "{}", ran.out);
    assert!(ran.out.contains("[column-length-does-not-close]"), "{}", ran.out);
    assert!(ran.out.contains("licensed professional"), "{}", ran.out);
    assert_eq!(ran.code, 1);
    let ran =
        storyrod_in(folder.path(), &["compare", "new.framing", "old.framing", "--format", "markdown"], b"");
    assert!(ran.out.contains("**holds now**"), "{}", ran.out);
    assert_eq!(ran.code, 0);
}

#[test]
fn the_same_spec_has_not_changed() {
    let old = sample("first.framing");
    let folder = folder_with(&[("old.framing", &old), ("new/new.framing", &format!("-- said so\n{old}"))]);
    let ran = storyrod_in(folder.path(), &["compare", "old.framing", "new"], b"");
    assert_eq!((ran.out.as_str(), ran.code), ("nothing that matters changed\n", 0));
}

#[test]
fn edits_are_tried_and_nothing_is_written() {
    let text = sample("loon-cove.framing");
    let folder = folder_with(&[("house.framing", &text)]);
    let ran = storyrod_in(
        folder.path(),
        &["try", "house.framing", "J1 size 2x12", "F1 size 3'-0\" x 3'-0\" x 14\""],
        b"",
    );
    assert!(ran.out.contains("joists J1  size  2x10 SPF No.2 → 2x12 SPF No.2"), "{}", ran.out);
    assert!(ran.out.contains("footing F1  size"), "{}", ran.out);
    assert_eq!(ran.code, 1);
    assert_eq!(std::fs::read_to_string(folder.path().join("house.framing")).unwrap(), text);
    for (edits, complaint) in [
        (["J1 size 2x12", "J9 size 2x12"], "nothing is named `J9`"),
        (["J1 size 2x12", "J1 size 2x8"], "two of the edits change the same line"),
        (["J1 size 2x12", "J1 colour red"], "`colour red` is no line of joists J1"),
    ] {
        let ran = storyrod_in(folder.path(), &["try", "house.framing", edits[0], edits[1]], b"");
        assert!(ran.log.contains(complaint), "{}", ran.log);
        assert_eq!((ran.out.as_str(), ran.code), ("", 2));
    }
}

#[test]
fn what_can_t_be_compared_says_so() {
    let cabin = sample("first.framing");
    let folder =
        folder_with(&[("two/a.framing", &cabin), ("two/b.framing", &cabin), ("one.framing", &cabin)]);
    let ran = storyrod_in(folder.path(), &["try", "two", "J1 size 2x12"], b"");
    assert!(ran.log.contains("two holds several specs"), "{}", ran.log);
    let ran = storyrod_in(folder.path(), &["compare", "one.framing", "none.framing"], b"");
    assert!(ran.log.contains("none.framing"), "{}", ran.log);
    assert_eq!(ran.code, 2);
}

#[test]
fn the_json_of_a_change_keeps_its_published_shape() {
    let schema: Value =
        serde_json::from_str(include_str!("../../grammar/change-output.schema.json")).unwrap();
    let schema = jsonschema::validator_for(&schema).unwrap();
    let old = sample("loon-cove.framing");
    let new = old
        .replace("W8x24", "W10x22")
        .replace("  live          40 psf", "  live          50 psf")
        .replace("stair S2", "stair S3")
        .replace("\"Loon Cove\"", "\"Loon Bay\"")
        + "\nfooting F77 \"New\"\n  at            A/3\n  what\n";
    let folder = folder_with(&[("old.framing", &old), ("new.framing", &new)]);
    for (from, to) in [("old.framing", "new.framing"), ("new.framing", "old.framing")] {
        let ran = storyrod_in(folder.path(), &["compare", from, to, "--format", "json"], b"");
        let output: Value = serde_json::from_str(&ran.out).unwrap();
        let faults: Vec<_> =
            schema.iter_errors(&output).map(|error| format!("{}: {error}", error.instance_path)).collect();
        assert!(faults.is_empty(), "{faults:#?}");
        assert_eq!(output["specs"][0]["renamed"].as_array().unwrap().len(), 1, "{}", ran.out);
    }
}

/// Of five houses one is as it was, one changed, one moved to another folder, one is new and has a fault, one is gone.
#[test]
fn a_folder_is_compared_house_by_house() {
    let cabin = |title: &str| sample("first.framing").replace("One-room cabin", title);
    let (same, deeper) = (cabin("Same"), cabin("Deeper").replace("2x10", "2x12"));
    let folder = folder_with(&[
        ("old/same.framing", &same),
        ("old/deeper.framing", &cabin("Deeper")),
        ("old/moved.framing", &cabin("Moved")),
        ("old/gone.framing", &cabin("Gone")),
        ("new/same.framing", &same),
        ("new/deeper.framing", &deeper),
        ("new/b/elsewhere.framing", &format!("-- moved\n{}", cabin("Moved"))),
        ("new/came.framing", &cabin("Came").replace("frost         42\"", "frost         72\"")),
    ]);
    let compare = |arguments: &[&str]| {
        storyrod_in(folder.path(), &[&["compare", "old", "new"], arguments].concat(), b"")
    };
    let text = compare(&[]);
    assert_eq!(text.code, 1, "{}", text.log);
    let headings: Vec<&str> =
        text.out.lines().filter(|line| line.contains(".framing  ") && !line.starts_with(' ')).collect();
    assert_eq!(headings, ["new/came.framing  Came", "new/deeper.framing  Deeper", "old/gone.framing  Gone"]);
    assert!(text.out.contains("a new spec") && text.out.contains("this spec is gone"), "{}", text.out);
    assert!(text.out.contains("nothing that matters changed in 2 more specs"), "{}", text.out);
    assert_eq!(text.out.matches("licensed professional").count(), 1);
    let json: Value = serde_json::from_str(&compare(&["--format", "json"]).out).unwrap();
    let schema = include_str!("../../grammar/change-output.schema.json");
    let schema = jsonschema::validator_for(&serde_json::from_str(schema).unwrap()).unwrap();
    assert!(schema.is_valid(&json), "{json:#}");
    let whole: Vec<&Value> = json["specs"].as_array().unwrap().iter().map(|spec| &spec["whole"]).collect();
    assert_eq!((whole, &json["same"]), (vec![&"came".into(), &Value::Null, &"went".into()], &2.into()));
    let fails = json["specs"][0]["trades"][0]["consequences"][0]["rule"].as_str();
    assert_eq!(fails, Some("frost-depth"), "{json:#}");
    for (format, heading) in [
        ("markdown", "# new/deeper.framing, Deeper\n"),
        ("html", "<p class=\"place\">new/deeper.framing</p>"),
    ] {
        let ran = compare(&["--format", format]);
        assert!(ran.out.contains(heading) && ran.out.contains("2 more specs"), "{}", ran.out);
    }
    // A letter answers for one house.
    std::fs::write(folder.path().join("corrections.md"), "1. J1 is too shallow.\n").unwrap();
    let ran = compare(&["--letter", "corrections.md"]);
    assert!(ran.log.contains("3 specs changed: name the root file"), "{}", ran.log);
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    let nothing = storyrod_in(folder.path(), &["compare", "new", "new"], b"");
    assert_eq!((nothing.out.as_str(), nothing.code), ("nothing that matters changed in 4 specs\n", 0));
    // What can't be read is neither new nor gone.
    std::fs::write(folder.path().join("old/came.framing"), "").unwrap();
    let ran = compare(&[]);
    assert!(ran.log.contains("old/came.framing: the file is empty"), "{}", ran.log);
    assert!(!ran.out.contains("a new spec") && ran.out.contains("new/deeper.framing"), "{}", ran.out);
    assert_eq!(ran.code, 2);
}

#[test]
fn a_letter_answers_each_correction() {
    let old = sample("loon-cove.framing");
    let new = old.replace("W8x24", "W10x22");
    let corrections =
        "1. Girder B1: show a lighter section.\n2. Column C1: state its cut.\n3. Show the smoke alarms.\n";
    let folder =
        folder_with(&[("old.framing", &old), ("new.framing", &new), ("corrections.md", corrections)]);
    let arguments = ["compare", "old.framing", "new.framing", "--letter", "corrections.md"];
    let ran = storyrod_in(folder.path(), &arguments, b"");
    let answers: Vec<&str> = ran.out.split("\n## ").collect();
    assert!(answers[1].contains("**beam B1** size  W8x24 → W10x22"), "{}", ran.out);
    assert!(answers[2].contains("column C1 cut 8'-0 5/16\"\\~ → 7'-10 1/16\"\\~"), "{}", ran.out);
    assert!(answers[3].contains("To be answered by hand"), "{}", ran.out);
    assert!(answers[3].contains("new findings came with these changes"), "{}", ran.out);
    assert_eq!(ran.code, 1);
}

#[test]
fn the_page_of_a_change_says_what_the_list_says_and_loads_nothing() {
    let old = sample("loon-cove.framing");
    let new = old
        .replace("W8x24", "W10x22")
        .replace("Loon Cove\"", "Loon <script>alert(1)</script> & Cove\"")
        .replace("  finish        linoleum on board 5/8\"", "  finish        <img src=x> board 1-1/8\"");
    let folder = folder_with(&[("old.framing", &old), ("new.framing", &new)]);
    let compare = |format: &str| {
        storyrod_in(folder.path(), &["compare", "old.framing", "new.framing", "--format", format], b"")
    };
    let page = compare("html");
    assert_eq!(page.code, 1, "{}", page.log);
    let body = page.out.split_once("</style>").unwrap().1;
    // What could load or run something, whatever the spec is called.
    for never in ["<script", "<img", "<link", "href=", " src=\"", "url(", "@import", "http"] {
        assert!(!page.out.contains(never), "{never}");
    }
    // A strict reader: every element closes where it should, and the words are those of the other forms.
    let body = body.split_once("</head>").unwrap().1.trim_end().strip_suffix("</html>").unwrap();
    let (mut depth, mut words) = (0, String::new());
    let mut reader = quick_xml::Reader::from_str(body);
    loop {
        match reader.read_event().unwrap() {
            Event::Start(_) => depth += 1,
            Event::End(_) => depth -= 1,
            Event::Text(text) => words += &text,
            Event::GeneralRef(name) => {
                words += match &*name {
                    "lt" => "<",
                    "gt" => ">",
                    "amp" => "&",
                    "quot" => "\"",
                    "apos" => "'",
                    other => panic!("{other}"),
                }
            }
            Event::Eof => break,
            _ => {}
        }
    }
    assert_eq!(depth, 0);
    let list: Value = serde_json::from_str(&compare("json").out).unwrap();
    let mut n_told = 0;
    for consequence in list["specs"][0]["trades"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|it| it["consequences"].as_array().unwrap())
    {
        for key in ["message", "fact", "before", "now"] {
            if let Some(told) = consequence[key].as_str() {
                assert!(words.contains(told), "{told}");
                n_told += 1;
            }
        }
    }
    assert!(n_told > 30, "{n_told}");
    assert!(words.contains("<script>alert(1)</script> & Cove") && words.contains("licensed professional"));
    let same =
        storyrod_in(folder.path(), &["compare", "old.framing", "old.framing", "--format", "html"], b"");
    assert!(same.out.contains("Nothing that matters changed"), "{}", same.out);
    let tried = storyrod_in(folder.path(), &["try", "old.framing", "J1 size 2x12", "--format", "html"], b"");
    assert!(tried.out.contains("<b>size  2x10 SPF No.2 → 2x12 SPF No.2</b>"), "{}", tried.out);
}
