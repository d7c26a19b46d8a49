import { startPlanning } from './planning.ts';
import type { SectioningNetwork, SectioningOptions, SectioningResult } from './types.ts';

/** Progress is told in steps of this, at least. */
const LEAST_PROGRESS = 0.005;

/**
 * Divides a network into sections all at once: see `startPlanning`, which does the same step by step.
 *
 * @throws RangeError when the input contradicts itself.
 */
export function planSections(network: SectioningNetwork, options: SectioningOptions = {}): SectioningResult {
  const planning = startPlanning(network, options);
  if ('outcome' in planning) return planning;
  const { watch } = options;
  let told = 0;
  while (planning.step()) {
    if (!watch) continue;
    if (watch.shouldStop()) return { outcome: 'stopped' };
    const { progress } = planning;
    if (progress < told + LEAST_PROGRESS) continue;
    told = progress;
    watch.progress(progress);
  }
  watch?.progress(1);
  return planning.plan!;
}
