import type { CourtDimensions } from '../court/ruleSets.ts';
import type { CourtPoint } from '../court/spots.ts';
import type { GlyphKind } from './Glyph.tsx';
import type { BarScale, Span } from './SpanBar.tsx';

/** One line of a card: a figure with its unit, and its interval on the scale all cards share. */
export interface CardRow {
  readonly kind: GlyphKind;
  /** An outline: as it was shot. */
  readonly open?: boolean;
  /** What the figure is of, for a reader of the screen. */
  readonly of: string;
  readonly figure: string;
  readonly unit: string;
  /** Null where there is none. */
  readonly span: Span | null;
}

/** What stands at one spot. */
export interface SpotCard {
  readonly name: string;
  readonly point: CourtPoint;
  readonly rows: readonly [CardRow, CardRow];
  /** A broken edge: not from shots at this spot alone. */
  readonly broken?: boolean;
}

/** A half court with what stands at its spots. */
export interface SpotCardsProps {
  readonly court: CourtDimensions;
  /** What a reader of the screen hears instead of the drawing. */
  readonly label: string;
  /** In the order they are numbered and listed. */
  readonly cards: readonly SpotCard[];
  readonly scale: BarScale;
}
