//! Whatever a person may do at the desk, told by four numbers.

use dewrun_desk::{
    EXAMPLES, Field, HumidOf, HumidityKind, Kept, OpenProject, Pick, Question, Stage, Store,
    TubeName, Way, add_leg, add_run, add_variant, delete_leg, delete_run, first_project, layouts,
    rename_project, rename_run, route, same_tube_everywhere, split_leg,
};
use dewrun_quantity::Style;
use proptest::prelude::{Strategy, any};

/// Texts that fields take, and some that none of them takes.
const TEXTS: [&str; 10] = [
    "1:50", "4.2", "12,5", "0", "-3", "drop", "", "4.", "wet", "1e999",
];
const NAMES: [&str; 3] = ["Über dem Flur", "\"a\" \\ b\n", "Plan B"];

/// One act: which, and of what.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Act {
    which: u8,
    on: usize,
    with: usize,
}

pub(crate) fn act() -> impl Strategy<Value = Act> {
    (0_u8..17, any::<u16>(), any::<u16>()).prop_map(|(which, on, with)| Act {
        which,
        on: usize::from(on),
        with: usize::from(with),
    })
}

/// A desk with the first sentence on it.
pub(crate) fn desk() -> Store {
    let project = first_project().expect("the library has its rows");
    Store::new(kept(1, project.into(), Stage::First(Way::Drawing)))
}

pub(crate) fn kept(key: u64, project: OpenProject, stage: Stage) -> Kept {
    Kept {
        key,
        project,
        stage,
        changed: key,
    }
}

impl Act {
    /// Does it; `key` is a new one.
    pub(crate) fn act(self, store: &mut Store, key: u64) {
        let Self { which, on, with } = self;
        match which {
            0..5 => type_into(store, on, TEXTS[with % TEXTS.len()]),
            5 => self.edit(store, |project, (tube, at)| {
                let pick = picks(tube, at)[with % 5];
                let options = pick.options(project);
                let value = options[with / 5 % options.len()].value.clone();
                // What can't be picked changes nothing.
                let _ = pick.take(project, &value);
            }),
            6 => self.edit(store, |project, (tube, at)| match with % 4 {
                0 => split_leg(project, tube, at),
                1 => add_leg(project, tube, at),
                2 => delete_leg(project, tube, at),
                _ => same_tube_everywhere(project, tube, at).unwrap_or_default(),
            }),
            7 => self.edit(store, |project, _| {
                let kind = HumidityKind::OFFERED[with % HumidityKind::OFFERED.len()];
                let of = [HumidOf::Duct, HumidOf::Space(0)][with % 2];
                // An air without an answer stays as it is.
                let _ = of.say_as(project, kind);
            }),
            8 => self.edit(store, |project, _| add_run(project)),
            9 => self.edit(store, |project, _| add_variant(project)),
            10 => self.edit(store, |project, _| delete_run(project)),
            11 => {
                let layouts = layouts(&store.now().project);
                store.show_run(layouts[with % layouts.len()]);
            }
            12 => self.edit(store, |project, _| {
                let name = NAMES[with % NAMES.len()];
                if with % 2 == 0 {
                    rename_run(project, name);
                } else {
                    rename_project(project, name);
                }
            }),
            13 => {
                let example = EXAMPLES[with % EXAMPLES.len()];
                let project = example.project().expect("it is read").into();
                let stage = [Stage::Project, Stage::Example(example)][on % 2];
                store.open(kept(key, project, stage));
            }
            14 => {
                let stage = Stage::First(Way::ALL[with % 3]);
                let project = first_project().expect("it is there").into();
                if on % 2 == 0 {
                    store.begin_anew(kept(key, project, stage));
                } else if !store.go_back_to(stage) {
                    store.open(kept(key, project, stage));
                }
            }
            15 => self.edit(store, |project, (_, at)| {
                let asked = [
                    Question::Air,
                    Question::Weather,
                    Question::Spaces,
                    Question::Tube,
                    Question::LegWay(at),
                    Question::LegSpace(at),
                    Question::NextLeg,
                    Question::When,
                    Question::Where,
                    Question::Trap,
                ];
                let question = asked[with % asked.len()];
                let place = with / asked.len() % question.words().len();
                // A leg that the intake tube has not takes no answer.
                let _ = question.answer(project, place);
            }),
            _ => {
                let keys: Vec<u64> = store.projects_aside().iter().map(|one| one.key).collect();
                match keys.get(with % keys.len().max(1)) {
                    Some(key) if on % 2 == 0 => store.delete(*key),
                    Some(key) => assert!(store.go_on_with(*key), "it is aside"),
                    None => {}
                }
            }
        }
    }

    fn edit(self, store: &mut Store, edit: impl FnOnce(&mut OpenProject, (TubeName, usize))) {
        let mut project = store.now().project.clone();
        let legs = legs(&project);
        edit(&mut project, legs[self.on % legs.len()]);
        store.part();
        store.change("edit", project);
    }
}

fn type_into(store: &mut Store, on: usize, text: &str) {
    let mut project = store.now().project.clone();
    let fields = fields(&project);
    let field = fields[on % fields.len()];
    match field.take(&mut project, text, Style::default()) {
        Ok(()) => store.change(&field.path(project.run), project),
        Err(_) => assert_eq!(
            project,
            store.now().project,
            "`{text}` in {field:?} changes nothing"
        ),
    }
}

fn legs(project: &OpenProject) -> Vec<(TubeName, usize)> {
    let tubes = [TubeName::Intake, TubeName::Exhaust].into_iter();
    tubes
        .flat_map(|tube| {
            let count = route(project, tube).map_or(0, |route| route.legs.len());
            (0..count).map(move |at| (tube, at))
        })
        .collect()
}

fn picks(tube: TubeName, at: usize) -> [Pick; 5] {
    [
        Pick::DuctAir,
        Pick::Detector,
        Pick::Tube(tube, at),
        Pick::Insulation(tube, at),
        Pick::Space(tube, at),
    ]
}

fn fields(project: &OpenProject) -> Vec<Field> {
    let mut fields = vec![
        Field::DuctFirst,
        Field::DuctSecond,
        Field::Pressure,
        Field::Flow,
        Field::DetectorHeat,
        Field::DetectorRating,
    ];
    for at in 0..project.spaces.len() {
        fields.extend([
            Field::SpaceTemperature(at),
            Field::SpaceHumidity(at),
            Field::SpaceWind(at),
        ]);
    }
    for (tube, at) in legs(project) {
        fields.extend([
            Field::LegLength(tube, at),
            Field::LegFall(tube, at),
            Field::LegBore(tube, at),
            Field::LegInsulation(tube, at),
            Field::LegTracing(tube, at),
        ]);
    }
    fields
}
