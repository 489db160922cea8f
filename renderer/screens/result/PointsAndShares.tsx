import type { ChokeIndex } from '../../stats/model/chokeIndex.ts';
import { twoPlaces } from '../numberWords.ts';
import { shareWords } from './changeWords.ts';

/** Why a drop in points can shrink although pressure bothers one as much as before. */
export function PointsAndShares({ index: { ratio, logit } }: { readonly index: ChokeIndex }) {
  return (
    <details className="behind">
      <summary>A smaller drop in points is not always less pressure</summary>
      <ul>
        <li>
          The same pressure takes off more points where about half of your shots go in than where nearly all
          of them do. So as your shot gets better, the drop in points can shrink by itself, although pressure
          bothers you as much as before. As it gets worse from a high rate, the drop can grow the same way.
        </li>
        {ratio ? <li>So look at the share as well. Over the whole record: {shareWords(ratio)}</li> : null}
        <li>
          The one number that does not depend on how good your shot is, for whoever knows log-odds: pressure
          adds {twoPlaces(logit.value)}, from {twoPlaces(logit.low)} to {twoPlaces(logit.high)}. Below 0 means
          worse under pressure.
        </li>
      </ul>
    </details>
  );
}
