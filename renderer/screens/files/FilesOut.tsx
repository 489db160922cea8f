import { useState } from 'react';

import { asError } from '../../basics/errors.ts';
import { recordsFile, roundsToSave, wholeCopy, type SavedFile } from '../../store/recordFiles.ts';
import { failureOf, FAILURE_WORDS } from '../failureWords.ts';
import { useDoors, useGym, useShooter } from '../gymContext.ts';
import { saveFile } from './saveFile.ts';

/** Records out: a table for any spreadsheet, or the whole log as one file. */
export function FilesOut() {
  const { gym } = useDoors();
  const shooter = useShooter();
  const rounds = useGym(({ book }) => book.rounds);
  const [said, setSaid] = useState<string | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const own = shooter === null ? 0 : roundsToSave(gym, shooter.id).length;
  const all = roundsToSave(gym, null).length;

  const save = async (make: () => Promise<SavedFile>) => {
    setFault(null);
    try {
      const file = await make();
      saveFile(file);
      setSaid(`${file.name} goes to where this device keeps its downloads.`);
    } catch (error) {
      setSaid(null);
      const words = FAILURE_WORDS[failureOf(asError(error))];
      setFault(`No file was saved. ${words.what} ${words.todo}`);
    }
  };

  return (
    <section className="panel" aria-labelledby="files-out">
      <h2 id="files-out">Take records out</h2>
      <p>
        A CSV file opens in every spreadsheet, and can be brought back in here. Rounds that are still being
        played are not in it.
      </p>
      {shooter === null ? null : (
        <button
          type="button"
          className="button"
          disabled={own === 0}
          onClick={() => void save(() => recordsFile(gym, shooter.id))}
        >
          Save {shooter.name} as CSV ({roundWords(own)})
        </button>
      )}
      <button
        type="button"
        className="button"
        disabled={all === 0}
        onClick={() => void save(() => recordsFile(gym, null))}
      >
        Save everyone as CSV ({roundWords(all)})
      </button>
      <p>
        A copy of everything also holds every single shot, the stakes, your own cards and spots. It is an
        SQLite file that other programs can open. Loud Gym itself brings back CSV files only.
      </p>
      <button
        type="button"
        className="button"
        disabled={rounds.size === 0 && shooter === null}
        onClick={() => void save(() => wholeCopy(gym))}
      >
        Save a copy of everything
      </button>
      <p role="status">{said}</p>
      {fault === null ? null : (
        <p className="notice warn" role="alert">
          {fault}
        </p>
      )}
    </section>
  );
}

function roundWords(rounds: number): string {
  return rounds === 0 ? 'no rounds yet' : rounds === 1 ? '1 round' : `${rounds} rounds`;
}
