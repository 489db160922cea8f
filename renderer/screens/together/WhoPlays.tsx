import { useState, type SubmitEvent } from 'react';

import type { ShooterId } from '../../basics/ids.ts';
import { GROUP_SIZE } from '../../games/group.ts';
import type { Shooter } from '../../log/book.ts';
import { addGuest, nameFault, shootersOf } from '../../store/shooterActions.ts';
import { useDoors, useGym } from '../gymContext.ts';

interface Props {
  /** Whose court it is: guests shoot under the same lines. */
  readonly host: Shooter;
  /** In the order they were named. */
  readonly chosen: readonly ShooterId[];
  readonly onChoose: (shooters: readonly ShooterId[]) => void;
}

/** Who of this device plays, and whoever else is at the court. */
export function WhoPlays({ host, chosen, onChoose }: Props) {
  const book = useGym((state) => state.book);
  const full = chosen.length >= GROUP_SIZE.most;
  const turn = (shooter: ShooterId) =>
    onChoose(chosen.includes(shooter) ? chosen.filter((one) => one !== shooter) : [...chosen, shooter]);
  return (
    <section className="panel" aria-label="Who plays?">
      <fieldset className="choice">
        <legend>Who plays?</legend>
        <p className="quiet">
          Two to eight of you, in the order you tap the names. Everybody’s shots go on their own record.
        </p>
        <div className="answers">
          {shootersOf(book).map(({ id, name }) => {
            const place = chosen.indexOf(id);
            return (
              <label className="answer" key={id}>
                <input
                  type="checkbox"
                  checked={place !== -1}
                  disabled={full && place === -1}
                  onChange={() => turn(id)}
                />
                <span>
                  {place === -1 ? '' : `${place + 1}. `}
                  {name}
                </span>
              </label>
            );
          })}
        </div>
      </fieldset>
      {full ? (
        <p className="quiet">Eight is the most.</p>
      ) : (
        <Guest host={host} onAdded={(shooter) => onChoose([...chosen, shooter])} />
      )}
    </section>
  );
}

/** Somebody who is not on this device yet: a name is enough. */
function Guest({
  host,
  onAdded,
}: {
  readonly host: Shooter;
  readonly onAdded: (shooter: ShooterId) => void;
}) {
  const { gym } = useDoors();
  const [name, setName] = useState('');
  const [fault, setFault] = useState<string | null>(null);
  const add = async (submit: SubmitEvent) => {
    submit.preventDefault();
    const wrong = nameFault(gym.store.getState().book, name);
    setFault(wrong);
    if (wrong !== null) return;
    const shooter = await addGuest(gym, name, host);
    if (shooter === null) return;
    setName('');
    onAdded(shooter);
  };
  return (
    <form className="guest" onSubmit={(submit) => void add(submit)}>
      <label className="field">
        Somebody else’s name
        <input
          value={name}
          maxLength={60}
          autoComplete="off"
          aria-invalid={fault !== null}
          aria-describedby={fault === null ? undefined : 'guest-fault'}
          onChange={(change) => {
            setName(change.target.value);
            setFault(null);
          }}
        />
      </label>
      <button type="submit" className="button">
        Add
      </button>
      {fault === null ? null : (
        <p id="guest-fault" className="notice warn" role="alert">
          {fault}
        </p>
      )}
    </form>
  );
}
