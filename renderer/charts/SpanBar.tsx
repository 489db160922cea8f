import { Glyph, type GlyphKind } from './Glyph.tsx';
import { linear } from './scale.ts';

/** The scale bars share: its ends, and a value to be marked on it. */
export interface BarScale {
  readonly from: number;
  readonly to: number;
  readonly mark?: number;
}

/** A figure with its interval. */
export interface Span {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

interface Props {
  readonly kind: GlyphKind;
  readonly open?: boolean;
  /** Null where there is nothing to draw. */
  readonly span: Span | null;
  readonly scale: BarScale;
  /** Where it stands in a larger drawing; without, it fills its box. */
  readonly at?: { readonly x: number; readonly y: number; readonly width: number };
}

/** As tall as a bar is drawn. */
export const BAR_HEIGHT = 24;
const MIDDLE = BAR_HEIGHT / 2;
/** Half the height of the ends of an interval, which stand out above and below the mark, and of a value on the scale. */
const CAP = 8;
const TICK = 11;
const MARK = 4.5;

/**
 * A figure on a scale: the mark, and behind it the interval with its two ends, which are taller than the mark so that a
 * narrow one is seen too. An interval that runs beyond the scale has no end there. As wide as its box, measured by nobody.
 */
export function SpanBar({ kind, open = false, span, scale, at }: Props) {
  const share = linear([scale.from, scale.to], [0, 100]);
  const x = (value: number): string => `${share(value)}%`;
  return (
    <svg
      className="span-bar"
      x={at?.x}
      y={at?.y}
      width={at?.width ?? '100%'}
      height={BAR_HEIGHT}
      aria-hidden="true"
    >
      <line className="spot-track" x1="0" x2="100%" y1={MIDDLE} y2={MIDDLE} />
      {scale.mark === undefined ? null : <Upright className="spot-zero" x={x(scale.mark)} reach={TICK} />}
      {span ? (
        <>
          <g className={`whisker ${kind}`}>
            <line x1={x(span.low)} x2={x(span.high)} y1={MIDDLE} y2={MIDDLE} />
            {[span.low, span.high].map((end, which) =>
              end < scale.from || end > scale.to ? null : (
                <Upright key={which === 0 ? 'low' : 'high'} x={x(end)} reach={CAP} />
              ),
            )}
          </g>
          <svg className="span-mark" x={x(span.value)} y={MIDDLE}>
            <Glyph kind={kind} open={open} x={0} y={0} size={MARK} />
          </svg>
        </>
      ) : null}
    </svg>
  );
}

interface UprightProps {
  readonly className?: string;
  readonly x: string;
  readonly reach: number;
}

function Upright({ className, x, reach }: UprightProps) {
  return <line className={className} x1={x} x2={x} y1={MIDDLE - reach} y2={MIDDLE + reach} />;
}
