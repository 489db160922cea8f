import { attemptsOn, type Stop } from '../../court/cards.ts';
import { surePoints } from '../../games/gameFault.ts';
import { SHOTS_A_TRIP } from '../../games/trips.ts';
import type { DoubleBalls, GamePlan, TripKind } from '../../pressure/gamePlan.ts';
import { Choice } from '../parts/Choice.tsx';
import { YesNo } from '../parts/YesNo.tsx';
import { ClimbNumbers, DuelNumbers, RaceNumbers } from './LongRules.tsx';
import { MostShots } from './MostShots.tsx';
import { NumberField } from './NumberField.tsx';

interface Props {
  readonly plan: GamePlan;
  readonly stops: readonly Stop[];
  readonly onChange: (plan: GamePlan) => void;
}

/** The numbers of a game, family by family. */
export function RuleForm({ plan, stops, onChange }: Props) {
  const shots = Math.max(1, attemptsOn(stops));
  switch (plan.family) {
    case 'reach':
      return <Needed plan={plan} most={shots} onChange={onChange} />;
    case 'streak':
      return (
        <>
          <NumberField
            label="In a row"
            value={plan.row}
            min={1}
            max={25}
            onChange={(row) => onChange({ ...plan, row })}
          />
          <MostShots value={plan.most} onChange={(most) => onChange({ ...plan, most })} />
        </>
      );
    case 'lives':
      return (
        <>
          <Needed plan={plan} most={50} onChange={onChange} bare />
          <NumberField
            label="Lives: a miss costs one"
            value={plan.lives}
            min={1}
            max={20}
            onChange={(lives) => onChange({ ...plan, lives })}
          />
        </>
      );
    case 'race':
      return <RaceNumbers plan={plan} onChange={onChange} />;
    case 'trips':
      return <TripNumbers plan={plan} onChange={onChange} />;
    case 'racks':
      return (
        <>
          <Choice
            question="Which balls count double?"
            hint="By coin, what a double does to your shot can be told from everything else."
            answers={DOUBLES}
            value={plan.double}
            onChoose={(double) => onChange({ ...plan, double })}
          />
          <Needed
            plan={plan}
            most={surePoints(stops, plan.double)}
            label="Points needed"
            onChange={onChange}
          />
        </>
      );
    case 'last shot':
      return (
        <>
          <Needed plan={plan} most={shots} onChange={onChange} />
          <NumberField
            label="The clock starts with at least"
            value={plan.from}
            min={1}
            max={24}
            write={seconds}
            onChange={(from) => onChange({ ...plan, from })}
          />
          <NumberField
            label="And with at most"
            value={plan.to}
            min={1}
            max={24}
            write={seconds}
            onChange={(to) => onChange({ ...plan, to })}
          />
        </>
      );
    case 'climb':
      return <ClimbNumbers plan={plan} stops={stops} onChange={onChange} />;
    case 'duel':
      return <DuelNumbers plan={plan} shots={shots} onChange={onChange} />;
  }
}

const DOUBLES: readonly { value: DoubleBalls; words: string }[] = [
  { value: 'last', words: 'The last of each rack' },
  { value: 'coin', words: 'One in five, by coin' },
  { value: 'none', words: 'None' },
];

const KINDS: readonly { value: TripKind; words: string }[] = [
  { value: 'one-and-one', words: 'One-and-one' },
  { value: 'two shots', words: 'Two shots' },
  { value: 'three shots', words: 'Three shots' },
];

interface NeededProps<P extends GamePlan> {
  readonly plan: P;
  readonly most: number;
  readonly label?: string;
  /** Without the most behind it. */
  readonly bare?: boolean;
  readonly onChange: (plan: P) => void;
}

function Needed<P extends Extract<GamePlan, { needed: number }>>({
  plan,
  most,
  label = 'Makes needed',
  bare = false,
  onChange,
}: NeededProps<P>) {
  return (
    <NumberField
      label={label}
      value={plan.needed}
      min={1}
      max={Math.max(most, plan.needed)}
      write={(value) => (bare ? String(value) : `${value} of ${most}`)}
      onChange={(needed) => onChange({ ...plan, needed })}
    />
  );
}

type Trips = Extract<GamePlan, { family: 'trips' }>;

function TripNumbers({ plan, onChange }: { readonly plan: Trips; readonly onChange: (plan: Trips) => void }) {
  const { scene } = plan;
  return (
    <>
      <Choice
        question="What was the foul?"
        hint="One-and-one: the second shot comes only after a make."
        answers={KINDS}
        value={plan.kind}
        onChoose={(kind) => onChange({ ...plan, kind })}
      />
      <NumberField
        label="Trips to the line"
        value={plan.trips}
        min={1}
        max={20}
        onChange={(trips) => onChange({ ...plan, trips })}
      />
      <Needed
        plan={plan}
        most={plan.trips * SHOTS_A_TRIP[plan.kind]}
        label="Points needed"
        onChange={onChange}
      />
      <YesNo
        question="With the score and the time as a scene?"
        hint="It stands on the court screen. The time in it does not run."
        value={scene !== null}
        onChoose={(yes) => onChange({ ...plan, scene: yes ? { down: 1, left: 3 } : null })}
      />
      {scene ? (
        <>
          <NumberField
            label="Points behind"
            value={scene.down}
            min={-9}
            max={9}
            write={(down) => (down > 0 ? String(down) : down === 0 ? 'level' : `${-down} ahead`)}
            onChange={(down) => onChange({ ...plan, scene: { ...scene, down } })}
          />
          <NumberField
            label="Seconds left"
            value={scene.left}
            min={0}
            max={60}
            write={seconds}
            onChange={(left) => onChange({ ...plan, scene: { ...scene, left } })}
          />
        </>
      ) : null}
    </>
  );
}

function seconds(value: number): string {
  return `${value} s`;
}
