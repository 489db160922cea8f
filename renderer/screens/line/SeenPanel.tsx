import { rungOf, SEEN_BY, stepsUp, type SeenBy } from '../../pressure/ladder.ts';
import type { Line } from '../../store/line.ts';
import type { PressureWish } from '../../store/pressureWish.ts';
import { Choice } from '../parts/Choice.tsx';
import { YesNo } from '../parts/YesNo.tsx';
import { Ladder } from './Ladder.tsx';
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
      <LadderRules />
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

function LadderRules() {
  return (
    <details className="fold">
      <summary>How the app moves on the ladder</summary>
      <ul>
        <li>
          One step up is suggested after two sessions on a rung in which your nerves rose above your usual
          relaxed ones and the shot held.
        </li>
        <li>
          “Held” means: of the session’s pressured rounds, at most one in three fell below what your record
          had said to expect under pressure. Rounds whose length follows from makes and misses cannot tell.
        </li>
        <li>A session in which nerves did not rise counts neither way: you may take a step by yourself.</li>
        <li>
          One step down after a session that was too much: you said so, or nerves were 8 or more and the
          result fell below what was to be expected.
        </li>
        <li>Sore, ill or badly slept: no step up. Down is always open, and needs no reason.</li>
      </ul>
      <p className="quiet">
        Two sessions, one in three and the 8 are our own choice. Which rung weighs most differs from shooter
        to shooter.
      </p>
    </details>
  );
}
