import { FilesIn } from './files/FilesIn.tsx';
import { FilesOut } from './files/FilesOut.tsx';
import { ColumnTable, PaperRecords } from './files/PaperRecords.tsx';
import { PaperForm } from './files/PaperForm.tsx';
import { Page } from './parts/Page.tsx';
import './styles/files.css';

/** Records in and out: CSV, a copy of everything, and the form for paper. */
export function FilesScreen() {
  return (
    <>
      <Page title="Records in and out">
        <div className="columns">
          <FilesIn />
          <FilesOut />
        </div>
        <PaperRecords />
        <ColumnTable />
      </Page>
      <PaperForm />
    </>
  );
}
