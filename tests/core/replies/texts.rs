//! The message files as data: their keys, their arguments, and every form they can take with sample values.

use std::collections::{BTreeMap, BTreeSet};

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource};
use fluent_syntax::ast::{
    Entry, Expression, InlineExpression, Pattern, PatternElement, VariantKey,
};

use super::plain::Tongue;

/// One message: the arguments it takes, and the values by which it picks a variant.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct Shape {
    pub(super) args: BTreeSet<String>,
    pub(super) choices: BTreeMap<String, BTreeSet<String>>,
}

pub(super) struct Texts {
    pub(super) shapes: BTreeMap<String, Shape>,
    bundle: FluentBundle<FluentResource>,
    tongue: Tongue,
}

impl Texts {
    pub(super) fn read(tongue: Tongue) -> Texts {
        let (file, tag) = match tongue {
            Tongue::English => ("en", "en"),
            Tongue::Spanish => ("es", "es-MX"),
        };
        let path = format!("{}/grammar/replies/{file}.ftl", env!("CARGO_MANIFEST_DIR"));
        let source = std::fs::read_to_string(&path).expect("the message file is there");
        let tree = fluent_syntax::parser::parse(source.as_str())
            .unwrap_or_else(|(_, errors)| panic!("{path}: {errors:?}"));
        let mut shapes = BTreeMap::new();
        for entry in &tree.body {
            match entry {
                Entry::Message(message) => {
                    let mut shape = Shape::default();
                    shape.pattern(message.value.as_ref().expect("each message has a text"));
                    let twice = shapes.insert(message.id.name.to_owned(), shape);
                    assert!(
                        twice.is_none(),
                        "{path}: `{}` stands twice",
                        message.id.name
                    );
                }
                Entry::Junk { content } => panic!("{path}: not a message: {content}"),
                _ => {}
            }
        }
        let mut bundle = FluentBundle::new_concurrent(vec![tag.parse().expect("a language tag")]);
        bundle.set_use_isolating(false);
        let resource = FluentResource::try_new(source).expect("it parsed before");
        bundle.add_resource(resource).expect("no key stands twice");
        Texts {
            shapes,
            bundle,
            tongue,
        }
    }

    /// Returns a message in every form its choices give, with sample values.
    pub(super) fn forms(&self, key: &str) -> Vec<String> {
        let shape = &self.shapes[key];
        let mut forms = vec![self.render(key, shape, None)];
        for (arg, choices) in &shape.choices {
            forms.extend(
                choices
                    .iter()
                    .map(|choice| self.render(key, shape, Some((arg, choice)))),
            );
        }
        forms.sort();
        forms.dedup();
        forms
    }

    fn render(&self, key: &str, shape: &Shape, chosen: Option<(&str, &str)>) -> String {
        let mut args = FluentArgs::new();
        for arg in &shape.args {
            let is_count = shape.choices.get(arg).is_some_and(|choices| {
                choices.iter().all(|choice| {
                    ["one", "other"].contains(&choice.as_str()) || choice.parse::<f64>().is_ok()
                })
            });
            match chosen {
                Some((name, choice)) if name == arg && is_count => match choice {
                    "one" => args.set(arg.as_str(), 1),
                    "other" => args.set(arg.as_str(), 3),
                    number => args.set(arg.as_str(), number.parse::<f64>().expect("a number")),
                },
                Some((name, choice)) if name == arg => args.set(arg.as_str(), choice.to_owned()),
                _ if is_count => args.set(arg.as_str(), 3),
                _ => args.set(arg.as_str(), sample(arg, self.tongue)),
            }
        }
        let pattern = self
            .bundle
            .get_message(key)
            .and_then(|m| m.value())
            .expect("the key is there");
        let mut errors = Vec::new();
        let text = self
            .bundle
            .format_pattern(pattern, Some(&args), &mut errors)
            .into_owned();
        assert!(errors.is_empty(), "{key}: {errors:?}");
        text
    }
}

impl Shape {
    fn pattern(&mut self, pattern: &Pattern<&str>) {
        for element in &pattern.elements {
            if let PatternElement::Placeable { expression } = element {
                self.expression(expression);
            }
        }
    }

    fn expression(&mut self, expression: &Expression<&str>) {
        match expression {
            Expression::Inline(inline) => self.inline(inline),
            Expression::Select { selector, variants } => {
                self.inline(selector);
                let InlineExpression::VariableReference { id } = selector else {
                    panic!("a choice is made by an argument")
                };
                let choices = self.choices.entry(id.name.to_owned()).or_default();
                for variant in variants {
                    let (VariantKey::Identifier { name }
                    | VariantKey::NumberLiteral { value: name }) = variant.key;
                    choices.insert(name.to_owned());
                }
                for variant in variants {
                    self.pattern(&variant.value);
                }
            }
        }
    }

    fn inline(&mut self, inline: &InlineExpression<&str>) {
        match inline {
            InlineExpression::VariableReference { id } => {
                self.args.insert(id.name.to_owned());
            }
            InlineExpression::Placeable { expression } => self.expression(expression),
            _ => {}
        }
    }
}

/// Returns a value such as the code puts in.
fn sample(arg: &str, tongue: Tongue) -> &'static str {
    let english = tongue == Tongue::English;
    match arg {
        "due" | "promised" | "time" | "likely" | "early" | "late" | "by" | "at" => "19:40",
        "site" => "Heron Mere",
        "who" => "Dana",
        "what" if english => "water 95 psi, waste 3/4",
        "what" => "agua 95 psi, negras 3/4",
        "quote" | "words" | "typed" => "\"95 3/4\"",
        "faults" if english => "leak, no hot water",
        "faults" => "fuga, sin agua caliente",
        "task" if english => "41 pump-out 12: truck on site by 19:15. Nobody called yet.",
        "task" => "41 vaciado 12: camión en sitio antes de 19:15. Nadie ha llamado aún.",
        "name" if english => "pressure",
        "name" => "presión",
        "near" | "units" | "nearest" if english => "12 or 14",
        "near" | "units" | "nearest" => "12 o 14",
        "signal" if english => "DANGER",
        "signal" => "PELIGRO",
        "age" => "3 h",
        "limit" => "60 psi",
        _ => "12",
    }
}
