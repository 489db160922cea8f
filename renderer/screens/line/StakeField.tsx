import { useId } from 'react';

import { looksLikeMoney } from '../../pressure/money.ts';
import { NOT_MONEY } from './lineWords.ts';

interface Props {
  readonly value: string;
  readonly placeholder: string;
  /** Earlier stakes that are offered. */
  readonly earlier?: readonly string[];
  readonly onChange: (stake: string) => void;
}

/** A stake in free words, and a kind no to money. */
export function StakeField({ value, placeholder, earlier, onChange }: Props) {
  const id = useId();
  const money = looksLikeMoney(value);
  return (
    <>
      <label className="field">
        In your own words
        <input
          value={value}
          maxLength={200}
          placeholder={placeholder}
          list={earlier && `${id}-earlier`}
          aria-invalid={money}
          aria-describedby={`${id}-money`}
          onChange={(change) => onChange(change.target.value)}
        />
      </label>
      {earlier ? (
        <datalist id={`${id}-earlier`}>
          {earlier.map((stake) => (
            <option key={stake}>{stake}</option>
          ))}
        </datalist>
      ) : null}
      <div id={`${id}-money`} role="status">
        {money ? <p className="notice warn">{NOT_MONEY}</p> : null}
      </div>
    </>
  );
}
