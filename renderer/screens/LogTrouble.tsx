import { useDoors, useGym } from './gymContext.ts';
import { failureOf, FAILURE_WORDS } from './failureWords.ts';

/** The log cannot be opened: a plain sentence, and what to do. No round is started without the log. */
export function LogTrouble({ error }: { readonly error: Error }) {
  const { gym } = useDoors();
  const failure = failureOf(error);
  const words = FAILURE_WORDS[failure];
  const elsewhere = failure === 'second-window' || failure === 'taken-over';
  return (
    <main className="page">
      <h1>{words.title}</h1>
      <div className="notice warn" role="alert">
        <p className="lead">{words.what}</p>
        <p>{words.todo}</p>
      </div>
      <div className="row">
        <button type="button" className="button main" onClick={() => void gym.open(elsewhere)}>
          {elsewhere ? 'Use it in this window' : 'Try again'}
        </button>
      </div>
      <details className="quiet">
        <summary>For whoever looks into it</summary>
        <p>{error.message}</p>
      </details>
    </main>
  );
}

/** A tap that could not be saved: it does not count, and the shooter is told so at once. */
export function SaveTrouble() {
  const { gym } = useDoors();
  const trouble = useGym((state) => state.trouble);
  if (!trouble) return null;
  const words = FAILURE_WORDS[failureOf(trouble)];
  return (
    <div className="save-trouble notice warn" role="alert">
      <p>
        <strong>An entry was not saved and does not count.</strong> {words.what} {words.todo}
      </p>
      <button type="button" className="button" onClick={() => gym.dismissTrouble()}>
        I have seen this
      </button>
    </div>
  );
}
