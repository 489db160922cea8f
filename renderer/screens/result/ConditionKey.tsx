import { GlyphIcon } from '../../charts/Glyph.tsx';

/** Which mark stands for which condition. */
export function ConditionKey({ drop = false }: { readonly drop?: boolean }) {
  return (
    <p className="key">
      <span>
        <GlyphIcon kind="relaxed" /> relaxed
      </span>
      <span>
        <GlyphIcon kind="pressured" /> pressured
      </span>
      {drop ? (
        <span>
          <GlyphIcon kind="drop" /> drop
        </span>
      ) : null}
    </p>
  );
}
