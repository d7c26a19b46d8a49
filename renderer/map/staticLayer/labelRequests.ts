import type { Item } from '../../../core/drawing/displayList.ts';
import { readableTurn } from '../../../core/drawing/labels/placesAlong.ts';
import { fitsInside } from '../../../core/drawing/labels/placesInside.ts';
import type { SeatRequest } from '../../../core/drawing/labels/seats.ts';
import { energiserRadiusMm } from '../../../core/drawing/signs/energiserSign.ts';
import { inGroundReachMm } from '../../../core/drawing/signs/inGroundSign.ts';
import { postReachMm } from '../../../core/drawing/signs/postSign.ts';
import { switchRadiusMm } from '../../../core/drawing/signs/switchSign.ts';
import { marksAlong, pathLength } from '../../../core/drawing/strokes/marksAlong.ts';
import { serviceLetters, serviceLettersEveryMm } from '../../../core/drawing/strokes/services.ts';
import { clipPolylineToBox, pointAtStation } from '../../../core/geometry/polyline.ts';
import type { Xy } from '../../../core/geometry/types.ts';
import { depthAtGateway } from '../../../core/locate/depth.ts';
import { depthLabel } from '../../../core/locate/depthWords.ts';
import { fateInShort } from '../../../core/locate/inGround/leftWords.ts';
import { largestOf } from '../../../core/model/extremes.ts';
import type { CrossingFigures } from '../../../core/shapes/types.ts';
import { middleOf } from '../../../core/survey/paddocks.ts';
import type { Paddock } from '../../../core/survey/types.ts';
import { figures as figuresIn, plainWords } from '../../../core/words/figures.ts';
import { formatArea } from '../../../core/words/numbers/write.ts';
import { type Px, toPx, viewBox } from '../plane/view.ts';
import type { Part, PiecePart, ServicePart } from '../scene/parts.ts';
import { switchSignXy } from '../scene/switchSignXy.ts';
import type { Look } from './look.ts';
import { labelSizePx } from './mapFont.ts';
import { pixelPath } from './pixelPath.ts';

/** A label of the map. Its places are steps of its middle from the anchor, the best first. */
export interface MapLabel extends SeatRequest<Px> {
  readonly text: string;
  /** A section's letter is bold; what steps back is soft. */
  readonly style: 'text' | 'soft' | 'letter';
  readonly anchor: Px;
  readonly width: number;
  readonly height: number;
  /** Degrees clockwise; letters that are set into a line run along it. */
  readonly turnDeg?: number;
}

/** From further off than this (metres a pixel) labels of a kind are not requested for, unless chosen. */
const furthest = { inGround: 1.2, gateway: 2.5, switch: 6, post: 0.6, line: 5, crossing: 0.12, service: 6 };

/** Parts that are looked at before the pointer gets its turn again. */
const portion = 1500;

/** Where more than this of one kind would crowd the picture none is named, except what is chosen and what matters most. */
const mostOfAKind = 320;

/** The labels that the parts in view would like to have. */
export function* labelRequests(look: Look, parts: readonly Part[]): Generator<readonly Item[], MapLabel[]> {
  const chosen = new Set(look.input.chosen);
  const byKind = new Map<Part['kind'] | 'letter' | 'serviceLetters', MapLabel[]>();
  const request = (kind: Part['kind'] | 'letter' | 'serviceLetters', label: MapLabel | null) => {
    const known = byKind.get(kind);
    if (label && known) known.push(label);
    else if (label) byKind.set(kind, [label]);
  };
  const longest = new Map<string, PiecePart>();
  const letters = look.showSections;
  const namesLines = look.metresPerPx <= furthest.line && !letters;
  for (let i = 0; i < parts.length; i++) {
    const part = parts[i]!;
    if (part.kind === 'piece') {
      if (namesLines || chosen.has(part.id)) {
        const known = longest.get(part.id);
        if (!known || part.toM - part.fromM > known.toM - known.fromM) longest.set(part.id, part);
      }
      if (letters) for (const letter of lettersAlong(look, part)) request('letter', letter);
    } else {
      request(part.kind, requestOf(look, part, chosen.has(part.id)));
      if (part.kind === 'service') for (const label of lettersOfService(look, part)) request('serviceLetters', label);
    }
    if (i % portion === portion - 1) yield [];
  }
  for (const part of longest.values()) {
    request('piece', lineName(look, part, chosen.has(part.id)));
  }
  yield [];
  if (letters) {
    for (const { letter, labelXy } of look.scene.survey.sections) {
      request('letter', letterLabel(letter, toPx(look.view, labelXy), 70));
    }
  }
  return [...byKind.values()].flatMap((labels) =>
    labels.length <= mostOfAKind ? labels : labels.filter(({ pinned, priority }) => pinned || priority >= 70),
  );
}

function requestOf(look: Look, part: Part, chosen: boolean): MapLabel | null {
  const { view, metresPerPx, pen } = look;
  const near = (kind: keyof typeof furthest) => chosen || metresPerPx <= furthest[kind];
  switch (part.kind) {
    case 'gateway':
      if (!near('gateway')) return null;
      return beside(look, part.shape.gateway.name, toPx(view, part.shape.centre), 12, 50, chosen);
    case 'switch':
      if (!near('switch')) return null;
      return beside(
        look,
        part.row.switch.name,
        toPx(view, switchSignXy(part, view.pxPerM)),
        switchRadiusMm * pen.unit + 2,
        60,
        chosen,
      );
    case 'post':
      if (!near('post')) return null;
      return beside(look, part.post.name, toPx(view, part.xy), postReachMm * pen.unit + 3, 20, chosen);
    case 'energiser':
      return beside(look, part.energiser.name, toPx(view, part.xy), energiserRadiusMm * pen.unit + 3, 80, chosen);
    case 'crossing':
      return near('crossing') ? crossingLabel(look, part.figures, chosen) : null;
    case 'inGround': {
      if (!near('inGround')) return null;
      const { path, thing } = part.left;
      const text = `${thing.name}: ${figuresIn(look.input.units).say(fateInShort(thing))}`;
      return beside(look, text, toPx(view, path[path.length >> 1]!), inGroundReachMm * pen.unit + 3, 55, chosen);
    }
    case 'paddock':
      return paddockLabel(look, part.paddock, chosen);
    case 'service': {
      const middle = middleInView(look, part.xy);
      if (!middle || !near('service')) return null;
      return beside(look, part.service.name, middle, 8, 15, chosen, 'soft');
    }
    default:
      return null;
  }
}

/** A name beside a sign: at a corner, or above or below it. */
function beside(
  look: Look,
  text: string,
  anchor: Px,
  awayPx: number,
  priority: number,
  chosen: boolean,
  style: MapLabel['style'] = 'text',
): MapLabel {
  const lines = text.split('\n');
  const width = largestOf(lines.map((line) => look.textWidth(line)));
  const height = lines.length * (labelSizePx + 3) - 1;
  const [dx, dy] = [width / 2 + awayPx, height / 2 + awayPx];
  const places: Px[] = [
    [dx, -dy * 0.8],
    [-dx, -dy * 0.8],
    [dx, dy * 0.8],
    [-dx, dy * 0.8],
    [0, -dy],
    [0, dy],
    [dx, 0],
    [-dx, 0],
  ];
  return { text, style, anchor, width, height, places, priority, pinned: chosen };
}

/** The middle of what is in view of a path; null where nothing is. */
function middleInView({ view }: Look, path: readonly Xy[]): Px | null {
  if (path.length === 1) return toPx(view, path[0]!);
  const pieces = clipPolylineToBox(path, viewBox(view)).map((piece) => pixelPath(view, piece));
  const longest = pieces.reduce<Px[]>((best, piece) => (pathLength(piece) > pathLength(best) ? piece : best), []);
  return longest.length < 2 ? null : pointAtStation(longest, pathLength(longest) / 2).point;
}

function crossingLabel(look: Look, figures: CrossingFigures, chosen: boolean): MapLabel | null {
  const { path, crossing } = figures;
  if (path.length < 2) return null;
  const { project, survey, units } = look.input;
  const overhead = crossing.method === 'overhead';
  const text = overhead
    ? plainWords().window.map.overhead
    : depthLabel(depthAtGateway(project, survey, figures))
        .map(figuresIn(units).say)
        .join('\n');
  return beside(look, text, toPx(look.view, path[Math.floor(path.length / 2)]!), 6, 30, chosen);
}

function paddockLabel(look: Look, paddock: Paddock, chosen: boolean): MapLabel | null {
  const name = paddock.name ?? plainWords().survey.unnamedPaddock;
  const widthPx = look.textWidth(name);
  // A name belongs in its paddock: none where the paddock is too small for it.
  const roomPx = Math.sqrt(paddock.areaM2) * look.view.pxPerM;
  if (!chosen && roomPx < widthPx * 0.9) return null;
  const area = formatArea(paddock.areaM2, look.input.units);
  const withArea = roomPx > 90;
  const text = withArea ? `${name}\n${area}` : name;
  const height = (labelSizePx + 3) * (withArea ? 2 : 1);
  const width = withArea ? Math.max(widthPx, look.textWidth(area)) : widthPx;
  const anchor = toPx(look.view, middleOf(paddock));
  const ring = paddock.ring.map((corner) => toPx(look.view, corner));
  const moved = [-height, height].flatMap((step): Px[] =>
    fitsInside([anchor[0], anchor[1] + step], width, height, ring) ? [[0, step]] : [],
  );
  const places: Px[] = [[0, 0], ...moved];
  return { text, style: 'soft', anchor, width, height, places, priority: 40, pinned: chosen };
}

function lineName(look: Look, part: PiecePart, chosen: boolean): MapLabel | null {
  const path = pixelPath(look.view, part.xy);
  const { name } = part.shape.line;
  const volts = voltsBeside(look, part);
  const text = volts === null ? name : plainWords().window.map.voltage.label({ line: name, volts });
  const widthPx = look.textWidth(text);
  const lengthPx = pathLength(path);
  if (path.length < 2 || (!chosen && lengthPx < widthPx * 2.5)) return null;
  const anchor = path[0]!;
  const places: Px[] = [];
  for (const share of [0.5, 0.35, 0.65, 0.2, 0.8]) {
    const { point, bearingDeg } = pointAtStation(path, lengthPx * share);
    // In pixels y runs down, so this "bearing" is measured from the screen's downward direction.
    const angle = (bearingDeg * Math.PI) / 180;
    const away = 6 + Math.abs(Math.cos(angle)) * (widthPx / 2) + Math.abs(Math.sin(angle)) * (labelSizePx / 2 + 2);
    const [nx, ny] = [Math.cos(angle) * away, -Math.sin(angle) * away];
    const [dx, dy] = [point[0] - anchor[0], point[1] - anchor[1]];
    places.push([dx + nx, dy + ny], [dx - nx, dy - ny]);
  }
  const height = labelSizePx + 2;
  return { text, style: 'text', anchor, width: widthPx, height, places, priority: 10, pinned: chosen };
}

/** What the middle of a run reads, where voltages are shown. */
function voltsBeside({ input }: Look, { edge, fromM, toM }: PiecePart): number | null {
  return input.voltage && edge >= 0 ? input.voltage.along(edge, (toM - fromM) / 2) : null;
}

/** Letters stand this far apart along a line. */
const letterSpacingPx = 190;

/** A section's letter, over and over along its line. */
function lettersAlong(look: Look, part: PiecePart): MapLabel[] {
  const { sections, sectionOfEdge } = look.scene.survey;
  const section = sections[sectionOfEdge[part.edge] ?? -1];
  if (!section) return [];
  const [west, south, east, north] = part.box;
  // A short piece has room for none; most pieces of a whole property are short.
  if ((east - west + north - south) * look.view.pxPerM < letterSpacingPx / 2) return [];
  const places = marksAlong(pixelPath(look.view, part.xy), letterSpacingPx);
  return places.map(({ at }) => letterLabel(section.letter, at, 25));
}

/** Of a section's letter, set into its line. */
export const letterSizePx = 18;

function letterLabel(letter: string, anchor: Px, priority: number): MapLabel {
  const width = letterSizePx * (0.4 + 0.62 * letter.length);
  return { text: letter, style: 'letter', anchor, width, height: letterSizePx * 1.2, places: [[0, 0]], priority };
}

/** What a service's line carries, over and over along what is in view of it. */
function lettersOfService(look: Look, { service, xy }: ServicePart): MapLabel[] {
  const text = xy.length > 1 ? serviceLetters(service, figuresIn(look.input.units)) : null;
  if (text === null || look.metresPerPx > furthest.service) return [];
  const width = look.textWidth(text);
  return clipPolylineToBox(xy, viewBox(look.view)).flatMap((piece) =>
    marksAlong(pixelPath(look.view, piece), serviceLettersEveryMm * look.linePen.unit).map(
      ({ at, along }): MapLabel => ({
        text,
        style: 'soft',
        anchor: at,
        width,
        height: labelSizePx + 2,
        turnDeg: readableTurn(along),
        places: [[0, 0]],
        priority: 5,
      }),
    ),
  );
}
