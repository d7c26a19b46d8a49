import type { CutOutSwitch } from '../../../core/model/things.ts';
import { directionAt, xyAtStation } from '../plane/stations.ts';
import { toPx } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import { switchSignXy } from '../scene/switchSignXy.ts';
import { byGravity, drawFinding } from '../signs/findingSign.ts';
import { drawGate } from '../signs/gateSign.ts';
import { drawPlaceMark } from '../signs/placeMark.ts';
import { drawPost } from '../signs/postSign.ts';
import { drawEarth, drawSource } from '../signs/sourceSign.ts';
import { drawSuggestedSwitch, drawSurplusMark, drawSwitch } from '../signs/switchSign.ts';
import { type Look, penOf } from './look.ts';

/** From further off than this, ordinary posts are not drawn. */
const postsFurthestMPerPx = 3;

/** Gateways, posts, switches, sources and earths. */
export function* paintSigns(look: Look, parts: readonly Part[]): Generator<void> {
  for (const [i, part] of parts.entries()) {
    paintSign(look, part);
    if (i % 120 === 119) yield;
  }
}

function paintSign(look: Look, part: Part): void {
  const { view } = look;
  switch (part.kind) {
    case 'gateway': {
      const { shape } = part;
      drawGate(
        penOf(look, shape.gateway.status),
        toPx(view, shape.startPost),
        toPx(view, shape.endPost),
        shape.gateway,
      );
      break;
    }
    case 'post':
      if (look.metresPerPx <= postsFurthestMPerPx) drawPost(penOf(look, 'built'), toPx(view, part.xy), part.post.role);
      break;
    case 'switch': {
      const { row } = part;
      const angle = Math.atan2(-row.along[1], row.along[0]);
      drawSwitch(
        penOf(look, row.switch.status),
        toPx(view, switchSignXy(part, view.pxPerM)),
        angle,
        switchStands(look, row.switch),
      );
      break;
    }
    case 'energiser':
      drawSource(penOf(look, part.energiser.status), toPx(view, part.xy));
      break;
    case 'earthField':
      drawEarth(penOf(look, part.earthField.status), toPx(view, part.xy));
      break;
  }
}

/** As it normally stands, or as it does in the voltages that are shown. */
function switchStands({ input: { voltage } }: Look, { id, normally }: CutOutSwitch): 'closed' | 'open' {
  if (!voltage) return normally;
  return voltage.openSwitchIds.has(id) ? 'open' : 'closed';
}

/** What the plan would add, what it does without, and the places that the user gave it. */
export function paintPlan(look: Look): void {
  if (look.input.workspace === 'divide') paintAddedPlaces(look);
  const { plan } = look.input;
  if (!plan) return;
  const pen = penOf(look, 'planned');
  for (const candidate of plan.missing) drawSuggestedSwitch(pen, toPx(look.view, candidate.xy));
  for (const id of plan.surplus) {
    const part = look.scene.partsOf.get(id)?.[0];
    if (part?.kind === 'switch') drawSurplusMark(pen, toPx(look.view, switchSignXy(part, look.view.pxPerM)));
  }
}

function paintAddedPlaces(look: Look): void {
  const { scene, view, input } = look;
  for (const { lineId, atM } of input.project.switchCandidate.values()) {
    const shape = scene.survey.lines.get(lineId);
    if (!shape) continue;
    const [dx, dy] = directionAt(shape, atM);
    drawPlaceMark(penOf(look, 'built'), toPx(view, xyAtStation(shape, atM)), Math.atan2(-dy, dx));
  }
}

/** Rings round the places that the checks speak of. */
export function paintFindings(look: Look): void {
  const { ctx, view, scene, input } = look;
  for (const { at, severity } of byGravity(input.findings)) {
    if (!at) continue;
    const place = toPx(view, scene.plane.toXy(at));
    const seen = place[0] > -20 && place[1] > -20 && place[0] < view.widthPx + 20 && place[1] < view.heightPx + 20;
    if (seen) drawFinding({ ctx, palette: look.palette, scale: look.signScale, built: true }, place, severity);
  }
}
