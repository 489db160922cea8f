import type { ReactNode } from 'react';

interface Props {
  readonly title: string;
  readonly children: ReactNode;
}

/** One part of the page on how things are worked out. */
export function Part({ title, children }: Props) {
  return (
    <section className="panel prose" aria-label={title}>
      <h2>{title}</h2>
      {children}
    </section>
  );
}

/** The shooter's own value beside what was explained. */
export function Yours({ children }: { readonly children: ReactNode }) {
  return (
    <p className="yours">
      <strong>Yours:</strong> {children}
    </p>
  );
}

interface TermProps {
  /** What the trade of numbers calls it. */
  readonly word: string;
  readonly children: ReactNode;
}

/** A technical word and what it means; stands in a list of such words. */
export function Term({ word, children }: TermProps) {
  return (
    <div>
      <dt>{word}</dt>
      <dd>{children}</dd>
    </div>
  );
}
