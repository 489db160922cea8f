/** What a mark stands for. Shape tells it apart as well as colour: circle, diamond, square. */
export type GlyphKind = 'relaxed' | 'pressured' | 'drop';

interface Props {
  readonly kind: GlyphKind;
  readonly x: number;
  readonly y: number;
  /** Half the width, in the drawing's unit. */
  readonly size: number;
  /** An outline: as it was shot, where a filled square stands for what the model makes of it. For a drop alone. */
  readonly open?: boolean;
}

/** The mark of a condition: relaxed a circle, pressured a diamond, the drop between them a square. */
export function Glyph({ kind, x, y, size, open = false }: Props) {
  if (kind === 'relaxed') return <circle className="mark relaxed" cx={x} cy={y} r={size} />;
  if (kind === 'pressured') {
    const reach = size * 1.25;
    return (
      <path
        className="mark pressured"
        d={`M${x} ${y - reach}L${x + reach} ${y}L${x} ${y + reach}L${x - reach} ${y}Z`}
      />
    );
  }
  return (
    <rect
      className={open ? 'mark drop open' : 'mark drop'}
      x={x - size * 0.8}
      y={y - size * 0.8}
      width={size * 1.6}
      height={size * 1.6}
    />
  );
}

/** A {@link Glyph} in a line of text; the word beside it says what it means. */
export function GlyphIcon({ kind, open = false }: { readonly kind: GlyphKind; readonly open?: boolean }) {
  return (
    <svg className="glyph" viewBox="-10 -10 20 20" aria-hidden="true">
      <Glyph kind={kind} x={0} y={0} size={8} open={open} />
    </svg>
  );
}
