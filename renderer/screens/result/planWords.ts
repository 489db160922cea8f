import type { SeenHabit } from '../../stats/habit.ts';
import type { Hindsight } from '../../stats/hindsight.ts';
import type { PlanRow, PlanTable } from '../../stats/planTable.ts';
import type { Study } from '../../store/study.ts';
import { dayWords } from '../dayWords.ts';
import { LEAST_SESSIONS, SURE_ENOUGH } from '../../store/fixedNumbers.ts';
import { pointsWords } from '../numberWords.ts';

/* What to do next, in plain words. */

type Aim = PlanTable['aims'][number];

/** The order of the rounds, in words. */
export const ORDER_WORDS: Readonly<Record<PlanRow['order'], string>> = {
  pairs: 'In pairs, order by coin',
  last: 'Pressure last each time',
  'own-day': 'Pressure on its own day',
};

/** Why an order is not to be advised. */
export const CAUTION_WORDS: Readonly<Record<NonNullable<PlanRow['caution']>, string>> = {
  tiring: 'Not advised: tired legs would pass for pressure.',
  'never both': 'Not advised: a good or a bad day would pass for pressure.',
};

/** What the verdict asks for, before any counting of shots. */
export function adviceWords({ verdict, index, felt }: Pick<Study, 'verdict' | 'index' | 'felt'>): string[] {
  const rated = felt.unfelt.rounds.length + felt.felt.rounds.length;
  if (verdict.kind !== 'drop' && rated > 0 && 2 * felt.unfelt.rounds.length >= rated) {
    return [
      'Pressure hardly arrived so far: your nerves seldom rose. Raise it a step: someone watching, a harder mark, something small on the line.',
    ];
  }
  switch (verdict.kind) {
    case 'none':
      return ['Shoot pairs: the same card relaxed and under pressure, the order by coin.'];
    case 'unclear':
      return ['Go on with pairs. Until more is known, neither worry nor celebrate.'];
    case 'same':
      return [
        'Pressure of this kind takes next to nothing from you. Raise it a step: another ingredient, a harder mark.',
      ];
    case 'gain':
      return ['You like it when it counts. Raise the pressure a step, and see whether that holds.'];
    case 'drop': {
      const worst = index.kind === 'index' ? dearest(index.groups) : null;
      return [
        'Practise under pressure, a little at a time: in 14 studies, 10 of them in sport, such practice helped people do better under pressure (Low and others, 2021).',
        ...(worst
          ? [
              `It costs you most ${GROUP_PLACES[worst.group]}, about ${pointsWords(worst.points)}; begin there.`,
            ]
          : []),
      ];
    }
  }
}

const GROUP_PLACES: Readonly<Record<Group['group'], string>> = {
  threes: 'behind the arc',
  'mid-range': 'from mid-range',
  'free-throws': 'at the free-throw line',
  own: 'from your own spots',
};

type Group = Extract<Study['index'], { kind: 'index' }>['groups'][number];

/** The dearest of several groups, where it can be told from luck that it is. */
function dearest(groups: readonly Group[]): Group | null {
  return groups.length < 2 ? null : (groups.find((group) => group.dearest > SURE_ENOUGH) ?? null);
}

/** What it takes until a drop of this size would show. */
export function aimWords({ points, advice, weeksAsNow }: Aim, { pressuredPerWeek }: SeenHabit): string {
  const drop = `a drop of ${points} points`;
  if (weeksAsNow === 0)
    return `Should there be ${drop}, what you have shot would most likely show it by now.`;
  if (!advice) return `No plan of up to twelve weeks would show ${drop} for sure enough.`;
  if (weeksAsNow !== null && weeksAsNow <= advice.weeks) {
    return `Shoot pairs and go on as you do, about ${Math.round(pressuredPerWeek)} pressured shots a week: in ${weeksWords(weeksAsNow)} ${drop} would most likely show.`;
  }
  const { pressuredPerWeek: pressured } = advice.need;
  const much = advice.comfortable ? '' : ' That is a lot; take it as a direction.';
  return `With about ${pressured} pressured shots a week, each in a pair with a relaxed one, for ${weeksWords(advice.weeks)}, ${drop} would most likely show.${much}`;
}

/** What a cell of the table says. */
export function needWords({ need }: Pick<PlanRow, 'need'>): string {
  if (need.kind === 'shots') {
    return need.pressuredPerWeek === 0 ? 'none more needed' : `${need.pressuredPerWeek} a week`;
  }
  switch (need.reason) {
    case 'rate too low':
      return 'you make too few to lose so many';
    case 'too few sessions':
      return 'too few sessions';
    case 'never both':
      return 'no verdict this way';
    case 'days':
      return 'good and bad days would hide it';
    case 'too many shots':
      return 'too many to ask for';
  }
}

/**
 * What the shots so far could have shown, had it been there.
 *
 * @param sessions with both conditions; with too few, nothing is said of all shots together
 */
export function hindsightWords({ latest, soFar }: Hindsight, sessions: number): string[] {
  const only = sessions < LEAST_SESSIONS;
  const words: string[] = [];
  if (latest && latest.shots.relaxed > 0 && latest.shots.pressured > 0) {
    const shots = `${latest.shots.relaxed} relaxed and ${latest.shots.pressured} pressured shots of ${dayWords(latest.date)}`;
    words.push(
      latest.points === null
        ? `The ${shots} decide nothing by themselves: a good or a bad day can pass for pressure.`
        : `The ${shots} by themselves would most likely have shown a drop of ${pointsWords(latest.points)} or more, and hidden a smaller one.`,
    );
  }
  if (soFar !== null && latest !== null && !only) {
    words.push(`All you have shot would most likely have shown a drop of ${pointsWords(soFar)} or more.`);
  }
  return words;
}

function weeksWords(weeks: number): string {
  return weeks === 1 ? 'one week' : `${weeks} weeks`;
}
