interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  /** How the value is written. */
  readonly write?: (value: number) => string;
  readonly onChange: (value: number) => void;
}

/** A number with a big minus and a big plus. */
export function Stepper({ label, value, min, max, step = 1, write = String, onChange }: Props) {
  const to = (next: number) => onChange(Math.min(max, Math.max(min, next)));
  return (
    <div className="stepper" role="group" aria-label={label}>
      <button
        type="button"
        className="button"
        disabled={value <= min}
        onClick={() => to(value - step)}
        aria-label={`${label}: less`}
      >
        −
      </button>
      <output className="figure" aria-live="polite">
        {write(value)}
      </output>
      <button
        type="button"
        className="button"
        disabled={value >= max}
        onClick={() => to(value + step)}
        aria-label={`${label}: more`}
      >
        +
      </button>
    </div>
  );
}
