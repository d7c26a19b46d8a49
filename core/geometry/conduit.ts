/** How much pipe and cable an under-gate crossing takes, whatever the shape of its path. All lengths in metres. */

export interface PipeRun {
  /** Length of the trench from riser foot to riser foot, along its path. */
  readonly trenchM: number;
  readonly depthM: number;
  /** Height of each riser above ground. */
  readonly riserHeightM: number;
  /** Added for bends and trimming. */
  readonly allowanceM: number;
}

/** The pipe: along the trench, up both ends from its bottom to the top of the risers, and the allowance. */
export function pipeLengthM({ trenchM, depthM, riserHeightM, allowanceM }: PipeRun): number {
  return trenchM + 2 * (depthM + riserHeightM) + allowanceM;
}

/** The live cable: through the whole pipe, with a tail out of each end. */
export function liveCableLengthM(pipe: PipeRun, tailM: number): number {
  return pipeLengthM(pipe) + 2 * tailM;
}

/** The earth cable: in the bare trench, and up each end to where it is joined, `connectionHeightM` above ground. */
export function earthCableLengthM(run: Pick<PipeRun, 'trenchM' | 'depthM'>, connectionHeightM: number): number {
  return run.trenchM + 2 * (run.depthM + connectionHeightM);
}
