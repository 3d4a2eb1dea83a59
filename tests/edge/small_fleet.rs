//! The fleet that most edge tests load: two trailers, and two people with a user number on the chat network.

/// Dana drives, Mo dispatches.
pub(crate) const CREW: &str = r#"
[[crew]]
id = "dana"
name = "Dana"
role = "driver"
language = "en"
chat_user = 77

[[crew]]
id = "mo"
name = "Mo"
role = "dispatcher"
language = "en"
chat_user = 88
"#;

/// Trailers 12 and 14.
pub(crate) const FLEET: &str = r#"
company = "Saltbox Lane Comforts"
time_zone = "America/Halifax"

[[trailer]]
id = "12"
waste_gal = 500

[[trailer]]
id = "14"
waste_gal = 300
"#;
