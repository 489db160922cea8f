/** Rows of few numbers each: row r has the numbers `value[k]` in the columns `column[k]`, start[r] ≤ k < start[r + 1]. */
export interface SparseRows {
  readonly start: Uint32Array;
  /** Rising within a row. */
  readonly column: Uint16Array;
  readonly value: Float64Array;
}

/** Room for so many numbers in a row at first; a record with more of them gets more. */
const USUAL_ROW = 11;

/** Collects rows one number after the other. */
export class RowBuilder {
  private readonly start: Uint32Array;
  private column: Uint16Array;
  private value: Float64Array;
  private used = 0;
  private row = 0;

  constructor(rows: number) {
    this.start = new Uint32Array(rows + 1);
    this.column = new Uint16Array(USUAL_ROW * rows);
    this.value = new Float64Array(USUAL_ROW * rows);
  }

  /** Adds to the open row; a 0 takes no room. Numbers are kept in rising order of columns. */
  add(column: number, value: number): void {
    if (value === 0) return;
    if (this.used === this.value.length) this.grow();
    let place = this.used;
    const first = this.start[this.row] ?? 0;
    while (place > first && (this.column[place - 1] ?? 0) > column) {
      this.column[place] = this.column[place - 1] ?? 0;
      this.value[place] = this.value[place - 1] ?? 0;
      place -= 1;
    }
    this.column[place] = column;
    this.value[place] = value;
    this.used += 1;
  }

  /** Ends the open row. */
  close(): void {
    this.row += 1;
    this.start[this.row] = this.used;
  }

  /** The rows so far; nothing can be added afterwards. */
  rows(): SparseRows {
    return {
      start: this.start,
      column: this.column.subarray(0, this.used),
      value: this.value.subarray(0, this.used),
    };
  }

  private grow(): void {
    const room = Math.ceil(1.5 * this.used) + USUAL_ROW;
    const column = new Uint16Array(room);
    column.set(this.column);
    this.column = column;
    const value = new Float64Array(room);
    value.set(this.value);
    this.value = value;
  }
}
