import { at } from '../matrix.ts';
import { entryTally } from '../../log/roundCells.ts';
import type { Place } from '../dayTallies.ts';
import { meanOrder, ORDER_COLUMNS } from './orderCurve.ts';
import type { PlacedRound } from './sessionOrder.ts';

/** One entry for each cell, all of one length; `order` has {@link ORDER_COLUMNS} numbers for each. */
export interface CellColumns {
  readonly count: number;
  /** Index into the places. */
  readonly place: Uint16Array;
  /** 1 pressured, 0 relaxed. */
  readonly pressured: Uint8Array;
  readonly makes: Uint32Array;
  readonly attempts: Uint32Array;
  /** Pressure level as a fraction of the highest; 0 relaxed. */
  readonly dose: Float64Array;
  /** Ingredients that were on, see `ingredients` of the data; UNKNOWN_INGREDIENTS where nobody noted them. */
  readonly mask: Uint16Array;
  /** Means of warm, tired and the knots over the cell's shots. */
  readonly order: Float64Array;
}

/**
 * Shots of one stretch of a session share a cell: [length, up to this shot]. Stretches grow longer as
 * the order curve grows flatter.
 */
const STRETCHES = [
  [10, 20],
  [20, 120],
  [40, Infinity],
] as const;

/** Which stretch of the session a shot falls in. */
function stretchOf(shot: number): number {
  let before = 0;
  let start = 0;
  for (const [length, end] of STRETCHES) {
    if (shot < end) return before + Math.floor((shot - start) / length);
    before += (end - start) / length;
    start = end;
  }
  return before;
}

interface OpenCell {
  readonly setting: Setting;
  readonly place: number;
  makes: number;
  attempts: number;
  /** Sums of the order columns over the shots. */
  readonly sums: Float64Array;
}

/** What a round's shots have in common. */
export interface Setting {
  readonly pressured: boolean;
  readonly dose: number;
  readonly mask: number;
}

/** Turns rounds into cells, one session after the other. */
export class CellBuilder {
  private readonly placeIndex: ReadonlyMap<string, number>;
  private readonly place: number[] = [];
  private readonly pressured: number[] = [];
  private readonly makes: number[] = [];
  private readonly attempts: number[] = [];
  private readonly dose: number[] = [];
  private readonly mask: number[] = [];
  private readonly order: number[] = [];
  private open = new Map<string, OpenCell>();
  private readonly one = new Float64Array(ORDER_COLUMNS);

  constructor(places: readonly Place[]) {
    this.placeIndex = new Map(places.map(({ spot, shot }, index) => [`${spot}\n${shot}`, index]));
  }

  /** Cells of the sessions that are closed. */
  get count(): number {
    return this.place.length;
  }

  /**
   * Adds a round of the open session. Single shots go by their place in the session; counts spread over the whole
   * round, since nobody noted which spot came when.
   */
  add({ round, first, attempts }: PlacedRound, setting: Setting): void {
    const places = round.stops.map(({ spot, shot }) => this.placeIndex.get(`${spot}\n${shot}`) ?? NaN);
    const singly = round.entries.every((entry) => entry.kind !== 'count');
    const name = `${setting.pressured ? 1 : 0} ${setting.dose} ${setting.mask} ${singly ? '' : round.id} `;
    if (!singly) meanOrder(first, first + attempts, this.one);
    let shot = first;
    for (const entry of round.entries) {
      const tally = entryTally(entry);
      if (tally.attempts === 0) continue;
      const place = at(places, entry.stop);
      if (singly) meanOrder(shot, shot + 1, this.one);
      const cell = this.cellOf(`${name}${singly ? stretchOf(shot) : ''} ${place}`, setting, place);
      cell.makes += tally.makes;
      cell.attempts += tally.attempts;
      const { sums } = cell;
      for (let column = 0; column < ORDER_COLUMNS; column += 1) {
        sums[column] = (sums[column] as number) + tally.attempts * (this.one[column] as number);
      }
      shot += tally.attempts;
    }
  }

  /** Closes the session: its cells are done. */
  endSession(): void {
    for (const { setting, place, makes, attempts, sums } of this.open.values()) {
      this.place.push(place);
      this.pressured.push(setting.pressured ? 1 : 0);
      this.makes.push(makes);
      this.attempts.push(attempts);
      this.dose.push(setting.dose);
      this.mask.push(setting.mask);
      for (const sum of sums) this.order.push(sum / attempts);
    }
    this.open = new Map();
  }

  columns(): CellColumns {
    return {
      count: this.count,
      place: Uint16Array.from(this.place),
      pressured: Uint8Array.from(this.pressured),
      makes: Uint32Array.from(this.makes),
      attempts: Uint32Array.from(this.attempts),
      dose: Float64Array.from(this.dose),
      mask: Uint16Array.from(this.mask),
      order: Float64Array.from(this.order),
    };
  }

  private cellOf(key: string, setting: Setting, place: number): OpenCell {
    let cell = this.open.get(key);
    if (!cell) {
      cell = { setting, place, makes: 0, attempts: 0, sums: new Float64Array(ORDER_COLUMNS) };
      this.open.set(key, cell);
    }
    return cell;
  }
}
