import type { ReactNode } from 'react';

interface Props {
  readonly title: string;
  /** The answer in a sentence, there without opening; null or left out where there is none. */
  readonly says?: string | null;
  readonly children: ReactNode;
}

/** What is looked at now and then: closed on the screen, open on paper. */
export function Fold({ title, says = null, children }: Props) {
  return (
    <details className="fold">
      <summary>
        <h3>{title}</h3>
        {says === null ? null : <span className="fold-says">{says}</span>}
      </summary>
      <div className="stack">{children}</div>
    </details>
  );
}
