import { LadderRules } from '../line/LadderRules.tsx';
import { ConsequenceFacts } from '../line/WhyConsequences.tsx';
import { Part } from './Part.tsx';

/** What a round leads to: why that is raised step by step, and why it is never money. */
export function Consequences() {
  return (
    <Part title="What a round leads to">
      <ConsequenceFacts />
      <LadderRules />
    </Part>
  );
}
