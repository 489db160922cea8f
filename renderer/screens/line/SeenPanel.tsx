import { rungOf, SEEN_BY, stepsUp, type SeenBy } from '../../pressure/ladder.ts';
import type { Line } from '../../store/line.ts';
import type { PressureWish } from '../../store/pressureWish.ts';
import { Choice } from '../parts/Choice.tsx';
import { YesNo } from '../parts/YesNo.tsx';
import { Ladder } from './Ladder.tsx';
import { LadderRules } from './LadderRules.tsx';
import { bigStepWords, RUNG_WORDS, suggestionWords } from './lineWords.ts';

interface Props {
  readonly line: Line;
  readonly wish: PressureWish;
  readonly onChange: (change: Partial<PressureWish>) => void;
}

/** Who sees the round, and where that puts it on the ladder. */
export function SeenPanel({ line, wish, onChange }: Props) {
  const rung = rungOf({ stake: wish.stake.trim() === '' ? null : wish.stake, seen: wish.seen });
  const bigStep = bigStepWords(line, rung);
  return (
    <section className="panel" aria-label="Onlookers">
      <h2>Onlookers</h2>
      <Choice
        question="Who sees this round?"
        answers={SEEN_BY.map((value) => ({
          value,
          words: value === 'nobody' ? 'Nobody' : RUNG_WORDS[value],
          disabled: stepsUp(line.highest, rungOf({ stake: null, seen: value })) > 0,
        }))}
        value={wish.seen}
        onChoose={(seen) => onChange({ seen, guardian: false })}
      />
      <Consent seen={wish.seen} young={line.young} wish={wish} onChange={onChange} />
      <h3>The ladder</h3>
      <Ladder standing={line.standing?.rung ?? null} suggested={line.suggestion.rung} round={rung} />
      <p>{suggestionWords(line)}</p>
      {bigStep === null ? null : <p className="notice">{bigStep}</p>}
      <details className="fold">
        <summary>How the app moves on the ladder</summary>
        <LadderRules />
      </details>
    </section>
  );
}

/** People are asked before they are part of a round. */
function Consent({ seen, young, wish, onChange }: Omit<Props, 'line'> & { seen: SeenBy; young: boolean }) {
  switch (seen) {
    case 'nobody':
      return null;
    case 'watched':
      return <p>Ask them first, and only if you want them there. A no is written down nowhere.</p>;
    case 'judged':
      return (
        <p>
          Someone who knows shooting tells you afterwards how it looked: what to keep, and one thing to
          change. Only who agreed to it, to you alone, and kindly. A no is written down nowhere.
        </p>
      );
    case 'filmed':
      return (
        <>
          <p>
            Only if everyone in the picture agrees. The video stays on the friend’s device and goes when you
            say so; this app takes and keeps no pictures.
          </p>
          {young ? (
            <YesNo
              question="Has a parent or guardian agreed to this video?"
              hint="Without their word nobody under 18 is filmed."
              value={wish.guardian}
              onChoose={(guardian) => onChange({ guardian })}
            />
          ) : null}
        </>
      );
  }
}
