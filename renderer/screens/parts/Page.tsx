import { useEffect, useRef, type ReactNode } from 'react';

import { writeAddress } from '../../store/places.ts';
import { PrintedOn } from './PrintedOn.tsx';

interface Props {
  readonly title: string;
  /** Stands to the right of the title. */
  readonly aside?: ReactNode;
  /** Without a way back: the first screens. */
  readonly first?: boolean;
  readonly children: ReactNode;
}

/** A screen with a title and the way back to the bench. The title takes the focus, so a reader starts at the top. */
export function Page({ title, aside, first = false, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    document.title = title === 'Loud Gym' ? title : `${title} – Loud Gym`;
    heading.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, [title]);
  return (
    <main className="page">
      <header className="page-head">
        {first ? null : (
          <a className="button" href={writeAddress('bench')}>
            <span aria-hidden="true">←</span> Bench
          </a>
        )}
        <h1 ref={heading} tabIndex={-1}>
          {title}
        </h1>
        {aside}
      </header>
      <PrintedOn title={title} />
      {children}
    </main>
  );
}
