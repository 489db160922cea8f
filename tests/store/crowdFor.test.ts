import { describe, expect, it } from 'vitest';

import { foldAll } from '../../renderer/log/fold.ts';
import { EMPTY_BOOK, type Book } from '../../renderer/log/book.ts';
import { crowdFor } from '../../renderer/store/crowdFor.ts';
import { solvedGame, standingOf } from '../../renderer/store/liveChance.ts';
import { onCourt, tap, type Diary } from '../log/diary.ts';
import { pressured } from '../tools/evening.ts';
import { fakeSound, type CrowdCall } from '../tools/fakeGym.ts';

const GAP = 6;
/** Make 3 of 4. */
const WATCHED = pressured({ crowd: true });

const openOf = (book: Book) => {
  if (!book.open) throw new Error('no round is open');
  return book.open;
};

/** Everything the crowd does while a round is told event by event, from the first `from` on. */
function told(diary: Diary, from: number): CrowdCall[] {
  const sound = fakeSound();
  const crowd = crowdFor(sound.crowd, (round) => solvedGame(diary.book(), round), GAP);
  for (let at = from; at < diary.events.length; at += 1) {
    const before = foldAll(EMPTY_BOOK, diary.events.slice(0, at));
    const [event] = diary.events.slice(at);
    if (event) crowd.hear(before, foldAll(before, [event]), [event]);
  }
  return sound.crowdCalls;
}
const answers = (calls: readonly CrowdCall[]) => calls.filter((call) => call.does === 'answer');
const swells = (calls: readonly CrowdCall[]) => calls.filter((call) => call.does === 'swell');

describe('the crowd', () => {
  it('cheers a make and groans at a miss', () => {
    const diary = onCourt(WATCHED);
    tap(diary, 'oxo');
    expect(answers(told(diary, 3)).map((call) => call.made)).toEqual([true, false, true]);
  });
  it('cheers a count when at least half of it went in', () => {
    const counted = (makes: number) => {
      const diary = onCourt({ ...WATCHED, entry: 'counts' });
      diary.write('StopCounted', { round: 'round 1', stop: 0, makes, attempts: 2 });
      return answers(told(diary, 3)).map((call) => call.made);
    };
    expect([0, 1, 2].map(counted)).toEqual([[false], [true], [true]]);
  });
  it('answers by what the shot was worth before it fell, and swells by what the next one is', () => {
    const diary = onCourt(WATCHED);
    const game = solvedGame(diary.book(), openOf(diary.book()));
    const weight = () => game && Math.min(1, 0.2 + 1.6 * standingOf(game, openOf(diary.book())).leverage);
    const worth = [weight()];
    for (const shot of 'oox') {
      tap(diary, shot);
      worth.push(weight());
    }
    const calls = told(diary, 3);
    expect(answers(calls).map((call) => call.weight)).toEqual(worth.slice(0, 3));
    expect(swells(calls).map((call) => [call.seconds, call.weight])).toEqual(
      worth.slice(1).map((value) => [GAP, value]),
    );
  });
  it('is as loud as it gets where all hangs on one shot, and quiet where nothing does', () => {
    const before = (shots: string) => {
      const diary = onCourt(WATCHED);
      tap(diary, shots);
      const sound = fakeSound();
      const crowd = crowdFor(sound.crowd, (round) => solvedGame(diary.book(), round), GAP);
      crowd.expect(openOf(diary.book()), diary.book());
      const [swell] = swells(sound.crowdCalls);
      return swell?.weight ?? Number.NaN;
    };
    // Two of three made: the last shot is the game.
    expect(before('oox')).toBe(1);
    // The mark is beaten, or out of reach.
    expect(before('ooo')).toBeCloseTo(0.2, 12);
    expect(before('xx')).toBeCloseTo(0.2, 12);
    expect(before('')).toBeGreaterThan(0.2);
    expect(before('')).toBeLessThan(1);
  });
  it('takes every shot alike where there is no mark', () => {
    const diary = onCourt(pressured({ crowd: true, mark: null }));
    tap(diary, 'ox');
    expect(told(diary, 3)).toEqual([
      { does: 'answer', made: true, weight: 0.4 },
      { does: 'swell', seconds: GAP, weight: 0.4 },
      { does: 'answer', made: false, weight: 0.4 },
      { does: 'swell', seconds: GAP, weight: 0.4 },
    ]);
  });
  it('answers the last shot and expects no other', () => {
    const diary = onCourt(WATCHED);
    tap(diary, 'ooo');
    const last = diary.events.length;
    diary.tap([
      { type: 'ShotTaken', body: { round: 'round 1', stop: 1, made: false, side: null } },
      { type: 'RoundEnded', body: { round: 'round 1', why: 'played-out', clockLeft: null } },
    ]);
    const sound = fakeSound();
    const before = foldAll(EMPTY_BOOK, diary.events.slice(0, last));
    const crowd = crowdFor(sound.crowd, (round) => solvedGame(before, round), GAP);
    crowd.hear(before, diary.book(), diary.events.slice(last));
    expect(sound.crowdCalls.map(({ does }) => does)).toEqual(['answer']);
  });
  it('is silent in a relaxed round, in one without a crowd, and about anything but shots', () => {
    for (const change of [{}, pressured({ crowd: false })]) {
      const diary = onCourt(change);
      tap(diary, 'ox');
      expect(told(diary, 3)).toEqual([]);
    }
    const diary = onCourt(WATCHED);
    const [shot] = tap(diary, 'o');
    diary.write('EntryRetracted', { round: 'round 1', entry: shot?.id ?? '' });
    diary.write('RoundPaused', { round: 'round 1', why: 'asked', clockLeft: null });
    expect(told(diary, 4)).toEqual([]);
  });
  it('does not swell for a round that is paused', () => {
    const diary = onCourt(WATCHED);
    diary.write('RoundPaused', { round: 'round 1', why: 'asked', clockLeft: null });
    const sound = fakeSound();
    crowdFor(sound.crowd, () => null, GAP).expect(openOf(diary.book()), diary.book());
    expect(sound.crowdCalls).toEqual([]);
  });
});
