import type { IsoDate } from '../basics/units.ts';
import type { DropEstimate } from '../stats/drop.ts';
import { Glyph, type GlyphKind } from './Glyph.tsx';
import { reachOf, signedTick, type Scale } from './scale.ts';
import type { MarkRate } from './SpotMap.tsx';
import { plotOf, Timeline, useTwoPlots } from './Timeline.tsx';

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

/** Relaxed stands this far left, pressured this far right of its day; nearer where weeks are narrow. */
const APART = { session: 5, week: 7 };
const MOST_APART = 0.2;
const LEAST_WEEK = { session: 64, week: 34 };
const SIZE = 5;

/** Relaxed and pressured over time with their intervals; below it the drop. A week without shots stays empty. */
export function SessionsChart({ label, marks, each, dayWords }: Props) {
  const [upper, lower] = useTwoPlots(240, 172);
  const rates = plotOf({
    name: 'Makes in 100 shots',
    ...upper,
    from: 0,
    to: 1,
    step: 0.25,
    write: (rate) => String(Math.round(rate * 100)),
  });
  const reach = reachOf(marks.flatMap(({ drop }) => (drop ? [drop.low, drop.high] : [])));
  const drops = plotOf({
    name: 'Points lost under pressure',
    ...lower,
    from: -reach,
    to: reach,
    step: reach / 2,
    write: signedTick,
  });
  return (
    <Timeline
      label={label}
      frameName="Drawing over time"
      dates={marks.map(({ date }) => date)}
      plots={[rates, drops]}
      leastWeek={LEAST_WEEK[each]}
      dayWords={dayWords}
    >
      {({ weekWidth, weekMiddleX, dayX }) => {
        const x = each === 'week' ? weekMiddleX : dayX;
        const apart = Math.min(APART[each], MOST_APART * weekWidth);
        const size = Math.min(SIZE, apart);
        return marks.map(({ key, date, relaxed, pressured, drop }) => (
          <g key={key}>
            <Span kind="relaxed" x={x(date) - apart} span={spanOf(relaxed)} y={rates.y} size={size} />
            <Span kind="pressured" x={x(date) + apart} span={spanOf(pressured)} y={rates.y} size={size} />
            <Span
              kind="drop"
              x={x(date)}
              span={drop && { ...drop, value: drop.points }}
              y={drops.y}
              size={size}
            />
          </g>
        ));
      }}
    </Timeline>
  );
}

interface SpanProps {
  readonly kind: GlyphKind;
  readonly x: number;
  readonly span: { readonly value: number; readonly low: number; readonly high: number } | null;
  readonly y: Scale;
  readonly size: number;
}

function Span({ kind, x, span, y, size }: SpanProps) {
  if (!span) return null;
  const [top, bottom] = [Math.min(y(span.low), y(span.high)), Math.max(y(span.low), y(span.high))];
  const width = Math.min(3, size);
  return (
    <>
      <rect
        className={`span thin ${kind}`}
        x={x - width / 2}
        y={top}
        width={width}
        height={Math.max(1, bottom - top)}
      />
      <Glyph kind={kind} x={x} y={y(span.value)} size={size} />
    </>
  );
}

function spanOf({ rate }: MarkRate): SpanProps['span'] {
  return rate && { value: rate.p, low: rate.low, high: rate.high };
}
