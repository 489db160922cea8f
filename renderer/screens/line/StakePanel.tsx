import { useMemo } from 'react';

import type { ShooterId } from '../../basics/ids.ts';
import { debtsOf } from '../../games/ledger.ts';
import { FAVOURS, timesOwed, type Doubles } from '../../pressure/stakes.ts';
import { tellAge } from '../../store/ageActions.ts';
import type { Line } from '../../store/line.ts';
import { writeAddress } from '../../store/places.ts';
import type { PressureWish } from '../../store/pressureWish.ts';
import { useDoors, useGym } from '../gymContext.ts';
import { Choice } from '../parts/Choice.tsx';
import { AgeChoice } from '../shooter/AgePanel.tsx';
import { owedWords } from '../stakes/debtWords.ts';
import { brakeWords, timesWords } from './lineWords.ts';
import { StakeField } from './StakeField.tsx';
import { WhyConsequences } from './WhyConsequences.tsx';

interface Props {
  readonly shooter: ShooterId;
  readonly line: Line;
  readonly wish: PressureWish;
  readonly onChange: (change: Partial<PressureWish>) => void;
}

/** What the shooter owes after falling short, and is owed after winning; with the cautions that belong to it. */
export function StakePanel(props: Props) {
  return (
    <section className="panel" aria-label="What is on the line?">
      <h2>What is on the line?</h2>
      <Stake {...props} />
      <WhyConsequences />
    </section>
  );
}

function Stake(props: Props) {
  const { line, wish, shooter } = props;
  if (line.policy === 'off') return <NoStake shooter={shooter} />;
  if (wish.doubles) return <Doubling shooter={shooter} doubles={wish.doubles} />;
  if (line.highest !== 'forfeit') {
    return <p className="notice">Nothing today: {brakeWords(line.brakes)}. Shoot for the record alone.</p>;
  }
  return line.policy === 'favours' ? <FavourChoice {...props} /> : <OwnWords {...props} />;
}

function OwnWords({ shooter, wish, onChange }: Props) {
  const stakes = useEarlierStakes(shooter);
  return (
    <>
      <StakeField
        value={wish.stake}
        placeholder="Loser buys lunch"
        earlier={stakes}
        onChange={(stake) => onChange({ stake })}
      />
      {wish.stake.trim() !== '' && !wish.mark ? (
        <p className="notice">
          Without a mark to beat nobody can say who owes, so this stays out of the ledger.
        </p>
      ) : null}
      <AskAge shooter={shooter} />
      <StakeCaution />
    </>
  );
}

/** Stands wherever a stake is set in free words. */
export function StakeCaution() {
  return (
    <p className="quiet">
      Small, agreed by everyone, and done in the open. Never money. Nothing that costs sleep or food, shames
      anyone, hurts, or is more work for a tired body, such as extra running. Local rules come first, and so
      do those of a league or a school: some count a meal or a shirt as a bet.
    </p>
  );
}

function FavourChoice({ wish, onChange }: Props) {
  return (
    <>
      <Choice
        question="A small favour"
        hint="Whoever falls short does it, today and in front of everybody."
        answers={[
          { value: '', words: 'Nothing' },
          ...FAVOURS.map((favour) => ({ value: favour, words: favour })),
        ]}
        value={wish.stake}
        onChoose={(stake) => onChange({ stake })}
      />
      <p className="quiet">
        Favours are on because an adult allowed them. Nothing is ever kept from that adult. Local rules come
        first.
      </p>
    </>
  );
}

function NoStake({ shooter }: { readonly shooter: ShooterId }) {
  const name = useGym(({ book }) => book.shooters.get(shooter)?.name);
  return (
    <>
      <p>Nothing: {name} is under 18. The mark, the clock and the crowd are pressure enough.</p>
      <p className="quiet">
        An adult can allow small favours from a short list.{' '}
        <a href={writeAddress('shooter', shooter)}>Where that is set</a>
      </p>
    </>
  );
}

/** The debt that is shot for, and what becomes of it. */
function Doubling({ shooter, doubles }: { readonly shooter: ShooterId; readonly doubles: Doubles }) {
  const book = useGym((state) => state.book);
  const debt = useMemo(
    () => debtsOf(book, shooter).find(({ round }) => round.id === doubles.round),
    [book, shooter, doubles],
  );
  if (!debt) return null;
  const then = timesWords(timesOwed(doubles.times));
  return (
    <>
      <p className="lead">{owedWords(debt)}</p>
      <p>
        {debt.owes === 'shooter'
          ? `Win, and you owe nothing any more. Fall short, and you owe it ${then}.`
          : `Win, and it is owed to you ${then}. Fall short, and nothing is owed to you any more.`}{' '}
        {doubles.times === 1
          ? 'After this it can be doubled once more.'
          : 'This is the last time it can be doubled; then it is settled.'}{' '}
        End the round early, and the debt stays as it is.
      </p>
      <p className="quiet">
        Shooting again costs nothing, whatever is owed. When it stops being funny, cross the debt out instead.
      </p>
    </>
  );
}

/** Asked where it matters, of whoever has not said. */
function AskAge({ shooter }: { readonly shooter: ShooterId }) {
  const { gym } = useDoors();
  const known = useGym(({ book }) => book.shooters.get(shooter));
  if (!known || known.under18 !== undefined || known.demo) return null;
  return (
    <AgeChoice name={known.name} value={null} onTell={(under18) => void tellAge(gym, shooter, under18)} />
  );
}

/** The shooter's last few stakes, so that a usual one need not be typed again. */
function useEarlierStakes(shooter: ShooterId): readonly string[] {
  const book = useGym((state) => state.book);
  return useMemo(
    () => [...new Set(debtsOf(book, shooter).map(({ stake }) => stake))].slice(0, 5),
    [book, shooter],
  );
}
