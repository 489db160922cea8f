import type { Stop } from '../../court/cards.ts';
import { SHOT_WORDS, spotWords } from '../../court/spots.ts';
import type { GamePlan } from '../../pressure/gamePlan.ts';
import { signed } from '../numberWords.ts';
import { YesNo } from '../parts/YesNo.tsx';
import { MostShots } from './MostShots.tsx';
import { NumberField } from './NumberField.tsx';

/* The numbers of the games that have most of them. */

type Plan<F extends GamePlan['family']> = Extract<GamePlan, { family: F }>;

interface Props<F extends GamePlan['family']> {
  readonly plan: Plan<F>;
  readonly onChange: (plan: Plan<F>) => void;
}

export function RaceNumbers({ plan, onChange }: Props<'race'>) {
  const set = (change: Partial<Plan<'race'>>) => onChange({ ...plan, ...change });
  return (
    <>
      <NumberField label="Points to win" value={plan.to} min={1} max={40} onChange={(to) => set({ to })} />
      <NumberField label="Up for a make" value={plan.up} min={1} max={5} onChange={(up) => set({ up })} />
      <NumberField
        label="Down for a miss"
        value={plan.down}
        min={0}
        max={5}
        onChange={(down) => set({ down })}
      />
      <YesNo
        question="Can the score fall below nought?"
        value={plan.floor === null}
        onChoose={(below) => set(below ? { floor: null } : { floor: 0, lost: null })}
      />
      <YesNo
        question="Is it lost at some score?"
        value={plan.lost !== null}
        onChoose={(yes) => set(yes ? { lost: -5, floor: null } : { lost: null })}
      />
      {plan.lost === null ? null : (
        <NumberField
          label="Lost at"
          value={plan.lost}
          min={-40}
          max={-1}
          write={signed}
          onChange={(lost) => set({ lost })}
        />
      )}
      <MostShots value={plan.most} onChange={(most) => set({ most })} />
    </>
  );
}

export function ClimbNumbers({
  plan,
  stops,
  onChange,
}: Props<'climb'> & { readonly stops: readonly Stop[] }) {
  const set = (change: Partial<Plan<'climb'>>) => onChange({ ...plan, ...change });
  return (
    <>
      <p>Each stop is a step: so many makes of its shots lead on.</p>
      {stops.map(({ spot, shot, attempts }, step) => (
        <NumberField
          // Steps have no name of their own: their place in the order is what they are.
          // oxlint-disable-next-line react/no-array-index-key
          key={step}
          label={`Step ${step + 1}, ${spotWords(spot)}, ${SHOT_WORDS[shot]}`}
          value={plan.makes[step] ?? 1}
          min={1}
          max={attempts}
          write={(makes) => `${makes} of ${attempts}`}
          onChange={(makes) => set({ makes: plan.makes.with(step, makes) })}
        />
      ))}
      <NumberField
        label="Steps lost by falling short"
        value={plan.back}
        min={0}
        max={stops.length}
        onChange={(back) => set({ back })}
      />
      <MostShots value={plan.most} onChange={(most) => set({ most })} />
    </>
  );
}

export function DuelNumbers({ plan, shots, onChange }: Props<'duel'> & { readonly shots: number }) {
  const set = (change: Partial<Plan<'duel'>>) => onChange({ ...plan, ...change });
  const { against } = plan;
  return (
    <>
      {against.kind === 'drawn' ? (
        <>
          <p>Nobody real: the app draws every shot of theirs at this rate.</p>
          <NumberField
            label="The other makes, of 100"
            value={Math.round(100 * against.rate)}
            min={5}
            max={95}
            step={5}
            onChange={(rate) => set({ against: { kind: 'drawn', rate: rate / 100 } })}
          />
        </>
      ) : (
        <p>
          {against.kind === 'own round'
            ? 'Against an earlier round, shot for shot as it went.'
            : 'Against another shooter on this court.'}
        </p>
      )}
      <NumberField
        label="Head start"
        value={plan.headStart}
        min={-shots}
        max={shots}
        write={(start) => (start === 0 ? 'none' : start > 0 ? `${start} for you` : `${-start} for them`)}
        onChange={(headStart) => set({ headStart })}
      />
      <NumberField
        label="Extra pairs of shots while it is level"
        value={plan.extraPairs}
        min={0}
        max={10}
        onChange={(extraPairs) => set({ extraPairs })}
      />
    </>
  );
}
