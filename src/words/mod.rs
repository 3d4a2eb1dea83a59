//! (provisional)
use crate::heard::Heard;
use crate::quantity::TemperatureScale;
/// Reads.
#[derive(Debug, Default)]
pub struct Reader;
impl Reader {
    /// New.
    pub fn new() -> Reader {
        Reader
    }
    /// Hears.
    pub fn hear(&self, _text: &str, _scale: TemperatureScale) -> Heard {
        Heard::default()
    }
}
/// JSON.
pub fn to_json(text: &str, heard: &Heard) -> serde_json::Value {
    serde_json::json!({"text": text, "entries": heard.entries})
}
