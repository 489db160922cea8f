import { Stepper } from '../parts/Stepper.tsx';

interface Props {
  readonly label: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
  readonly step?: number;
  readonly write?: (value: number) => string;
  readonly onChange: (value: number) => void;
}

/** A number of a game with its name above it. */
export function NumberField(props: Props) {
  return (
    <div className="game-number">
      <p aria-hidden="true">{props.label}</p>
      <Stepper {...props} />
    </div>
  );
}
