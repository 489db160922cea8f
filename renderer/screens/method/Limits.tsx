import { Part } from './Part.tsx';

/** What no working-out can tell. */
export function Limits() {
  return (
    <Part title="What this cannot tell">
      <ul>
        <li>
          <strong>Games.</strong> Practice pressure is not a game. The drop is what this kind of pressure does
          to you.
        </li>
        <li>
          <strong>Why, without the coin.</strong> Who shoots under pressure only when feeling good, or only
          when tired, sees that in the drop. Pairs are free of it. Sessions with one kind of round alone tell
          about skill, hardly about the drop.
        </li>
        <li>
          <strong>This very day.</strong> The drop is for a usual day. A single session, or a single week,
          says far less than it seems to.
        </li>
        <li>
          <strong>What pressure was felt.</strong> Level and nerves are your own words. They describe; they
          prove no cause. Rounds in which nerves did not rise are shown apart and stay in the number, since
          nerves are asked after the decision to shoot under pressure.
        </li>
        <li>
          <strong>Places never shot under pressure.</strong> They are judged by the others. Below half of the
          mix there is no number at all.
        </li>
        <li>
          <strong>Streaks.</strong> That a make might bring the next make, or that a pressured round might
          weigh on the relaxed one after it, is not in the model.
        </li>
        <li>
          <strong>Other shooters.</strong> Every shooter stands alone here; no one is ranked against another,
          and nobody’s record helps to judge yours.
        </li>
        <li>
          <strong>Shots that were not logged.</strong> If the bad rounds stay out of the book, so does the
          truth.
        </li>
      </ul>
    </Part>
  );
}
