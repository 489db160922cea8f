import { useState } from 'react';

import { RULE_SETS, type RuleSet } from '../court/ruleSets.ts';
import type { Hand, Units } from '../log/events.ts';
import { writeAddress } from '../store/places.ts';
import {
  addShooter,
  changeShooter,
  loadDemoSeason,
  nameFault,
  removeShooter,
  shootersOf,
} from '../store/shooterActions.ts';
import { useDoors, useGym } from './gymContext.ts';
import { Choice } from './parts/Choice.tsx';
import { Page } from './parts/Page.tsx';
import { AgeChoice, AgePanel } from './shooter/AgePanel.tsx';

const HAND_ANSWERS: readonly { value: Hand; words: string }[] = [
  { value: 'right', words: 'Right' },
  { value: 'left', words: 'Left' },
];
const UNIT_ANSWERS: readonly { value: Units; words: string }[] = [
  { value: 'metric', words: 'Metres' },
  { value: 'feet', words: 'Feet' },
];
const RULE_WORDS: Readonly<Record<RuleSet, string>> = {
  FIBA: 'FIBA (most of the world)',
  NBA: 'NBA',
  WNBA: 'WNBA',
  NCAA: 'NCAA (US colleges)',
  NFHS: 'NFHS (US high schools)',
};
const RULE_ANSWERS = RULE_SETS.map((value) => ({ value, words: RULE_WORDS[value] }));

/** Adds a shooter or changes one; on first start also offers the invented season to look around in. */
export function ShooterScreen({ about }: { readonly about: string | null }) {
  const { gym } = useDoors();
  const book = useGym((state) => state.book);
  const known = about === null ? undefined : book.shooters.get(about);
  const others = shootersOf(book);
  const [name, setName] = useState(known?.name ?? '');
  const [hand, setHand] = useState<Hand>(known?.hand ?? 'right');
  const [rules, setRules] = useState<RuleSet>(known?.rules ?? 'FIBA');
  const [units, setUnits] = useState<Units>(known?.units ?? 'metric');
  const [under18, setUnder18] = useState<boolean | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  const toBench = () => {
    window.location.hash = writeAddress('bench');
  };
  const save = async () => {
    const fields = { name: name.trim(), hand, rules, units };
    const wrong = nameFault(book, fields.name, known?.id);
    if (wrong !== null) {
      setFault(wrong);
      return;
    }
    setBusy(true);
    const saved = known ? await changeShooter(gym, known.id, fields) : await addShooter(gym, fields, under18);
    setBusy(false);
    if (saved) toBench();
  };

  return (
    <Page title={known ? 'Change the shooter' : 'Who is shooting?'} first={others.length === 0}>
      {known || others.length === 0 ? null : (
        <section className="panel">
          <ShooterList />
        </section>
      )}
      <div className="columns">
        <form
          className="panel"
          onSubmit={(submit) => {
            submit.preventDefault();
            void save();
          }}
        >
          <label className="field">
            Name
            <input
              value={name}
              maxLength={60}
              autoComplete="off"
              aria-invalid={fault !== null}
              aria-describedby={fault === null ? undefined : 'name-fault'}
              onChange={(change) => setName(change.target.value)}
            />
          </label>
          {fault === null ? null : (
            <p id="name-fault" className="notice warn" role="alert">
              {fault}
            </p>
          )}
          <Choice question="Shooting hand" answers={HAND_ANSWERS} value={hand} onChoose={setHand} />
          <Choice
            question="Lines on your court"
            hint="Decides where the three-point line and the free-throw line are drawn."
            answers={RULE_ANSWERS}
            value={rules}
            onChoose={setRules}
          />
          <Choice question="Distances in" answers={UNIT_ANSWERS} value={units} onChoose={setUnits} />
          {known ? null : <AgeChoice name="" value={under18} onTell={setUnder18} />}
          <button type="submit" className="button main" disabled={busy}>
            {known ? 'Save' : 'Add this shooter'}
          </button>
        </form>
        {known && !known.demo ? <AgePanel shooter={known} /> : null}
        <div className="panel">
          {others.some((shooter) => shooter.demo) ? null : (
            <>
              <h2>Only looking around?</h2>
              <p>
                Load an invented season: Ines and Tobi shoot for ten weeks after the lunch shift, with the
                washing-up on the line. None of it is real, and it goes away again with one touch.
              </p>
              <button
                type="button"
                className="button"
                disabled={busy}
                onClick={() => {
                  setBusy(true);
                  void loadDemoSeason(gym).then((saved) => {
                    setBusy(false);
                    if (saved) toBench();
                  });
                }}
              >
                Load the demo season
              </button>
            </>
          )}
          {known ? (
            <RemoveShooter
              name={known.name}
              onRemove={() => void removeShooter(gym, known.id).then(toBench)}
            />
          ) : null}
        </div>
      </div>
    </Page>
  );
}

/** Everyone who shoots on this device; a touch brings one to the bench. */
function ShooterList() {
  const { gym } = useDoors();
  const shooters = useGym(({ book }) => book.shooters);
  const removed = useGym(({ book }) => book.removedShooters);
  const current = useGym(({ settings }) => settings.shooter);
  return (
    <>
      <h2>Shooters on this device</h2>
      <ul className="plain-list shooters">
        {[...shooters.values()]
          .filter((shooter) => !removed.has(shooter.id))
          .map((shooter) => (
            <li key={shooter.id} className="row">
              <a
                className={shooter.id === current ? 'button main' : 'button'}
                href={writeAddress('bench')}
                onClick={() => gym.set({ shooter: shooter.id })}
              >
                {shooter.name}
              </a>
              <a className="button plain" href={writeAddress('shooter', shooter.id)}>
                Change<span className="unseen"> {shooter.name}</span>
              </a>
            </li>
          ))}
      </ul>
    </>
  );
}

function RemoveShooter({ name, onRemove }: { readonly name: string; readonly onRemove: () => void }) {
  const [asked, setAsked] = useState(false);
  if (!asked) {
    return (
      <button type="button" className="button plain" onClick={() => setAsked(true)}>
        Remove {name} from this device
      </button>
    );
  }
  return (
    <div className="notice warn" role="alert">
      <p>
        {name} and all their rounds will no longer be shown. Save a CSV copy first if you may want them back.
      </p>
      <div className="row">
        <button type="button" className="button" onClick={onRemove}>
          Yes, remove {name}
        </button>
        <button type="button" className="button main" onClick={() => setAsked(false)}>
          Keep
        </button>
      </div>
    </div>
  );
}
