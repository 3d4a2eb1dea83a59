//! Each rule has a case in which it fires and a near miss just inside its limit, with the
//! source beside it.

mod cold;
mod crew;
mod crowd;
mod every;
mod heat;
mod power;
mod scenes;
mod site;
mod support;
mod texts;
mod tow;
mod trouble;
mod waste;
mod water;
