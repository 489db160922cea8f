import { describe, expect, it } from 'vitest';

import { present } from '../../renderer/basics/invariant.ts';
import { STANDARD_CARDS } from '../../renderer/court/cards.ts';
import { demoSeason } from '../../renderer/games/demoSeason.ts';
import { gameFault } from '../../renderer/games/gameFault.ts';
import { EMPTY_BOOK } from '../../renderer/log/book.ts';
import { foldAll } from '../../renderer/log/fold.ts';
import { roundTally } from '../../renderer/log/roundCells.ts';
import { gamePrices } from '../../renderer/store/gamePrices.ts';
import {
  averageRate,
  earlierRounds,
  readRival,
  soloDuel,
  writeRival,
  type Rival,
} from '../../renderer/store/soloDuels.ts';
import { gameSetup, shoot } from '../games/onCourt.ts';
import { onCourt, tap, type Diary } from '../log/diary.ts';

const NOW = { at: Date.parse('2026-11-25T18:00Z'), zone: 60 };
const season = foldAll(EMPTY_BOOK, demoSeason('2026-11-25', 60, 'device', 1));
const [ines = ''] = season.shooters.keys();
const CARD = present(
  STANDARD_CARDS.find(({ id }) => id === 'free-throws-20'),
  'twenty free throws',
);

function shot(change: Parameters<typeof onCourt>[0], shots: string): Diary {
  const log = onCourt(change);
  tap(log, shots);
  log.write('RoundEnded', {
    round: 'round 1',
    why: shots.length === 4 ? 'played-out' : 'stopped',
    clockLeft: null,
  });
  return log;
}

describe('an earlier round to play against', () => {
  it('is one that was tapped shot by shot to the end of its card', () => {
    const log = shot({}, 'oxoo');
    expect(earlierRounds(log.book(), 'ines')).toMatchObject([{ makes: 3, shots: 4 }]);
    expect(earlierRounds(log.book(), 'tobi')).toEqual([]);
    expect(earlierRounds(shot({}, 'oxo').book(), 'ines')).toEqual([]);
  });
  it('is none that was counted, or came from a file', () => {
    const counted = onCourt({ entry: 'counts' });
    for (const stop of [0, 1]) {
      counted.write('StopCounted', { round: 'round 1', stop, makes: 1, attempts: 2 });
    }
    counted.write('RoundEnded', { round: 'round 1', why: 'played-out', clockLeft: null });
    counted.write('RoundImported', {
      round: 'paper',
      shooter: 'ines',
      date: '2026-11-25',
      session: '1',
      label: '1',
      condition: 'relaxed',
      game: '',
      cells: [{ spot: 'top', shot: 'catch', makes: 1, attempts: 2 }],
      first: null,
      nerves: null,
      note: '',
    });
    expect(earlierRounds(counted.book(), 'ines')).toEqual([]);
  });
  it('is none in which makes and misses decided where the next shot was', () => {
    const plan = { family: 'lives', needed: 5, lives: 3 } as const;
    const log = onCourt(gameSetup(plan));
    for (let at = 0; log.book().open; at += 1) shoot(log, true);
    expect(log.book().rounds.get('round 1')?.entries).toHaveLength(5);
    expect(earlierRounds(log.book(), 'ines')).toEqual([]);
  });
  it('counts a turn the clock took as a miss', () => {
    const log = onCourt();
    tap(log, 'oo');
    log.write('TurnExpired', { round: 'round 1', stop: 1 });
    log.write('ShotTaken', { round: 'round 1', stop: 1, made: true, side: null });
    log.write('RoundEnded', { round: 'round 1', why: 'played-out', clockLeft: null });
    expect(soloDuel(log.book(), 'ines', { kind: 'round', round: 'round 1' })?.plan).toMatchObject({
      against: { kind: 'own round', round: 'round 1', made: [true, true, false, true] },
    });
  });
  it('of a season comes newest first, a month of them at most', () => {
    const rounds = earlierRounds(season, ines);
    expect(rounds).toHaveLength(30);
    const dates = rounds.map(({ round }) => round.date);
    expect(dates).toEqual(dates.toSorted().toReversed());
  });
});

describe('a duel with nobody on court', () => {
  it('carries the earlier round whole, and goes on where that is removed from the screens', () => {
    const [earlier] = earlierRounds(season, ines);
    const { round, makes } = present(earlier, 'an earlier round');
    const game = present(soloDuel(season, ines, { kind: 'round', round: round.id }), 'a duel');
    expect(game).toMatchObject({ stops: round.stops, clock: null, own: false });
    const { plan } = game;
    expect(plan.family === 'duel' && plan.against.kind === 'own round' && plan.against.made).toEqual(
      round.entries.map((entry) => entry.kind === 'shot' && entry.made),
    );
    expect(gameFault(plan, game.stops)).toBeNull();
    // The earlier round is known, so its makes have to be beaten outright.
    expect(roundTally(round).makes).toBe(makes);
    expect(gamePrices(season, ines, NOW).price(game).chance).toBeGreaterThan(0);
  });
  it('is against nobody else’s round', () => {
    const [earlier] = earlierRounds(season, ines);
    const rival = { kind: 'round', round: present(earlier, 'a round').round.id } as const;
    expect(soloDuel(season, 'somebody', rival)).toBeNull();
    expect(soloDuel(season, ines, { kind: 'round', round: 'gone' })).toBeNull();
  });
  it('is about even against one as good as oneself on an average day', () => {
    const rate = averageRate(season, ines, CARD.stops, NOW);
    const game = present(soloDuel(season, ines, { kind: 'rate', rate, card: CARD.id }), 'a duel');
    const { chance } = gamePrices(season, ines, NOW).price(game);
    // Level ends are nobody's, and the rate stands in whole hundredths.
    expect(Math.abs(chance - 0.5)).toBeLessThan(0.06);
  });
  it('is on a card that is there', () => {
    expect(soloDuel(season, ines, { kind: 'rate', rate: 0.5, card: 'gone' })).toBeNull();
  });
});

describe('an opponent in an address', () => {
  it.each<Rival>([
    { kind: 'round', round: '017f22e2-79b0-7cc3-98c4-dc0c0c07398f' },
    { kind: 'rate', rate: 0.07, card: 'free-throws-10' },
    { kind: 'rate', rate: 1, card: 'x' },
  ])('is read as it was written: %j', (rival) => {
    expect(readRival(writeRival(rival))).toEqual(rival);
  });
  it.each(['', 'round', 'round a b', 'rate x y', 'rate 101 card', 'rate -1 card', 'duel', '{}'])(
    '%j is nobody',
    (text) => {
      expect(readRival(text)).toBeNull();
    },
  );
});
