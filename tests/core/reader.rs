//! (in the making)
