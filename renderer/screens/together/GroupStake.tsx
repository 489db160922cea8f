import { tellAge } from '../../store/ageActions.ts';
import { stakeOpen, type GroupLine } from '../../store/groupLine.ts';
import type { GroupWish } from '../../store/groupWish.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { StakeField } from '../line/StakeField.tsx';
import { StakeCaution } from '../line/StakePanel.tsx';
import { WhyConsequences } from '../line/WhyConsequences.tsx';
import { AgeChoice } from '../shooter/AgePanel.tsx';
import { useNames } from '../useNames.ts';

interface Props {
  readonly wish: GroupWish;
  readonly line: GroupLine;
  readonly onChange: (change: Partial<GroupWish>) => void;
}

/** What whoever falls short owes the others; nothing where someone under 18 plays. */
export function GroupStake(props: Props) {
  const { wish, line } = props;
  const book = useGym((state) => state.book);
  const open = stakeOpen(book, wish.shooters, line);
  return (
    <section className="panel" aria-label="What is on the line?">
      <h2>What is on the line?</h2>
      {line.young ? (
        <p>Nothing: someone under 18 plays. The marks and the others are pressure enough.</p>
      ) : line.held ? (
        <p>Nothing today: it would be a step up for somebody on a day that is no day for one.</p>
      ) : null}
      {open === null && !line.young ? <Ages {...props} /> : null}
      {open === true ? <Stake {...props} /> : null}
      <WhyConsequences />
    </section>
  );
}

/** Nothing can be on the line before everybody has told. */
function Ages({ line }: Props) {
  const { gym } = useDoors();
  const nameOf = useNames();
  return (
    <>
      <p>Nothing, as long as somebody has not told whether they are under 18. Nobody has to.</p>
      {line.ageless.map((shooter) => (
        <AgeChoice
          key={shooter}
          name={nameOf(shooter)}
          value={null}
          onTell={(young) => void tellAge(gym, shooter, young)}
        />
      ))}
    </>
  );
}

function Stake({ wish, onChange }: Props) {
  return (
    <>
      <StakeField
        value={wish.stake}
        placeholder="Whoever falls short sweeps the gym"
        onChange={(stake) => onChange({ stake })}
      />
      <StakeCaution />
    </>
  );
}
