import type { Finding } from '../../../core/checks/finding.ts';
import type { Px } from '../plane/view.ts';
import { disc, type Pen } from './pen.ts';

export const findingRadiusPx = 12;

/** A ring round the place a finding is about; its shape tells how grave it is, its colour only repeats it. */
export function drawFinding({ ctx, palette }: Pen, [x, y]: Px, severity: Finding['severity']): void {
  const colour = severity === 'error' ? palette.danger : severity === 'warning' ? palette.caution : palette.inkSoft;
  ctx.strokeStyle = colour;
  ctx.lineWidth = severity === 'error' ? 3 : 2;
  ctx.setLineDash(severity === 'hint' || severity === 'notKnown' ? [3, 3] : []);
  disc(ctx, x, y, findingRadiusPx);
  ctx.stroke();
  ctx.setLineDash([]);
  drawBadge({ ctx, colour, paper: palette.paper }, [x + findingRadiusPx * 0.9, y - findingRadiusPx * 0.9], severity);
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
