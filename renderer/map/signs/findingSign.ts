import type { Finding } from '../../../core/checks/finding.ts';
import type { Px } from '../plane/view.ts';
import { disc, type Pen } from './pen.ts';

export const findingRadiusPx = 12;

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

/** Where the badge of a finding stands, as steps from its place, pixels to the right and up. */
export const badgeOffsetPx = 11;

/**
 * The place a finding is about: a ring with a badge for what is wrong, a badge alone for what is only not known or a
 * hint. The badge's shape and mark tell which; its colour only repeats it.
 */
export function drawFinding({ ctx, palette }: Pen, [x, y]: Px, severity: Finding['severity']): void {
  const colour = severity === 'error' ? palette.danger : severity === 'warning' ? palette.caution : palette.inkSoft;
  if (gravity[severity] >= gravity.warning) {
    ctx.strokeStyle = colour;
    ctx.lineWidth = severity === 'error' ? 3 : 2;
    disc(ctx, x, y, findingRadiusPx);
    ctx.stroke();
  }
  drawBadge({ ctx, colour, paper: palette.paper }, [x + badgeOffsetPx, y - badgeOffsetPx], severity);
}

interface BadgePen {
  readonly ctx: CanvasRenderingContext2D;
  readonly colour: string;
  readonly paper: string;
}

function drawBadge({ ctx, colour, paper }: BadgePen, [x, y]: Px, severity: Finding['severity']): void {
  ctx.beginPath();
  if (severity === 'warning') {
    ctx.moveTo(x, y - 9);
    ctx.lineTo(x + 9, y + 7);
    ctx.lineTo(x - 9, y + 7);
    ctx.closePath();
  } else ctx.arc(x, y, 8, 0, 2 * Math.PI);
  ctx.fillStyle = colour;
  ctx.fill();
  ctx.strokeStyle = paper;
  ctx.lineWidth = 1.5;
  ctx.stroke();
  ctx.fillStyle = paper;
  ctx.font = 'bold 12px "Atkinson Hyperlegible", sans-serif';
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.fillText(severity === 'notKnown' ? '?' : severity === 'hint' ? 'i' : '!', x, y + 1);
}
