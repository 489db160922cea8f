import type { PointerEvent, ReactNode } from 'react';

import type { CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';
import { courtFrame, keyPath, threePointPath, type DrawnPoint } from './courtFrame.ts';

interface Props {
  readonly court: CourtDimensions;
  /** What a reader of the screen hears instead of the drawing. */
  readonly label: string;
  /** Draws into the court; `toDrawing` turns metres into places on the drawing, whose unit is the centimetre. */
  readonly children?: (toDrawing: (point: CourtPoint) => DrawnPoint) => ReactNode;
  /** A touch on the floor, in metres from the rim. */
  readonly onFloor?: (point: CourtPoint) => void;
}

const BOARD_FROM_ENDLINE = 1.2;
const BOARD_HALF_WIDTH = 0.9;

/** A half court with the lines of a rule set, basket at the top. */
export function CourtMap({ court, label, children, onFloor }: Props) {
  const frame = courtFrame(court);
  const rim = frame.toDrawing({ x: 0, y: 0 });
  const board = frame.toDrawing({ x: 0, y: BOARD_FROM_ENDLINE - court.rimFromEndline });
  const touched = (touch: PointerEvent<SVGSVGElement>) => {
    const box = touch.currentTarget.getBoundingClientRect();
    const scale = frame.width / box.width;
    onFloor?.(frame.toFloor({ x: (touch.clientX - box.left) * scale, y: (touch.clientY - box.top) * scale }));
  };
  return (
    <svg
      className={onFloor ? 'court-map touchable' : 'court-map'}
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      role="img"
      aria-label={label}
      onPointerDown={onFloor ? touched : undefined}
    >
      <rect className="court-floor" width={frame.width} height={frame.height} rx={20} />
      <path className="court-line" d={keyPath(court)} />
      <path className="court-line" d={threePointPath(court)} />
      <line
        className="court-line"
        x1={board.x - BOARD_HALF_WIDTH * 100}
        x2={board.x + BOARD_HALF_WIDTH * 100}
        y1={board.y}
        y2={board.y}
      />
      <circle className="court-rim" cx={rim.x} cy={rim.y} r={(court.rimDiameter / 2) * 100} />
      {children?.(frame.toDrawing)}
    </svg>
  );
}
