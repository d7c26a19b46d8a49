import type { Xy } from '../../geometry/types.ts';
import type { LineShape } from '../../shapes/types.ts';
import type { Section, Survey } from '../../survey/types.ts';

/** A piece of a fence line that is drawn in one go: between openings, in one section. */
export interface FenceStretch {
  readonly shape: LineShape;
  readonly fromM: number;
  readonly toM: number;
  readonly path: readonly Xy[];
  /** Null: not live, or not part of the network. */
  readonly section: Section | null;
}

/** Runs closer than this along a line are one stretch. */
const joinM = 1e-6;

/** Every fence line of a survey, cut at gateways and where the section changes; nothing of a line is left out but its openings. */
export function fenceStretches(survey: Survey): FenceStretch[] {
  const sections = sectionPieces(survey);
  const openings = new Map<string, { fromM: number; toM: number }[]>();
  for (const { gateway, fromM, toM } of survey.gateways.values()) {
    const list = openings.get(gateway.lineId) ?? [];
    list.push({ fromM: Math.min(fromM, toM), toM: Math.max(fromM, toM) });
    openings.set(gateway.lineId, list);
  }
  const stretches: FenceStretch[] = [];
  for (const [lineId, shape] of survey.lines) {
    if (shape.xy.length < 2) continue;
    const live = sections.get(lineId) ?? [];
    const taken = [...live, ...(openings.get(lineId) ?? [])].sort((a, b) => a.fromM - b.fromM);
    const rest = gapsBetween(taken, shape.lengthM).map((gap) => ({ ...gap, section: null }));
    for (const { fromM, toM, section } of [...live, ...rest].sort((a, b) => a.fromM - b.fromM)) {
      stretches.push({ shape, fromM, toM, section, path: pieceOfLine(shape, fromM, toM) });
    }
  }
  return stretches;
}

interface SectionPiece {
  readonly fromM: number;
  readonly toM: number;
  readonly section: Section | null;
}

/** Live runs by line, neighbours in the same section joined. */
function sectionPieces(survey: Survey): Map<string, SectionPiece[]> {
  const byLine = new Map<string, SectionPiece[]>();
  survey.network.edges.forEach((edge, i) => {
    if (edge.kind !== 'run') return;
    const section = survey.sections[survey.sectionOfEdge[i] ?? -1] ?? null;
    const list = byLine.get(edge.lineId) ?? [];
    list.push({ fromM: edge.fromM, toM: edge.toM, section });
    byLine.set(edge.lineId, list);
  });
  for (const [lineId, list] of byLine) {
    list.sort((a, b) => a.fromM - b.fromM);
    const joined: SectionPiece[] = [];
    for (const piece of list) {
      const last = joined.at(-1);
      if (last && last.section === piece.section && piece.fromM - last.toM <= joinM) {
        joined[joined.length - 1] = { ...last, toM: piece.toM };
      } else joined.push(piece);
    }
    byLine.set(lineId, joined);
  }
  return byLine;
}

/** What some stretches, sorted by their start, leave free between 0 and `lengthM`. */
function gapsBetween(
  taken: readonly { fromM: number; toM: number }[],
  lengthM: number,
): { fromM: number; toM: number }[] {
  const gaps: { fromM: number; toM: number }[] = [];
  let reached = 0;
  for (const { fromM, toM } of taken) {
    if (fromM - reached > 0.01) gaps.push({ fromM: reached, toM: fromM });
    reached = Math.max(reached, toM);
  }
  if (lengthM - reached > 0.01) gaps.push({ fromM: reached, toM: lengthM });
  return gaps;
}

/** The piece of a line between two of its stations (metres along the ground), in the plane. */
export function pieceOfLine({ xy, stationsM }: LineShape, fromM: number, toM: number): Xy[] {
  const inner = xy.filter((_, i) => stationsM[i]! > fromM && stationsM[i]! < toM);
  return [pointOfLine(xy, stationsM, fromM), ...inner, pointOfLine(xy, stationsM, toM)];
}

function pointOfLine(xy: readonly Xy[], stationsM: readonly number[], atM: number): Xy {
  let i = 1;
  while (i < stationsM.length - 1 && stationsM[i]! < atM) i++;
  const [from, to] = [stationsM[i - 1]!, stationsM[i]!];
  const share = to > from ? Math.min(1, Math.max(0, (atM - from) / (to - from))) : 0;
  const [a, b] = [xy[i - 1]!, xy[i]!];
  return [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
}
