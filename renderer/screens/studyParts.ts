import type { Study } from '../store/study.ts';

/** The index of a study that has one. */
export type Index = Extract<Study['index'], { kind: 'index' }>;
type NoIndex = Extract<Study['index'], { kind: 'none' }>;

/** The index where there is one and enough to read a verdict from it; null before. */
export function indexToTell(study: Study | null): Index | null {
  return study?.index.kind === 'index' && study.verdict.kind !== 'none' ? study.index : null;
}

/** Whether the drop is worked out for free throws alone. */
export function atTheLine({ mix }: Index): boolean {
  return mix.every(({ shot }) => shot === 'free-throw');
}

/** Why there is no index, and what to do. */
export function noIndexWords({ reason, seen }: NoIndex): string[] {
  switch (reason) {
    case 'no relaxed shot':
      return ['Nothing was shot relaxed. Shoot a card relaxed, and the two can be compared.'];
    case 'no pressured shot':
      return ['Nothing was shot under pressure. Shoot a card under pressure, and the two can be compared.'];
    case 'nothing of the mix':
      return [
        'Of the shots the drop is worked out for, none is on record.',
        'Shoot some, relaxed and under pressure, or choose another mix under “How this is worked out”.',
      ];
    case 'too little of the mix under pressure':
      return [
        `More than half of your usual shots were never taken under pressure: only ${Math.round(100 * seen)} in 100 come from places you also shot that way.`,
        'Shoot the cards you shoot relaxed under pressure too; a pair does just that.',
      ];
  }
}
