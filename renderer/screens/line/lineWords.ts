import { stepsUp, type Brake, type Rung } from '../../pressure/ladder.ts';
import { MOST_DOUBLES, timesOwed, type Doubles } from '../../pressure/stakes.ts';
import type { Line, Refusal } from '../../store/line.ts';

/* The consequence ladder and its brakes in words. */

/** What a rung is called. */
export const RUNG_WORDS: Readonly<Record<Rung, string>> = {
  logged: 'It goes on your record',
  watched: 'Someone watches',
  filmed: 'A friend films it',
  judged: 'Someone judges it',
  forfeit: 'Something is on the line',
};

const BRAKE_WORDS: Readonly<Record<Brake, string>> = {
  sore: 'you are sore',
  ill: 'you are ill',
  unslept: 'you slept badly',
};

/** `you are sore`, `you are sore and slept badly`, `you are sore, ill and slept badly` */
export function brakeWords(brakes: readonly Brake[]): string {
  const [first, ...more] = brakes.map((brake) => BRAKE_WORDS[brake]);
  const rest = more.map((words) => words.replace(/^you are /, '').replace(/^you /, ''));
  const last = rest.pop();
  if (last === undefined) return first ?? '';
  return `${[first, ...rest].join(', ')} and ${last}`;
}

const quoted = (rung: Rung): string => `“${RUNG_WORDS[rung]}”`;

/** What the app suggests, and why. */
export function suggestionWords({ standing, suggestion, brakes }: Line): string {
  if (standing === null) {
    return 'You have no pressured session yet. The app would begin on the lowest rung; begin where you like, but small.';
  }
  const { rung, move, heldBack } = suggestion;
  if (heldBack) return `A step up was due. Not today: ${brakeWords(brakes)}. Stay on ${quoted(rung)}.`;
  if (move === 'up') {
    return `In two sessions on ${quoted(standing.rung)} your nerves rose and the shot held. One step up is due: ${quoted(rung)}.`;
  }
  if (move === 'down') return `Last time was too much. One step down: ${quoted(rung)}.`;
  if (standing.hurt) {
    return 'Last time was too much, and there is no lower rung. A relaxed round does more good today.';
  }
  if (rung === 'forfeit') return 'You stand on the highest rung. It goes no further.';
  return standing.good === 1
    ? 'In one session on this rung your nerves rose and the shot held. After another one a step up is due.'
    : 'Stay on this rung until your nerves have risen and the shot has held in two sessions.';
}

/** Said where a round goes up further than by one step; null elsewhere. */
export function bigStepWords({ standing }: Line, rung: Rung): string | null {
  const steps = standing === null ? 0 : stepsUp(standing.rung, rung);
  return steps < 2
    ? null
    : `That is ${steps} steps above last time. One at a time shows you what each of them does; it is up to you.`;
}

export const NOT_MONEY = 'Not money. What about the washing-up?';

/** Why a round is not started, and what to do. */
export function refusalWords(refusal: Refusal, line: Line): string {
  switch (refusal) {
    case 'unasked':
      return 'Please say first how your body is today, at the top of this page.';
    case 'money':
      return NOT_MONEY;
    case 'age':
      return 'Under 18 there are no stakes but a small favour that an adult has allowed. Please take this one off.';
    case 'brake':
      return `No step up today: ${brakeWords(line.brakes)}. ${quoted(line.highest)} is as far as it goes.`;
    case 'guardian':
      return 'A video of someone under 18 needs the word of a parent or guardian first.';
    case 'double today':
      return `No double or nothing today: ${brakeWords(line.brakes)}. The debt stays as it is.`;
    case 'double what':
      return 'Double or nothing needs a mark to beat.';
    case 'double no more':
      return `This debt is settled, or was doubled ${MOST_DOUBLES} times already.`;
  }
}

/** `2 times`, for a debt that grew; empty for one that did not. */
export function timesWords(times: number): string {
  return times === 1 ? '' : `${times} times`;
}

/** Said on court before the first shot. */
export function onTheLineWords(stake: string, doubles: Doubles | null): string {
  return doubles === null
    ? `On the line: ${stake}`
    : `Double or nothing: ${stake}, ${timesWords(timesOwed(doubles.times))} or not at all`;
}
