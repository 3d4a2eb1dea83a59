//! Quantities by name.
