import { faceOf } from '../../games/face.ts';
import type { Entry, Round } from '../../log/book.ts';
import { ShotDots, type Dot } from './ShotDots.tsx';
import type { Together } from './useTogether.ts';

/** The latest shots that belong together: those of one stop, one trip or one step. */
export function StopDots({ round, others, stop }: Together & { readonly stop: number }) {
  const face = faceOf(round, others);
  if (!face) return <ShotDots dots={stopDots(round, stop)} label="Shots at this spot" />;
  const { taken, toCome } = face.near;
  const shot = taken === 0 ? [] : round.entries.flatMap(dotsOfEntry).slice(-taken);
  return (
    <ShotDots
      dots={[...shot, ...open(toCome)]}
      label={NEAR_WORDS[face.game.family] ?? 'Shots at this spot'}
    />
  );
}

const NEAR_WORDS: Readonly<Partial<Record<string, string>>> = {
  trips: 'Shots of this trip',
  climb: 'Shots on this step',
};

function stopDots(round: Round, stop: number): Dot[] {
  const taken = round.entries.filter((entry) => entry.stop === stop).flatMap(dotsOfEntry);
  return [...taken, ...open((round.stops[stop]?.attempts ?? 0) - taken.length)];
}

function open(count: number): Dot[] {
  return Array.from({ length: Math.max(0, count) }, () => ({ is: 'open' }));
}

function dotsOfEntry(entry: Entry): Dot[] {
  switch (entry.kind) {
    case 'shot':
      return [{ is: entry.made ? 'make' : 'miss', entry: entry.id }];
    case 'expired':
      return [{ is: 'lost', entry: entry.id }];
    case 'count':
      return Array.from({ length: entry.attempts }, (_, at) => ({
        is: at < entry.makes ? 'make' : 'miss',
        entry: entry.id,
      }));
  }
}
