import { useMemo, type ReactNode } from 'react';

import { attemptsOn, type Card } from '../../court/cards.ts';
import { COURTS, type RuleSet } from '../../court/ruleSets.ts';
import { inHundred, marksFor } from '../../store/forecast.ts';
import type { EntryWay } from '../../log/events.ts';
import { wishOnLine, type Line } from '../../store/line.ts';
import { wishFor, type PressureWish } from '../../store/pressureWish.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { SeenPanel } from '../line/SeenPanel.tsx';
import { StakePanel } from '../line/StakePanel.tsx';
import { Choice } from './Choice.tsx';
import { Stepper } from './Stepper.tsx';
import { YesNo } from './YesNo.tsx';

interface Props {
  readonly wish: PressureWish;
  readonly card: Card;
  readonly shooter: string;
  readonly rules: RuleSet;
  readonly entry: EntryWay;
  readonly line: Line;
  readonly onChange: (wish: PressureWish) => void;
  /** What stands in place of the mark, and of the clock, where a game brings its own. */
  readonly instead?: { readonly mark: ReactNode; readonly clock?: ReactNode };
}

/** Everything that turns pressure on in a round. */
export function PressureForm({ wish: wished, card, shooter, rules, entry, line, onChange, instead }: Props) {
  const wish = wishOnLine(line, wishFor(entry, wished));
  const set = (change: Partial<PressureWish>) => onChange({ ...wish, ...change });
  return (
    <>
      {instead?.mark}
      <StakePanel shooter={shooter} line={line} wish={wish} onChange={set} />
      {instead ? null : <MarkPanel wish={wish} card={card} shooter={shooter} onChange={onChange} />}
      {instead?.clock ?? (
        <ClockPanel wish={wish} entry={entry} rules={rules} onChange={set}>
          {instead ? null : <p>{secondsAShot(wish.roundSeconds, attemptsOn(card.stops))}</p>}
        </ClockPanel>
      )}
      <SeenPanel line={line} wish={wish} onChange={set} />
      <section className="panel">
        <h2>Noise, and a cold start</h2>
        <YesNo
          question="Crowd noise from the loudspeaker?"
          hint="It swells before the shot and answers makes and misses."
          value={wish.crowd}
          onChoose={(crowd) => set({ crowd })}
        />
        <YesNo
          question="Straight in, without a warm-up shot?"
          hint="Only if your body is warm already."
          value={wish.coldStart}
          onChoose={(coldStart) => set({ coldStart })}
        />
      </section>
    </>
  );
}

interface ClockProps extends Pick<Props, 'wish' | 'entry' | 'rules'> {
  readonly onChange: (change: Partial<PressureWish>) => void;
  /** What is said of a clock for the round. */
  readonly children: ReactNode;
}

function ClockPanel({ wish, entry, rules, onChange, children }: ClockProps) {
  return (
    <section className="panel">
      <h2>The clock</h2>
      <Choice
        question="Which clock?"
        answers={[
          { value: 'none', words: 'None' },
          { value: 'round', words: 'One for the round' },
          ...(entry === 'each-shot' ? [{ value: 'shot', words: 'One for each shot' } as const] : []),
        ]}
        value={wish.clock}
        onChoose={(clock) => onChange({ clock })}
      />
      {wish.clock === 'round' ? (
        <Stepper
          label="Seconds for the whole round"
          value={wish.roundSeconds}
          min={10}
          max={1800}
          step={5}
          write={(value) => `${value} s`}
          onChange={(roundSeconds) => onChange({ roundSeconds })}
        />
      ) : null}
      {wish.clock === 'shot' ? (
        <>
          <Stepper
            label="Seconds for each shot"
            value={wish.shotSeconds}
            min={3}
            max={40}
            write={(value) => `${value} s`}
            onChange={(shotSeconds) => onChange({ shotSeconds })}
          />
          <p className="quiet">{shotClockWords(rules)}</p>
        </>
      ) : null}
      {wish.clock === 'round' ? children : null}
      {wish.clock === 'none' ? null : (
        <p className="quiet">The last five seconds are called out, then the buzzer.</p>
      )}
    </section>
  );
}

function MarkPanel({ wish, card, shooter, onChange }: Pick<Props, 'wish' | 'card' | 'shooter' | 'onChange'>) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const turns = attemptsOn(card.stops);
  const marks = useMemo(() => marksFor(book, shooter, card.stops, gym.moment()), [gym, book, shooter, card]);
  const set = (change: Partial<PressureWish>) => onChange({ ...wish, ...change });
  const makes = wish.markMakes ?? marks.nearest(wish.wanted);
  return (
    <section className="panel">
      <h2>The mark to beat</h2>
      <Choice
        question="How hard should it be?"
        answers={[
          { value: '0.67', words: 'Two in three' },
          { value: '0.5', words: 'Even' },
          { value: '0.33', words: 'One in three' },
          { value: 'none', words: 'No mark' },
        ]}
        value={wish.mark ? String(wish.wanted) : 'none'}
        onChoose={(answer) =>
          set(answer === 'none' ? { mark: false } : { mark: true, wanted: Number(answer), markMakes: null })
        }
      />
      {wish.mark ? (
        <>
          <Stepper
            label="Makes needed"
            value={makes}
            min={1}
            max={turns}
            write={(value) => `${value} of ${turns}`}
            onChange={(markMakes) => set({ markMakes })}
          />
          <p>
            {marks.shots === 0 ? 'You have not shot this card yet. As a starting guess' : 'On your record'}{' '}
            you would get there about <strong>{inHundred(marks.chance(makes))} times in 100</strong>, if time
            allows. Good and bad days are counted in.
            {marks.shots > 0 && marks.shots < 50
              ? ' Your record on these shots is still short, so this is rough.'
              : ''}
          </p>
          <YesNo
            question="Show the chance while you shoot?"
            value={wish.showChance}
            onChoose={(showChance) => set({ showChance })}
          />
        </>
      ) : null}
    </section>
  );
}

function secondsAShot(seconds: number, shots: number): string {
  const each = seconds / shots;
  const words = `That is ${each.toFixed(1)} seconds a shot.`;
  return each < 4 ? `${words} Hardly anyone gets through the card in that time.` : words;
}

function shotClockWords(rules: RuleSet): string {
  const full = COURTS[rules].shotClock;
  if (full === null) return 'NFHS asks for no shot clock; some states have one. This is a practice clock.';
  return `A whole possession under ${rules} rules lasts ${full} s; this clock is for one shot in practice.`;
}
