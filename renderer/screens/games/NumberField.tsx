import type { ComponentProps } from 'react';

import { Stepper } from '../parts/Stepper.tsx';

/** A number of a game with its name above it. */
export function NumberField(props: ComponentProps<typeof Stepper>) {
  return (
    <div className="game-number">
      <p aria-hidden="true">{props.label}</p>
      <Stepper {...props} />
    </div>
  );
}
