import { invariant } from '../basics/invariant.ts';

/** A square symmetric matrix, row by row. */
export interface Matrix {
  readonly size: number;
  readonly values: Float64Array;
}

/** The number at an index; NaN outside, so that a fault shows instead of passing for 0. */
export function at(values: ArrayLike<number>, index: number): number {
  return values[index] ?? NaN;
}

/** Adds to the number at an index. */
export function addAt(values: Float64Array, index: number, amount: number): void {
  values[index] = at(values, index) + amount;
}

export function zeros(size: number): Matrix {
  return { size, values: new Float64Array(size * size) };
}

/**
 * The lower triangle L with L Lᵀ = the matrix.
 *
 * @throws InvariantError where the matrix is not positive definite
 */
export function cholesky({ size, values }: Matrix): Matrix {
  const lower = zeros(size);
  const l = lower.values;
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let rest = at(values, row * size + column);
      for (let k = 0; k < column; k += 1) rest -= at(l, row * size + k) * at(l, column * size + k);
      if (row === column) {
        invariant(rest > 0, 'a positive definite matrix');
        l[row * size + row] = Math.sqrt(rest);
      } else {
        l[row * size + column] = rest / at(l, column * size + column);
      }
    }
  }
  return lower;
}

/** ln of the determinant of L Lᵀ. */
export function logDeterminant({ size, values }: Matrix): number {
  let sum = 0;
  for (let row = 0; row < size; row += 1) sum += Math.log(at(values, row * size + row));
  return 2 * sum;
}

/** The x with L Lᵀ x = `right`. */
export function solveLower({ size, values }: Matrix, right: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(right);
  for (let row = 0; row < size; row += 1) {
    let rest = at(x, row);
    for (let k = 0; k < row; k += 1) rest -= at(values, row * size + k) * at(x, k);
    x[row] = rest / at(values, row * size + row);
  }
  for (let row = size - 1; row >= 0; row -= 1) {
    let rest = at(x, row);
    for (let k = row + 1; k < size; k += 1) rest -= at(values, k * size + row) * at(x, k);
    x[row] = rest / at(values, row * size + row);
  }
  return x;
}

/** The inverse of L Lᵀ. */
export function inverseOf(lower: Matrix): Matrix {
  const inverse = zeros(lower.size);
  for (let column = 0; column < lower.size; column += 1) {
    const unit = new Float64Array(lower.size);
    unit[column] = 1;
    // Symmetric, so a column is a row.
    inverse.values.set(solveLower(lower, unit), column * lower.size);
  }
  return inverse;
}
