import type { Finding } from '../../core/checks/finding.ts';

const gravity: Readonly<Record<Finding['severity'], number>> = { hint: 0, notKnown: 1, warning: 2, error: 3 };

/** The gravest last, so that it lies on top. */
export function byGravity(findings: readonly Finding[]): Finding[] {
  return findings.toSorted((a, b) => gravity[a.severity] - gravity[b.severity]);
}

/** Whether the same signs stand at the same places, whatever else the findings say. */
export function lookAlike(a: readonly Finding[], b: readonly Finding[]): boolean {
  if (a === b) return true;
  return a.length === b.length && a.every((one, i) => one.severity === b[i]!.severity && samePlace(one.at, b[i]!.at));
}

const samePlace = (a: Finding['at'], b: Finding['at']): boolean => a?.[0] === b?.[0] && a?.[1] === b?.[1];
