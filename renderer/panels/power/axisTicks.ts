/** Round figures from 0 to just past `most`, about `wanted` of them: 0, 1, 2, ... or 0, 0.5, 1, ... */
export function axisTicks(most: number, wanted: number): number[] {
  if (!(most > 0)) return [0, 1];
  const rough = most / Math.max(1, wanted);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((n) => n * power).find((n) => n >= rough * 0.999)!;
  const count = Math.ceil(most / step - 1e-9);
  return Array.from({ length: count + 1 }, (_, i) => Number((i * step).toPrecision(12)));
}
