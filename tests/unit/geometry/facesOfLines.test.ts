import { featureCollection, lineString, polygonize } from '@turf/turf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Face, facesOfLines } from '../../../core/geometry/facesOfLines.ts';
import { nodeLines } from '../../../core/geometry/nodeLines.ts';
import { signedRingArea } from '../../../core/geometry/ring.ts';
import type { Xy } from '../../../core/geometry/types.ts';

const areaOf = ({ shell, holes }: Face) =>
  signedRingArea(shell) + holes.reduce((sum, hole) => sum + signedRingArea(hole), 0);
const areas = (lines: readonly (readonly Xy[])[], snapM?: number) =>
  facesOfLines(lines, snapM)
    .map((face) => Math.round(areaOf(face) * 1e6) / 1e6)
    .sort((a, b) => a - b);

const square = (x: number, y: number, side: number): Xy[] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
  [x, y],
];

describe('facesOfLines', () => {
  it('is one paddock for one closed line', () => {
    const [face, none] = facesOfLines([square(0, 0, 100)]);
    expect(none).toBeUndefined();
    expect(face!.shell).toHaveLength(4);
    expect(signedRingArea(face!.shell)).toBe(10_000);
    expect(face!.lines).toEqual([0]);
  });

  it('names the lines that bound each paddock, and no others', () => {
    const faces = facesOfLines([
      square(0, 0, 100),
      [
        [50, 0],
        [50, 100],
      ],
      [
        [50, 50],
        [80, 50],
      ],
      [
        [200, 0],
        [300, 0],
      ],
    ]);
    expect(faces.map(({ lines }) => lines)).toEqual([
      [0, 1],
      [0, 1],
    ]);
  });

  it('closes where lines touch within the tolerance, and only there', () => {
    const open: Xy[][] = [
      [
        [0, 0],
        [100, 0],
        [100, 100],
      ],
      [
        [100.2, 100.1],
        [0, 100],
        [0, 0.25],
      ],
    ];
    expect(areas(open)).toHaveLength(1);
    expect(areas(open)[0]).toBeCloseTo(10_000, -2);
    expect(areas(open, 0.1)).toEqual([]);
  });

  it('closes where lines stop just short of a fence or run just over it', () => {
    const frame = square(0, 0, 100);
    expect(
      areas([
        frame,
        [
          [50, 0.2],
          [50, 99.8],
        ],
      ]),
    ).toEqual([5000, 5000]);
    expect(
      areas([
        frame,
        [
          [50, -0.2],
          [50, 100.2],
        ],
      ]),
    ).toEqual([5000, 5000].map((area) => expect.closeTo(area, -2)));
    expect(
      areas([
        frame,
        [
          [50, 0.5],
          [50, 100],
        ],
      ]),
    ).toEqual([10_000]);
  });

  it('closes where lines merely cross', () => {
    expect(
      areas([
        [
          [-5, 0],
          [105, 0],
        ],
        [
          [100, -5],
          [100, 105],
        ],
        [
          [105, 100],
          [-5, 100],
        ],
        [
          [0, 105],
          [0, -5],
        ],
      ]),
    ).toEqual([10_000]);
  });

  it('drops loose ends and lines that lead nowhere', () => {
    expect(
      areas([
        square(0, 0, 100),
        [
          [0, 0],
          [-50, -50],
        ],
        [
          [100, 50],
          [150, 50],
          [150, 80],
        ],
      ]),
    ).toEqual([10_000]);
    expect(
      areas([
        [
          [0, 0],
          [10, 0],
          [10, 10],
        ],
      ]),
    ).toEqual([]);
  });

  describe('islands', () => {
    it('are holes in the paddock around them, and paddocks themselves', () => {
      const faces = facesOfLines([square(0, 0, 100), square(20, 20, 20), square(60, 60, 10)]);
      expect(faces.map(areaOf).sort((a, b) => a - b)).toEqual([100, 400, 9500]);
      const outer = faces.find(({ holes }) => holes.length > 0)!;
      expect(outer.holes.map(signedRingArea).sort((a, b) => a - b)).toEqual([-400, -100]);
      expect(outer.lines).toEqual([0, 1, 2]);
    });

    it('nest', () =>
      expect(areas([square(0, 0, 100), square(20, 20, 60), square(40, 40, 20)])).toEqual([400, 3200, 6400]));

    it('may be two paddocks side by side', () => {
      expect(areas([square(0, 0, 100), square(20, 20, 20), square(40, 20, 20)])).toEqual([400, 400, 9200]);
    });

    it('may hang on a fence that leads to them', () => {
      expect(
        areas([
          square(0, 0, 100),
          square(20, 20, 20),
          [
            [0, 0],
            [20, 20],
          ],
        ]),
      ).toEqual([400, 9600]);
    });

    it('may touch the boundary, or each other, at a post', () => {
      expect(
        areas([
          square(0, 0, 100),
          [
            [0, 0],
            [30, 10],
            [10, 30],
            [0, 0],
          ],
        ]),
      ).toEqual([400, 9600]);
      expect(areas([square(0, 0, 100), square(20, 20, 20), square(40, 40, 20)])).toEqual([400, 400, 9200]);
    });

    it('may be a figure of eight', () => {
      expect(
        areas([
          [
            [0, 0],
            [10, 10],
            [10, 0],
            [0, 10],
            [0, 0],
          ],
        ]),
      ).toEqual([25, 25]);
    });
  });

  describe('bad lines', () => {
    it('leave the good ones alone: empty, single, doubled, without length, not finite', () => {
      const doubled = square(0, 0, 100).flatMap((vertex) => [vertex, vertex]);
      expect(
        areas([
          doubled,
          [],
          [[5, 5]],
          [
            [7, 7],
            [7, 7],
          ],
          [
            [Number.NaN, 1],
            [Infinity, 5],
          ],
        ]),
      ).toEqual([10_000]);
      expect(facesOfLines([])).toEqual([]);
    });

    it('lie along each other without making slivers', () => {
      expect(
        areas([
          square(0, 0, 100),
          square(0, 0, 100),
          [
            [0, 0],
            [100, 0],
          ],
          [
            [20, 0],
            [60, 0],
          ],
        ]),
      ).toEqual([10_000]);
      const beside: Xy[] = [
        [0.1, 0.1],
        [30, 0.2],
        [99.9, 0.1],
        [99.8, 99.9],
        [50, 100.1],
        [0.1, 99.9],
        [0.1, 0.1],
      ];
      const found = areas([square(0, 0, 100), beside]);
      expect(found).toHaveLength(1);
      expect(found[0]).toBeCloseTo(10_000, -2);
    });

    it('double back on themselves', () => {
      expect(
        areas([
          [
            [0, 0],
            [100, 0],
            [50, 0],
            [50, 80],
          ],
          [
            [100, 0],
            [50, 80],
          ],
        ]),
      ).toEqual([2000]);
    });

    it('meet in one point, many at once', () => {
      const star = Array.from({ length: 12 }, (_, i): Xy[] => {
        const angle = (i * Math.PI) / 12;
        return [
          [50 + 60 * Math.cos(angle), 50 + 60 * Math.sin(angle)],
          [50 - 60 * Math.cos(angle), 50 - 60 * Math.sin(angle)],
        ];
      });
      const found = areas([square(20, 20, 60), ...star]);
      expect(found).toHaveLength(24);
      expect(found.reduce((sum, area) => sum + area, 0)).toBeCloseTo(3600, 3);
    });

    it('curve finely: vertices closer than the tolerance keep their shape', () => {
      const circle = Array.from({ length: 3601 }, (_, i): Xy => {
        const angle = (i * Math.PI) / 1800;
        return [50 * Math.cos(angle), 50 * Math.sin(angle)];
      });
      const [found] = areas([
        circle,
        [
          [-60, 0],
          [60, 0],
        ],
      ]);
      expect(found).toBeCloseTo((Math.PI * 2500) / 2, 0);
    });

    it('of any kind never break it, and faces never cover more than the lines do', () => {
      const near = fc.double({ min: 0, max: 20, noNaN: true });
      const line = fc.array(fc.tuple(near, near), { maxLength: 8 });
      fc.assert(
        fc.property(fc.array(line, { maxLength: 25 }), (lines) => {
          const total = areas(lines).reduce((sum, area) => sum + area, 0);
          expect(total).toBeLessThanOrEqual(400 * 1.05);
          for (const area of areas(lines)) expect(area).toBeGreaterThan(0);
        }),
        { seed: 101, numRuns: 200 },
      );
    });
  });

  /** A separate way to count paddocks: flood the cells of a lattice, with lines along its sides for walls. */
  it('agrees with flooding a lattice', () => {
    const size = 8;
    const at = fc.integer({ min: 0, max: size });
    const wall = fc
      .tuple(at, at, at, fc.boolean())
      .filter(([, from, to]) => from !== to)
      .map(([across, from, to, upright]): Xy[] =>
        upright
          ? [
              [across, from],
              [across, to],
            ]
          : [
              [from, across],
              [to, across],
            ],
      );
    const box = fc
      .tuple(at, at, fc.integer({ min: 1, max: 4 }))
      .filter(([x, y, side]) => x + side <= size && y + side <= size)
      .map(([x, y, side]) => square(x, y, side));
    fc.assert(
      fc.property(fc.array(fc.oneof(wall, box), { maxLength: 18 }), (lines) => {
        const scaled = lines.map((line) => line.map(([x, y]): Xy => [x * 10, y * 10]));
        expect(areas(scaled)).toEqual(floodedAreas(lines, size).map((cells) => cells * 100));
      }),
      { seed: 102, numRuns: 1000 },
    );
  });

  /** @turf/polygonize is right where nothing is an island: a mesh of lines all hanging together. */
  it('agrees with another polygonizer on a mesh of slanting lines', () => {
    const share = fc.integer({ min: 1, max: 999 });
    const chord = fc.tuple(share, share).map(([p, q]): Xy[] => [
      [0, p / 10],
      [100, q / 10],
    ]);
    const plumb = fc.tuple(share, share).map(([p, q]): Xy[] => [
      [p / 10, 0],
      [q / 10, 100],
    ]);
    fc.assert(
      fc.property(fc.array(fc.oneof(chord, plumb), { maxLength: 15 }), (chords) => {
        const lines = [square(0, 0, 100), ...chords];
        const { nodes, edges } = nodeLines(lines, 1e-6);
        const pieces = edges.map(({ from, to }) => lineString([[...nodes[from]!], [...nodes[to]!]]));
        const theirs = polygonize(featureCollection(pieces)).features.map(({ geometry }) =>
          Math.abs(signedRingArea(geometry.coordinates[0] as unknown as Xy[])),
        );
        const ours = areas(lines, 1e-6);
        expect(ours).toEqual(theirs.sort((a, b) => a - b).map((area) => expect.closeTo(area, 4)));
        expect(ours.reduce((sum, area) => sum + area, 0)).toBeCloseTo(10_000, 3);
      }),
      { seed: 103, numRuns: 200 },
    );
  });
});

/** Cells of each region that is closed in, ascending. */
function floodedAreas(lines: readonly (readonly Xy[])[], size: number): number[] {
  const walls = new Set<string>();
  for (const line of lines) {
    for (let i = 1; i < line.length; i++) {
      const [[ax, ay], [bx, by]] = [line[i - 1]!, line[i]!];
      const steps = Math.abs(bx - ax) + Math.abs(by - ay);
      for (let step = 0; step < steps; step++) {
        const x = ax + ((bx - ax) / steps) * step + (bx - ax) / steps / 2;
        const y = ay + ((by - ay) / steps) * step + (by - ay) / steps / 2;
        walls.add(`${x} ${y}`);
      }
    }
  }
  const seen = new Set<string>();
  const found: number[] = [];
  for (let x = -1; x <= size; x++) {
    for (let y = -1; y <= size; y++) {
      const cells = flood(x, y, size, walls, seen);
      if (cells > 0 && x !== -1) found.push(cells);
    }
  }
  return found.sort((a, b) => a - b);
}

function flood(x: number, y: number, size: number, walls: ReadonlySet<string>, seen: Set<string>): number {
  const open = [[x, y]];
  let cells = 0;
  for (let cell = open.pop(); cell; cell = open.pop()) {
    const [cx, cy] = cell as [number, number];
    if (cx < -1 || cy < -1 || cx > size || cy > size || seen.has(`${cx} ${cy}`)) continue;
    seen.add(`${cx} ${cy}`);
    cells++;
    for (const [dx, dy] of [
      [1, 0],
      [-1, 0],
      [0, 1],
      [0, -1],
    ] as const) {
      if (!walls.has(`${cx + 0.5 + dx / 2} ${cy + 0.5 + dy / 2}`)) open.push([cx + dx, cy + dy]);
    }
  }
  return cells;
}
