import type { Item, PaperPoint } from '../../../core/drawing/displayList.ts';
import type { Pen } from '../../../core/drawing/pen.ts';
import { earthSign } from '../../../core/drawing/signs/earthSign.ts';
import { energiserSign } from '../../../core/drawing/signs/energiserSign.ts';
import { findingSign } from '../../../core/drawing/signs/findingSign.ts';
import { farGateSign, type GateLook, gateSign, leastLeafMm } from '../../../core/drawing/signs/gateSign.ts';
import { postSign } from '../../../core/drawing/signs/postSign.ts';
import type { Sign } from '../../../core/drawing/signs/sign.ts';
import {
  suggestedSwitchSign,
  surplusMark,
  switchPlaceSign,
  switchSign,
} from '../../../core/drawing/signs/switchSign.ts';
import type { CutOutSwitch } from '../../../core/model/things.ts';
import { directionAt, xyAt } from '../../../core/shapes/measuredPath.ts';
import { byGravity } from '../findings.ts';
import { findingPen } from '../plane/screenPen.ts';
import { toPx } from '../plane/view.ts';
import type { Part } from '../scene/parts.ts';
import { switchSignXy } from '../scene/switchSignXy.ts';
import type { Look } from './look.ts';

/** From further off than this, ordinary posts are not drawn. */
const postsFurthestMPerPx = 3;
const portion = 60;

/** Gateways, posts, switches, sources and earths. */
export function* drawSigns(look: Look, parts: readonly Part[]): Generator<readonly Item[]> {
  for (let i = 0; i < parts.length; i += portion) {
    yield parts.slice(i, i + portion).flatMap((part) => signOf(look, part)?.items ?? []);
  }
}

/** The sign of a part as it stands in the picture; null for what has none there. */
export function signOf(look: Look, part: Part): Sign | null {
  const { view, pen } = look;
  switch (part.kind) {
    case 'gateway': {
      const { startPost, endPost, gateway } = part.shape;
      return gateSignFor(toPx(view, startPost), toPx(view, endPost), gateway, pen);
    }
    case 'post':
      return look.metresPerPx <= postsFurthestMPerPx ? postSign(toPx(view, part.xy), part.post.role, pen) : null;
    case 'switch': {
      const { row } = part;
      const stands = { normally: switchStands(look, row.switch), status: row.switch.status };
      return switchSign(toPx(view, switchSignXy(part, view.pxPerM)), [row.along[0], -row.along[1]], stands, pen);
    }
    case 'energiser':
      return energiserSign(toPx(view, part.xy), part.energiser.status, pen);
    case 'earthField':
      return earthSign(toPx(view, part.xy), part.earthField.status, pen);
    default:
      return null;
  }
}

/** A gateway true to scale; from afar, bars across the fence. */
export function gateSignFor(start: PaperPoint, end: PaperPoint, look: GateLook, pen: Pen): Sign {
  const isFar = Math.hypot(end[0] - start[0], end[1] - start[1]) < leastLeafMm * pen.unit;
  return isFar ? farGateSign(start, end, look, pen) : gateSign(start, end, look, false, pen);
}

/** As it normally stands, or as it does in the voltages that are shown. */
function switchStands({ input: { voltage } }: Look, { id, normally }: CutOutSwitch): 'closed' | 'open' {
  if (!voltage) return normally;
  return voltage.openSwitchIds.has(id) ? 'open' : 'closed';
}

/** What the plan would add, what it does without, and the places that the user gave it. */
export function drawPlan(look: Look): Item[] {
  const { view, scene, pen } = look;
  const { plan, workspace } = look.input;
  const added = workspace === 'divide' ? addedPlaces(look) : [];
  if (!plan) return added;
  const suggested = plan.missing.flatMap(({ xy }) => suggestedSwitchSign(toPx(view, xy), pen).items);
  const surplus = plan.surplus.flatMap((id) => {
    const part = scene.partsOf.get(id)?.[0];
    return part?.kind === 'switch' ? [surplusMark(toPx(view, switchSignXy(part, view.pxPerM)), pen)] : [];
  });
  return [...added, ...suggested, ...surplus];
}

function addedPlaces({ view, scene, pen, input: { project } }: Look): Item[] {
  return [...project.switchCandidate.values()].flatMap(({ lineId, atM }) => {
    const shape = scene.survey.lines.get(lineId);
    if (!shape) return [];
    const [dx, dy] = directionAt(shape, atM);
    return switchPlaceSign(toPx(view, xyAt(shape, atM)), [dx, -dy], pen).items;
  });
}

/** Rings round the places that the checks speak of. */
export function drawFindings({ view, scene, pen, input }: Look): Item[] {
  const large = findingPen(pen);
  return byGravity(input.findings).flatMap(({ at, severity }) => {
    if (!at) return [];
    const place = toPx(view, scene.plane.toXy(at));
    const seen = place[0] > -20 && place[1] > -20 && place[0] < view.widthPx + 20 && place[1] < view.heightPx + 20;
    return seen ? findingSign(place, severity, large).items : [];
  });
}
