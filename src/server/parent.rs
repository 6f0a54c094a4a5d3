//! The editor's process, watched in case it dies without closing our input.

use std::path::Path;
use std::process::{Command, Stdio};
use std::thread;
use std::time::Duration;

/// How often we look.
const INTERVAL: Duration = Duration::from_secs(2);

/// Calls `when_gone` in a thread of its own as soon as the process `id` is no more.
///
/// # Errors
/// The system starts no more threads.
pub fn watch(id: u32, when_gone: impl FnOnce() + Send + 'static) -> std::io::Result<()> {
    thread::Builder::new().name("parent".to_owned()).spawn(move || {
        while is_there(id) {
            thread::sleep(INTERVAL);
        }
        when_gone();
    })?;
    Ok(())
}

/// True as long as nobody can say that the process has ended.
fn is_there(id: u32) -> bool {
    if Path::new("/proc/self").exists() {
        return Path::new("/proc").join(id.to_string()).exists();
    }
    if cfg!(not(unix)) {
        return true;
    }
    let asked = Command::new("kill")
        .args(["-0", &id.to_string()])
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status();
    asked.is_ok_and(|answer| answer.success())
}
