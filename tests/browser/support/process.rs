//! Ends a process with everything that it has started.

use std::{fs, process::Command};

/// Kills the process and all its descendants at once, as a crash or an empty battery would.
pub(crate) fn kill_tree(root: u32) {
    let mut found = vec![root];
    let mut next = 0;
    while let Some(&parent) = found.get(next) {
        found.extend(children(parent));
        next += 1;
    }
    // A process that has just ended by itself makes `kill` complain: nothing is left to be done then.
    let _status = Command::new("kill")
        .arg("-KILL")
        .args(found.iter().map(u32::to_string))
        .output();
}

fn children(parent: u32) -> Vec<u32> {
    let threads = fs::read_dir(format!("/proc/{parent}/task"));
    threads
        .into_iter()
        .flatten()
        .flatten()
        .filter_map(|thread| fs::read_to_string(thread.path().join("children")).ok())
        .flat_map(|line| {
            line.split_whitespace()
                .filter_map(|id| id.parse().ok())
                .collect::<Vec<_>>()
        })
        .collect()
}
