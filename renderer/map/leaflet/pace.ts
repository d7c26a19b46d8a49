/** How long the steps of a drawing may be so that frames keep coming meanwhile. */
export interface Pace {
  /** Length of the next step, milliseconds. */
  readonly stepMs: () => number;
  /** Tells how long the frame of the last step took, milliseconds. */
  readonly frameTook: (ms: number) => void;
}

const leastStepMs = 3;
const mostStepMs = 9;
/** With a longer frame than this, 30 in a second are in danger. */
const longFrameMs = 27;

/**
 * Steps that fit the machine: what a step asks for the browser draws only when the step is over, often for longer than
 * the asking took. Steps become much shorter after a long frame, and a little longer after each other one.
 */
export function createPace(): Pace {
  let stepMs = mostStepMs / 2;
  return {
    stepMs: () => stepMs,
    frameTook(ms) {
      stepMs = ms > longFrameMs ? Math.max(leastStepMs, stepMs * 0.6) : Math.min(mostStepMs, stepMs + 0.5);
    },
  };
}
