//! Every key that a rule can name has its English text, with no argument that the facts do not give.
//!
//! (in the making)
