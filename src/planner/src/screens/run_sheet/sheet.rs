//! The whole sheet, laid out: what is on it, how much room each lane has, and where every ticket hangs.

use super::frame::{self, Direction, Frame, NAMES, Strip, WIDE};
use super::lane::{CookerLane, Hands, HandsLane, cooker_lanes, hands_lanes};
use super::pack;
use super::scope::Scope;
use super::stay::{Stay, stays};
use super::ticket::{Ticket, tickets};
use super::zoom::Zoom;
use cook_model::plan::outlook::Outlook;
use cook_model::plan::{Plan, Zone};
use cook_model::units::Moment;

/// From the top of one ticket to the top of the next, where time runs down.
const PITCH: f64 = 54.0;
/// From the left edge of one ticket or stub to that of the next, where time runs across.
const TICKET_WIDTH: f64 = 104.0;
const STUB_WIDTH: f64 = 60.0;
/// An hour where time runs down: the first of these that pushes no ticket further than an hour from its time.
const HOURS_DOWN: [f64; 4] = [56.0, 72.0, 96.0, 128.0];
const FURTHEST_PUSH: f64 = 1.0;
/// Rim, heads, Dock and Bar of a phone take this from the height of the screen.
const OTHER_THINGS: f64 = 300.0;
/// An hour is never shorter than this.
const SHORTEST_HOUR: f64 = 14.0;
/// An hour where time runs across and tickets are shown one by one.
const LONG_HOUR: f64 = 112.0;
/// Least length of the axis that is reckoned to be in sight.
const LEAST_ROOM: f64 = 240.0;

/// How the person looks at the sheet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Of the screen, CSS pixels.
    pub width: f64,
    /// Of the screen, CSS pixels.
    pub height: f64,
    /// How much is shown.
    pub zoom: Zoom,
    /// The lane of hands that is open in any case; none: the first.
    pub open: Option<Hands>,
    /// What is past is folded away while the day runs.
    pub fold: bool,
}

/// A ticket in its place.
#[derive(Clone, Debug, PartialEq)]
pub struct Placed {
    /// The ticket.
    pub ticket: Ticket,
    /// Its lane among the lanes of hands.
    pub lane: usize,
    /// Hours along the axis at which it hangs; its own time or, where there is no room, later.
    pub slot: f64,
    /// Its row in the lane where time runs across.
    pub row: usize,
    /// Which of two threads side by side is its own, where time runs down.
    pub thread: usize,
}

/// The sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// What is on it.
    pub scope: Scope,
    /// Cookers.
    pub cookers: Vec<CookerLane>,
    /// Dishes on them.
    pub stays: Vec<Stay>,
    /// Hands.
    pub hands: Vec<HandsLane>,
    /// Tickets in order of likely time.
    pub tickets: Vec<Placed>,
    /// Room.
    pub frame: Frame,
    /// An hour, CSS pixels.
    pub hour: f64,
    /// So much of the axis is in sight at once, CSS pixels.
    pub room: f64,
    /// Hours from the start of the axis to the end of the last ticket.
    pub length: f64,
}

impl Sheet {
    /// Lays out what an outlook holds.
    #[must_use]
    pub fn lay_out(plan: &Plan, outlook: &Outlook, zone: &Zone, now: Moment, view: View) -> Self {
        let scope = Scope::of(outlook, zone, now, view.fold && view.width < WIDE);
        let bars = stays(plan, outlook, scope.axis);
        let cookers = cooker_lanes(plan, outlook, &scope, &bars);
        let hands = hands_lanes(plan, &scope, zone);
        let found = tickets(plan, outlook, &scope, now);
        let columns: Vec<usize> = cookers.iter().map(|lane| lane.columns).collect();
        let open = view
            .open
            .and_then(|wanted| hands.iter().position(|lane| lane.hands == wanted));
        let open = open.unwrap_or(0);
        let lanes = Lanes {
            scope: &scope,
            hands: &hands,
            open,
            found,
        };
        let (frame, hour, placed) = if view.width < WIDE {
            let frame = frame::down(view.width, &columns, hands.len(), open);
            let (hour, placed) = lanes.hang_down(&frame, view);
            (frame, hour, placed)
        } else {
            let (hour, placed) = lanes.hang_across(view);
            let rows: Vec<(usize, bool)> = (0..hands.len())
                .map(|lane| (rows_of(&placed, lane), is_open(hands.len(), lane, open)))
                .collect();
            (frame::across(&columns, &rows), hour, placed)
        };
        let along = match frame.direction {
            Direction::Down => PITCH,
            Direction::Across => TICKET_WIDTH,
        };
        let ends = placed.iter().map(|placed| placed.slot + along / hour);
        let length = ends.fold(scope.axis.hours(), f64::max);
        Self {
            scope,
            cookers,
            stays: bars,
            hands,
            tickets: placed,
            frame,
            hour,
            room: room(view),
            length,
        }
    }

    /// The strip that a ticket hangs in.
    #[must_use]
    pub fn strip_of(&self, placed: &Placed) -> Strip {
        self.frame
            .hands
            .get(placed.lane)
            .map(|lane| lane.strip)
            .unwrap_or_default()
    }

    /// Hours from one ticket to the next in the strip or row of this one.
    #[must_use]
    pub fn pitch(&self, placed: &Placed) -> f64 {
        let open = self
            .frame
            .hands
            .get(placed.lane)
            .is_none_or(|lane| lane.open);
        let pixels = match (self.frame.direction, open) {
            (Direction::Down, _) => PITCH,
            (Direction::Across, true) => TICKET_WIDTH,
            (Direction::Across, false) => STUB_WIDTH,
        };
        pixels / self.hour
    }

    /// Hours in sight at once.
    #[must_use]
    pub fn shown(&self) -> f64 {
        self.room / self.hour
    }
}

/// So much of the axis is in sight at once, CSS pixels.
fn room(view: View) -> f64 {
    let room = if view.width < WIDE {
        view.height - OTHER_THINGS
    } else {
        view.width - NAMES - TICKET_WIDTH - 40.0
    };
    room.max(LEAST_ROOM)
}

/// Where time runs across, more than two lanes of hands are shut but for one.
const fn is_open(lanes: usize, lane: usize, open: usize) -> bool {
    lanes <= 2 || lane == open
}

fn rows_of(placed: &[Placed], lane: usize) -> usize {
    let here = placed.iter().filter(|placed| placed.lane == lane);
    here.map(|placed| placed.row + 1).max().unwrap_or(0)
}

struct Lanes<'a> {
    scope: &'a Scope,
    hands: &'a [HandsLane],
    open: usize,
    found: Vec<Ticket>,
}

impl Lanes<'_> {
    /// The lane of a ticket; the open one where nobody is up for it.
    fn lane_of(&self, ticket: &Ticket) -> usize {
        let mut lanes = self.hands.iter();
        let lane = lanes.position(|lane| lane.hands == ticket.hands);
        lane.unwrap_or(self.open)
    }

    fn time(&self, ticket: &Ticket) -> f64 {
        self.scope.axis.at(ticket.likely)
    }

    /// Tickets by the strip that they hang in: lanes that share one share its room.
    fn by_strip(&self, frame: &Frame) -> Vec<InStrip> {
        let mut strips: Vec<InStrip> = Vec::new();
        for ticket in &self.found {
            let lane = frame.hands[self.lane_of(ticket)];
            match strips.iter_mut().find(|strip| strip.at == lane.strip.at) {
                Some(strip) => strip.tickets.push(ticket.clone()),
                None => strips.push(InStrip {
                    at: lane.strip.at,
                    open: lane.open,
                    tickets: vec![ticket.clone()],
                }),
            }
        }
        strips
    }

    fn times(&self, tickets: &[Ticket]) -> Vec<f64> {
        tickets.iter().map(|ticket| self.time(ticket)).collect()
    }

    fn hang_down(&self, frame: &Frame, view: View) -> (f64, Vec<Placed>) {
        let strips = self.by_strip(frame);
        let push = |strip: &InStrip, hour: f64| {
            pack::furthest_push(&self.times(&strip.tickets), PITCH / hour)
        };
        let hour = match view.zoom {
            Zoom::Whole => {
                let hour = room(view) / self.scope.axis.hours();
                hour.clamp(SHORTEST_HOUR, HOURS_DOWN[0])
            }
            Zoom::Hours(hours) => room(view) / f64::from(hours),
            Zoom::Detail => {
                let mut open = HOURS_DOWN.into_iter().filter(|hour| {
                    let mut open = strips.iter().filter(|strip| strip.open);
                    open.all(|strip| push(strip, *hour) <= FURTHEST_PUSH)
                });
                open.next().unwrap_or(HOURS_DOWN[HOURS_DOWN.len() - 1])
            }
        };
        let mut placed = Vec::new();
        for strip in strips {
            let crowded = push(&strip, hour) > FURTHEST_PUSH;
            let tickets = if crowded && (!strip.open || view.zoom != Zoom::Detail) {
                self.bundle(&strip.tickets, PITCH / hour)
            } else {
                strip.tickets
            };
            let slots = pack::pushed(&self.times(&tickets), PITCH / hour);
            let threads = self.threads(&tickets);
            for ((ticket, slot), thread) in tickets.into_iter().zip(slots).zip(threads) {
                placed.push(Placed {
                    lane: self.lane_of(&ticket),
                    ticket,
                    slot,
                    row: 0,
                    thread,
                });
            }
        }
        in_order_of_time(&mut placed);
        (hour, placed)
    }

    fn hang_across(&self, view: View) -> (f64, Vec<Placed>) {
        let fitting = (room(view) / self.scope.axis.hours()).max(SHORTEST_HOUR);
        let hour = match view.zoom {
            Zoom::Whole => fitting,
            Zoom::Detail => fitting.max(LONG_HOUR),
            Zoom::Hours(hours) => room(view) / f64::from(hours),
        };
        let mut placed = Vec::new();
        for lane in 0..self.hands.len() {
            let width = if is_open(self.hands.len(), lane, self.open) {
                TICKET_WIDTH
            } else {
                STUB_WIDTH
            };
            let mine = self
                .found
                .iter()
                .filter(|ticket| self.lane_of(ticket) == lane);
            let tickets: Vec<Ticket> = mine.cloned().collect();
            let rows = self.rows(&tickets, width / hour);
            for (ticket, row) in tickets.into_iter().zip(rows) {
                placed.push(Placed {
                    lane,
                    slot: self.time(&ticket),
                    ticket,
                    row,
                    thread: 0,
                });
            }
        }
        in_order_of_time(&mut placed);
        (hour, placed)
    }

    fn rows(&self, tickets: &[Ticket], width: f64) -> Vec<usize> {
        let spans: Vec<(f64, f64)> = tickets
            .iter()
            .map(|ticket| (self.time(ticket), self.time(ticket) + width))
            .collect();
        pack::rows(&spans)
    }

    /// Bundles of neighbours in a strip.
    fn bundle(&self, tickets: &[Ticket], pitch: f64) -> Vec<Ticket> {
        let runs = pack::bundles(&self.times(tickets), pitch).into_iter();
        runs.filter_map(|run| Ticket::bundled(&tickets[run]))
            .collect()
    }

    /// Threads that overlap lie side by side, two at most.
    fn threads(&self, tickets: &[Ticket]) -> Vec<usize> {
        let axis = self.scope.axis;
        let mut by_start: Vec<usize> = (0..tickets.len()).collect();
        by_start.sort_by_key(|index| tickets[*index].from);
        let spans: Vec<(f64, f64)> = by_start
            .iter()
            .map(|index| (axis.at(tickets[*index].from), axis.at(tickets[*index].to)))
            .collect();
        let mut threads = vec![0; tickets.len()];
        for (index, row) in by_start.into_iter().zip(pack::rows(&spans)) {
            threads[index] = row % 2;
        }
        threads
    }
}

/// The tickets of a strip, in order of time.
struct InStrip {
    at: f64,
    open: bool,
    tickets: Vec<Ticket>,
}

fn in_order_of_time(placed: &mut [Placed]) {
    placed.sort_by_key(|placed| (placed.ticket.likely, placed.lane));
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, at};
    use super::*;
    use cook_model::plan::outlook::StepKind;
    use cook_model::units::TimeSpan;

    const PHONE: View = View {
        width: 360.0,
        height: 740.0,
        zoom: Zoom::Detail,
        open: None,
        fold: true,
    };
    const DESK: View = View {
        width: 1280.0,
        height: 800.0,
        zoom: Zoom::Whole,
        open: None,
        fold: true,
    };

    /// Twelve dishes on three cookers, four people, eight steps a dish.
    fn feast() -> Sample {
        let mut sample = Sample::new("2026-09-12T18:00:00");
        let crew = ["Joss", "Mirela", "Tam", "Ola"].map(|name| sample.crew(name));
        let cookers = ["Offset", "Kettle", "Drum"].map(|name| sample.cooker(name));
        for number in 0..12_usize {
            let cooker = cookers[number % 3];
            let on = at("2026-09-12T01:00:00") + TimeSpan::from_minutes(20.0 * number as f64);
            let clock = Zone::fixed(0)
                .local(on)
                .format("%Y-%m-%dT%H:%M:%S")
                .to_string();
            let dish = sample.dish(&format!("Dish {number}"), Some(cooker), &clock);
            let kinds = [
                StepKind::On,
                StepKind::ProbeIn,
                StepKind::Spray,
                StepKind::Turn,
                StepKind::Wrap,
                StepKind::Probe,
                StepKind::Off,
                StepKind::Slice,
            ];
            for (place, kind) in kinds.into_iter().enumerate() {
                let likely = on + TimeSpan::from_hours(place as f64 * 1.2);
                let step = sample.step(kind, &clock, 20.0);
                step.when = step.when.moved(likely - step.when.likely());
                step.dish = Some(dish);
                step.who = Some(crew[(number + place) % 4]);
            }
        }
        sample.name_steps();
        sample
    }

    fn sheet(sample: &Sample, view: View) -> Sheet {
        let now = at("2026-09-05T12:00:00");
        Sheet::lay_out(&sample.plan, &sample.outlook, &sample.zone, now, view)
    }

    fn steps_shown(sheet: &Sheet) -> usize {
        sheet
            .tickets
            .iter()
            .map(|placed| placed.ticket.steps.len())
            .sum()
    }

    fn apart_down(sheet: &Sheet) {
        for (index, one) in sheet.tickets.iter().enumerate() {
            for other in &sheet.tickets[index + 1..] {
                let strip = |placed: &Placed| sheet.frame.hands[placed.lane].strip;
                if strip(one) == strip(other) {
                    let gap = (other.slot - one.slot).abs() * sheet.hour;
                    assert!(gap >= PITCH - 1e-6, "only {gap} px between two tickets");
                }
            }
        }
    }

    #[test]
    fn no_ticket_lies_on_another_or_before_its_time() {
        let sample = feast();
        for (width, zoom) in [
            (360.0, Zoom::Detail),
            (360.0, Zoom::Whole),
            (390.0, Zoom::Detail),
            (800.0, Zoom::Detail),
        ] {
            let laid = sheet(
                &sample,
                View {
                    width,
                    zoom,
                    ..PHONE
                },
            );
            apart_down(&laid);
            assert_eq!(steps_shown(&laid), 96);
            for placed in &laid.tickets {
                assert!(placed.slot >= laid.scope.axis.at(placed.ticket.likely));
                assert!(placed.slot + PITCH / laid.hour <= laid.length + 1e-9);
            }
        }
    }

    #[test]
    fn a_crowded_shut_lane_bundles_what_it_would_push_away() {
        let laid = sheet(&feast(), PHONE);
        for placed in &laid.tickets {
            if !laid.frame.hands[placed.lane].open {
                let push = placed.slot - laid.scope.axis.at(placed.ticket.likely);
                assert!(push <= FURTHEST_PUSH);
            }
        }
    }

    #[test]
    fn the_list_of_tickets_is_in_order_of_time_in_both_directions() {
        let sample = feast();
        for view in [PHONE, DESK] {
            let laid = sheet(&sample, view);
            let times: Vec<_> = laid
                .tickets
                .iter()
                .map(|placed| placed.ticket.likely)
                .collect();
            assert!(times.is_sorted());
        }
    }

    #[test]
    fn the_whole_day_across_fits_the_screen_and_detail_is_longer() {
        let sample = feast();
        let whole = sheet(&sample, DESK);
        assert!(whole.length * whole.hour <= DESK.width - NAMES);
        assert!(
            whole
                .tickets
                .iter()
                .all(|placed| whole.frame.hands[placed.lane].strip.at > 0.0)
        );
        assert_eq!(steps_shown(&whole), 96);
        assert!(whole.tickets.iter().all(|placed| !placed.ticket.bundle));
        let detail = sheet(
            &sample,
            View {
                zoom: Zoom::Detail,
                ..DESK
            },
        );
        assert!(detail.hour >= LONG_HOUR);
        assert_eq!(steps_shown(&detail), 96);
    }

    #[test]
    fn tickets_of_a_row_do_not_touch_where_time_runs_across() {
        let laid = sheet(
            &feast(),
            View {
                zoom: Zoom::Detail,
                ..DESK
            },
        );
        for (index, one) in laid.tickets.iter().enumerate() {
            for other in &laid.tickets[index + 1..] {
                if (one.lane, one.row) == (other.lane, other.row) {
                    let gap = (other.slot - one.slot) * laid.hour;
                    assert!(gap >= STUB_WIDTH - 1e-6);
                }
            }
        }
    }

    #[test]
    fn a_day_and_a_half_or_one_hour_fill_the_screen() {
        let sample = feast();
        for view in [PHONE, DESK] {
            for hours in [36, 12, 1] {
                let zoom = Zoom::Hours(hours);
                let laid = sheet(&sample, View { zoom, ..view });
                assert!((laid.shown() - f64::from(hours)).abs() < 1e-9);
                assert_eq!(steps_shown(&laid), 96);
            }
        }
    }

    #[test]
    fn the_lane_that_was_asked_for_is_open() {
        let sample = feast();
        let third = sheet(&sample, PHONE).hands[2].hands;
        let laid = sheet(
            &sample,
            View {
                open: Some(third),
                ..PHONE
            },
        );
        let open: Vec<bool> = laid.frame.hands.iter().map(|lane| lane.open).collect();
        assert_eq!(open, [false, false, true, false]);
    }

    #[test]
    fn the_same_day_keeps_the_keys_of_its_tickets_when_it_is_reckoned_anew() {
        let mut sample = feast();
        let keys = |sample: &Sample| {
            let laid = sheet(sample, PHONE);
            let mut keys: Vec<_> = laid
                .tickets
                .iter()
                .map(|placed| placed.ticket.key)
                .collect();
            keys.sort_unstable();
            keys
        };
        let before = keys(&sample);
        for step in &mut sample.outlook.steps {
            step.when = step.when.moved(TimeSpan::from_minutes(7.0));
        }
        assert_eq!(keys(&sample), before);
        let mut single = before.clone();
        single.dedup();
        assert_eq!(single, before);
    }
}
