import { FEW_SHOTS } from '../charts/fewShots.ts';
import { LIKELY } from '../store/fixedNumbers.ts';
import type { Figures } from '../store/figures.ts';
import type { Study } from '../store/study.ts';
import { countWords, endWords, percent, pointsWords, withPoints } from './numberWords.ts';
import { atTheLine, indexToTell, noIndexWords, type Index } from './studyParts.ts';

/** How things stand, in words a tired shooter reads at a glance. */
export interface StudyWords {
  /** The one sentence. */
  readonly headline: string;
  /** What goes with it, one short sentence each. */
  readonly more: readonly string[];
}

type Shown = Pick<Figures, 'relaxed' | 'pressured' | 'drop' | 'needs' | 'evidence' | 'leftOut' | 'spots'>;

/** Says once what the two ends of every span on these screens mean. */
export const SPAN_WORDS =
  'Every span here is drawn so that nine times in ten it holds the truth. A point is one make in a hundred shots; figures are rounded each by itself.';

/**
 * The plain sentence and what goes with it.
 *
 * @param figures the simple counts
 * @param study what the model says; null before its first answer
 * @param broken the model could not be run on this device
 */
export function studyWords(figures: Shown, study: Study | null, broken = false): StudyWords {
  const { relaxed, pressured, drop } = figures;
  if (relaxed.attempts === 0 && pressured.attempts === 0) {
    return {
      headline: 'No rounds yet.',
      more: ['Start with a pair: the same card once relaxed and once under pressure.'],
    };
  }
  if (relaxed.attempts === 0 || pressured.attempts === 0) return oneSided(figures);
  if (!drop) {
    return {
      headline: 'Nothing to compare yet.',
      more: [
        'Your relaxed and your pressured shots came from different spots.',
        'Shoot the same card both ways; a pair does just that.',
      ],
    };
  }
  const needs = needsOf(figures, study);
  if (needs) return tooEarly(figures, needs, study);
  const index = indexToTell(study);
  if (study && index) return verdictWords(figures, study, index);
  if (study?.index.kind === 'none') {
    return { headline: 'No drop can be told yet.', more: noIndexWords(study.index) };
  }
  return { headline: ratesSoFar(figures), more: broken ? simply(figures) : [STILL_WORKING] };
}

const STILL_WORKING = 'What that says about pressure is being worked out.';

/** What is missing for a first verdict; null where nothing is. */
function needsOf({ needs: soFar }: Shown, study: Study | null): Figures['needs'] | null {
  if (study && study.verdict.kind !== 'none') return null;
  const needs = study?.verdict.kind === 'none' ? study.verdict.needs : soFar;
  return needs.pressured > 0 || needs.sessions > 0 ? needs : null;
}

function oneSided({ relaxed, pressured }: Shown): StudyWords {
  const [condition, other] =
    pressured.attempts === 0 ? (['relaxed', 'under pressure'] as const) : (['pressured', 'relaxed'] as const);
  const { makes, attempts } = condition === 'relaxed' ? relaxed : pressured;
  return {
    headline: `${makes} of ${attempts} ${condition} so far.`,
    more: [`Shoot the same card ${other}, and the two can be compared.`],
  };
}

function tooEarly(figures: Shown, needs: Figures['needs'], study: Study | null): StudyWords {
  const line = study?.index.kind === 'index' && atTheLine(study.index);
  const { relaxed, pressured } = line ? study.have : figures;
  const { sessions } = study?.have ?? figures.evidence;
  const both =
    sessions === 0
      ? 'never both in one session'
      : `both in only ${sessions} ${sessions === 1 ? 'session' : 'sessions'}`;
  const but =
    needs.pressured > 0
      ? 'but with so few shots the difference could be luck.'
      : `but ${both}, and one good or bad day must not decide.`;
  const aside = figures.leftOut.pressured > 0;
  return {
    headline: `Too early to say${line ? ' for free throws alone' : ''}.`,
    more: [
      `So far ${rateWords(relaxed)} relaxed and ${rateWords(pressured)} pressured, ${but}`,
      missingWords(needs),
      ...(aside ? ['Only shots from places you also shoot relaxed count for it.'] : []),
      ...gapWords(study),
    ],
  };
}

function missingWords({ pressured, sessions }: Figures['needs']): string {
  const missing = [
    pressured > 0 ? `${pressured} more pressured ${pressured === 1 ? 'shot' : 'shots'}` : '',
    sessions > 0
      ? `${sessions} more ${sessions === 1 ? 'session' : 'sessions'} with both kinds of round`
      : '',
  ].filter((part) => part !== '');
  return `${missing.join(' and ')}, and a first verdict is due.`;
}

/** What stands in the way of an index besides the number of shots. */
function gapWords(study: Study | null): string[] {
  if (study?.index.kind !== 'none') return [];
  const { reason } = study.index;
  // A study that lags a round behind may not know of the first rounds.
  return reason === 'no relaxed shot' || reason === 'no pressured shot' ? [] : noIndexWords(study.index);
}

function verdictWords(figures: Shown, study: Study, index: Index): StudyWords {
  const { points, low, high } = index.overall;
  const line = atTheLine(index) && figures.spots.length > 1;
  const when = `${spanWords(index)}${line ? ', at the free-throw line' : ''}, you`;
  const { verdict } = study;
  switch (verdict.kind) {
    case 'drop':
      return {
        headline:
          points < 0.5
            ? 'Your coin-ordered pairs show a drop under pressure; all rounds together show next to none.'
            : `${when} lost about ${pointsWords(points)} under pressure, ${between(low, high, 'better', 'worse')}.`,
        more: [sureWords(study, index), ...goingWith(study, index)],
      };
    case 'gain':
      return {
        headline: `${when} made about ${pointsWords(-points)} more under pressure, ${between(-high, -low, 'worse', 'better')}.`,
        more: [sureWords(study, index), ...goingWith(study, index)],
      };
    case 'same':
      return {
        headline: `About the same${line ? ' at the free-throw line' : ''}, relaxed or under pressure.`,
        more: [`The difference lies ${fromTo(low, high)}.`, ...goingWith(study, index)],
      };
    case 'none':
    case 'unclear':
      return {
        headline: `No difference${line ? ' at the free-throw line' : ''} that can be told from luck.`,
        more: [
          `It could be anything ${fromTo(low, high)}. More rounds of both kinds make that narrower.`,
          ...goingWith(study, index),
        ],
      };
  }
}

function sureWords({ verdict }: Study, { overall }: Index): string {
  if (verdict.kind !== 'drop' && verdict.kind !== 'gain') return '';
  if (verdict.sure === 'likely') return 'That is likely, not yet sure.';
  const chance = verdict.kind === 'drop' ? overall.probability : 1 - overall.probability;
  return chance > LIKELY ? 'That is quite sure.' : 'Your coin-ordered pairs have made that quite sure.';
}

/** Warnings and movement, in the order in which they matter. */
function goingWith({ disagrees, pairs, felt }: Study, { overall, change, weeks, pulled }: Index): string[] {
  const words: string[] = [];
  if (disagrees && pairs.mean !== null) {
    words.push(
      `Your coin-ordered pairs by themselves say ${pointsWords(pairs.mean)} and not ${pointsWords(overall.points)}: trust the pairs.`,
    );
  }
  words.push(...byNow(weeks, change));
  if (unfeltMostly(felt)) {
    words.push(
      `In ${felt.unfelt.rounds.length} of ${felt.unfelt.rounds.length + felt.felt.rounds.length} pressured rounds your nerves did not rise, so this says little about pressure yet. Make it count for more.`,
    );
  }
  if (pulled !== null) words.push(pulled);
  return words;
}

/** `In these 10 weeks` */
function spanWords({ weeks }: Index): string {
  return weeks.length === 1 ? 'In this one week' : `Over these ${weeks.length} weeks`;
}

/** Where the latest week stands, once the way there can be told from luck. */
function byNow(weeks: Index['weeks'], change: Index['change']): string[] {
  const last = weeks.at(-1);
  const sure = change !== null && (change.probability < 1 - LIKELY || change.probability > LIKELY);
  if (!last || !sure) return [];
  const [less, low, high] =
    change.points < 0 ? ['less', -change.high, -change.low] : ['more', change.low, change.high];
  const [from, to] = endWords(low, high);
  const now = Math.round(last.points);
  const stands =
    now >= 0
      ? `it costs you about ${pointsWords(now)}, ${between(last.low, last.high, 'better', 'worse')}`
      : `you make about ${pointsWords(-now)} more under it, ${between(-last.high, -last.low, 'worse', 'better')}`;
  return [`By the latest week ${stands}. That is ${from} to ${withPoints(to)} ${less} than in the first.`];
}

/** Whether pressure did not arrive in at least half of the rounds that can tell. */
function unfeltMostly({ felt, unfelt }: Study['felt']): boolean {
  return unfelt.rounds.length > 0 && unfelt.rounds.length >= felt.rounds.length;
}

function ratesSoFar({ relaxed, pressured }: Shown): string {
  return `${rateWords(relaxed)} relaxed, ${rateWords(pressured)} pressured so far.`;
}

/** What can be said without the model. */
function simply({ drop }: Shown): string[] {
  if (!drop) return [];
  const { points, low, high } = drop;
  const size =
    Math.round(points) < 0
      ? `${pointsWords(-points)} more under pressure`
      : `${pointsWords(points)} fewer under pressure`;
  return [
    'The full working-out did not run on this device; this is the simple comparison, spot by spot.',
    `It says about ${size}, and anything ${fromTo(low, high)} would fit. Tiring and good and bad days are not reckoned with.`,
  ];
}

function rateWords(tally: Study['have']['relaxed']): string {
  return tally.attempts < FEW_SHOTS ? countWords(tally) : percent(tally);
}

/** `somewhere between 2 and 10`; where an end lies beyond 0, `from 1 point better to 9 points worse`. */
function between(low: number, high: number, below: string, above: string): string {
  if (Math.round(low) < 0)
    return `anything from ${pointsWords(-low)} ${below} to ${pointsWords(high)} ${above}`;
  const [from, to] = endWords(low, high);
  return `somewhere between ${Math.round(low) === 0 ? 'just above 0' : from} and ${to}`;
}

/** `from 2 points better to 9 points worse under pressure` */
function fromTo(low: number, high: number): string {
  if (Math.round(low) >= 0) {
    const [from, to] = endWords(low, high);
    return `from ${from} to ${withPoints(to)} worse under pressure`;
  }
  if (Math.round(high) <= 0) {
    const [from, to] = endWords(-high, -low);
    return `from ${from} to ${withPoints(to)} better under pressure`;
  }
  return `from ${pointsWords(-low)} better to ${pointsWords(high)} worse under pressure`;
}
