//! `doubt`: the same members each time, spreads in order, readings that count, and how it ends.

use serde_json::Value;

use crate::running::ends;

const PROJECT: &str = "demo/gull-harbour-roof.json";

fn doubt(more: &[&str]) -> Value {
    let words = ["doubt", PROJECT, "--members", "8", "--json"];
    let words: Vec<&str> = words.iter().chain(more).copied().collect();
    let answer: Value = serde_json::from_str(&ends(&words, 10).out).expect("it is JSON");
    answer["runs"][0]["doubt"].clone()
}

fn spread(of: &Value) -> [f64; 3] {
    ["p10", "p50", "p90"].map(|end| of[end].as_f64().expect("a number"))
}

#[test]
fn spreads_are_in_order_and_every_part_has_its_span() {
    let doubt = doubt(&[]);
    assert_eq!(doubt["members"], 8, "all of them");
    let spans = doubt["spans"].as_array().expect("spans");
    for quantity in doubt["quantities"].as_array().expect("quantities") {
        let [p10, p50, p90] = spread(&quantity["spread"]);
        assert!(p10 <= p50 && p50 <= p90, "{quantity}");
        for share in quantity["shares"].as_array().expect("shares") {
            let at = share["span"].as_u64().expect("a position");
            assert!(
                usize::try_from(at).is_ok_and(|at| at < spans.len()),
                "{share}"
            );
        }
    }
    let relations = ["inside_film", "outside_film", "diffusivity", "friction"];
    for span in spans {
        let value = |name: &str| span[name].as_f64().expect("a number");
        assert!(value("low") < value("high"), "{span}");
        let is_relation = relations.contains(&span["id"].as_str().expect("an id"));
        let held = span["paths"].as_array().expect("paths").len();
        assert_eq!(0 < held, !is_relation, "{span}");
    }
    let ids: Vec<_> = spans
        .iter()
        .filter_map(|span| span["id"].as_str())
        .collect();
    assert!(
        relations.iter().all(|one| ids.contains(one)),
        "all relations vary: {ids:?}"
    );
    assert_eq!(doubt["measured"], Value::Null, "nothing was read");
}

#[test]
fn readings_count_and_are_undone_by_leaving_them_out() {
    let plain = doubt(&[]);
    let read = doubt(&["--measured", "airflow=29.5,error=0.5"]);
    assert_eq!(
        read["quantities"], plain["quantities"],
        "what is beside readings stays"
    );
    let measured = &read["measured"];
    let reading = &measured["readings"][0];
    assert_eq!(
        (&reading["what"], &reading["value"]),
        (&"airflow_l_min".into(), &29.5.into()),
        "as said"
    );
    let worth = measured["worth"].as_f64().expect("a number");
    assert!(worth < 8.0, "{worth}");
    let wrong = doubt(&["--measured", "airflow=200"]);
    assert!(
        wrong["measured"]["readings"][0]["contradicts"].is_f64(),
        "{}",
        wrong["measured"]
    );
    let sentences = wrong["sentences"].to_string();
    assert!(sentences.contains("contradicts the model"), "{sentences}");
}

#[test]
fn the_same_project_says_the_same() {
    assert_eq!(doubt(&[]), doubt(&[]), "word for word");
}

#[test]
fn what_is_missing_or_wrong_is_said() {
    let said = ends(&["doubt", "demo/make-up-air.json", "--members", "8"], 1);
    assert!(
        said.complaint.contains("names no weather file"),
        "{}",
        said.complaint
    );
    let said = ends(&["doubt", PROJECT, "--measured", "draught=3"], 2);
    assert!(
        said.complaint.contains("draught is none of airflow"),
        "{}",
        said.complaint
    );
    ends(&["doubt", PROJECT, "--members", "3"], 2);
    ends(&["doubt", "demo/nothing-there.json"], 1);
}
