import type { ForecastScore, ScoredMarks, ScoredRound } from '../../stats/forecastScore.ts';

/* How the forecasts came out, in words. */

/** The answer to “Do the forecasts keep their word?”. */
export function calibrationWords(score: ForecastScore): string {
  const { rounds, reading, inside } = score;
  const within = `${inside} of the latest ${rounds.length} rounds ended within their span, where about ${Math.round(score.expectedInside)} were to be expected`;
  switch (reading) {
    case 'too few':
      return tooFewWords(score);
    case 'fits':
      return `So far, yes: ${within}.${Math.round(score.expectedInside) === inside ? '' : ' Luck alone can make such a difference.'}`;
    case 'too sure':
      return `They are too sure of themselves: ${within}. Take their spans as a little wider than they are.`;
    case 'too careful':
      return `They are more careful than they need be: ${within}. You are steadier than they take you for.`;
    case 'too hopeful':
      return `They promise too much just now: ${sidesWords(rounds)}. Expect a little less than they say; they learn with every round.`;
    case 'too gloomy':
      return `They promise too little just now: ${sidesWords(rounds)}. Expect a little more than they say; they learn with every round.`;
  }
}

function sidesWords(rounds: readonly ScoredRound[]): string {
  const lower = rounds.filter(({ makes, mean }) => makes < mean).length;
  return `of the latest ${rounds.length} rounds ${lower} ended below the middle of their forecast and ${rounds.length - lower} above`;
}

function tooFewWords({ rounds, needs }: ForecastScore): string {
  if (rounds.length === 0) {
    return 'No round can be held against its forecast yet. Shoot a card to its end, and the first one can.';
  }
  const days = new Set(rounds.map(({ date }) => date)).size;
  return `Too early to say: there ${rounds.length === 1 ? 'is' : 'are'} ${countOf(rounds.length)} on ${days} ${days === 1 ? 'day' : 'days'} so far. ${missingWords(needs)}, and one can tell.`;
}

function missingWords({ rounds, days }: ForecastScore['needs']): string {
  const played = 'shot to the end of the card';
  if (days >= rounds) {
    return days === 1 ? `One more day with a round ${played}` : `Another ${days} days with a round ${played}`;
  }
  const more = rounds === 1 ? `One more round ${played}` : `Another ${rounds} rounds ${played}`;
  return days === 0 ? more : `${more}, ${days} of them on other days`;
}

/** Whether the forecasts are any better than what anyone could say; null before that can be told. */
export function plainGuessWords({ plain, reading }: ForecastScore): string | null {
  if (!plain || reading === 'too few') return null;
  const figures = `they are off by ${plain.ours.toFixed(1)} makes a round, the guess by ${plain.rival.toFixed(1)}, with how sure each was counted in`;
  switch (plain.reading) {
    case 'better':
      return `Beside a plain guess from your percentage alone they do better: ${figures}.`;
    case 'alike':
      return `Beside a plain guess from your percentage alone they do about as well: ${figures}.`;
    case 'worse':
      return `A plain guess from your percentage alone does better just now: ${figures}.`;
  }
}

/** Rounds that no forecast can be held against; null where there are none. */
export function leftOutWords({ leftOut }: ForecastScore): string | null {
  if (leftOut === 0) return null;
  return `${countOf(leftOut)} of that time ${leftOut === 1 ? 'is' : 'are'} left out, since the card was not shot to its end.`;
}

/** Fewer marks, or games, say nothing. Our own choice. */
const FEW = 5;

/** Chances said and kept, of marks or of games; null without one. */
export function marksWords(classes: readonly ScoredMarks[], what: 'mark' | 'game' = 'mark'): string | null {
  const marks = sum(classes.map((one) => one.marks));
  if (marks === 0) return null;
  if (marks < FEW)
    return `${marks === 1 ? `One ${what}` : `${marks} ${what}s`} so far: too few to tell whether their chances were right.`;
  const beaten = sum(classes.map((one) => one.beaten));
  const expected = Math.round(sum(classes.map((one) => one.said * one.marks)));
  return `Of ${marks} ${what}s you ${what === 'mark' ? 'beat' : 'won'} ${beaten}. By the chances said before, about ${expected} were to be expected.`;
}

/** `within`, `2 below`, `1 above`. */
export function placeWords({ makes, low, high }: Pick<ScoredRound, 'makes' | 'low' | 'high'>): string {
  if (makes < low) return `${low - makes} below`;
  return makes > high ? `${makes - high} above` : 'within';
}

function countOf(rounds: number): string {
  return `${rounds} ${rounds === 1 ? 'round' : 'rounds'}`;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
