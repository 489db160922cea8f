import { useMemo, useRef, useState } from 'react';

import type { ShooterId } from '../../basics/ids.ts';
import { lineFor } from '../../store/line.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { BodyPanel } from '../line/BodyPanel.tsx';
import { Page } from '../parts/Page.tsx';
import { NERVES_BEFORE, Rating } from '../parts/Rating.tsx';
import { useNames } from '../useNames.ts';
import '../styles/line.css';

interface Props {
  readonly shooter: ShooterId;
  /** Who is asked after them; null for the last one. */
  readonly next: ShooterId | null;
  readonly nerves: number | null;
  readonly onAnswer: (nerves: number | null) => void;
  readonly onBack: () => void;
}

/** One of several is asked what everybody is asked before a pressured round. Nerves may be left out. */
export function AskEach({ shooter, next, nerves, onAnswer, onBack }: Props) {
  const { gym } = useDoors();
  const nameOf = useNames();
  const book = useGym((state) => state.book);
  const line = useMemo(() => lineFor(book, shooter, gym.moment()), [gym, book, shooter]);
  const [told, setTold] = useState(nerves);
  const [hurried, setHurried] = useState(false);
  const bodyPanel = useRef<HTMLDivElement>(null);
  const go = (answer: number | null) => {
    if (line.body !== null) {
      onAnswer(answer);
      return;
    }
    setHurried(true);
    bodyPanel.current?.scrollIntoView({ block: 'center' });
  };
  const onward = next === null ? 'To the court' : `Next: ${nameOf(next)}`;
  return (
    <Page
      title={`${nameOf(shooter)}: before you shoot`}
      aside={
        <button type="button" className="button" onClick={onBack}>
          Back
        </button>
      }
    >
      <p className="lead">Only {nameOf(shooter)} answers here. Then hand the device on.</p>
      <div ref={bodyPanel}>
        <BodyPanel shooter={shooter} line={line} />
      </div>
      {hurried && line.body === null ? (
        <p className="notice warn" role="alert">
          Please say first how your body is today.
        </p>
      ) : null}
      <section className="panel">
        <Rating {...NERVES_BEFORE} value={told} onRate={setTold} />
      </section>
      <div className="row">
        <button type="button" className="button main" disabled={told === null} onClick={() => go(told)}>
          {onward}
        </button>
        <button type="button" className="button" onClick={() => go(null)}>
          I would rather not say
        </button>
      </div>
    </Page>
  );
}
