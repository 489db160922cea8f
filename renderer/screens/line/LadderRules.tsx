import { HARD_NERVES } from '../../pressure/ladder.ts';

/** When the app suggests a step up or down, and what holds it back (pressure/ladder.ts, store/ladder.ts). */
export function LadderRules() {
  return (
    <>
      <ul>
        <li>
          One step up is suggested after two sessions on a rung in which your nerves rose above your usual
          relaxed ones and the shot held.
        </li>
        <li>
          “Held” means: of the session’s pressured rounds, at most one in three fell below what your record
          had said to expect under pressure. Rounds whose length follows from makes and misses cannot tell.
        </li>
        <li>A session in which nerves did not rise counts neither way: you may take a step by yourself.</li>
        <li>
          One step down after a session that was too much: you said so, or nerves were {HARD_NERVES} or more
          and the result fell below what was to be expected.
        </li>
        <li>Sore, ill or badly slept: no step up. Down is always open, and needs no reason.</li>
      </ul>
      <p className="quiet">
        Two sessions, one in three and the {HARD_NERVES} are our own choice. Which rung weighs most differs
        from shooter to shooter.
      </p>
    </>
  );
}
