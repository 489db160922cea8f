import type { IsoDate } from '../basics/units.ts';
import type { IndexWeek } from '../stats/model/chokeIndex.ts';
import { Glyph } from './Glyph.tsx';
import { signedTick, tensAround, type Scale } from './scale.ts';
import { plotOf, Timeline, useTwoPlots } from './Timeline.tsx';
import type { WeekFrame } from './weekFrame.ts';
import { alongRun, runsOf, type Along } from './weekRuns.ts';

interface Props {
  readonly label: string;
  /** Oldest first, none left out, at least one. */
  readonly weeks: readonly IndexWeek[];
  /** A Monday, as short as it can be. */
  readonly dayWords: (date: IsoDate) => string;
}

const LEAST_WEEK = 30;
const MOST_SIZE = 5;
/** Points from the lower to the upper end of the plots, at least. */
const LEAST_RATES = 40;
const LEAST_DROPS = 30;
/** Of a longer plot every other ten is written. */
const MOST_TENS = 60;

/**
 * The drop model's season: relaxed and pressured rates above, the drop below, each with its band. A point stands only in a
 * week with such shots; elsewhere line and band are paler, since they are carried over.
 */
export function WeeksChart({ label, weeks, dayWords }: Props) {
  const [upper, lower] = useTwoPlots(220, 192);
  const [lowest, highest] = tensAround(
    weeks.flatMap(({ spans }) => [spans.relaxed, spans.pressured].flatMap(({ low, high }) => [low, high])),
    LEAST_RATES,
    [0, 100],
  );
  const rates = plotOf({
    name: 'Makes in 100 shots',
    ...upper,
    from: lowest,
    to: highest,
    step: 10,
    write: String,
  });
  const [better, worse] = tensAround(
    [-1, ...weeks.flatMap((week) => [week.low, week.high])],
    LEAST_DROPS,
    [-100, 100],
  );
  const drops = plotOf({
    name: 'Points lost under pressure',
    ...lower,
    from: better,
    to: worse,
    step: worse - better > MOST_TENS ? 20 : 10,
    write: signedTick,
  });
  return (
    <Timeline
      label={label}
      frameName="Drawing week by week"
      dates={weeks.map(({ monday }) => monday)}
      plots={[rates, drops]}
      leastWeek={LEAST_WEEK}
      dayWords={dayWords}
    >
      {(frame) => (
        <>
          <Rate kind="relaxed" weeks={weeks} frame={frame} y={rates.y} />
          <Rate kind="pressured" weeks={weeks} frame={frame} y={rates.y} />
          <Drop weeks={weeks} frame={frame} y={drops.y} />
        </>
      )}
    </Timeline>
  );
}

interface PartProps {
  readonly weeks: readonly IndexWeek[];
  readonly frame: WeekFrame;
  readonly y: Scale;
}

function Rate({ kind, weeks, frame, y }: PartProps & { readonly kind: 'relaxed' | 'pressured' }) {
  const values = weeks.map((week) => week[kind]);
  const lows = weeks.map(({ spans }) => spans[kind].low);
  const highs = weeks.map(({ spans }) => spans[kind].high);
  return (
    <>
      {runsOf(weeks.map(({ shots }) => shots[kind] === 0)).map((run) => (
        <g key={run.from} className={run.carried ? 'carried' : undefined}>
          <path
            className={`band ${kind}`}
            d={`M${pathOf(alongRun(run, highs), frame, y)}L${pathOf(alongRun(run, lows).toReversed(), frame, y)}Z`}
          />
          <path className={`course ${kind}`} d={`M${pathOf(alongRun(run, values), frame, y)}`} />
        </g>
      ))}
      {weeks.map(({ monday, shots }, at) =>
        shots[kind] === 0 ? null : (
          <Glyph
            key={monday}
            kind={kind}
            x={frame.weekX(at + 0.5)}
            y={y(values[at] ?? 0)}
            size={sizeIn(frame)}
          />
        ),
      )}
    </>
  );
}

function Drop({ weeks, frame, y }: PartProps) {
  const runs = runsOf(weeks.map((week) => !hasBoth(week)));
  const along = (of: (week: IndexWeek) => number) => {
    const values = weeks.map(of);
    return (run: (typeof runs)[number]) => alongRun(run, values);
  };
  const [low, points, high] = [
    along((week) => week.low),
    along((week) => week.points),
    along((week) => week.high),
  ];
  return (
    <>
      {runs.map((run) => (
        <g key={run.from} className={run.carried ? 'carried' : undefined}>
          <path
            className="band drop"
            d={`M${pathOf(high(run), frame, y)}L${pathOf(low(run).toReversed(), frame, y)}Z`}
          />
          <path className="course drop" d={`M${pathOf(points(run), frame, y)}`} />
        </g>
      ))}
      {weeks.map((week, at) =>
        hasBoth(week) ? (
          <Glyph
            key={week.monday}
            kind="drop"
            x={frame.weekX(at + 0.5)}
            y={y(week.points)}
            size={sizeIn(frame)}
          />
        ) : null,
      )}
    </>
  );
}

/** Only a week with shots of both kinds says something of its own about the drop. */
function hasBoth({ shots }: IndexWeek): boolean {
  return shots.relaxed > 0 && shots.pressured > 0;
}

/** On paper a long season is narrow, and its marks are small. */
function sizeIn({ weekWidth }: WeekFrame): number {
  return Math.min(MOST_SIZE, 0.4 * weekWidth);
}

function pathOf(points: readonly Along[], frame: WeekFrame, y: Scale): string {
  return points.map(([at, value]) => `${frame.weekX(at).toFixed(1)} ${y(value).toFixed(1)}`).join('L');
}
