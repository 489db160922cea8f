import { rngFromSeed } from '../../renderer/basics/chance.ts';
import { present } from '../../renderer/basics/invariant.ts';
import { EMPTY_BOOK, type Book, type Round } from '../../renderer/log/book.ts';
import { abilityFromDays, forecast } from '../../renderer/stats/ability.ts';
import { dayTallies } from '../../renderer/stats/dayTallies.ts';
import { forecastScore } from '../../renderer/stats/forecastScore.ts';
import { roundForecast } from '../../renderer/store/forecast.ts';
import { PLAIN, play } from './modelWorld.ts';
import type { Outcome } from './outcome.ts';

/*
 * The forecasts on a long record: six years, four visits a week, eight rounds a visit, every shot by itself. The rival
 * adds the whole record up for every forecast, as one would without thinking; both must say the same.
 */

const WEEKS = 313;
const FORECASTS = 60;

function longRecord(): Round[] {
  const { rounds } = play({ ...PLAIN, weeks: WEEKS, skillRise: 0.1, singly: true }, rngFromSeed(1));
  return rounds.map((round, at) => ({
    ...round,
    id: `round ${at}`,
    label: String((at % 8) + 1),
    startedAt: at,
  }));
}

/** The rival: what would be said before a round, from all rounds before it. */
function fromTheWholeRecord(rounds: readonly Round[], { condition, stops, date, startedAt }: Round) {
  const before = rounds.filter((round) => round.startedAt < startedAt);
  return forecast(abilityFromDays(dayTallies(before), condition, stops, date));
}

export function forecastOutcomes(): Outcome[] {
  const rounds = longRecord();
  const latest = rounds.slice(-FORECASTS);
  let score = forecastScore(rounds);
  const scoring = best(3, () => (score = forecastScore(rounds)));
  const rival = best(1, () => {
    for (const [at, round] of latest.entries()) {
      const { mean, range } = fromTheWholeRecord(rounds, round);
      const ours = present(score.rounds[at], 'a scored round');
      if (ours.mean !== mean || ours.low !== range.low || ours.high !== range.high) {
        throw new Error(`the two disagree on ${round.id}`);
      }
    }
  });
  const shots = rounds.reduce((sum, round) => sum + round.entries.length, 0);
  const record = `${rounds.length} rounds, ${shots} shots`;
  const last = present(rounds.at(-1), 'a round');
  return [
    {
      what: `Scoring ${FORECASTS} forecasts`,
      unit: 's',
      figure: scoring,
      rival: { what: 'the whole record each time', figure: rival },
      n: `best of 3; ${record}`,
      limit: { on: 'figure', most: 1, by: 'own' },
    },
    {
      what: 'Forecast on the set-up screen',
      unit: 's',
      figure: best(9, () => setUp(rounds, last)),
      rival: { what: 'the whole record', figure: best(3, () => fromTheWholeRecord(rounds, last)) },
      n: `best of 9; ${record}`,
      limit: { on: 'figure', most: 0.05, by: 'own' },
    },
  ];
}

/** With a book that was never asked before. */
function setUp(rounds: readonly Round[], { shooter, condition, stops, date }: Round): void {
  const book: Book = { ...EMPTY_BOOK, rounds: new Map(rounds.map((round) => [round.id, round])) };
  roundForecast(book, shooter, condition, stops, { at: Date.parse(date), zone: 0 });
}

/** The least seconds of some runs. */
function best(runs: number, work: () => unknown): number {
  let least = Infinity;
  for (let run = 0; run < runs; run += 1) {
    const start = performance.now();
    work();
    least = Math.min(least, (performance.now() - start) / 1000);
  }
  return least;
}
