//! The fields as mark-up: each input has `data-entry` with its name and a place for a sentence under it.

use dewrun_document::{AirflowSensor, Input, Origin, Route, TrapKind};
use dewrun_drawing::escaped;
use dewrun_quantity::Style;
use dewrun_quantity::measure::{AIR_FLOW, DRAUGHT};
use dewrun_quantity::{Pressure, VolumeFlow};

use super::place::stands_in;
use super::{LEFT, Measured, TRAP};
use crate::OpenProject;

/// What is entered of the installation of the open run, in groups.
#[must_use]
pub fn entries_html(project: &OpenProject, style: Style) -> String {
    let Some(run) = project.open_run() else {
        return String::new();
    };
    let path = run.air_path.clone().unwrap_or_default();
    let number = |name: &str, label: &str, input: &Input<f64>, measured| {
        one(name, label, (Some(input), ""), measured, style)
    };
    let left = |from: usize, until: usize| -> String {
        LEFT.iter()
            .take(until)
            .skip(from)
            .map(|left| {
                let mut path = path.clone();
                let given = (left.of)(&mut path).clone();
                let name = format!("air_path.{}", left.field);
                one(
                    &name,
                    left.label,
                    (given.as_ref(), left.row),
                    left.measured,
                    style,
                )
            })
            .collect()
    };
    let duct = [
        number(
            "duct.static_pa",
            "Duct static at the tube",
            &run.duct.static_pa,
            Measured::Gauge,
        ),
        number(
            "duct.velocity_pa",
            "Velocity pressure",
            &run.duct.velocity_pa,
            Measured::Gauge,
        ),
        left(0, 4),
    ];
    let spaces = project
        .project
        .spaces
        .iter()
        .enumerate()
        .map(|(at, space)| {
            let given = (space.pressure_pa.as_ref(), "space-pressure");
            one(
                &format!("spaces.{at}.pressure_pa"),
                &space.name,
                given,
                Measured::Gauge,
                style,
            )
        });
    let sensor = match path.sensor {
        AirflowSensor::Volume => "volume",
        AirflowSensor::Mass => "mass",
        AirflowSensor::VelocityPressure => "velocity_pressure",
    };
    let sensors = [
        ("volume", "volume flow"),
        ("mass", "mass flow"),
        ("velocity_pressure", "velocity pressure"),
    ];
    let detector = [
        fan(&path.fan, style),
        left(7, 11),
        choice("air_path.sensor", "The sensor reads", sensor, &sensors, ""),
    ];
    let groups = [
        ("Pressures in the duct", duct.concat()),
        ("Sampling holes", left(4, 7)),
        ("Detector", detector.concat()),
        ("Limits and visits", left(11, 15)),
        ("Pressures in the spaces", spaces.collect()),
        (
            "Traps of the intake tube",
            traps("intake", &run.intake, style),
        ),
        (
            "Traps of the exhaust tube",
            run.exhaust
                .as_ref()
                .map_or_else(String::new, |route| traps("exhaust", route, style)),
        ),
    ];
    groups
        .into_iter()
        .filter(|(_, fields)| !fields.is_empty())
        .map(|(name, fields)| group(name, &fields))
        .collect()
}

/// Fields that belong together, under a name.
pub(crate) fn group(name: &str, fields: &str) -> String {
    let name = escaped(name);
    format!("<fieldset class=\"dw-entries__group\"><legend>{name}</legend>{fields}</fieldset>")
}

/// A number, or what stands in for it.
pub(crate) fn one(
    name: &str,
    label: &str,
    (given, row): (Option<&Input<f64>>, &str),
    measured: Measured,
    style: Style,
) -> String {
    let span = stands_in(row);
    let assumed = match given.map(|given| &given.origin) {
        Some(Origin::Assumed { low, high, .. }) => Some((*low, *high)),
        Some(_) => None,
        None => span.map(|span| (span.low, span.high)),
    };
    let value = given
        .map(|given| given.value)
        .or(span.map(|span| span.usual));
    let shown = value
        .map(|value| measured.show(value, style))
        .unwrap_or_default();
    let (class, origin) = match (assumed, given.map(|given| &given.origin)) {
        (Some((low, high)), _) => {
            let [low, high] = [low, high].map(|value| measured.show(value, style));
            (" dw-field--assumed", format!("assumed {low} to {high}"))
        }
        (_, Some(Origin::Measured { .. })) => (" dw-field--measured", "measured".to_owned()),
        (None, None) => (" dw-field--assumed", "not entered".to_owned()),
        _ => ("", String::new()),
    };
    let unit = measured.unit(style);
    let input = format!(
        "<input id=\"{id}\" class=\"dw-field__input\" type=\"text\" size=\"5\" autocomplete=\"off\" spellcheck=\"false\" data-entry=\"{name}\" aria-describedby=\"{id}-fault {id}-origin\" value=\"{}\"><span class=\"dw-field__unit\" aria-hidden=\"true\">{unit}</span>",
        escaped(&shown),
        id = id(name),
    );
    let spoken = if unit.is_empty() {
        String::new()
    } else {
        format!("<span class=\"dw-spoken\">, {unit}</span>")
    };
    field(
        name,
        class,
        &format!("{}{spoken}", escaped(label)),
        &input,
        &origin,
    )
}

/// A text that is no number, with what it may be under it.
pub(crate) fn plain(name: &str, label: &str, shown: &str, said: &str) -> String {
    let input = format!(
        "<input id=\"{id}\" class=\"dw-field__input\" type=\"text\" size=\"5\" autocomplete=\"off\" spellcheck=\"false\" data-entry=\"{name}\" aria-describedby=\"{id}-fault {id}-origin\" value=\"{}\">",
        escaped(shown),
        id = id(name),
    );
    field(name, "", &escaped(label), &input, said)
}

fn field(name: &str, class: &str, label: &str, input: &str, origin: &str) -> String {
    let id = id(name);
    format!(
        "<div class=\"dw-field{class}\"><label class=\"dw-field__label\" for=\"{id}\">{label}</label><span class=\"dw-field__box\">{input}</span><span class=\"dw-entries__origin\" id=\"{id}-origin\">{}</span><p class=\"dw-fault\" id=\"{id}-fault\"></p></div>",
        escaped(origin)
    )
}

fn id(name: &str) -> String {
    format!("entry-{}", name.replace('.', "-"))
}

/// The fan's curve as one text.
fn fan(points: &[dewrun_document::FanPoint], style: Style) -> String {
    let name = "air_path.fan";
    let point = |point: &dewrun_document::FanPoint| {
        let flow = VolumeFlow::litres_per_minute(point.flow_l_min.value);
        let pressure = Pressure::pascals(point.pressure_pa.value);
        format!(
            "{} {}",
            AIR_FLOW.show_entered(flow, style).number,
            DRAUGHT.show_entered(pressure, style).number
        )
    };
    let shown: Vec<String> = points.iter().map(point).collect();
    let (flow, pressure) = (
        AIR_FLOW.unit(style.units).name,
        DRAUGHT.unit(style.units).name,
    );
    let input = format!(
        "<input id=\"{id}\" class=\"dw-field__input\" type=\"text\" autocomplete=\"off\" spellcheck=\"false\" data-entry=\"{name}\" aria-describedby=\"{id}-fault {id}-origin\" value=\"{}\">",
        escaped(&shown.join("; ")),
        id = id(name),
    );
    let (class, origin) = if points.is_empty() {
        (
            " dw-field--assumed",
            "generic fan; type points such as 0 300; 50 220; 100 0",
        )
    } else {
        ("", "empty it for the generic fan")
    };
    let class = format!("{class} dw-entries__wide");
    field(
        name,
        &class,
        &format!("Fan curve: points of flow, {flow}, and pressure, {pressure}"),
        &input,
        origin,
    )
}

/// A choice among words; `said` stands under it.
pub(crate) fn choice(
    name: &str,
    label: &str,
    chosen: &str,
    options: &[(&str, &str)],
    said: &str,
) -> String {
    let options: String = options
        .iter()
        .map(|(value, words)| {
            let selected = if *value == chosen { " selected" } else { "" };
            format!("<option value=\"{value}\"{selected}>{words}</option>")
        })
        .collect();
    let select = format!(
        "<select id=\"{id}\" class=\"dw-field__input\" data-entry=\"{name}\" aria-describedby=\"{id}-fault {id}-origin\">{options}</select>",
        id = id(name),
    );
    let class = if said.is_empty() {
        ""
    } else {
        " dw-entries__wide"
    };
    field(name, class, label, &select, said)
}

fn traps(tube: &str, route: &Route, style: Style) -> String {
    let kinds = [
        ("hand_drained", "by hand"),
        ("self_draining", "by itself"),
        ("open_stub", "open stub"),
    ];
    let trap = |(at, trap): (usize, &dewrun_document::Trap)| {
        let name = |field: &str| format!("{tube}.traps.{at}.{field}");
        let number = at + 1;
        let kind = match trap.kind {
            TrapKind::HandDrained => "hand_drained",
            TrapKind::SelfDraining => "self_draining",
            TrapKind::OpenStub => "open_stub",
        };
        let place = one(
            &name("at_m"),
            &format!("Trap {number}, along the tube"),
            (Some(&trap.at_m), ""),
            Measured::Along,
            style,
        );
        let emptied = format!("Trap {number}, emptied");
        let emptied = choice(&name("kind"), &emptied, kind, &kinds, "");
        let given = [&trap.capacity_ml, &trap.seal_mm, &trap.outlet_drop_mm];
        let more = TRAP
            .iter()
            .zip(given)
            .map(|((field, label, row, measured), given)| {
                let label = format!("Trap {number}, {}", label.to_ascii_lowercase());
                one(
                    &name(field),
                    &label,
                    (given.as_ref(), row),
                    *measured,
                    style,
                )
            });
        [place, emptied, more.collect()].concat()
    };
    route.traps.iter().enumerate().map(trap).collect()
}
