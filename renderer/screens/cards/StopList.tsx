import type { Stop } from '../../court/cards.ts';
import { SHOT_WORDS, spotWords } from '../../court/spots.ts';

interface Props {
  readonly stops: readonly Stop[];
  readonly onChange: (stops: Stop[]) => void;
}

/** The stops of a card in the order they are shot. */
export function StopList({ stops, onChange }: Props) {
  const moved = (from: number, to: number) => {
    const [stop] = stops.slice(from, from + 1);
    if (stop) onChange(stops.toSpliced(from, 1).toSpliced(to, 0, stop));
  };
  if (stops.length === 0) return <p className="quiet">No stop yet. Choose a spot and add it.</p>;
  return (
    <ol className="stops">
      {stops.map((stop, at) => {
        const words = `stop ${at + 1}, ${spotWords(stop.spot)}`;
        return (
          // Stops have no name of their own: their place in the order is what they are.
          // oxlint-disable-next-line react/no-array-index-key
          <li key={at} className="stop">
            <span className="stop-words">
              <strong>
                {at + 1}. {spotWords(stop.spot)} × {stop.attempts}
              </strong>
              <span className="quiet">{SHOT_WORDS[stop.shot]}</span>
            </span>
            <button
              type="button"
              className="button"
              disabled={at === 0}
              aria-label={`Earlier: ${words}`}
              onClick={() => moved(at, at - 1)}
            >
              ↑
            </button>
            <button
              type="button"
              className="button"
              disabled={at === stops.length - 1}
              aria-label={`Later: ${words}`}
              onClick={() => moved(at, at + 1)}
            >
              ↓
            </button>
            <button
              type="button"
              className="button"
              aria-label={`Remove ${words}`}
              onClick={() => onChange(stops.toSpliced(at, 1))}
            >
              ×
            </button>
          </li>
        );
      })}
    </ol>
  );
}
