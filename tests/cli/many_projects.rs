//! Many projects at once.

use crate::many::write_projects;
use crate::program::storyrod_in;

#[test]
fn however_many_work_the_output_is_the_same() {
    let folder = tempfile::tempdir().unwrap();
    write_projects(folder.path(), 30);
    for format in ["text", "lines", "json", "sarif", "junit", "markdown"] {
        let with =
            |jobs: &str| storyrod_in(folder.path(), &["lint", "--format", format, "--jobs", jobs], b"");
        let (one, four) = (with("1"), with("4"));
        assert_eq!((one.code, four.code), (1, 1), "{format}: {}", one.log);
        assert!(one.out.contains("job-0029"), "{format}");
        assert!(one.out == four.out, "{format}");
    }
}

#[test]
fn nobody_is_no_worker() {
    let ran = storyrod_in(std::path::Path::new("."), &["lint", "--jobs", "0"], b"");
    assert_eq!((ran.code, ran.out.as_str()), (2, ""));
    assert!(ran.log.contains("--jobs"), "{}", ran.log);
}
