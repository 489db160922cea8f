import type { RuleSet } from '../../court/ruleSets.ts';
import type { GamePlan } from '../../pressure/gamePlan.ts';
import type { ClockSetting } from '../../pressure/ingredients.ts';
import { Choice } from '../parts/Choice.tsx';
import { NumberField } from './NumberField.tsx';
import { lastShotSentence } from './priceWords.ts';

interface Props {
  readonly plan: GamePlan;
  readonly clock: ClockSetting | null;
  readonly rules: RuleSet;
  readonly onChange: (clock: ClockSetting | null) => void;
}

/** The clock of a game; last shots bring their own. */
export function ClockForm({ plan, clock, rules, onChange }: Props) {
  if (plan.family === 'last shot') return <LastShotClock plan={plan} rules={rules} />;
  return (
    <>
      <Choice
        question="Which clock?"
        answers={[
          { value: 'none', words: 'None' },
          { value: 'round', words: 'One for the game' },
          { value: 'shot', words: 'One for each shot' },
        ]}
        value={clock?.kind ?? 'none'}
        onChoose={(kind) => onChange(kind === 'none' ? null : { kind, seconds: kind === 'round' ? 60 : 8 })}
      />
      {clock ? (
        <NumberField
          label={clock.kind === 'round' ? 'Seconds for the whole game' : 'Seconds for each shot'}
          value={clock.seconds}
          min={clock.kind === 'round' ? 10 : 3}
          max={clock.kind === 'round' ? 1800 : 40}
          step={clock.kind === 'round' ? 5 : 1}
          write={(seconds) => `${seconds} s`}
          onChange={(seconds) => onChange({ ...clock, seconds })}
        />
      ) : null}
    </>
  );
}

interface LastShotProps extends Pick<Props, 'rules'> {
  readonly plan: Extract<GamePlan, { family: 'last shot' }>;
}

/** What the clock of last shots does, and what the rules say of the last moment. */
export function LastShotClock({ plan, rules }: LastShotProps) {
  return (
    <>
      <p>
        Each shot starts anywhere from {plan.from} to {plan.to} seconds, so that nobody can count along.
      </p>
      <p className="quiet">{lastShotSentence(rules)}</p>
    </>
  );
}
