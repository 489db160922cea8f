/**
 * Contrast of two colours, 1 to 21, as WCAG 2.2 defines it ("contrast ratio", "relative luminance").
 *
 * @param one `#rrggbb` or `#rgb`
 */
export function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].toSorted((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const long = colour.length === 4 ? colour.replaceAll(/[\da-f]/gi, '$&$&') : colour;
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) =>
    linear(Number.parseInt(long.slice(at, at + 2), 16) / 255),
  );
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function linear(channel: number): number {
  return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
}

/** The colours of a rule in a stylesheet, by the name of their custom property without the dashes. */
export function coloursOf(css: string, selector: string): Map<string, string> {
  const from = css.indexOf(`${selector} {`);
  if (from === -1) throw new Error(`There is no rule for ${selector}.`);
  const rule = css.slice(from, css.indexOf('}', from));
  return new Map(
    [...rule.matchAll(/--([a-z-]+):\s*(#[\da-f]{3,6});/gi)].map(([, name = '', colour = '']) => [
      name,
      colour,
    ]),
  );
}
