import { useState } from 'react';

import type { ChokeIndex } from '../../stats/model/chokeIndex.ts';
import { Choice } from '../parts/Choice.tsx';
import { DropBySpot } from './DropBySpot.tsx';
import { RatesBySpot } from './RatesBySpot.tsx';
import type { SpotProps } from './spotsOnCourt.ts';

interface Props extends SpotProps {
  /** Null as long as no drop can be told. */
  readonly index: ChokeIndex | null;
}

/** What happens where: the drop where there is an index, and the make rates. */
export function BySpot({ index, ...spots }: Props) {
  const [shown, setShown] = useState<'drop' | 'rates'>('drop');
  if (!index) {
    return (
      <section className="panel">
        <h2>By spot</h2>
        <RatesBySpot {...spots} />
      </section>
    );
  }
  return (
    <section className="panel">
      <h2>By spot</h2>
      <Choice
        question="Show"
        answers={[
          { value: 'drop', words: 'Drop' },
          { value: 'rates', words: 'Make rates' },
        ]}
        value={shown}
        onChoose={setShown}
      />
      {shown === 'drop' ? <DropBySpot index={index} {...spots} /> : <RatesBySpot {...spots} />}
    </section>
  );
}
