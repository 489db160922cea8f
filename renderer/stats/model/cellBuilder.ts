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

/** Columns of zeros. */
export function emptyColumns(count: number): CellColumns {
  return {
    count,
    place: new Uint16Array(count),
    pressured: new Uint8Array(count),
    makes: new Uint32Array(count),
    attempts: new Uint32Array(count),
    dose: new Float64Array(count),
    mask: new Uint16Array(count),
    order: new Float64Array(count * ORDER_COLUMNS),
  };
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

/** Turns the rounds of one session into cells. Places are numbered as they come. */
export class CellBuilder {
  private readonly placeIndex = new Map<string, number>();
  private readonly found: Place[] = [];
  private readonly open = new Map<string, OpenCell>();
  private readonly one = new Float64Array(ORDER_COLUMNS);

  /**
   * Adds a round. Single shots go by their place in the session; counts spread over the whole round, since nobody noted
   * which spot came when.
   */
  add({ round, first, attempts }: PlacedRound, setting: Setting): void {
    const places = round.stops.map((stop) => this.placeOf(stop));
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

  /** Every place of the rounds, also those without a shot. */
  get places(): readonly Place[] {
    return this.found;
  }

  columns(): CellColumns {
    const columns = emptyColumns(this.open.size);
    let cell = 0;
    for (const { setting, place, makes, attempts, sums } of this.open.values()) {
      columns.place[cell] = place;
      columns.pressured[cell] = setting.pressured ? 1 : 0;
      columns.makes[cell] = makes;
      columns.attempts[cell] = attempts;
      columns.dose[cell] = setting.dose;
      columns.mask[cell] = setting.mask;
      for (const [column, sum] of sums.entries()) {
        columns.order[cell * ORDER_COLUMNS + column] = sum / attempts;
      }
      cell += 1;
    }
    return columns;
  }

  private placeOf({ spot, shot }: Place): number {
    const key = `${spot}\n${shot}`;
    const known = this.placeIndex.get(key);
    if (known !== undefined) return known;
    this.placeIndex.set(key, this.found.length);
    return this.found.push({ spot, shot }) - 1;
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
