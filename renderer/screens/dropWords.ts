import type { Figures } from '../store/figures.ts';
import { percent, pointsWords } from './numberWords.ts';

/** How things stand, in words a tired shooter reads at a glance. */
export interface DropWords {
  /** The one sentence. */
  readonly headline: string;
  /** What goes with it, one short sentence each. */
  readonly more: readonly string[];
}

type Shown = Pick<Figures, 'relaxed' | 'pressured' | 'drop' | 'reading' | 'evidence'>;

/** Says once what the two ends of every span on these screens mean. */
export const SPAN_WORDS =
  'Every span here is drawn so that nine times in ten it holds the truth, as long as your good and bad days even out. A point is one make in a hundred shots.';

export function dropWords(figures: Shown): DropWords {
  const { relaxed, pressured, drop, reading } = figures;
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
  if (reading.kind === 'none') return tooEarly(figures);
  const { points, low, high } = reading;
  switch (reading.kind) {
    case 'drop':
      return {
        headline: `You lose about ${pointsWords(points)} under pressure, somewhere between ${floor(low)} and ${high}.`,
        more: sameMix(figures),
      };
    case 'gain':
      return {
        headline: `You make more under pressure: about ${pointsWords(-points)}, somewhere between ${floor(-high)} and ${-low}.`,
        more: sameMix(figures),
      };
    case 'same':
      return {
        headline: 'About the same, relaxed or under pressure.',
        more: [`The difference lies ${fromTo(low, high)}.`, ...sameMix(figures)],
      };
    case 'unclear':
      return {
        headline: 'No difference that can be told from luck.',
        more: [`It could be anything ${fromTo(low, high)}.`, ...plan(figures), ...sameMix(figures)],
      };
  }
}

function oneSided({ relaxed, pressured }: Shown): DropWords {
  const [condition, other] =
    pressured.attempts === 0 ? (['relaxed', 'pressured'] as const) : (['pressured', 'relaxed'] as const);
  const { makes, attempts } = condition === 'relaxed' ? relaxed : pressured;
  return {
    headline: `${makes} of ${attempts} ${condition} so far.`,
    more: [
      `Shoot the same card ${other === 'relaxed' ? 'relaxed' : 'under pressure'}, and the two can be compared.`,
    ],
  };
}

function tooEarly(figures: Shown): DropWords {
  const { relaxed, pressured, reading, evidence } = figures;
  const { pressured: shots, sessions } =
    reading.kind === 'none' ? reading.needs : { pressured: 0, sessions: 0 };
  const rates = `So far ${percent(relaxed)} relaxed and ${percent(pressured)} pressured`;
  if (shots > 0) {
    return {
      headline: 'Too early to say.',
      more: [`${rates}, but with so few shots the difference could be luck.`, ...plan(figures)],
    };
  }
  const both =
    evidence.sessions === 0
      ? 'never both in one session'
      : `both in only ${evidence.sessions} ${evidence.sessions === 1 ? 'session' : 'sessions'}`;
  return {
    headline: 'Too early to say.',
    more: [
      `${rates}, but ${both}, and one good or bad day must not decide.`,
      `${sessions} more ${sessions === 1 ? 'session' : 'sessions'} with both kinds of round, and a first verdict is due.`,
    ],
  };
}

/** How many more shots would show a drop of ten points, or of five where ten would show by now. */
function plan({ reading }: Shown): string[] {
  for (const [points, more] of [
    [10, reading.more.ten],
    [5, reading.more.five],
  ] as const) {
    if (!more || more.relaxed + more.pressured === 0) continue;
    const shots = [
      more.pressured > 0 ? `${more.pressured} more pressured` : '',
      more.relaxed > 0 ? `${more.relaxed} more relaxed` : '',
    ].filter((part) => part !== '');
    return [
      `Roughly ${shots.join(' and ')} shots would probably show a drop of ${points} points, if there is one.`,
    ];
  }
  return [];
}

/** Where the mix of spots differed, the drop is not the difference of the two large figures: say so. */
function sameMix({ relaxed, pressured, drop }: Shown): string[] {
  if (!drop || !relaxed.rate || !pressured.rate) return [];
  const plain = 100 * (relaxed.rate.p - pressured.rate.p);
  if (Math.abs(plain - drop.points) < 1) return [];
  return ['This compares spot by spot, so that a different mix of shots does not count as pressure.'];
}

function floor(points: number): string {
  return points <= 0 ? 'just above 0' : String(points);
}

/** `from 2 points better to 9 points worse under pressure` */
function fromTo(low: number, high: number): string {
  if (low >= 0) return `from ${low} to ${pointsWords(high)} worse under pressure`;
  if (high <= 0) return `from ${-high} to ${pointsWords(-low)} better under pressure`;
  return `from ${pointsWords(-low)} better to ${pointsWords(high)} worse under pressure`;
}
