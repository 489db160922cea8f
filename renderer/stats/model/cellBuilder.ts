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

/** More do not fit into a column of places. */
const MOST_PLACES = 2 ** 16;

interface OpenCell {
  readonly setting: Setting;
  readonly place: number;
  makes: number;
  attempts: number;
  /** Sums of the order columns over the shots start here. */
  readonly sums: number;
}

/** What a round's shots have in common. */
export interface Setting {
  readonly pressured: boolean;
  readonly dose: number;
  readonly mask: number;
}

/** So many shots of a session have their order columns kept; hardly a session is longer. */
const KEPT_SHOTS = 1000;
const keptOrders: Float64Array[] = [];

/** The order columns of a single shot. */
function orderOf(shot: number): Float64Array {
  const known = keptOrders[shot];
  if (known) return known;
  const order = new Float64Array(ORDER_COLUMNS);
  meanOrder(shot, shot + 1, order);
  if (shot < KEPT_SHOTS) keptOrders[shot] = order;
  return order;
}

/** Turns the rounds of one session into cells. Places are numbered as they come. */
export class CellBuilder {
  private readonly placeIndex = new Map<string, number>();
  private readonly found: Place[] = [];
  /** In the order in which they were opened. */
  private readonly cells: OpenCell[] = [];
  private readonly sums: number[] = [];
  /** The same by setting, then by stretch and place. */
  private readonly open = new Map<string, Map<number, OpenCell>>();

  /**
   * Adds a round. Single shots go by their place in the session; counts spread over the whole round, since nobody noted
   * which spot came when.
   */
  add({ round, first, attempts }: PlacedRound, setting: Setting): void {
    const places = round.stops.map((stop) => this.placeOf(stop));
    const singly = round.entries.every((entry) => entry.kind !== 'count');
    const alike = this.openIn(setting, singly ? null : round.id);
    const order = new Float64Array(ORDER_COLUMNS);
    if (!singly) meanOrder(first, first + attempts, order);
    let shot = first;
    for (const entry of round.entries) {
      const tally = entryTally(entry);
      if (tally.attempts === 0) continue;
      const place = at(places, entry.stop);
      const cell = this.cellIn(alike, singly ? stretchOf(shot) : 0, setting, place);
      cell.makes += tally.makes;
      cell.attempts += tally.attempts;
      const one = singly ? orderOf(shot) : order;
      for (let column = 0; column < ORDER_COLUMNS; column += 1) {
        const sum = cell.sums + column;
        this.sums[sum] = (this.sums[sum] as number) + tally.attempts * (one[column] as number);
      }
      shot += tally.attempts;
    }
  }

  /** Every place of the rounds, also those without a shot. */
  get places(): readonly Place[] {
    return this.found;
  }

  columns(): CellColumns {
    const columns = emptyColumns(this.cells.length);
    for (const [cell, { setting, place, makes, attempts, sums }] of this.cells.entries()) {
      columns.place[cell] = place;
      columns.pressured[cell] = setting.pressured ? 1 : 0;
      columns.makes[cell] = makes;
      columns.attempts[cell] = attempts;
      columns.dose[cell] = setting.dose;
      columns.mask[cell] = setting.mask;
      for (let sum = sums; sum < sums + ORDER_COLUMNS; sum += 1) {
        columns.order[sum] = (this.sums[sum] as number) / attempts;
      }
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

  /** @param counted the round whose counts stay by themselves */
  private openIn({ pressured, dose, mask }: Setting, counted: string | null): Map<number, OpenCell> {
    const name = `${pressured ? 1 : 0} ${dose} ${mask} ${counted ?? ''}`;
    const alike = this.open.get(name) ?? new Map<number, OpenCell>();
    this.open.set(name, alike);
    return alike;
  }

  private cellIn(alike: Map<number, OpenCell>, stretch: number, setting: Setting, place: number): OpenCell {
    const key = stretch * MOST_PLACES + place;
    let cell = alike.get(key);
    if (!cell) {
      cell = { setting, place, makes: 0, attempts: 0, sums: this.sums.length };
      for (let column = 0; column < ORDER_COLUMNS; column += 1) this.sums.push(0);
      alike.set(key, cell);
      this.cells.push(cell);
    }
    return cell;
  }
}
