//! A repository of many small projects.

use std::fs;
use std::path::Path;

use crate::houses;

/// Writes so many projects below a folder, each in a folder of its own. Every third stands in two files; in every fifth
/// a beam is of a size that does not exist.
pub fn write_projects(folder: &Path, count: u64) {
    for number in 0..count {
        let project = folder.join(format!("job-{number:04}"));
        fs::create_dir_all(project.join("parts")).unwrap();
        let mut house = houses::house(number + 1);
        if number % 5 == 4 {
            let size = house.find("\n  size ").unwrap();
            house.insert_str(size + "\n  size ".len(), "0x0 ");
        }
        if number % 3 == 2 {
            let rest = house.find("\nwall ").unwrap() + 1;
            fs::write(project.join("parts/rest.framing"), &house[rest..]).unwrap();
            house.replace_range(rest.., "include \"parts/rest.framing\"\n");
        }
        fs::write(project.join("house.framing"), house).unwrap();
    }
}
