/** Median and 95th percentile of the time that some work takes, milliseconds, after a few rounds to warm up. */
export function measure(work: () => unknown, rounds = 40): { readonly median: number; readonly p95: number } {
  for (let round = 0; round < 3; round++) work();
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  return summary(times);
}

/** Median and 95th percentile of some times. */
export function summary(times: readonly number[]): { readonly median: number; readonly p95: number } {
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
  return { median: at(0.5), p95: at(0.95) };
}
