import { createStore, type StoreApi } from 'zustand/vanilla';

import type { RoundId, ShooterId } from '../basics/ids.ts';
import type { Probability } from '../basics/units.ts';
import { othersIn, sharesGame } from '../games/gameOn.ts';
import type { KeptMix, Round } from '../log/book.ts';
import type { ForecastScore } from '../stats/forecastScore.ts';
import type { Change } from '../stats/model/chokeIndex.ts';
import type { Spreads } from '../stats/model/priors.ts';
import { relaxedMix } from '../stats/relaxedMix.ts';
import type { Study } from '../stats/study.ts';
import type { StudyOf } from '../stats/studyAsk.ts';
import type { Gym } from './gymStore.ts';
import { keptSpreads, keepSpreads } from './keptSpreads.ts';
import type { Fitting } from './ports.ts';
import { recordOf } from './recordOf.ts';
import type { Shelf } from './settings.ts';
import type { WhatHangs } from './whatHangs.ts';

export type { Study } from '../stats/study.ts';

/** Which shots the drop is worked out for: the shooter's own mix, or free throws alone. */
export type MixWish = 'own' | 'free-throws';

/** What is known about the drop of the shooter at the bench. */
export interface StudyState {
  readonly shooter: ShooterId | null;
  readonly mix: MixWish;
  /** The last answer; it may lie a round behind. Null before the first. */
  readonly study: Study | null;
  /** Share of a study that is under way; null when nothing is. */
  readonly working: Probability | null;
  readonly forecasts: ForecastScore | null;
  readonly hangs: WhatHangs | null;
  /** The model could not be run on this device; the simple numbers still stand. */
  readonly broken: boolean;
}

/** Keeps the study of the shooter at the bench up to date. */
export interface StudyRoom {
  readonly store: StoreApi<StudyState>;
  choose(mix: MixWish): void;
  /** From one week to another, named as ISO 8601 does. */
  changeBetween(from: string, to: string): Promise<Change | null>;
  /** Works the drop out for the mix of all relaxed shots so far, under pressure as it was usually met, from now on. Resolves false where it was not saved. */
  keepMixOfToday(): Promise<boolean>;
}

/** Calls back once the device has had nothing to do for a moment; returns the way to call it off. */
export type WhenIdle = (wake: () => void) => () => void;

const NOTHING = { study: null, working: null, forecasts: null, hangs: null } as const;

/**
 * After a round a quick study at the spreads learnt before; once the device is idle and no round is open, a thorough
 * one that learns them anew. Whatever is asked later overtakes what was asked before.
 */
export function createStudyRoom(gym: Gym, fitting: Fitting, shelf: Shelf, whenIdle: WhenIdle): StudyRoom {
  const store = createStore<StudyState>(() => ({ shooter: null, mix: 'own', broken: false, ...NOTHING }));
  /** What the worker was told, by shooter. */
  const told = new Map<ShooterId, Map<RoundId, Round>>();
  let callOff = (): void => undefined;
  /** Counts what was asked; an answer to anything but the latest is thrown away. */
  let asked = 0;
  /** Shooters whose first mix is on its way to the log. */
  const keeping = new Set<ShooterId>();

  function roundsOf(shooter: ShooterId): Round[] {
    return recordOf(gym.store.getState().book, shooter);
  }

  /** @returns whether anything was new */
  function tell(shooter: ShooterId): boolean {
    const before = told.get(shooter) ?? new Map<RoundId, Round>();
    const now = new Map(roundsOf(shooter).map((round) => [round.id, round]));
    const changed = [...now.values()].filter((round) => before.get(round.id) !== round);
    const gone = [...before.keys()].filter((id) => !now.has(id));
    told.set(shooter, now);
    if (changed.length + gone.length === 0) return false;
    fitting.tell(shooter, changed, gone);
    return true;
  }

  /** What hung on a shot of a duel rests on the other's record too. */
  function tellRivals(shooter: ShooterId): void {
    const { book } = gym.store.getState();
    const duels = roundsOf(shooter).filter(sharesGame);
    const rivals = new Set(duels.flatMap((round) => othersIn(book, round).map((other) => other.shooter)));
    for (const rival of rivals) tell(rival);
  }

  /** What the drop of this shooter is asked for. */
  function askFor(shooter: ShooterId): StudyOf {
    const kept = gym.store.getState().book.mixes.get(shooter);
    const mix = store.getState().mix === 'free-throws' ? 'free-throws' : (kept?.mix ?? 'relaxed');
    return { shooter, mix, pressure: kept?.pressure ?? null };
  }

  async function study(shooter: ShooterId, hyper: Spreads | null): Promise<void> {
    asked += 1;
    const number = asked;
    store.setState({ working: 0 });
    try {
      const answer = await fitting.study({ ...askFor(shooter), hyper }, (share) => {
        if (number === asked) store.setState({ working: share });
      });
      if (answer === null || number !== asked) return;
      store.setState(({ study: before }) => ({
        study: hyper === null ? answer : withSides(answer, before),
        working: null,
        broken: false,
      }));
      if (hyper === null && answer.index.kind === 'index') {
        keepSpreads(shelf, shooter, answer.index.hyper.mean);
      }
      await keepFirstMix(shooter, answer);
      // Keeping the mix asks anew.
      if (number !== asked) return;
      if (hyper !== null) {
        thoroughWhenIdle(shooter);
        return;
      }
      const forecasts = await fitting.forecasts(shooter);
      if (forecasts === null || number !== asked) return;
      store.setState({ forecasts });
      const hangs = await fitting.hangs(shooter);
      if (hangs !== null && number === asked) store.setState({ hangs });
    } catch {
      if (number === asked) store.setState({ working: null, broken: true });
    }
  }

  /** From the first verdict on mix and pressure stay, so that the drop cannot move without the shooter. */
  async function keepFirstMix(shooter: ShooterId, { verdict, index }: Study): Promise<void> {
    const kept = gym.store.getState().book.mixes.get(shooter);
    if (verdict.kind === 'none' || kept?.pressure || keeping.has(shooter)) return;
    if (store.getState().mix !== 'own') return;
    keeping.add(shooter);
    await keepMix(shooter, kept?.mix ?? relaxedMix(roundsOf(shooter)), index);
    keeping.delete(shooter);
  }

  function keepMix(shooter: ShooterId, mix: KeptMix['mix'], index?: Study['index']): Promise<boolean> {
    const pressure = index?.kind === 'index' ? { pressure: index.usual } : {};
    return gym.dispatch([{ type: 'MixKept', body: { shooter, mix, ...pressure } }]);
  }

  function thoroughWhenIdle(shooter: ShooterId): void {
    callOff();
    if (gym.store.getState().book.open === null) callOff = whenIdle(() => void study(shooter, null));
  }

  function refresh(): void {
    const { log, book, settings } = gym.store.getState();
    const { shooter } = settings;
    if (log.is !== 'ready') return;
    if (shooter === null || book.removedShooters.has(shooter)) {
      leaveOff();
      store.setState({ shooter: null, ...NOTHING });
      return;
    }
    const another = store.getState().shooter !== shooter;
    if (another) store.setState({ shooter, ...NOTHING });
    if (!tell(shooter) && !another) return;
    tellRivals(shooter);
    again(shooter);
  }

  /** Quickly, where spreads are kept. A thorough one is not begun beside a round that is being played. */
  function again(shooter: ShooterId): void {
    callOff();
    const hyper = keptSpreads(shelf, shooter);
    if (hyper !== null || gym.store.getState().book.open === null) void study(shooter, hyper);
    else leaveOff();
  }

  /** Whatever is asked or planned comes to nothing. */
  function leaveOff(): void {
    callOff();
    asked += 1;
    fitting.rest();
    store.setState({ working: null });
  }

  gym.store.subscribe((state, before) => {
    const open = state.book.open !== null;
    // A tap changes the open round; only its coming and going matters here.
    if (open !== (before.book.open !== null)) openOrOver(open);
    const moved =
      state.log !== before.log ||
      state.book.rounds !== before.book.rounds ||
      state.book.removedShooters !== before.book.removedShooters ||
      state.settings.shooter !== before.settings.shooter;
    if (moved) refresh();
    const { shooter } = store.getState();
    if (shooter === null || moved) return;
    if (state.book.mixes.get(shooter) !== before.book.mixes.get(shooter)) again(shooter);
  });
  refresh();

  /** A round has the device to itself. */
  function openOrOver(open: boolean): void {
    const { shooter } = store.getState();
    if (shooter === null) return;
    if (open) leaveOff();
    else thoroughWhenIdle(shooter);
  }

  return {
    store,
    choose: (mix) => {
      const { shooter, mix: old } = store.getState();
      if (mix === old) return;
      // The side figures were worked out for the other mix.
      store.setState(({ study: before }) => ({
        mix,
        study: before && { ...before, felt: { ...before.felt, dropWithout: null } },
      }));
      if (shooter !== null) again(shooter);
    },
    changeBetween: (from, to) => {
      const { shooter } = store.getState();
      return shooter === null ? Promise.resolve(null) : fitting.change({ ...askFor(shooter), from, to });
    },
    keepMixOfToday: () => {
      const { shooter, study: latest } = store.getState();
      return shooter === null
        ? Promise.resolve(false)
        : keepMix(shooter, relaxedMix(roundsOf(shooter)), latest?.index);
    },
  };
}

/** What a quick study leaves out stays as it was, until the thorough one a moment later. */
function withSides(quick: Study, before: Study | null): Study {
  if (!before) return quick;
  const { dayEvidence, felt, index } = before;
  const sides = { dayEvidence, felt: { ...quick.felt, dropWithout: felt.dropWithout } };
  if (quick.index.kind === 'none' || index.kind === 'none') return { ...quick, ...sides };
  // How far the spreads may be off is learnt by the thorough one alone.
  const hyper = { ...quick.index.hyper, sd: index.hyper.sd };
  return { ...quick, ...sides, index: { ...quick.index, hyper } };
}
