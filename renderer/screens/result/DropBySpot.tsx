import { GlyphIcon } from '../../charts/Glyph.tsx';
import { IntervalChart } from '../../charts/IntervalChart.tsx';
import { dropScale, SpotDrops, type SpotDropMark } from '../../charts/SpotDrops.tsx';
import { COURTS } from '../../court/ruleSets.ts';
import { spotWords } from '../../court/spots.ts';
import type { ChokeIndex, IndexGroup } from '../../stats/model/chokeIndex.ts';
import { dropSpan, pointsWords, wholePercents, signed } from '../numberWords.ts';
import { FoldedTable } from '../parts/FoldedTable.tsx';
import { DropTable } from './DropTable.tsx';
import { spotDrops } from './spotDrops.ts';
import { inCourtOrder, pointOf, type SpotProps } from './spotsOnCourt.ts';
import { aroundNone } from './aroundNone.ts';

/** The drop where it was shot, bare and evened out, and by groups of spots. */
export function DropBySpot({ index, figures, rules, ownSpots }: SpotProps & { readonly index: ChokeIndex }) {
  const court = COURTS[rules];
  const drops = inCourtOrder(spotDrops(index.places, figures.spots));
  const marks = drops.flatMap(({ spot, ...drop }): SpotDropMark[] => {
    const point = pointOf(spot, court, ownSpots);
    return point ? [{ name: spotWords(spot), point, ...drop }] : [];
  });
  const unseen = drops.filter(({ byOthers }) => byOthers).map(({ spot }) => spotWords(spot));
  const [better, worse] = dropScale(marks);
  return (
    <>
      <p className="key">
        <span>
          <GlyphIcon kind="drop" open /> drop as shot
        </span>
        <span>
          <GlyphIcon kind="drop" /> drop evened out
        </span>
      </p>
      <SpotDrops
        court={court}
        marks={marks}
        write={signed}
        label="Drop by spot on the half court, as shot and evened out; the table below holds the same."
      />
      <p>
        A few shots from one spot swing wildly. The filled square pulls each spot towards what all of them say
        together, and the fewer its shots, the harder.
      </p>
      <p className="quiet">
        Points lost under pressure. Each line runs from {-better} better at its left end over 0 at the short
        stroke to {worse} worse at its right end; a span that is longer than that has no end of its own.
        {marks.length < drops.length
          ? ' Spots whose place on the court is not known stand in the table alone.'
          : ''}
      </p>
      {unseen.length > 0 ? (
        <p className="quiet">
          A broken edge: never shot under pressure, judged by the other spots ({unseen.join(', ')}).
        </p>
      ) : null}
      <Groups groups={index.groups} />
      <DropTable places={inCourtOrder(index.places)} spots={figures.spots} />
    </>
  );
}

const GROUP_WORDS: Readonly<Record<IndexGroup['group'], string>> = {
  threes: 'Threes',
  'mid-range': 'Mid-range',
  'free-throws': 'Free throws',
  own: 'Other spots',
};

function Groups({ groups }: Pick<ChokeIndex, 'groups'>) {
  if (groups.length < 2) return null;
  const shares = wholePercents(groups.map(({ weight }) => weight));
  return (
    <>
      <h3>By kind of spot</h3>
      <IntervalChart
        label={groups
          .map((group) => `${GROUP_WORDS[group.group]} ${pointsWords(group.points)}, ${dropSpan(group)}.`)
          .join(' ')}
        rows={groups.map((group, at) => ({
          kind: 'drop',
          name: `${GROUP_WORDS[group.group]} ${pointsWords(group.points)}`,
          words: `${dropSpan(group)} · ${shares[at]} % of the mix`,
          value: group.points,
          low: group.low,
          high: group.high,
        }))}
        axis={aroundNone(groups, ['better under pressure', 'worse'])}
      />
      <FoldedTable
        summary="The numbers by kind of spot"
        heads={['Kind of spot', 'Points lost', 'Span', 'Of the mix']}
        rows={groups.map((group, at) => ({
          name: GROUP_WORDS[group.group],
          cells: [pointsWords(group.points), dropSpan(group), `${shares[at]} %`],
        }))}
      />
    </>
  );
}
