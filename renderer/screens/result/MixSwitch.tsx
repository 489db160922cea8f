import type { Figures } from '../../store/figures.ts';
import { useDoors, useStudy } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';

/** The whole mix of shots, or free throws alone; only for a shooter who shoots both. */
export function MixSwitch({ figures }: { readonly figures: Pick<Figures, 'spots'> }) {
  const { studyRoom } = useDoors();
  const mix = useStudy((state) => state.mix);
  const kinds = figures.spots.flatMap((spot) => spot.kinds).filter(({ relaxed }) => relaxed.attempts > 0);
  const line = kinds.some(({ shot }) => shot === 'free-throw');
  const field = kinds.some(({ shot }) => shot !== 'free-throw');
  // Whoever chose free throws can always go back.
  if (mix === 'own' && !(line && field)) return null;
  return (
    <Choice
      question="Worked out for"
      answers={[
        { value: 'own', words: 'Your usual shots' },
        { value: 'free-throws', words: 'Free throws alone' },
      ]}
      value={mix}
      onChoose={(wish) => studyRoom.choose(wish)}
    />
  );
}
