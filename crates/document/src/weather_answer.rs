//! From a weather file, read, to the answer about it, by hand.

use dewrun_quantity::{DecimalMark, Length};
use dewrun_run::air::{Over, standard_pressure};
use dewrun_weather::{
    Civil, Convention, DesignConditions, Gap, Note, Place, Range, Series, Understanding, Weather,
    design_conditions,
};

use crate::DocumentError;
use crate::answer_file::pretty;
use crate::output::{
    ColdDesignOutput, ColumnOutput, ConventionOutput, DesignOutput, Figure, GapOutput,
    HumidDesignOutput, PlaceOutput, RangeOutput, RangesOutput, RowOutput, TimingOutput,
    UnderstoodOutput, WEATHER_FORMAT, WeatherNoteOutput, WeatherOutput,
};

/// What was understood of a file of that name.
#[must_use]
pub fn weather_answer(file: &str, weather: &Weather) -> WeatherOutput {
    let series = &weather.series;
    let (rows, usable) = (whole(series.len()), whole(series.usable()));
    let months = series.warmest_and_coldest_month();
    WeatherOutput {
        format: WEATHER_FORMAT.to_owned(),
        version: 1,
        revision: 1,
        file: file.to_owned(),
        bytes: weather.bytes,
        sha256: weather.sha256_digits(),
        understood: understood(&weather.understood),
        place: place(&weather.place),
        rows,
        usable_rows: usable,
        missing_rows: rows - usable,
        event_rows: weather.event_rows,
        blank_lines: weather.blank_lines,
        timing: timing(series),
        pressure_source: weather.pressure_source.name().to_owned(),
        standard_pressure_pa: standard_pressure_pa(&weather.place),
        below_freezing: weather.convention.map(convention),
        clipped: weather.clipped,
        ranges: RangesOutput {
            temperature_c: range(&series.temperature_c),
            dew_point_c: range(&series.dew_point_c),
            relative_humidity_percent: range(&series.relative_percent),
            pressure_pa: range(&series.pressure_pa),
        },
        first_row: row(series, 0),
        warmest_month: months.map(|(warmest, _)| u64::from(warmest)),
        coldest_month: months.map(|(_, coldest)| u64::from(coldest)),
        design: design_conditions(series).as_ref().map(design),
        stations: weather.stations.clone(),
        comments: weather.comments.clone(),
        notes: weather.notes.iter().map(note).collect(),
    }
}

impl WeatherOutput {
    /// As JSON.
    ///
    /// # Errors
    /// [`DocumentError::NotFinite`] where a figure is no number; nothing is written then.
    pub fn to_json(&self) -> Result<String, DocumentError> {
        pretty(self)
    }
}

fn whole(count: usize) -> u64 {
    u64::try_from(count).unwrap_or(u64::MAX)
}

fn figure(value: f64) -> Option<Figure> {
    value.is_finite().then_some(Figure(value))
}

fn over_name(over: Option<Over>) -> String {
    match over {
        Some(Over::Ice) => "ice",
        _ => "water",
    }
    .to_owned()
}

fn understood(understood: &Understanding) -> UnderstoodOutput {
    let leading = if understood.dew_point_leads == Some(true) {
        "dew point"
    } else {
        "relative humidity"
    };
    let mark = if understood.decimal_mark == Some(DecimalMark::Comma) {
        "comma"
    } else {
        "point"
    };
    let name = |name: Option<&'static str>| name.unwrap_or("").to_owned();
    let columns = understood.columns.iter().map(|choice| ColumnOutput {
        column: whole(choice.column),
        role: choice.role.name().to_owned(),
        unit: choice
            .unit
            .map(|unit| unit.sign().to_owned())
            .filter(|sign| !sign.is_empty()),
    });
    UnderstoodOutput {
        form: name(understood.form.map(|form| form.name())),
        encoding: name(understood.encoding.map(|encoding| encoding.name())),
        delimiter: name(understood.delimiter.map(|delimiter| delimiter.name())),
        decimal_mark: mark.to_owned(),
        date_order: name(understood.date_order.map(|order| order.name())),
        stamps: name(understood.stamps.map(|stamps| stamps.name())),
        utc_offset_h: understood.utc_offset_h.and_then(figure),
        station: understood.station.clone(),
        first_reading: understood.first_reading,
        dew_point_over: over_name(understood.dew_point_over),
        relative_humidity_over: over_name(understood.relative_over),
        leading_humidity: leading.to_owned(),
        columns: columns.collect(),
    }
}

fn place(place: &Place) -> PlaceOutput {
    PlaceOutput {
        name: place.name.clone(),
        latitude_deg: place.latitude_deg.and_then(figure),
        longitude_deg: place.longitude_deg.and_then(figure),
        elevation_m: place.elevation_m.and_then(figure),
        zone_h: place.zone_h.and_then(figure),
    }
}

fn standard_pressure_pa(place: &Place) -> Option<Figure> {
    let pressure = standard_pressure(Length::metres(place.elevation_m?)).ok()?;
    figure(pressure.to_pascals())
}

fn timing(series: &Series) -> TimingOutput {
    let text = |stamp: Option<Civil>| stamp.map_or_else(String::new, |stamp| stamp.to_string());
    let timing = &series.timing;
    let positive = |seconds: i64| u64::try_from(seconds).unwrap_or(0);
    let start = series.start_s.first().and_then(|start| Civil::of(*start));
    TimingOutput {
        first: text(series.first()),
        last: text(series.last()),
        first_hour_of_year: start.map_or(0, |start| u64::from(start.hour_of_year()) + 1),
        step_s: positive(timing.step_s),
        covered_hours: Figure(series.covered_hours()),
        covered_share_percent: Figure(series.covered_share_percent()),
        is_typical_year: timing.is_typical_year,
        irregular_steps: timing.irregular_steps,
        repeated: timing.repeated,
        backward: timing.backward,
        longest_step_s: positive(timing.longest_step_s),
        gaps: timing.gaps.iter().map(gap).collect(),
    }
}

fn gap(gap: &Gap) -> GapOutput {
    let text =
        |seconds: i64| Civil::of(seconds).map_or_else(String::new, |civil| civil.to_string());
    GapOutput {
        from: text(gap.from_s),
        to: text(gap.to_s),
        minutes: u64::try_from((gap.to_s - gap.from_s) / 60).unwrap_or(0),
        line: u64::from(gap.line),
    }
}

fn convention(convention: Convention) -> ConventionOutput {
    ConventionOutput {
        rows: convention.rows,
        both_over_water_k: Figure(convention.water_k),
        both_over_ice_k: Figure(convention.ice_k),
        frost_point_k: Figure(convention.frost_point_k),
    }
}

fn range(values: &[f64]) -> Option<RangeOutput> {
    Range::of(values).map(|range| RangeOutput {
        min: Figure(range.min),
        max: Figure(range.max),
        mean: Figure(range.mean),
    })
}

fn row(series: &Series, row: usize) -> RowOutput {
    let at = |column: &[f64]| column.get(row).copied().and_then(figure);
    RowOutput {
        temperature_c: at(&series.temperature_c),
        dew_point_c: at(&series.dew_point_c),
        relative_humidity_percent: at(&series.relative_percent),
        pressure_pa: at(&series.pressure_pa),
        humidity_ratio_kg_kg: series.humidity_ratio(row).and_then(figure),
    }
}

fn design(design: &DesignConditions) -> DesignOutput {
    let humid = design.humid.iter().map(|humid| HumidDesignOutput {
        exceeded_percent: Figure(humid.exceeded_percent),
        dew_point_c: Figure(humid.dew_point.to_celsius()),
        mean_coincident_dry_bulb_c: Figure(humid.mean_coincident_dry_bulb.to_celsius()),
    });
    let cold = design.cold.iter().map(|cold| ColdDesignOutput {
        exceeded_percent: Figure(cold.exceeded_percent),
        dry_bulb_c: Figure(cold.dry_bulb.to_celsius()),
    });
    DesignOutput {
        humid: humid.collect(),
        cold: cold.collect(),
    }
}

fn note(note: &Note) -> WeatherNoteOutput {
    WeatherNoteOutput {
        topic: note.topic.name().to_owned(),
        sentence: note.sentence.clone(),
        lines: note.lines.clone(),
        count: note.count,
    }
}
