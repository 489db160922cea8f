import type { Figures } from '../../store/figures.ts';
import { countWords, dropSpan, pointsWords } from '../numberWords.ts';
import type { Index } from '../studyParts.ts';
import { Part, Yours } from './Part.tsx';

interface Props {
  readonly figures: Figures;
  readonly index: Index | null;
}

/** What is held against what. */
export function Compared({ figures: { relaxed, pressured }, index }: Props) {
  return (
    <Part title="What is compared">
      <p>
        The same shots, relaxed and under pressure. The drop is the relaxed make percentage minus the
        pressured one, in points; a point is one make in a hundred shots. Above 0 you make fewer under
        pressure, below 0 you make more.
      </p>
      <p>
        A good first day held against a bad last one would say nothing, and all shots thrown together would
        mistake an easier card for calm nerves. So like is compared with like: the same spot, the same kind of
        shot, the same stage of the session, the same stretch of weeks, the same day where there are both.
      </p>
      <p>
        Nothing here says that anyone choked. A decrease alone does not deserve the word (Mesagno and Hill,
        2013).
      </p>
      {index ? (
        <Yours>
          {countWords(relaxed)} relaxed and {countWords(pressured)} under pressure as shot; for one mix of
          shots {Math.round(index.relaxed)} % and {Math.round(index.pressured)} %, a drop of{' '}
          {pointsWords(index.overall.points)}, from {dropSpan(index.overall)}.
        </Yours>
      ) : null}
    </Part>
  );
}
