import {
  ABOUT_SAME,
  CLEAR,
  CLEAR_EVIDENCE,
  LEAST_PRESSURED,
  LEAST_SESSIONS,
  LIKELY,
  SAME,
} from '../../store/fixedNumbers.ts';
import type { Study } from '../../store/study.ts';
import { chanceWords } from '../numberWords.ts';
import { Part, Yours } from './Part.tsx';

const of100 = (chance: number): string => `${Math.round(100 * chance)} in 100`;

/** When which word is used. */
export function VerdictRules({ study }: { readonly study: Study | null }) {
  return (
    <Part title="When which word is used">
      <p>Fixed before anyone shoots, so that nobody can look until the answer suits.</p>
      <div className="scroll" role="region" aria-label="Words and thresholds" tabIndex={0}>
        <table className="figures">
          <thead>
            <tr>
              <th scope="col">Word</th>
              <th scope="col">When</th>
            </tr>
          </thead>
          <tbody>
            {RULES.map(([word, when]) => (
              <tr key={word}>
                <th scope="row">{word}</th>
                <td>{when}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {study ? <Yours>{verdictWords(study)}</Yours> : null}
    </Part>
  );
}

const RULES: readonly (readonly [word: string, when: string])[] = [
  [
    'Too early to say',
    `Before ${LEAST_PRESSURED} pressured shots from places also shot relaxed, and before ${LEAST_SESSIONS} sessions with both kinds of round`,
  ],
  [
    'About the same',
    `The chance that the drop lies within ${ABOUT_SAME} points of none is above ${of100(SAME)}`,
  ],
  [
    'You lose …, quite sure',
    `The chance of a drop is above ${of100(CLEAR)}, or the evidence of the pairs ever reached ${CLEAR_EVIDENCE} to 1 and a drop is still likelier than none`,
  ],
  ['You lose …, likely', `The chance of a drop is above ${of100(LIKELY)}`],
  ['You make … more', 'The same chances for a gain, without the pairs'],
  ['No difference that can be told from luck', 'None of these'],
  ['No drop can be told', 'Less than half of your mix comes from places you also shot under pressure'],
];

function verdictWords({ verdict, index, have }: Study): string {
  const record = `${have.pressured.attempts} pressured shots and ${have.sessions} ${have.sessions === 1 ? 'session' : 'sessions'} that count`;
  if (index.kind === 'none') return `${record}; no drop can be told.`;
  const chance = `${record}; the chance of a drop is ${chanceWords(index.overall.probability)}`;
  switch (verdict.kind) {
    case 'none':
      return `${chance}: too early to say.`;
    case 'drop':
      return `${chance}: a drop, ${verdict.sure === 'clear' ? 'quite sure' : 'likely'}.`;
    case 'gain':
      return `${chance}: a gain, ${verdict.sure === 'clear' ? 'quite sure' : 'likely'}.`;
    case 'same':
      return `${chance}: about the same.`;
    case 'unclear':
      return `${chance}: not to be told from luck.`;
  }
}
