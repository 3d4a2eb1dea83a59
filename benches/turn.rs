//! (in the making)
fn main() {}
