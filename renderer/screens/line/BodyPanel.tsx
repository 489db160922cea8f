import { useEffect, useRef, useState } from 'react';

import type { ShooterId } from '../../basics/ids.ts';
import type { Brake } from '../../pressure/ladder.ts';
import { tellBody } from '../../store/bodyCheck.ts';
import type { Line } from '../../store/line.ts';
import { writeAddress } from '../../store/places.ts';
import { useDoors } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';
import { brakeWords } from './lineWords.ts';
import { UrgentSigns } from './UrgentSigns.tsx';

const QUESTIONS: readonly { readonly brake: Brake; readonly question: string }[] = [
  { brake: 'sore', question: 'Sore, or in pain anywhere?' },
  { brake: 'ill', question: 'Ill, or coming down with something?' },
  { brake: 'unslept', question: 'Slept badly?' },
];
const ANSWERS = [
  { value: 'yes', words: 'Yes' },
  { value: 'no', words: 'No' },
] as const;
const WELL = { sore: false, ill: false, unslept: false };

/** Three questions before pressure is put on, once a visit; with any yes it says what fits today instead. */
export function BodyPanel({ shooter, line }: { readonly shooter: ShooterId; readonly line: Line }) {
  const { gym } = useDoors();
  const [told, setTold] = useState<Partial<Record<Brake, boolean>>>({});
  const [again, setAgain] = useState(false);
  const answered = useRef<HTMLHeadingElement>(null);
  const justTold = useRef(false);
  const asks = line.body === null || again;
  const braked = line.brakes.length > 0;

  useEffect(() => {
    // The answer that was tapped is gone from the screen; what it led to takes the focus.
    if (!asks && justTold.current) answered.current?.focus();
    justTold.current = false;
  }, [asks]);

  const keep = async (body: Readonly<Record<Brake, boolean>>) => {
    justTold.current = true;
    if (await tellBody(gym, shooter, body)) setAgain(false);
  };
  const tell = (brake: Brake, yes: boolean) => {
    const next = { ...told, [brake]: yes };
    setTold(next);
    const { sore, ill, unslept } = next;
    if (sore === undefined || ill === undefined || unslept === undefined) return;
    void keep({ sore, ill, unslept });
  };

  if (!asks) {
    return (
      <section className="panel" aria-label="Your body today">
        <div className="row body-told">
          <h2 ref={answered} tabIndex={-1}>
            {braked ? `No step up today: ${brakeWords(line.brakes)}` : 'Nothing sore, not ill, slept well'}
          </h2>
          <button
            type="button"
            className="button"
            onClick={() => {
              setTold({});
              setAgain(true);
            }}
          >
            That has changed
          </button>
        </div>
        {braked ? <Instead line={line} /> : null}
      </section>
    );
  }
  return (
    <section className="panel" aria-label="Your body today">
      <h2>First: how is your body today?</h2>
      <div className="row">
        <button type="button" className="button main" onClick={() => void keep(WELL)}>
          No to all three
        </button>
      </div>
      <div className="body-questions">
        {QUESTIONS.map(({ brake, question }) => (
          <Choice
            key={brake}
            question={question}
            answers={ANSWERS}
            value={told[brake] === undefined ? null : told[brake] ? 'yes' : 'no'}
            onChoose={(answer) => tell(brake, answer === 'yes')}
          />
        ))}
      </div>
      <p className="quiet">Asked once a visit, kept on this device, and never shown beside your shots.</p>
    </section>
  );
}

/** What fits a tired body instead of more pressure. */
function Instead({ line: { brakes } }: { readonly line: Line }) {
  return (
    <>
      <p>
        A tired body misses for reasons that have nothing to do with nerves, and it may be hurt more easily.
        What fits instead: a relaxed round, the same shots in your head with eyes closed, or five minutes of
        slow breathing, sitting down.
      </p>
      {brakes.includes('sore') ? (
        <p className="notice warn">
          If something hurts, stop. Whether and when to shoot again is decided by someone licensed, not by an
          app.
        </p>
      ) : null}
      <div className="row">
        <a className="button main" href={writeAddress('relaxed')}>
          A relaxed round instead
        </a>
      </div>
      {brakes.includes('sore') ? <UrgentSigns /> : null}
    </>
  );
}
