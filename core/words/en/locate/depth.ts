import type { Figures } from '../../types.ts';

type Range = { readonly leastM: number; readonly mostM: number };
type Depth = { readonly depthM: number };

/** "0.10 to 0.42 m"; "0.42 m" where both read the same. */
function range({ leastM, mostM }: Range, f: Figures): string {
  const [least, most] = [f.tape(leastM), f.tape(mostM)];
  return least === most ? most : `${least.replace(/ \S+$/, '')} to ${most}`;
}

/** One place says little of the rest of the trench. */
function measuredAt({ places }: { places: number }): string {
  return places === 1 ? 'measured at one place' : 'measured';
}

/** How deep a crossing lies: to the top of its pipe where that was measured, else the depth of its trench as planned. */
export const depth = {
  range,
  measuredAt,
  measured: ({ places, ...depths }: Range & { places: number }, f: Figures) =>
    `${range(depths, f)} deep to the top of the pipe, ${measuredAt({ places })}`,
  planned: ({ depthM }: Depth, f: Figures) => `trench ${f.tape(depthM)} deep as planned, not measured`,
  /** Short lines of a label. */
  label: {
    planned: ({ depthM }: Depth, f: Figures) => `trench ${f.tape(depthM)} planned`,
    notInTheGround: 'not in the ground',
    notMeasured: 'not measured',
    toThePipe: (depths: Range, f: Figures) => `${range(depths, f)} to the pipe`,
    there: ({ depthM }: Depth, f: Figures) => `${f.tape(depthM)} to pipe`,
    nearby: ({ depthM }: Depth, f: Figures) => `about ${f.tape(depthM)} to pipe`,
  },
  /** At one place along the trench. */
  there: {
    measured: ({ depthM }: Depth, f: Figures) => `${f.tape(depthM)} to the top of the pipe, measured`,
    nearby: ({ depthM }: Depth, f: Figures) =>
      `about ${f.tape(depthM)} to the top of the pipe, by the depths measured next to it`,
  },
  /** The same where a heading says the rest. */
  short: {
    measured: ({ depthM }: Depth, f: Figures) => f.tape(depthM),
    nearby: ({ depthM }: Depth, f: Figures) => `about ${f.tape(depthM)}`,
    planned: ({ depthM }: Depth, f: Figures) => `${f.tape(depthM)} planned`,
  },
  heading: { measured: 'Depth to the top of the pipe', planned: 'Depth of the trench as planned' },
  leftOut: (
    {
      some,
      more,
      lengthM,
    }: { some: readonly { readonly alongM: number; readonly depthM: number }[]; more: number; lengthM: number },
    f: Figures,
  ) => {
    const named = some.map(({ alongM, depthM }) => `${f.tape(depthM)} at ${f.tape(alongM)}`);
    return `Left out: a depth of ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}, beyond the end of the trench (${f.tape(lengthM)} long).`;
  },
};
