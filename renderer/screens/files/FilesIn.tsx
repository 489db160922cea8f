import { useState } from 'react';

import { readRecords, type Reading } from '../../store/recordFiles.ts';
import { FaultList } from './FaultList.tsx';
import { ImportDone, type Done } from './ImportDone.tsx';
import { ImportPlan } from './ImportPlan.tsx';

interface Chosen {
  readonly name: string;
  readonly reading: Reading;
}

/** Records in: choose a file, see what it would do, then say yes. */
export function FilesIn() {
  const [chosen, setChosen] = useState<Chosen | null>(null);
  const [done, setDone] = useState<Done | null>(null);
  const [unread, setUnread] = useState<string | null>(null);
  const [over, setOver] = useState(false);

  const take = async (file: File | undefined) => {
    if (!file) return;
    setUnread(null);
    setDone(null);
    setChosen(null);
    try {
      const reading = await readRecords(new Uint8Array(await file.arrayBuffer()));
      setChosen({ name: file.name, reading });
    } catch {
      setUnread(`${file.name} could not be opened. Nothing was written. Choose it again.`);
    }
  };
  return (
    <section className="panel" aria-labelledby="files-in">
      <h2 id="files-in">Bring records in</h2>
      <p>Rounds from paper, from a spreadsheet, or saved by Loud Gym on another device.</p>
      <label className={over ? 'drop over' : 'drop'}>
        {/* The input covers the whole field, so the browser itself takes a file that is dropped on it. */}
        <input
          type="file"
          accept=".csv,text/csv"
          onDragEnter={() => setOver(true)}
          onDragLeave={() => setOver(false)}
          onDrop={() => setOver(false)}
          onChange={(change) => {
            void take(change.target.files?.[0]);
            // The same file may be chosen again after it was mended.
            change.target.value = '';
          }}
        />
        <span className="drop-name">Choose a CSV file</span>
        <span>or drop it here</span>
      </label>
      <p className="quiet">You see first what the file would do. Nothing is written before you say yes.</p>
      {chosen === null ? null : chosen.reading.sound ? (
        <ImportPlan
          key={chosen.name}
          name={chosen.name}
          rounds={chosen.reading.rounds}
          onDone={(taken) => {
            setChosen(null);
            setDone(taken);
          }}
        />
      ) : (
        <FaultList name={chosen.name} faults={chosen.reading.faults} />
      )}
      <div role="status" className="stack">
        {unread === null ? null : <p>{unread}</p>}
        {done === null ? null : <ImportDone done={done} />}
      </div>
    </section>
  );
}
