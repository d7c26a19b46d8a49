import fc from 'fast-check';
import type { Xy } from '../../core/geometry/types.ts';
import type { Project } from '../../core/model/project.ts';
import type { SwitchPlace, Thing } from '../../core/model/things.ts';
import { at, bridgedGateway, cutOut, drawing, energiser, gateway, leadOut, line } from './drawings.ts';

const gridM = 40;

/** A grid point, at times a hand width off. */
const point: fc.Arbitrary<Xy> = fc
  .record({ x: fc.nat(5), y: fc.nat(5), dx: fc.constantFrom(0, 0, 0.2, -0.25), dy: fc.constantFrom(0, 0, 0.15, -0.4) })
  .map(({ x, y, dx, dy }) => [x * gridM + dx, y * gridM + dy]);

const path = fc.array(point, { minLength: 1, maxLength: 6 });

const gatewayPart = fc.record({
  line: fc.nat(7),
  atM: fc.double({ min: -5, max: 200, noNaN: true }),
  widthM: fc.constantFrom(3.6, 4.2, 8, 60),
  bridged: fc.boolean(),
});

const switchPart = fc.record({
  on: fc.constantFrom('gateway', 'lineEnd', 'line', 'leadOut'),
  index: fc.nat(7),
  end: fc.constantFrom('start' as const, 'end' as const),
  atM: fc.double({ min: 0, max: 200, noNaN: true }),
  normally: fc.constantFrom('closed' as const, 'closed' as const, 'closed' as const, 'open' as const),
});

/**
 * Small drawings of lines that touch, cross, overlap and come back to themselves, with gateways and switches anywhere,
 * fed by the lead-out of an energiser `e` and at times by a second one, `e2`.
 */
export const randomDrawing: fc.Arbitrary<Project> = fc
  .record({
    paths: fc.array(path, { minLength: 1, maxLength: 8 }),
    gateways: fc.array(gatewayPart, { maxLength: 5 }),
    switches: fc.array(switchPart, { maxLength: 6 }),
    fedAt: fc.nat(7),
    secondAt: fc.option(fc.nat(7), { freq: 4 }),
  })
  .map(({ paths, gateways, switches, fedAt, secondAt }) => {
    const things: Thing[] = paths.map((points, i) => line(`l${i}`, points));
    for (const [i, { line: on, atM, widthM, bridged }] of gateways.entries()) {
      const place = [`g${i}`, `l${on % paths.length}`, atM, { widthM }] as const;
      things.push(...(bridged ? bridgedGateway(...place) : [gateway(...place)]));
    }
    for (const [i, { on, index, end, atM, normally }] of switches.entries()) {
      const lineId = `l${index % paths.length}`;
      const places: Record<string, SwitchPlace> = {
        gateway: { on: 'gateway', gatewayId: `g${index % Math.max(1, gateways.length)}`, post: end },
        lineEnd: { on: 'lineEnd', lineId, end },
        line: { on: 'line', lineId, atM },
        leadOut: { on: 'leadOut', leadOutId: 'lo' },
      };
      things.push(cutOut(`s${i}`, places[on]!, { normally }));
    }
    const feedPoint = paths[fedAt % paths.length]![0]!;
    things.push(energiser('e', [-50, -50]), leadOut('lo', 'e', [[-50, -50], feedPoint]));
    if (secondAt !== null) things.push({ ...energiser('e2', [0, 0]), at: at(paths[secondAt % paths.length]!.at(-1)!) });
    return drawing(things);
  });
