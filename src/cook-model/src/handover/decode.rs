//! From fields to a plan and back. Reading is a total function: what cannot be read is left out and said.

use super::document::Document;
use super::fault::because;
use super::stamp::Clock;
use crate::plan::Plan;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};
use serde_json::{Map, Value};

/// A field that could not be read, and was left out.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
pub struct Unreadable {
    /// Where it stands, with slashes between.
    pub at: String,
    /// What is wrong with it, in a sentence.
    pub because: String,
}

/// A document read: the plan where there is enough for one, and everything that was left out.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// None where the serving moment itself is missing or unreadable.
    pub plan: Option<Plan>,
    /// Left out, outermost first.
    pub unreadable: Vec<Unreadable>,
}

impl Document {
    /// Reads the plan. A field that cannot be read falls back to its default; where it has none, the thing that it
    /// belongs to is left out. Each is reported.
    #[must_use]
    pub fn read(&self) -> Reading {
        let mut json = self.to_json();
        let mut unreadable = Vec::new();
        // Each round takes one value away, so this ends; a whole plan has fewer values than this.
        for _ in 0..10_000 {
            match serde_path_to_error::deserialize::<_, Plan>(&json) {
                Ok(plan) => {
                    return Reading {
                        plan: Some(plan),
                        unreadable,
                    };
                }
                Err(error) => {
                    let at = error.path().to_string().replace('.', "/");
                    let because = because(&error.inner().to_string());
                    let names: Vec<&str> = at
                        .split('/')
                        .filter(|name| !name.is_empty() && *name != "?")
                        .collect();
                    let taken = take_out(&mut json, &names);
                    unreadable.push(Unreadable { at, because });
                    if !taken {
                        break;
                    }
                }
            }
        }
        Reading {
            plan: None,
            unreadable,
        }
    }

    /// Stamps what changed from one plan to the next. Returns whether anything did. `wall` is the wall clock in
    /// milliseconds since 1970, UTC.
    pub fn record(
        &mut self,
        before: Option<&Plan>,
        after: &Plan,
        clock: &mut Clock,
        wall: u64,
    ) -> bool {
        let before = before.map_or(Value::Null, to_json);
        self.record_json(&before, &to_json(after), clock, wall)
    }
}

fn to_json(plan: &Plan) -> Value {
    serde_json::to_value(plan).unwrap_or(Value::Null)
}

/// Takes the value at a path out, or the nearest thing around it: a missing name means that its owner is incomplete.
fn take_out(json: &mut Value, names: &[&str]) -> bool {
    for depth in (1..=names.len()).rev() {
        let (way, last) = (&names[..depth - 1], names[depth - 1]);
        let place = way
            .iter()
            .try_fold(&mut *json, |place, name| place.get_mut(*name));
        if place
            .and_then(Value::as_object_mut)
            .and_then(|object: &mut Map<_, _>| object.remove(last))
            .is_some()
        {
            return true;
        }
    }
    false
}

#[cfg(test)]
mod tests {
    use super::super::identity::{DishId, PlanId, ReplicaId};
    use super::*;
    use crate::plan::{Dish, Food, Serving};
    use serde_json::json;

    fn serving() -> Serving {
        let local = "2026-09-12T18:00:00".parse().expect("a date and time");
        Serving {
            local,
            zone: "Europe/London".to_owned(),
            offset_seconds: 3600,
        }
    }

    fn dish(name: &str) -> Dish {
        let food = json!({"is": "cut", "cut": "lamb-shoulder"});
        serde_json::from_value(json!({"name": name, "food": food})).expect("a dish")
    }

    fn kept(plan: &Plan) -> Document {
        let mut document = Document::new(PlanId::new(1, 1));
        document.record(None, plan, &mut Clock::new(ReplicaId::new(1)), 1_000);
        document
    }

    #[test]
    fn a_plan_comes_back_as_it_was_kept() {
        let mut plan = Plan::new(serving());
        plan.name = "Supper".to_owned();
        plan.dishes.insert(DishId::new(1, 1), dish("Lamb"));
        let reading = kept(&plan).read();
        assert_eq!(
            reading,
            Reading {
                plan: Some(plan),
                unreadable: vec![]
            }
        );
    }

    #[test]
    fn an_unreadable_field_falls_back_and_is_told() {
        let mut plan = Plan::new(serving());
        plan.promise = 0.8;
        let mut document = kept(&plan);
        let field = document.fields.get_mut("promise").expect("the promise");
        field.value = Some(json!("high"));
        let reading = document.read();
        assert_eq!(reading.plan.expect("a plan").promise, 0.9);
        assert_eq!(reading.unreadable[0].at, "promise");
    }

    #[test]
    fn a_dish_without_its_food_is_left_out_and_told() {
        let mut plan = Plan::new(serving());
        let (lamb, pork) = (DishId::new(1, 1), DishId::new(1, 2));
        plan.dishes.insert(lamb, dish("Lamb"));
        plan.dishes.insert(pork, dish("Pork"));
        let mut document = kept(&plan);
        document.fields.remove(&format!("dishes/{lamb}/food"));
        let reading = document.read();
        let read = reading.plan.expect("a plan");
        assert_eq!(read.dishes.keys().collect::<Vec<_>>(), [&pork]);
        assert!(
            reading.unreadable[0]
                .at
                .starts_with(&format!("dishes/{lamb}"))
        );
        assert!(reading.unreadable[0].because.contains("food"));
    }

    #[test]
    fn without_a_serving_moment_there_is_no_plan() {
        let mut document = kept(&Plan::new(serving()));
        document.fields.remove("serving");
        let reading = document.read();
        assert_eq!(reading.plan, None);
        assert!(reading.unreadable[0].because.contains("serving"));
    }

    #[test]
    fn a_dish_may_hold_nothing_but_its_food() {
        assert_eq!(
            dish("Lamb").food,
            Food::Cut {
                cut: "lamb-shoulder".to_owned()
            }
        );
    }
}
