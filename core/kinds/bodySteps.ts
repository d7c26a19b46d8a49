import type { BodyStep } from './upgrade.ts';

/**
 * What the migrations did to bodies, the oldest first: one step for each kind whose bodies changed shape. Where a step puts
 * right what can be told from the body alone, it has no need of SQL; a step that has shipped is never edited.
 */
export const bodySteps: readonly BodyStep[] = [];
