//! The forecast that rests on what was logged: everything that is on at once, in the same possible worlds.

use super::boundary::{as_logged, read_at_meat};
use super::evidence::{Evidence, Seen as Of};
use super::log::PieceLog;
use super::pace::Pace;
use super::smoother::{Datum, Seen, normal};
use super::state::Expected;
use crate::forecast::{
    CHUNK, DishForecast, DishScenario, OwnerKey, Prior, Remainder, Standard, march,
};
use crate::handover::identity::EntryId;
use crate::physics::{Draw, Finish, MemberRun, ModelError, Scenario, Settings, When, WrapChange};
use crate::units::{Temperature, TimeSpan};

/// What has happened so far does not tell all about what is ahead: the pace of the rest of a cook, log. Set by hand.
const AHEAD: f64 = 0.10;

/// Passes over the readings in a full answer.
pub const PASSES: u32 = 3;

/// Members of a full live forecast.
pub const MEMBERS: u32 = 64;

/// Coordinates of the world, of a cooker and of a piece; the piece's last is the pace of what is ahead.
const WORLD: usize = 1;
const COOKER: usize = 10;
const PIECE: usize = 11;

/// A piece, or several alike, that went on.
#[derive(Clone, Debug, PartialEq)]
pub struct UnderWay {
    /// What was planned.
    pub dish: DishScenario,
    /// What was logged.
    pub log: PieceLog,
}

/// How a core reading or a probe by hand went into the forecast.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fit {
    /// The entry.
    pub entry: EntryId,
    /// When, since it went on.
    pub after: TimeSpan,
    /// What the members made of it before any reading: their middle.
    pub expected: Expected,
    /// How much it counts, 0 to 1.
    pub weight: f64,
}

#[derive(Clone, Debug)]
struct Prepared {
    scenario: Scenario,
    prior: Prior,
    remainder: Remainder,
    log: PieceLog,
    cooker: usize,
}

/// A live forecast under way: [`Reforecast::step`] marches the next members, and [`Reforecast::forecast`] has the members
/// of a piece in the end.
#[derive(Clone, Debug)]
pub struct Reforecast {
    pieces: Vec<Prepared>,
    data: Vec<Datum>,
    cookers: usize,
    /// By member: world, cookers, pieces; then the probe of each piece now, which moves along with them.
    coordinates: Vec<Vec<f64>>,
    passes: u32,
    pass: u32,
    settings: Settings,
    seed: u64,
    /// By piece, of the pass under way.
    runs: Vec<Vec<MemberRun>>,
    expected: Vec<f64>,
    weights: Vec<f64>,
    forecasts: Vec<DishForecast>,
}

impl Reforecast {
    /// A forecast of `members` members (rounded up to whole chunks) over what is on, with so many passes over the
    /// readings. The settings are those of the last march; those before it are made more coarsely.
    #[must_use]
    pub fn new(
        under_way: Vec<UnderWay>,
        members: u32,
        passes: u32,
        seed: u64,
        settings: Settings,
    ) -> Self {
        let mut keys: Vec<OwnerKey> = Vec::new();
        let mut prepared = Vec::new();
        let mut data = Vec::new();
        for (piece, UnderWay { dish, log }) in under_way.iter().enumerate() {
            let key = dish.owners.cooker;
            let cooker = keys.iter().position(|other| *other == key);
            let cooker = cooker.unwrap_or_else(|| {
                keys.push(key);
                keys.len() - 1
            });
            let mut knowledge = dish.knowledge;
            knowledge.gauge_at_meat |= read_at_meat(log);
            data.extend(
                Evidence::of(log)
                    .into_iter()
                    .map(|says| Datum { piece, says }),
            );
            prepared.push(Prepared {
                scenario: as_logged(&dish.scenario, log),
                prior: Prior::of(dish.scenario.cooker, knowledge),
                remainder: dish.remainder(),
                log: log.clone(),
                cooker,
            });
        }
        let members = members.max(CHUNK).next_multiple_of(CHUNK);
        let coordinates = (0..members)
            .map(|member| coordinates(&under_way, &keys, seed, member))
            .collect();
        let passes = if data.is_empty() { 1 } else { passes.max(1) };
        Self {
            runs: vec![Vec::new(); prepared.len()],
            cookers: keys.len(),
            coordinates,
            passes,
            pass: 0,
            settings,
            seed,
            expected: Vec::new(),
            weights: vec![1.0; data.len()],
            forecasts: Vec::new(),
            pieces: prepared,
            data,
        }
    }

    /// Whether all is done.
    #[must_use]
    pub fn done(&self) -> bool {
        self.forecasts.len() == self.pieces.len()
    }

    /// Marches the next chunk of members. Returns [`Reforecast::done`].
    ///
    /// # Errors
    /// [`ModelError`] if what was logged is outside what the model can reckon with.
    pub fn step(&mut self) -> Result<bool, ModelError> {
        if self.done() {
            return Ok(true);
        }
        let members = self.coordinates.len();
        let behind = (0..self.pieces.len()).find(|piece| self.runs[*piece].len() < members);
        let Some(piece) = behind else {
            self.end_of_pass();
            return Ok(self.done());
        };
        let first = self.runs[piece].len();
        let runs = self.march(piece, first..first + CHUNK as usize, &|_: &mut Scenario| ())?;
        self.runs[piece].extend(runs);
        if self.runs.iter().all(|runs| runs.len() == members) {
            self.end_of_pass();
        }
        Ok(self.done())
    }

    /// The members of a piece, in the order in which the pieces were given. None before all is done.
    #[must_use]
    pub fn forecast(&self, piece: usize) -> Option<&DishForecast> {
        self.forecasts.get(piece).filter(|_| self.done())
    }

    /// What would come of a piece in the same possible worlds if its cook went on otherwise from now: `change` is given
    /// what is planned, on the clock of the yard. None before all is done.
    ///
    /// # Errors
    /// [`ModelError`] if the change leads outside what the model can reckon with.
    pub fn what_if(
        &self,
        piece: usize,
        change: impl Fn(&mut Scenario),
    ) -> Result<Option<DishForecast>, ModelError> {
        if !self.done() {
            return Ok(None);
        }
        let all = 0..self.coordinates.len();
        let runs = self.march(piece, all, &change)?;
        Ok(Some(DishForecast::from_members(runs)))
    }

    /// How the readings of a piece went in, in order of time.
    pub fn fits(&self, piece: usize) -> impl Iterator<Item = Fit> {
        let figures = self.expected.iter().zip(&self.weights);
        let all = self.data.iter().zip(figures);
        all.filter(move |(datum, _)| datum.piece == piece)
            .map(|(datum, (expected, weight))| Fit {
                entry: datum.says.entry,
                after: datum.says.after,
                expected: match datum.says.of {
                    Of::Probe | Of::ThinEnd => Expected::Core {
                        probe: Temperature::from_celsius(*expected),
                    },
                    Of::Tenderness => Expected::Tenderness {
                        tenderness: *expected,
                    },
                },
                weight: *weight,
            })
    }

    const fn last_pass(&self) -> bool {
        self.pass == self.passes
    }

    fn end_of_pass(&mut self) {
        let runs = std::mem::replace(&mut self.runs, vec![Vec::new(); self.pieces.len()]);
        if self.last_pass() {
            self.forecasts = runs.into_iter().map(DishForecast::from_members).collect();
            return;
        }
        self.note_the_present(&runs);
        if !self.data.is_empty() {
            self.learn(&runs);
        }
        self.pass += 1;
    }

    /// Notes where each probe is now.
    fn note_the_present(&mut self, runs: &[Vec<MemberRun>]) {
        let first = self.first_of_present();
        for (member, coordinates) in self.coordinates.iter_mut().enumerate() {
            for (piece, runs) in runs.iter().enumerate() {
                let last = runs[member].samples.last();
                coordinates[first + piece] = last.map_or(0.0, |sample| sample.probe.celsius());
            }
        }
    }

    const fn first_of_present(&self) -> usize {
        WORLD + self.cookers * COOKER + self.pieces.len() * PIECE
    }

    /// Moves the members towards the readings.
    fn learn(&mut self, runs: &[Vec<MemberRun>]) {
        let figures: Vec<Vec<f64>> = (0..self.coordinates.len())
            .map(|member| {
                let figure = |datum: &Datum| {
                    let tenderness = self.member(datum.piece, member).draw.tenderness;
                    let run = &runs[datum.piece][member];
                    let after = datum.says.after;
                    datum.says.in_member(run, after, tenderness).unwrap_or(0.0)
                };
                self.data.iter().map(figure).collect()
            })
            .collect();
        if self.pass == 0 {
            let middle = |j: usize| {
                let mut column: Vec<f64> = figures.iter().map(|row| row[j]).collect();
                crate::forecast::quantile(&mut column, 0.5).unwrap_or(0.0)
            };
            self.expected = (0..self.data.len()).map(middle).collect();
        }
        let seen = Seen {
            data: &self.data,
            figures: &figures,
        };
        self.weights = seen.weights();
        let owners: Vec<usize> = self.pieces.iter().map(|piece| piece.cooker).collect();
        let pieces = self.first_of_present() - self.pieces.len() * PIECE;
        let present = self.first_of_present();
        let touches = move |coordinate: usize, piece: usize| {
            if coordinate < WORLD {
                true
            } else if coordinate < pieces {
                (coordinate - WORLD) / COOKER == owners[piece]
            } else if coordinate < present {
                (coordinate - pieces) / PIECE == piece
            } else {
                coordinate - present == piece
            }
        };
        seen.assimilate(
            &mut self.coordinates,
            &self.weights,
            f64::from(self.passes),
            self.seed.wrapping_add(u64::from(self.pass)),
            touches,
        );
    }

    /// A member's draws for a piece, and its pace.
    fn member(&self, piece: usize, member: usize) -> Member {
        let all = &self.coordinates[member];
        let prepared = &self.pieces[piece];
        let cooker = WORLD + prepared.cooker * COOKER;
        let own = WORLD + self.cookers * COOKER + piece * PIECE;
        let standard = Standard {
            world: [all[0]],
            cooker: std::array::from_fn(|k| all[cooker + k]),
            piece: std::array::from_fn(|k| all[own + k]),
        };
        let drawn = standard.draw(&prepared.prior);
        let share = drawn.remainder.clamp(1e-9, 1.0 - 1e-9);
        Member {
            draw: drawn.draw,
            pace: Pace {
                factor: prepared.remainder.stretch(share),
                now: prepared.log.now,
                ahead: libm::exp(AHEAD * all[own + PIECE - 1].clamp(-3.5, 3.5)),
            },
            probe_now: all[self.first_of_present() + piece],
        }
    }

    fn march(
        &self,
        piece: usize,
        members: std::ops::Range<usize>,
        change: &impl Fn(&mut Scenario),
    ) -> Result<Vec<MemberRun>, ModelError> {
        let prepared = &self.pieces[piece];
        let members: Vec<Member> = members.map(|member| self.member(piece, member)).collect();
        let last = self.last_pass();
        let scenarios: Vec<Scenario> = members
            .iter()
            .map(|member| {
                let mut told = if last {
                    from_now_on(&prepared.scenario, &prepared.log, member.probe_now)
                } else {
                    until_now(&prepared.scenario, &prepared.log)
                };
                change(&mut told);
                member.pace.scenario(&told)
            })
            .collect();
        let by_clock = |scenario: &Scenario| matches!(scenario.finish, Finish::AfterOn(_));
        let cooks: Vec<(&Scenario, &Draw)> = scenarios
            .iter()
            .zip(&members)
            .map(|(scenario, member)| (scenario, &member.draw))
            .collect();
        let settings = if last { self.settings } else { self.coarse() };
        let mut runs = march(&cooks, &settings)?;
        for ((run, member), scenario) in runs.iter_mut().zip(&members).zip(&scenarios) {
            member.pace.run(run);
            if last && by_clock(scenario) {
                tender_as_drawn(run, prepared, member.draw.tenderness);
            }
        }
        Ok(runs)
    }

    /// For the passes over the readings.
    fn coarse(&self) -> Settings {
        Settings {
            cells: self.settings.cells.min(12),
            tolerance: self.settings.tolerance.max(4.0),
            ..self.settings
        }
    }
}

/// One member of one piece.
struct Member {
    draw: Draw,
    pace: Pace,
    /// Where the probe is now, °C.
    probe_now: f64,
}

/// The coordinates of a member before any reading.
fn coordinates(under_way: &[UnderWay], keys: &[OwnerKey], seed: u64, member: u32) -> Vec<f64> {
    let mut all = Vec::new();
    let of = |piece: &UnderWay| Standard::of(piece.dish.owners, seed, member);
    all.extend(
        under_way
            .first()
            .map_or([0.0; WORLD], |piece| of(piece).world),
    );
    for key in keys {
        let on = under_way
            .iter()
            .find(|piece| piece.dish.owners.cooker == *key);
        all.extend(on.map_or([0.0; COOKER], |piece| of(piece).cooker));
    }
    for (place, piece) in under_way.iter().enumerate() {
        all.extend(of(piece).piece);
        all.push(normal(seed ^ 0xa4ea_d000, member as usize, place));
    }
    all.extend(under_way.iter().map(|_| 0.0));
    all
}

/// The cook up to now: only what was logged.
fn until_now(scenario: &Scenario, log: &PieceLog) -> Scenario {
    let mut scenario = scenario.clone();
    let now = log.now;
    if log.off.is_none_or(|off| off >= now) {
        scenario.finish = Finish::AfterOn(now);
        scenario.after.clear();
    }
    let logged = |when: When| matches!(when, When::AfterOn(span) if span < now);
    scenario
        .wraps
        .retain(|wrap| !log.covers.is_empty() || logged(wrap.when));
    if !log.pit.is_empty() {
        scenario
            .pit
            .retain(|change| matches!(change.when, When::AfterOn(_)));
    }
    scenario
}

/// The cook as planned from now on. What goes by the probe and is not logged happens now where the probe is there already.
fn from_now_on(scenario: &Scenario, log: &PieceLog, probe_now: f64) -> Scenario {
    let mut scenario = scenario.clone();
    let not_before = |when: When| match when {
        When::Probe(goal) if probe_now >= goal.celsius() => When::AfterOn(log.now),
        other => other,
    };
    if log.covers.is_empty() {
        let wraps = scenario.wraps.iter().map(|wrap| WrapChange {
            when: not_before(wrap.when),
            ..*wrap
        });
        scenario.wraps = wraps.collect();
    }
    if !log.pit.is_empty() {
        for change in &mut scenario.pit {
            change.when = not_before(change.when);
        }
    }
    scenario
}

/// Where it came off by the clock the march knows nothing of the draw's demand.
fn tender_as_drawn(run: &mut MemberRun, prepared: &Prepared, tenderness: f64) {
    if prepared.scenario.cut.cut().demand.is_none() {
        return;
    }
    for sample in &mut run.samples {
        sample.tenderness /= tenderness;
    }
    run.tenderness_at_ready = run.tenderness_at_ready.map(|tender| tender / tenderness);
}
