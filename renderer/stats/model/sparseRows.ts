/** Rows of few numbers each: row r has the numbers `value[k]` in the columns `column[k]`, start[r] ≤ k < start[r + 1]. */
export interface SparseRows {
  readonly start: Uint32Array;
  /** Rising within a row. */
  readonly column: Uint16Array;
  readonly value: Float64Array;
}

/** Collects rows one number after the other. */
export class RowBuilder {
  private readonly start: Uint32Array;
  private column = new Uint16Array(1024);
  private value = new Float64Array(1024);
  private used = 0;
  private row = 0;

  constructor(rows: number) {
    this.start = new Uint32Array(rows + 1);
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

  rows(): SparseRows {
    return {
      start: this.start,
      column: this.column.slice(0, this.used),
      value: this.value.slice(0, this.used),
    };
  }

  private grow(): void {
    const column = new Uint16Array(2 * this.used);
    column.set(this.column);
    this.column = column;
    const value = new Float64Array(2 * this.used);
    value.set(this.value);
    this.value = value;
  }
}
