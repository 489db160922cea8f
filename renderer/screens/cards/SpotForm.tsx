import { useState } from 'react';

import { COURTS } from '../../court/ruleSets.ts';
import type { CourtPoint, SpotName } from '../../court/spots.ts';
import type { Shooter } from '../../log/book.ts';
import { LONGEST_NAME, placeSpot, spotNameFault } from '../../store/cardActions.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { distanceStep, distanceWords } from '../parts/distance.ts';
import { Stepper } from '../parts/Stepper.tsx';
import { TouchMap } from './TouchMap.tsx';
import { spotPlaceWords } from './spotPlaceWords.ts';

interface Props {
  readonly shooter: Shooter;
  /** A spot that has its name already; null for a new one. */
  readonly known: SpotName | null;
  readonly onDone: (words: string | null) => void;
}

/** Straight out from the rim, inside every three-point line: a place to start moving from. */
const MIDDLE: CourtPoint = { x: 0, y: 3 };
/** The floor that is drawn beyond the arc. */
const FARTHEST = 8.4;

/** Puts a spot on the floor by touch, or by steps from the rim. */
export function SpotForm({ shooter, known, onDone }: Props) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const court = COURTS[shooter.rules];
  const { units } = shooter;
  const before = known === null ? undefined : book.ownSpots.get(known);
  const [name, setName] = useState(known ?? '');
  const [point, setPoint] = useState(before ?? MIDDLE);
  const [fault, setFault] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const half = court.width / 2;
  const step = distanceStep(units);

  const save = async () => {
    const wrong = spotNameFault(book, name, known !== null);
    setFault(wrong);
    if (wrong !== null) return;
    setBusy(true);
    const saved = await placeSpot(gym, name, toCentimetres(point));
    setBusy(false);
    if (saved) onDone(`${name.trim()} is on the floor.`);
  };

  return (
    <form
      className="map-columns"
      onSubmit={(submit) => {
        submit.preventDefault();
        void save();
      }}
    >
      <section className="panel" aria-labelledby="spot-place">
        <h2 id="spot-place">Touch the floor where it is</h2>
        <TouchMap
          shooter={shooter}
          label="Half court. Touch the floor to put the spot there, or use the steps beside it."
          chosen={known}
          placing={point}
          onFloor={({ x, y }) =>
            setPoint({
              x: Math.min(half, Math.max(-half, x)),
              y: Math.min(FARTHEST, Math.max(-court.rimFromEndline, y)),
            })
          }
        />
        <p className="lead" role="status">
          {spotPlaceWords(point, court, units)}
        </p>
      </section>
      <section className="panel spot-steps" aria-labelledby="spot-name">
        <h2 id="spot-name">{known === null ? 'Its name' : known}</h2>
        {known === null ? (
          <label className="field">
            Name of the spot
            <input
              value={name}
              maxLength={LONGEST_NAME}
              autoComplete="off"
              placeholder="Short corner"
              aria-describedby={fault === null ? undefined : 'spot-fault'}
              onChange={(change) => setName(change.target.value)}
            />
          </label>
        ) : (
          <p>Shots on record under this name are shown at the new place from now on.</p>
        )}
        <p className="stepper-words">Sideways from the rim, as you face it</p>
        <Stepper
          label="Sideways from the rim"
          value={point.x}
          min={-half}
          max={half}
          step={step}
          write={(x) => sidewaysWords(x, (metres) => distanceWords(metres, units))}
          onChange={(x) => setPoint({ ...point, x })}
        />
        <p className="stepper-words">Out from the rim, towards midcourt</p>
        <Stepper
          label="Out from the rim"
          value={point.y}
          min={-court.rimFromEndline}
          max={FARTHEST}
          step={step}
          write={(y) =>
            y < -0.04 ? `${distanceWords(-y, units)} behind` : distanceWords(Math.max(0, y), units)
          }
          onChange={(y) => setPoint({ ...point, y })}
        />
        {fault === null ? null : (
          <p id="spot-fault" className="notice warn" role="alert">
            {fault}
          </p>
        )}
        <div className="row">
          <button type="submit" className="button main" disabled={busy}>
            {before ? 'Move it here' : 'Keep this spot'}
          </button>
          <button type="button" className="button" onClick={() => onDone(null)}>
            Leave without it
          </button>
        </div>
      </section>
    </form>
  );
}

function sidewaysWords(x: number, written: (metres: number) => string): string {
  const side = x < 0 ? 'left' : 'right';
  return Math.abs(x) < 0.05 ? 'middle' : `${written(Math.abs(x))} ${side}`;
}

/** A finger is no better than a centimetre. */
function toCentimetres({ x, y }: CourtPoint): CourtPoint {
  return { x: Math.round(x * 100) / 100, y: Math.round(y * 100) / 100 };
}
