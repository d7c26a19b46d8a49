import type { Item, PaperPoint } from '../../drawing/displayList.ts';
import { line, lines, stroke, text } from '../../drawing/paint.ts';
import { crossingSign } from '../../drawing/signs/crossingSign.ts';
import { earthSign } from '../../drawing/signs/earthSign.ts';
import { energiserSign } from '../../drawing/signs/energiserSign.ts';
import { gateSign } from '../../drawing/signs/gateSign.ts';
import { inGroundSign } from '../../drawing/signs/inGroundSign.ts';
import { postSign } from '../../drawing/signs/postSign.ts';
import { switchSign } from '../../drawing/signs/switchSign.ts';
import { leadOutStroke } from '../../drawing/strokes/buried.ts';
import { drawDeadFence, drawFence } from '../../drawing/strokes/fence.ts';
import { floodZone, serviceLetters, serviceLine, servicePoint } from '../../drawing/strokes/services.ts';
import { fenceWidthMm, ink, letters, pen } from '../../drawing/style.ts';
import { type MeasureText, wrapText } from '../../drawing/words.ts';
import type { Service, ServiceKind } from '../../model/things.ts';
import { compareNames } from '../../words/text.ts';
import type { Figures } from '../../words/types.ts';
import { type Block, baselineIn } from '../flow/block.ts';
import type { ShownThings } from '../map/shownThings.ts';

const rowMm = 4.3;
const signMm = 15;
/** Of further lines of a row. */
const lineMm = 2.9;

interface LegendRow {
  readonly words: string;
  /** Draws the sample about a point in the middle of a strip 15 mm wide. */
  readonly sample: (middle: PaperPoint) => readonly Item[];
}

/** The signs on a sheet and what they mean; planned and built side by side. */
export function legendBlocks(
  shown: ShownThings,
  scaleDenominator: number,
  widthMm: number,
  f: Figures,
  measure: MeasureText,
): Block[] {
  return legendRows(shown, fenceWidthMm(scaleDenominator), f).map((row) => legendRow(row, widthMm, measure));
}

function legendRow({ words, sample }: LegendRow, widthMm: number, measure: MeasureText): Block {
  const left = signMm + 1.5;
  const lines = wrapText(words, widthMm - left, 'regular', letters.panel, measure);
  return {
    heightMm: rowMm + (lines.length - 1) * lineMm,
    paint: ([x, y]) => [
      ...sample([x + signMm / 2, y + rowMm / 2]),
      ...lines.map((each, i) =>
        text(each, [x + left, baselineIn(y + i * lineMm, rowMm, letters.panel)], { sizePt: letters.panel }),
      ),
    ],
  };
}

function legendRows(shown: ShownThings, fenceMm: number, f: Figures): LegendRow[] {
  const said = f.words.sheets.map.legend;
  const roles = new Set(shown.posts.map(({ role }) => role));
  const methods = new Set(shown.crossings.map(({ method }) => method));
  const rows: (LegendRow | false)[] = [
    shown.lines.some(({ line: { live } }) => live) && {
      words: said.liveFence,
      sample: (m) => [
        ...drawFence(strip(m, -7, -0.7), 'planned', fenceMm, 'plain'),
        ...drawFence(strip(m, 0.7, 7), 'built', fenceMm, 'plain'),
      ],
    },
    shown.lines.some(({ line: { live } }) => !live) && {
      words: said.deadFence,
      sample: (m) => [...drawDeadFence(strip(m, -7, -0.7), 'planned'), ...drawDeadFence(strip(m, 0.7, 7), 'built')],
    },
    shown.gateways.length > 0 && {
      words: said.gateway,
      sample: (m) => [
        ...gateSample([m[0] - 4.5, m[1] + 0.9], 'planned', fenceMm),
        ...gateSample([m[0] + 3, m[1] + 0.9], 'built', fenceMm),
      ],
    },
    methods.has('buried') && {
      words: said.buriedCrossing,
      sample: (m) => [...crossingSample(m, -6.5, 'buried', 'planned'), ...crossingSample(m, 1.5, 'buried', 'built')],
    },
    methods.has('overhead') && {
      words: said.overheadCrossing,
      sample: (m) => crossingSample(m, -2.5, 'overhead', 'planned'),
    },
    shown.switches.length > 0 && {
      words: said.switch,
      sample: ([x, y]) => [
        ...switchSign([x - 4, y], [1, 0], { normally: 'closed', status: 'planned' }).items,
        ...switchSign([x + 4, y], [1, 0], { normally: 'open', status: 'planned' }).items,
      ],
    },
    shown.switches.some((row) => row.switch.status === 'built', fenceMm) && {
      words: said.switchBuilt,
      sample: (m) => switchSign(m, [1, 0], { normally: 'closed', status: 'built' }).items,
    },
    shown.energisers.length > 0 && {
      words: said.energiser,
      sample: ([x, y]) => [...energiserSign([x - 4, y], 'planned').items, ...energiserSign([x + 4, y], 'built').items],
    },
    shown.earthFields.length > 0 && { words: said.earthStakes, sample: (m) => earthSign(m, 'planned').items },
    shown.leadOuts.length > 0 && {
      words: said.leadOut,
      sample: (m) => [line(strip(m, -7, 7), leadOutStroke({ buried: true, status: 'planned' }))],
    },
    shown.inGround.length > 0 && {
      words: said.inGround,
      sample: ([x, y]) => [...inGroundSign([x - 4, y], false).items, ...inGroundSign([x + 4, y], true).items],
    },
    roles.has('strainer') && { words: said.strainer, sample: (m) => postSign(m, 'strainer').items },
    roles.has('angle') && { words: said.anglePost, sample: (m) => postSign(m, 'angle').items },
    roles.has('other') && { words: said.otherPost, sample: (m) => postSign(m, 'other').items },
    ...serviceRows(shown.services, f),
    { words: said.grid, sample: gridSample },
  ];
  return rows.filter((row) => row !== false);
}

function strip([x, y]: PaperPoint, from: number, to: number): PaperPoint[] {
  return [
    [x + from, y],
    [x + to, y],
  ];
}

function gateSample(at: PaperPoint, status: 'planned' | 'built', fenceMm: number): readonly Item[] {
  const [start, end] = strip(at, -1.2, 1.2) as [PaperPoint, PaperPoint];
  return [
    ...drawFence(strip(at, -2.6, -1.2), status, fenceMm, 'plain'),
    ...drawFence(strip(at, 1.2, 2.6), status, fenceMm, 'plain'),
    ...gateSign(start, end, { leaves: 1, hungFrom: 'start', opens: 'left', status }, false).items,
  ];
}

function crossingSample(
  [x, y]: PaperPoint,
  fromMm: number,
  method: 'buried' | 'overhead',
  status: 'planned' | 'built',
): readonly Item[] {
  const bow = method === 'buried' ? 1 : 0;
  const path = Array.from({ length: 17 }, (_, i): PaperPoint => {
    const share = i / 16;
    return [x + fromMm + 5 * share, y - bow * 0.5 + 4 * bow * share * (1 - share)];
  });
  return crossingSign(path, { method, status }).items;
}

function serviceRows(services: readonly Service[], f: Figures): LegendRow[] {
  const { services: names, legend } = f.words.sheets.map;
  const looks = new Map<string, { what: ServiceKind; buried: boolean; point: boolean }>();
  for (const { what, buried, path } of services) {
    const point = path.length === 1;
    const asBuried = buried && what !== 'road' && what !== 'creek' && what !== 'path' && what !== 'floodZone' && !point;
    looks.set(`${what} ${asBuried} ${point}`, { what, buried: asBuried, point });
  }
  return [...looks.values()]
    .sort((a, b) => compareNames(a.what, b.what))
    .map(({ what, buried, point }) => ({
      words: buried ? legend.buriedService({ what }) : names[what],
      sample: (m) => serviceSample(what, buried, point, m, f),
    }));
}

function serviceSample(
  what: ServiceKind,
  buried: boolean,
  point: boolean,
  [x, y]: PaperPoint,
  f: Figures,
): readonly Item[] {
  if (what === 'floodZone') {
    const area = [
      [x - 7, y - 1.5],
      [x + 7, y - 1.5],
      [x + 7, y + 1.5],
      [x - 7, y + 1.5],
    ] as const;
    const frame = [x - 7, y - 1.5, x + 7, y + 1.5] as const;
    return floodZone(area, frame, (path) => [[...path]]);
  }
  if (point) return servicePoint(what, [x, y]);
  const inLine = serviceLetters({ what, voltageV: null }, f);
  const style = { sizePt: letters.small, align: 'centre', ink: ink.soft, halo: 0.6 } as const;
  return [
    ...serviceLine({ what, buried }, strip([x, y], -7, 7)),
    ...(inLine === null
      ? []
      : [text(what === 'powerLine' ? f.words.sheets.map.kilovolts : inLine, [x, y + 0.7], style)]),
  ];
}

function gridSample([x, y]: PaperPoint): readonly Item[] {
  return [
    lines(
      [
        [
          [x - 1.6, y],
          [x + 1.6, y],
        ],
        [
          [x, y - 1.6],
          [x, y + 1.6],
        ],
      ],
      stroke(pen.hairline, { ink: ink.soft }),
    ),
  ];
}
