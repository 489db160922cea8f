import { useLayoutEffect, type ReactNode } from 'react';

import type { IsoDate } from '../basics/units.ts';
import type { DropEstimate } from '../stats/drop.ts';
import { Glyph, type GlyphKind } from './Glyph.tsx';
import { linear, reachOf, ticks, type Scale } from './scale.ts';
import type { MarkRate } from './SpotMap.tsx';
import { useWidth } from './useWidth.ts';
import { weekFrame, type WeekFrame } from './weekFrame.ts';

/** One session or one week. */
export interface SessionMark {
  readonly key: string;
  readonly date: IsoDate;
  readonly relaxed: MarkRate;
  readonly pressured: MarkRate;
  readonly drop: DropEstimate | null;
}

interface Props {
  readonly label: string;
  /** Oldest first, at least one. */
  readonly marks: readonly SessionMark[];
  /** Whether a mark stands for one session or for a whole week. */
  readonly each: 'session' | 'week';
  /** A Monday, as short as it can be. */
  readonly dayWords: (date: IsoDate) => string;
}

/** Room for the axis, which stays where it is while the season is scrolled. */
const LEFT = 40;
const EDGE = 8;
const RATES_TOP = 34;
const RATES_BOTTOM = 274;
const DROP_TOP = 328;
const DROP_BOTTOM = 500;
const HEIGHT = 536;
const RATE_TICKS = ticks(0, 1, 0.25);
/** Relaxed stands this far left, pressured this far right of its day. */
const APART = { session: 5, week: 7 };
const LEAST_WEEK = { session: 64, week: 34 };

/** Relaxed and pressured over time with their intervals; below it the drop. A week without shots stays empty. */
export function SessionsChart({ label, marks, each, dayWords }: Props) {
  const [box, room] = useWidth<HTMLDivElement>();
  const frame = weekFrame(
    marks.map(({ date }) => date),
    { width: room, edge: EDGE, leastWeek: LEAST_WEEK[each], labelWidth: 74 },
  );
  const rateY = linear([0, 1], [RATES_BOTTOM, RATES_TOP]);
  const reach = reachOf(marks.flatMap(({ drop }) => (drop ? [drop.low, drop.high] : [])));
  const dropY = linear([-reach, reach], [DROP_BOTTOM, DROP_TOP]);
  const dropTicks = ticks(-reach, reach, reach / 2);
  const x = each === 'week' ? frame.weekMiddleX : frame.dayX;
  const apart = APART[each];
  // The newest is what one came to see.
  useLayoutEffect(() => {
    box.current?.scrollTo({ left: frame.width });
  }, [box, frame.width]);
  return (
    <div className="chart over-time">
      <svg className="axis" width={LEFT} height={HEIGHT} aria-hidden="true">
        <text className="plot-name" x={0} y={18}>
          Makes in 100 shots
        </text>
        <AxisWords values={RATE_TICKS} y={rateY} write={(rate) => String(Math.round(rate * 100))} />
        <text className="plot-name" x={0} y={DROP_TOP - 18}>
          Points lost under pressure
        </text>
        <AxisWords values={dropTicks} y={dropY} write={signed} />
      </svg>
      {/* A long season is wider than the screen and is scrolled inside its own frame, by keyboard too. */}
      <div ref={box} className="scroll" role="region" aria-label="Drawing over time" tabIndex={0}>
        <svg width={frame.width} height={HEIGHT} role="img" aria-label={label}>
          <Weeks frame={frame} dayWords={dayWords} />
          <Lines values={RATE_TICKS} y={rateY} width={frame.width} />
          <Lines values={dropTicks} y={dropY} width={frame.width} />
          {marks.map(({ key, date, relaxed, pressured, drop }) => (
            <g key={key}>
              <Span kind="relaxed" x={x(date) - apart} span={spanOf(relaxed)} y={rateY} />
              <Span kind="pressured" x={x(date) + apart} span={spanOf(pressured)} y={rateY} />
              <Span kind="drop" x={x(date)} span={drop && { ...drop, value: drop.points }} y={dropY} />
            </g>
          ))}
        </svg>
      </div>
    </div>
  );
}

interface TickProps {
  readonly values: readonly number[];
  readonly y: Scale;
}

function AxisWords({
  values,
  y,
  write,
}: TickProps & { readonly write: (value: number) => string }): ReactNode {
  return values.map((value) => (
    <text key={value} className="tick" x={LEFT - 8} y={y(value) + 5} textAnchor="end">
      {write(value)}
    </text>
  ));
}

function Lines({ values, y, width }: TickProps & { readonly width: number }): ReactNode {
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

function Weeks({ frame, dayWords }: { readonly frame: WeekFrame } & Pick<Props, 'dayWords'>): ReactNode {
  return frame.mondays.map((monday, at) => (
    <g key={monday}>
      <line className="grid" x1={frame.weekX(at)} x2={frame.weekX(at)} y1={RATES_TOP} y2={RATES_BOTTOM} />
      <line className="grid" x1={frame.weekX(at)} x2={frame.weekX(at)} y1={DROP_TOP} y2={DROP_BOTTOM} />
      {at % frame.labelEvery === 0 ? (
        <text className="tick" x={frame.weekX(at) + 2} y={HEIGHT - 10}>
          {dayWords(monday)}
        </text>
      ) : null}
    </g>
  ));
}

interface SpanProps {
  readonly kind: GlyphKind;
  readonly x: number;
  readonly span: { readonly value: number; readonly low: number; readonly high: number } | null;
  readonly y: Scale;
}

function Span({ kind, x, span, y }: SpanProps) {
  if (!span) return null;
  const [top, bottom] = [Math.min(y(span.low), y(span.high)), Math.max(y(span.low), y(span.high))];
  return (
    <>
      <rect
        className={`span thin ${kind}`}
        x={x - 1.5}
        y={top}
        width={3}
        height={Math.max(1, bottom - top)}
      />
      <Glyph kind={kind} x={x} y={y(span.value)} size={5} />
    </>
  );
}

function spanOf({ rate }: MarkRate): SpanProps['span'] {
  return rate && { value: rate.p, low: rate.low, high: rate.high };
}

function signed(points: number): string {
  return points < 0 ? `−${-points}` : String(points);
}
