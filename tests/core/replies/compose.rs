//! Whole replies.
