import { MOST_GAME_SHOTS } from '../../games/gameFault.ts';
import { NumberField } from './NumberField.tsx';

interface Props {
  readonly value: number;
  readonly onChange: (most: number) => void;
}

/** Every game that could go on and on has an end. */
export function MostShots({ value, onChange }: Props) {
  return (
    <NumberField
      label="Over after so many shots at most"
      value={value}
      min={5}
      max={MOST_GAME_SHOTS}
      step={5}
      onChange={onChange}
    />
  );
}
