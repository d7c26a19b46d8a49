import { pointAtStation } from '../../../core/geometry/plane/pointAtStation.ts';
import { formatArea, formatTape } from '../../../core/model/formatUnits.ts';
import type { LabelWish } from '../labels/placeLabels.ts';
import { textWidthPx } from '../labels/textWidth.ts';
import { type Px, toPx } from '../plane/view.ts';
import type { Part, PiecePart } from '../scene/parts.ts';
import type { Look } from './look.ts';
import { labelSizePx } from './mapFont.ts';
import { marksAlong, pathLengthPx } from './marksAlong.ts';
import { pixelPath } from './pixelPath.ts';

export interface MapLabel extends LabelWish {
  /** A plain text with a halo, or a section's letter on a disc. */
  readonly style: 'text' | 'soft' | 'letter';
  readonly colour?: string;
}

/** From further off than this (metres a pixel) labels of a kind are not wished for, unless chosen. */
const furthest = { gateway: 2.5, switch: 6, post: 0.6, line: 5, crossing: 0.12, service: 6 };

/** The labels that the parts in view would like to have. */
export function labelWishes(look: Look, parts: readonly Part[]): MapLabel[] {
  const chosen = new Set([...look.input.chosen, ...(look.input.pointed ? [look.input.pointed] : [])]);
  const wishes: MapLabel[] = [];
  const longest = new Map<string, PiecePart>();
  for (const part of parts) {
    if (part.kind === 'piece') {
      const known = longest.get(part.id);
      if (!known || part.toM - part.fromM > known.toM - known.fromM) longest.set(part.id, part);
    } else {
      const wish = wishOf(look, part, chosen.has(part.id));
      if (wish) wishes.push(wish);
    }
  }
  for (const part of longest.values()) {
    const wish = lineName(look, part, chosen.has(part.id));
    if (wish) wishes.push(wish);
  }
  if (look.showSections) wishes.push(...sectionLetters(look, parts));
  return wishes;
}

function wishOf(look: Look, part: Part, chosen: boolean): MapLabel | null {
  const { view, metresPerPx, signScale } = look;
  const near = (kind: keyof typeof furthest) => chosen || metresPerPx <= furthest[kind];
  switch (part.kind) {
    case 'gateway':
      if (!near('gateway')) return null;
      return beside(look, part.shape.gateway.name, toPx(view, part.shape.centre), 12, 50, chosen);
    case 'switch':
      if (!near('switch')) return null;
      return beside(look, part.row.switch.name, toPx(view, part.row.xy), 13 * signScale + 4, 60, chosen);
    case 'post':
      if (!near('post')) return null;
      return beside(look, part.post.name, toPx(view, part.xy), 9, 20, chosen);
    case 'energiser':
      return beside(look, part.energiser.name, toPx(view, part.xy), 18, 80, chosen);
    case 'crossing':
      return near('crossing') ? depthLabel(look, part.figures.path, part.figures.crossing, chosen) : null;
    case 'paddock':
      return paddockLabel(look, part.paddock, chosen);
    case 'service': {
      const middle = part.xy[Math.floor(part.xy.length / 2)];
      if (!middle || !near('service')) return null;
      return { ...beside(look, part.service.name, toPx(view, middle), 8, 15, chosen), style: 'soft' };
    }
    default:
      return null;
  }
}

/** A name beside a sign: to its right, left, above, below, or at a corner. */
function beside(look: Look, text: string, [x, y]: Px, awayPx: number, rank: number, chosen: boolean): MapLabel {
  const widthPx = textWidthPx(look.ctx, text);
  const heightPx = labelSizePx + 2;
  const [dx, dy] = [widthPx / 2 + awayPx, heightPx / 2 + awayPx];
  const places: Px[] = [
    [x + dx, y - dy * 0.8],
    [x - dx, y - dy * 0.8],
    [x + dx, y + dy * 0.8],
    [x - dx, y + dy * 0.8],
    [x, y - dy],
    [x, y + dy],
  ];
  return { text, widthPx, heightPx, places, rank, always: chosen, style: 'text' };
}

function depthLabel(
  look: Look,
  path: readonly (readonly [number, number])[],
  crossing: { readonly method: string; readonly depthM: number },
  chosen: boolean,
): MapLabel | null {
  if (path.length < 2) return null;
  const middle = path[Math.floor(path.length / 2)]!;
  const text = crossing.method === 'overhead' ? 'overhead' : `${formatTape(crossing.depthM, look.input.units)} deep`;
  return beside(look, text, toPx(look.view, middle), 6, 30, chosen);
}

function paddockLabel(
  look: Look,
  paddock: {
    readonly name: string;
    readonly areaM2: number;
    readonly inside: readonly [number, number];
    readonly ring: readonly (readonly [number, number])[];
  },
  chosen: boolean,
): MapLabel | null {
  const widthPx = textWidthPx(look.ctx, paddock.name);
  // A name belongs in its paddock: none where the paddock is too small for it.
  const roomPx = Math.sqrt(paddock.areaM2) * look.view.pxPerM;
  if (!chosen && roomPx < widthPx * 0.9) return null;
  const area = formatArea(paddock.areaM2, look.input.units);
  const withArea = roomPx > 90;
  const text = withArea ? `${paddock.name}\n${area}` : paddock.name;
  const heightPx = (labelSizePx + 3) * (withArea ? 2 : 1);
  const [x, y] = toPx(look.view, paddock.inside);
  const places: Px[] = [
    [x, y],
    [x, y - heightPx],
    [x, y + heightPx],
  ];
  const wide = withArea ? Math.max(widthPx, textWidthPx(look.ctx, area)) : widthPx;
  return { text, widthPx: wide, heightPx, places, rank: 40, always: chosen, style: 'soft' };
}

function lineName(look: Look, part: PiecePart, chosen: boolean): MapLabel | null {
  if (!chosen && (look.metresPerPx > furthest.line || look.showSections)) return null;
  const path = pixelPath(look.view, part.xy);
  const text = part.shape.line.name;
  const widthPx = textWidthPx(look.ctx, text);
  const lengthPx = pathLengthPx(path);
  if (path.length < 2 || (!chosen && lengthPx < widthPx * 2.5)) return null;
  const places: Px[] = [];
  for (const share of [0.5, 0.35, 0.65, 0.2, 0.8]) {
    const { point, bearingDeg } = pointAtStation(path, lengthPx * share);
    // In pixels y runs down, so this "bearing" is measured from the screen's downward direction.
    const angle = (bearingDeg * Math.PI) / 180;
    const away = 6 + Math.abs(Math.cos(angle)) * (widthPx / 2) + Math.abs(Math.sin(angle)) * (labelSizePx / 2 + 2);
    const [nx, ny] = [Math.cos(angle) * away, -Math.sin(angle) * away];
    places.push([point[0] + nx, point[1] + ny], [point[0] - nx, point[1] - ny]);
  }
  return { text, widthPx, heightPx: labelSizePx + 2, places, rank: 10, always: chosen, style: 'text' };
}

/** Each section's letter, over and over along its line. */
function sectionLetters(look: Look, parts: readonly Part[]): MapLabel[] {
  const { sections, sectionOfEdge } = look.scene.survey;
  const letters: MapLabel[] = [];
  for (const part of parts) {
    if (part.kind !== 'piece' || part.edge < 0) continue;
    const section = sections[sectionOfEdge[part.edge] ?? -1];
    if (!section) continue;
    const path = pixelPath(look.view, part.xy);
    for (const { x, y } of marksAlong(path, 190)) letters.push(letterLabel(section.letter, [x, y], 25));
  }
  for (const section of sections) letters.push(letterLabel(section.letter, toPx(look.view, section.labelXy), 70));
  return letters;
}

function letterLabel(letter: string, centre: Px, rank: number): MapLabel {
  const widthPx = 22 + (letter.length - 1) * 8;
  return { text: letter, widthPx, heightPx: 22, places: [centre], rank, style: 'letter' };
}
