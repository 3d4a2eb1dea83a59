//! How far a long walk over the journal has come, for somebody who watches a terminal.

use std::io::IsTerminal;
use std::path::Path;

use indicatif::{ProgressBar, ProgressDrawTarget, ProgressFinish, ProgressStyle};

use crate::store;

/// Makes a bar for walking a data directory's turns once; it goes away at the end. Nothing is drawn where no terminal shows standard
/// error, or where the terminal shows what is printed.
pub(super) fn over(data: &Path) -> ProgressBar {
    let target = match std::io::stdout().is_terminal() {
        true => ProgressDrawTarget::hidden(),
        false => ProgressDrawTarget::stderr(),
    };
    // a directory that cannot be read is said by whoever walks it
    let turns = store::turns(data).unwrap_or_default();
    let style =
        ProgressStyle::with_template("{bar:40} {human_pos} of {human_len} turns, {eta} left")
            .unwrap_or_else(|_| ProgressStyle::default_bar());
    ProgressBar::with_draw_target(Some(turns), target)
        .with_style(style)
        .with_finish(ProgressFinish::AndClear)
}
