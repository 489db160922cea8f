import { Part } from './Part.tsx';
import { SOURCES, type Source } from './sources.ts';

/** What was read. */
export function Sources() {
  return (
    <Part title="Sources">
      <p>
        What is marked “from memory” was written down without the paper at hand. What names no source is our
        own choice, tried out on simulated shooters whose true drop is known.
      </p>
      <ul className="sources">
        {SOURCES.map((source) => (
          <SourceLine key={`${source.authors} ${source.year}`} source={source} />
        ))}
      </ul>
    </Part>
  );
}

function SourceLine({
  source: { authors, year, title, where, gives, fromMemory },
}: {
  readonly source: Source;
}) {
  return (
    <li>
      {authors} ({year}).{title === undefined ? null : ` ${title}.`}{' '}
      {where === undefined ? null : (
        <>
          <cite>{where}</cite>.{' '}
        </>
      )}
      Gives: {gives}.{fromMemory === undefined ? null : ` From memory: ${fromMemory}.`}
    </li>
  );
}
