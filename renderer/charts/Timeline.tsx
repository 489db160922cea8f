import { useLayoutEffect, useState, type ReactNode } from 'react';

import type { IsoDate } from '../basics/units.ts';
import { linear, ticks, type Scale } from './scale.ts';
import { usePrinting } from './usePrinting.ts';
import { useWidth } from './useWidth.ts';
import { weekFrame, type WeekFrame } from './weekFrame.ts';

/** One of the plots that stand above each other on one axis of weeks. */
export interface Plot {
  readonly name: string;
  readonly top: number;
  readonly bottom: number;
  readonly ticks: readonly number[];
  readonly write: (value: number) => string;
  readonly y: Scale;
}

interface PlotShape extends Pick<Plot, 'name' | 'top' | 'bottom' | 'write'> {
  readonly from: number;
  readonly to: number;
  /** From one line to the next. */
  readonly step: number;
}

export function plotOf({ from, to, step, ...plot }: PlotShape): Plot {
  return { ...plot, ticks: ticks(from, to, step), y: linear([from, to], [plot.bottom, plot.top]) };
}

/** Above each plot its name stands. */
const ABOVE = 34;
const BETWEEN = 54;
/** On paper plots are lower, so that a drawing of two goes on a sheet with what stands before it. */
const LOWER = 0.58;

/** Where two plots lie, the upper one and the lower one of these heights. */
export function useTwoPlots(upper: number, lower: number): readonly [Place, Place] {
  const share = usePrinting() ? LOWER : 1;
  const middle = ABOVE + upper * share;
  const second = middle + BETWEEN;
  return [
    { top: ABOVE, bottom: middle },
    { top: second, bottom: second + lower * share },
  ];
}

type Place = Pick<Plot, 'top' | 'bottom'>;

interface Props {
  /** What a reader of the screen hears instead of the drawing. */
  readonly label: string;
  /** What the frame it is scrolled in is called. */
  readonly frameName: string;
  /** Days with something on them, in order, at least one. */
  readonly dates: readonly IsoDate[];
  /** From the top down. */
  readonly plots: readonly Plot[];
  /** A week is never narrower on the screen. */
  readonly leastWeek: number;
  /** A Monday, as short as it can be. */
  readonly dayWords: (date: IsoDate) => string;
  readonly children: (frame: WeekFrame) => ReactNode;
}

/** Room for the axis, which stays where it is while the season is scrolled. */
const LEFT = 40;
const EDGE = 8;
/** A day in words with the gap beside it. */
const LABEL = 74;
const LABEL_GAP = 22;
const DAYS = 26;
const YEARS = 46;
const BELOW = 56;

/**
 * A season drawn to the week. On the screen a long one is scrolled inside its own frame, the newest in view, or fitted
 * to the width as it always is on paper.
 */
export function Timeline({ label, frameName, dates, plots, leastWeek, dayWords, children }: Props) {
  const printing = usePrinting();
  const [box, room] = useWidth<HTMLDivElement>(LEFT);
  const [whole, setWhole] = useState(false);
  const frameOf = (least: number) =>
    weekFrame(dates, { width: room, edge: EDGE, leastWeek: least, labelWidth: LABEL });
  const roomy = frameOf(leastWeek);
  const frame = printing || whole ? frameOf(0) : roomy;
  const floor = Math.max(...plots.map(({ bottom }) => bottom));
  const height = floor + BELOW;
  // The newest is what one came to see, also after the tablet was turned.
  useLayoutEffect(() => {
    box.current?.scrollTo({ left: frame.width });
  }, [box, room, frame.width]);
  return (
    <div className="chart over-time">
      <svg className="axis" width={LEFT} height={height} aria-hidden="true">
        {plots.map((plot) => (
          <AxisWords key={plot.name} plot={plot} />
        ))}
      </svg>
      <div ref={box} className="scroll" role="region" aria-label={frameName} tabIndex={0}>
        <svg
          width={frame.width}
          height={height}
          viewBox={`0 0 ${frame.width} ${height}`}
          role="img"
          aria-label={label}
        >
          <Weeks frame={frame} plots={plots} floor={floor} dayWords={dayWords} />
          {plots.map((plot) => (
            <Lines key={plot.name} plot={plot} width={frame.width} />
          ))}
          {children(frame)}
        </svg>
      </div>
      {roomy.width > room ? (
        <div className="row scroll-hint">
          <button
            type="button"
            className="button"
            aria-pressed={whole}
            onClick={() => setWhole((before) => !before)}
          >
            Whole season
          </button>
          {whole ? null : <p className="quiet">Slide the drawing sideways for earlier weeks.</p>}
        </div>
      ) : null}
    </div>
  );
}

function AxisWords({ plot: { name, top, ticks: values, write, y } }: { readonly plot: Plot }) {
  return (
    <>
      <text className="plot-name" x={0} y={top - 16}>
        {name}
      </text>
      {values.map((value) => (
        <text key={value} className="tick" x={LEFT - 8} y={y(value) + 5} textAnchor="end">
          {write(value)}
        </text>
      ))}
    </>
  );
}

function Lines({ plot: { ticks: values, y }, width }: { readonly plot: Plot; readonly width: number }) {
  return values.map((value) => (
    <line
      key={value}
      className={value === 0 ? 'grid zero' : 'grid'}
      x1={0}
      x2={width}
      y1={y(value)}
      y2={y(value)}
    />
  ));
}

interface WeeksProps extends Pick<Props, 'plots' | 'dayWords'> {
  readonly frame: WeekFrame;
  /** Where the lowest plot ends. */
  readonly floor: number;
}

/** A line and a day where there is room for one, and the year below the first day of each year. */
function Weeks({ frame, plots, floor, dayWords }: WeeksProps): ReactNode {
  let year = '';
  return frame.mondays.map((monday, at) => {
    const labelled = at % frame.labelEvery === 0 && frame.weekX(at) + LABEL < frame.width + LABEL_GAP;
    const next = monday.slice(0, 4);
    const newYear = labelled && next !== year;
    if (newYear) year = next;
    const x = frame.weekX(at);
    // Closer together, lines would be a grey sheet.
    if (!labelled && frame.weekWidth < CLOSEST_LINES) return null;
    return (
      <g key={monday}>
        {plots.map(({ name, top, bottom }) => (
          <line key={name} className="grid" x1={x} x2={x} y1={top} y2={bottom} />
        ))}
        {labelled ? (
          <text className="tick" x={x + 2} y={floor + DAYS}>
            {dayWords(monday)}
          </text>
        ) : null}
        {newYear ? (
          <text className="tick" x={x + 2} y={floor + YEARS}>
            {year}
          </text>
        ) : null}
      </g>
    );
  });
}

const CLOSEST_LINES = 12;
