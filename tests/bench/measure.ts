/** Median and 95th percentile of the time that some work takes, milliseconds, after a few rounds to warm up. */
export function measure(work: () => unknown, rounds = 40): { readonly median: number; readonly p95: number } {
  for (let round = 0; round < 3; round++) work();
  const times: number[] = [];
  for (let round = 0; round < rounds; round++) {
    const start = performance.now();
    work();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  const at = (share: number) => times[Math.min(times.length - 1, Math.floor(share * times.length))]!;
  return { median: at(0.5), p95: at(0.95) };
}
