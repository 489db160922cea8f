/** The smallest value that at least this share of the values does not exceed (nearest rank). */
export function percentile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

export function median(values: readonly number[]): number {
  return percentile(values, 0.5);
}

/** The percentile in each of so many equal stretches of a run, and of those the median: one noisy stretch does not decide. */
export function steadyPercentile(values: readonly number[], share: number, stretches: number): number {
  const length = Math.floor(values.length / stretches);
  return median(
    Array.from({ length: stretches }, (_, at) =>
      percentile(values.slice(at * length, (at + 1) * length), share),
    ),
  );
}

/** Milliseconds that a piece of work and its rival take, in turns so that a noisy moment hits both: medians. */
export function alternate(
  work: () => unknown,
  rival: () => unknown,
  { repeats, warmUp = 3 }: { readonly repeats: number; readonly warmUp?: number },
): { work: number; rival: number } {
  const times = { work: [] as number[], rival: [] as number[] };
  for (let repeat = -warmUp; repeat < repeats; repeat += 1) {
    const took = { work: timeOf(work), rival: timeOf(rival) };
    if (repeat < 0) continue;
    times.work.push(took.work);
    times.rival.push(took.rival);
  }
  return { work: median(times.work), rival: median(times.rival) };
}

function timeOf(work: () => unknown): number {
  const begun = performance.now();
  work();
  return performance.now() - begun;
}
