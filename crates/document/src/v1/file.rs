//! The project file as it stands on disk: its head, and how it is read and written.

use schemars::JsonSchema;

use super::{
    AirSource, DryEnough, Kept, Period, Pressure, Project, Run, Space, SpaceYear, TroublesKept,
    WeatherReference, check,
};
use crate::field_path::Here;
use crate::json::{self, Content, Fault, Fields, FromJson, Node, ToJson, Writer};
use crate::{DocumentError, FieldPath, limits};

/// What stands in `format`.
pub const FORMAT: &str = "dewrun-project";
/// The version that is written and read.
pub const VERSION: u64 = 1;
/// The revision that is written; every revision up to it is read.
pub const REVISION: u64 = 6;

/// What a file is called where something else stands in its place.
const KIND: &str = "a project";
/// The fields of a file.
const FIELDS: [&str; 10] = [
    "format", "version", "revision", "name", "note", "pressure", "weather", "target", "spaces",
    "runs",
];

/// The head and the project of a file.
#[expect(dead_code, reason = "only its schema is asked for")]
#[derive(JsonSchema)]
#[schemars(deny_unknown_fields)]
#[schemars(rename = "Project", title = "Dewrun project, version 1, revision 6")]
pub(crate) struct File {
    /// Always `dewrun-project`.
    #[schemars(extend("const" = FORMAT))]
    format: String,
    /// Always 1.
    #[schemars(extend("const" = VERSION))]
    version: u64,
    /// Which fields the file may hold; rises with every field added.
    #[schemars(range(min = 1, max = 6))]
    revision: u64,
    /// What people call the project.
    name: String,
    /// Anything worth saying about it; may be empty.
    note: String,
    /// Pressure of the air on site.
    pressure: Pressure,
    /// The weather file of its year; left out: none. Since revision 4.
    #[schemars(default)]
    weather: Option<WeatherReference>,
    /// What counts as dry enough; left out: dry in the conditions entered, and never blind. Since revision 6.
    #[schemars(default)]
    target: Option<DryEnough>,
    /// The spaces that legs pass.
    spaces: Vec<Space>,
    /// The runs: one for each detector.
    runs: Vec<Run>,
}

/// Reads a project file.
///
/// # Errors
/// [`DocumentError`] says what is wrong, where, and what would be right; nothing is opened then.
pub fn read(text: &str) -> Result<Project, DocumentError> {
    read_and(text, look_at_years)
}

/// As [`read`], but what a project says of its year is kept as it is written; [`Kept::get`] looks at it.
///
/// # Errors
/// As [`read`], for all the rest.
pub fn read_keeping_years(text: &str) -> Result<Project, DocumentError> {
    read_and(text, |_| Ok(Ok(())))
}

/// What a look at a tree finds: a fault of its form, or else a limit that is left.
type Looked = Result<Result<(), DocumentError>, Fault>;

fn read_and(text: &str, look: impl Fn(&Node<'_>) -> Looked) -> Result<Project, DocumentError> {
    if limits::TEXT_BYTES < text.len() {
        return Err(DocumentError::TooLong {
            bytes: text.len(),
            max: limits::TEXT_BYTES,
        });
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let told = |fault: Fault| fault.told(text);
    let tree = json::tree(text).map_err(told)?;
    if tree.members().is_none() {
        return Err(told(Fault::wrong(&tree, &Here::ROOT, KIND)));
    }
    check_head(&tree)?;
    let project = Project::from_json(&tree, &Here::ROOT).map_err(told)?;
    check(&project)?;
    look(&tree).map_err(told)??;
    Ok(project)
}

/// As [`read`], from the bytes of a file.
///
/// # Errors
/// As [`read`], and where the bytes are no text.
pub fn read_bytes(bytes: &[u8]) -> Result<Project, DocumentError> {
    let text = str::from_utf8(bytes).map_err(|error| DocumentError::NotText {
        byte: error.valid_up_to(),
    })?;
    read(text)
}

/// Writes a project file that [`read`] gives back bit for bit.
///
/// # Errors
/// [`DocumentError`] where a limit is left, a number that is not finite included: such a file could not be opened again.
pub fn write(project: &Project) -> Result<String, DocumentError> {
    check(project)?;
    Ok(json::written(project))
}

impl FromJson for Project {
    fn from_json(node: &Node<'_>, at: &Here<'_>) -> Result<Self, Fault> {
        let fields = Fields::of(node, at, KIND, &FIELDS)?;
        Ok(Self {
            name: fields.take("name")?,
            note: fields.take("note")?,
            pressure: fields.take("pressure")?,
            weather: fields.take("weather")?,
            target: fields.take("target")?,
            spaces: fields.take("spaces")?,
            runs: fields.take("runs")?,
        })
    }
}

impl ToJson for Project {
    fn to_json(&self, out: &mut Writer) {
        out.record(&[
            ("format", &FORMAT),
            ("version", &VERSION),
            ("revision", &REVISION),
            ("name", &self.name),
            ("note", &self.note),
            ("pressure", &self.pressure),
            ("weather", &self.weather),
            ("target", &self.target),
            ("spaces", &self.spaces),
            ("runs", &self.runs),
        ]);
    }
}

/// Looks at every part that a project keeps as it is written.
fn look_at_years(tree: &Node<'_>) -> Looked {
    let mut looked = Ok(());
    if let Some(node) = member(tree, "weather") {
        let found = Kept::<WeatherReference>::looked_at(node, &Here::at("weather"))?;
        looked = looked.and(found.map(drop));
    }
    if let Some(node) = member(tree, "target") {
        let found = Kept::<DryEnough>::looked_at(node, &Here::at("target"))?;
        looked = looked.and(found.map(drop));
    }
    let spaces = Here::at("spaces");
    for (at, space) in entries(tree, "spaces") {
        if let Some(node) = member(space, "year") {
            let found = Kept::<SpaceYear>::looked_at(node, &spaces.index(at).field("year"))?;
            looked = looked.and(found.map(drop));
        }
    }
    let runs = Here::at("runs");
    for (at, run) in entries(tree, "runs") {
        let at = runs.index(at);
        if let Some(node) = member(run, "troubles") {
            let found = Kept::<TroublesKept>::looked_at(node, &at.field("troubles"))?;
            looked = looked.and(found.map(drop));
        }
        let at = at.field("duct");
        let duct = member(run, "duct");
        if let Some(node) = duct.and_then(|duct| member(duct, "source")) {
            let found = Kept::<AirSource>::looked_at(node, &at.field("source"))?;
            looked = looked.and(found.map(drop));
        }
        if let Some(node) = duct.and_then(|duct| member(duct, "fan_off")) {
            let found = Kept::<Vec<Period>>::looked_at(node, &at.field("fan_off"))?;
            looked = looked.and(found.map(drop));
        }
    }
    Ok(looked)
}

/// The entries of a list in a field, with their positions.
fn entries<'a>(node: &'a Node<'_>, name: &str) -> impl Iterator<Item = (usize, &'a Node<'a>)> {
    let entries = match member(node, name).map(|list| &list.content) {
        Some(Content::List(entries)) => entries.as_slice(),
        _ => &[],
    };
    entries.iter().enumerate()
}

/// What stands in a field, nulls left out.
fn member<'a>(node: &'a Node<'_>, name: &str) -> Option<&'a Node<'a>> {
    let mut members = node.members()?.iter();
    let found = members.find(|member| member.name == name)?;
    (!matches!(found.value.content, Content::Null)).then_some(&found.value)
}

/// Checks that a tree is a project of a version that this program reads.
fn check_head(tree: &Node<'_>) -> Result<(), DocumentError> {
    let field = |name| {
        let mut members = tree.members().unwrap_or_default().iter();
        members
            .find(|member| member.name == name)
            .map(|member| &member.value)
    };
    let format = field("format");
    if !matches!(format.map(|node| &node.content), Some(Content::Text(found)) if found == FORMAT) {
        return Err(DocumentError::NotAProject {
            found: format.map_or_else(|| "missing".to_owned(), Node::shortened),
        });
    }
    let version = whole(field("version"), "version")?;
    let revision = whole(field("revision"), "revision")?;
    if VERSION < version || REVISION < revision {
        return Err(DocumentError::Newer {
            version,
            revision,
            known: REVISION,
        });
    }
    Ok(())
}

/// A whole number of the head, 1 or more.
fn whole(node: Option<&Node<'_>>, name: &str) -> Result<u64, DocumentError> {
    let wanted = "must be a whole number from 1";
    let message = match node {
        Some(node) => match node.text.parse() {
            Ok(number) if 1 <= number => return Ok(number),
            _ => format!("is {}, {wanted}", node.shortened()),
        },
        None => format!("missing field `{name}`, {wanted}"),
    };
    Err(DocumentError::Shape {
        path: FieldPath::root().field(name),
        message,
        line: 1,
        column: 1,
    })
}
