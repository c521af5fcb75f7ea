//! The dish that is looked at: its window, the picture, and what it rests on.

use super::expected::{last_core, last_pit};
use super::picture::{Dot, Picture, TENDER_LINE, picture};
use super::yard::{Day, use_yard};
use crate::device::screen::use_screen;
use crate::format::{Formats, rounded};
use crate::parts::Mark;
use crate::words::{fireside as words, journal::dish_name};
use cook_model::handover::identity::DishId;
use cook_model::live::Stage;
use cook_model::plan::outlook::Window;
use cook_model::units::Moment;
use leptos::prelude::*;

/// The width from which the screen has columns.
const WIDE: f64 = 1000.0;
/// What the columns beside the picture and the gaps take.
const BESIDE: f64 = 420.0 + 48.0 + 28.0;
/// The edges of a phone.
const EDGES: f64 = 32.0;

/// What stands over and under the picture.
#[derive(Clone, Debug, PartialEq)]
struct Said {
    letter: char,
    hue: u8,
    heading: String,
    window: String,
    label: String,
    core: String,
    pit: String,
    notes: Vec<String>,
}

fn said(day: &Day, dish: DishId, now: Moment, formats: &Formats) -> Option<Said> {
    let seen = day.seen(dish)?;
    let (stage, since) = day.progress().stage(dish);
    let Ok(times) = &seen.forecast else {
        return None;
    };
    let name = dish_name(&day.plan, dish);
    let tender = times.tenderness.is_some();
    let window: Option<Window> = match stage {
        Stage::NotOn => Some(times.ready),
        Stage::On | Stage::Wrapped => Some(times.ready),
        Stage::Resting | Stage::Held => Some(times.table_ready),
        Stage::Sliced => None,
    };
    let likely = window.map_or_else(String::new, |window| formats.time(rounded(&window)[1]));
    let figures = window.map_or_else(
        || since.map_or_else(String::new, |since| formats.time(since)),
        |window| formats.window(&window),
    );
    let stall = times
        .stall
        .and_then(|stall| words::planned_stall(stall, now, formats));
    let stall = stall.filter(|_| stage < Stage::Resting);
    let pieces = day.pieces(dish);
    let core = pieces
        .iter()
        .filter_map(|piece| last_core(day, *piece))
        .max_by_key(|(at, _)| *at);
    let core = match (core, &stall) {
        (Some((_, core)), Some(stall)) => format!("core {}, {stall}", formats.temperature(core)),
        (Some((_, core)), None) => format!("core {}", formats.temperature(core)),
        (None, Some(stall)) => stall.clone(),
        (None, None) => words::NO_CORE.to_owned(),
    };
    let cooker = day.cooker(Some(dish));
    let read = cooker.and_then(|cooker| last_pit(day, cooker));
    let wanted = cooker
        .and_then(|cooker| day.plan.cookers.get(&cooker)?.programme.first())
        .map(|step| formats.temperature(step.set));
    let pit = words::pit_read(read.map(|(_, pit)| formats.temperature(pit)), wanted);
    let mut notes = vec![words::rests_on(&name, stage, since, formats)];
    if stage < Stage::Resting {
        notes.push(words::table_ready(&formats.window(&times.table_ready)));
    }
    let table = formats.time(day.plan.serving.moment());
    Some(Said {
        letter: seen.letter,
        hue: seen.hue,
        heading: words::heading(stage, tender, &likely),
        label: words::picture_label(&name, tender, &figures, &likely, &table),
        window: figures,
        core,
        pit,
        notes,
    })
}

/// The dish.
#[component]
pub fn Course() -> impl IntoView {
    let yard = use_yard();
    let screen = use_screen();
    let size = move || {
        let (width, height) = screen.get();
        if width >= WIDE {
            ((width - BESIDE).clamp(300.0, 900.0), 300.0)
        } else {
            (width - EDGES, if height < 780.0 { 150.0 } else { 194.0 })
        }
    };
    let drawn = Memo::new(move |_| {
        let (now, formats, size) = (yard.now(), yard.formats(), size());
        let dish = yard.dish.get()?;
        yard.with(|day| picture(day, dish, now, &formats, size))
            .flatten()
    });
    let text = Memo::new(move |_| {
        let (now, formats) = (yard.now(), yard.formats());
        let dish = yard.dish.get()?;
        yard.with(|day| said(day, dish, now, &formats)).flatten()
    });
    let inside = move || {
        let said = text.get()?;
        let drawn = drawn.get()?;
        let formats = yard.formats();
        let now = formats.time(yard.now());
        let table = format!(
            "{} {}",
            words::TABLE,
            formats.time(
                yard.with(|day| day.plan.serving.moment())
                    .unwrap_or_else(|| yard.now()),
            )
        );
        let notes = said
            .notes
            .iter()
            .map(|note| view! { <p class="note">{note.clone()}</p> })
            .collect_view();
        Some(view! {
            <div class="say">
                <h2 class="head" id="course">
                    <Mark letter=Signal::stored(said.letter) hue=Signal::stored(said.hue) small=true />
                    {said.heading.clone()}
                </h2>
                <p class="num">{said.window.clone()}</p>
            </div>
            {fan(&drawn, &said, &now, &table)}
            <div class="foot">{notes}</div>
        })
    };
    view! { <section class="course" aria-labelledby="course">{inside}</section> }
}

/// The drawing.
fn fan(picture: &Picture, said: &Said, now: &str, table: &str) -> impl IntoView + use<> {
    let Picture {
        width,
        height,
        base,
        ..
    } = *picture;
    let px = |value: f64| format!("{value:.1}");
    let (top, line, bottom) = (px(TENDER_LINE - 28.0), px(TENDER_LINE), px(height - 2.0));
    let hours = picture.hours.iter().map(|hour| {
        let x = px(hour.x);
        let text = hour.text.clone().map(|text| view! {
            <text x=x.clone() y="13" text-anchor="middle">{text}</text>
        });
        view! {
            <line class="hr" x1=x.clone() x2=x.clone() y1=line.clone() y2=bottom.clone() />
            <line class="ax" x1=x.clone() x2=x.clone() y1=px(TENDER_LINE - 5.0) y2=line.clone() />
            {text}
        }
    }).collect_view();
    let stripes = picture
        .stripes
        .iter()
        .enumerate()
        .map(|(place, outline)| {
            let class = if place % 2 == 0 { "f1" } else { "f2" };
            view! { <path class=class d=outline.clone() /> }
        })
        .collect_view();
    let tiles = picture
        .grain
        .iter()
        .map(|tile| {
            view! {
                <rect
                    class=format!("q{}", tile.depth)
                    x=px(tile.at)
                    y=px(TENDER_LINE - 22.0)
                    width=px((tile.width - 1.5).max(1.0))
                    height="22"
                />
            }
        })
        .collect_view();
    let ring = picture
        .ring
        .map(|(x, y)| view! { <circle class="last-point" cx=px(x) cy=px(y) r="6" /> });
    let feels = picture
        .feels
        .iter()
        .map(|(x, y)| {
            let d = format!(
                "M{x:.1} {:.1}L{:.1} {y:.1}L{x:.1} {:.1}L{:.1} {y:.1}Z",
                y - 6.0,
                x + 6.0,
                y + 6.0,
                x - 6.0
            );
            view! { <path class="feel" d=d /> }
        })
        .collect_view();
    let dots = |dots: &[Dot], down: f64| {
        let y = base + down;
        dots.iter()
            .map(|dot| {
                // A figure at the line of now ends there: the sentences begin on the other side.
                let at_now = picture.now.filter(|now| (dot.x - now).abs() < 14.0);
                let (x, anchor) = match at_now {
                    Some(now) if now < 20.0 => (now + 4.0, "start"),
                    Some(now) => (now - 4.0, "end"),
                    None => (dot.x.clamp(10.0, width - 10.0), "middle"),
                };
                let figure = dot.figure.clone().map(|figure| {
                    view! {
                        <text class="n" x=px(x) y=px(y - 6.0) text-anchor=anchor>{figure}</text>
                    }
                });
                let class = if dot.doubtful { "rd doubt" } else { "rd" };
                view! { <circle class=class cx=px(dot.x) cy=px(y) r="3" /> {figure} }
            })
            .collect_view()
    };
    // The sentences stand on the side of now where there is more room.
    let now_x = picture.now.unwrap_or(0.0);
    let right = now_x < width * 0.5;
    let (text_x, anchor) = if right {
        (now_x + 8.0, "start")
    } else {
        (width, "end")
    };
    let text_x = px(text_x);
    let beside = picture
        .core
        .iter()
        .chain(&picture.pit)
        .all(|dot| (dot.x > now_x - 1.0) != right);
    let (core_y, pit_y) = if right || beside {
        (base + 24.0, base + 52.0)
    } else {
        (base - 22.0, base - 7.0)
    };
    let now_line = picture.now.map(|x| {
        let anchor = if x < 40.0 { "start" } else if x > width - 40.0 { "end" } else { "middle" };
        view! {
            <line class="now" x1=px(x) x2=px(x) y1=top.clone() y2=bottom.clone() />
            <text class="b" x=px(x) y="13" text-anchor=anchor>{format!("{} {now}", words::NOW_LABEL)}</text>
        }
    });
    let near = picture
        .now
        .is_some_and(|x| (picture.table - x).abs() < 110.0);
    let table_label = (!near).then(|| view! {
        <text class="b" x=px((picture.table + 4.0).min(width)) y="13" text-anchor="end">{table.to_owned()}</text>
    });
    let table_line = format!(
        "M{0:.1} 18V{2:.1}M{1:.1} 18V{2:.1}",
        picture.table - 2.0,
        picture.table + 2.0,
        base
    );
    let ready = if picture.to_temperature {
        words::AT_TEMPERATURE
    } else {
        words::TENDER
    };
    view! {
        <svg
            class="fan"
            viewBox=format!("0 0 {width:.0} {height:.0}")
            width=px(width)
            height=px(height)
            role="img"
            aria-label=said.label.clone()
        >
            {hours}
            {stripes}
            <path class="mid" d=picture.will.clone() />
            <line class="base" x1="0" x2=px(width) y1=px(base) y2=px(base) />
            <line class="ax" x1="0" x2=px(width) y1=line.clone() y2=line.clone() />
            {tiles}
            <rect class="likely" x=px(picture.likely - 2.0) y=px(TENDER_LINE - 27.0) width="4" height="32" />
            <path class="tbl" d=table_line />
            {table_label}
            {now_line}
            <text class="b" x="2" y=px(TENDER_LINE + 17.0)>{ready}</text>
            <text x="2" y=px((TENDER_LINE + base) / 2.0 + 6.0)>{words::HALF_WAY}</text>
            {ring}
            {feels}
            {dots(&picture.core, 24.0)}
            {dots(&picture.pit, 52.0)}
            <text x=text_x.clone() y=px(core_y) text-anchor=anchor>{said.core.clone()}</text>
            <text x=text_x y=px(pit_y) text-anchor=anchor>{said.pit.clone()}</text>
        </svg>
    }
}
