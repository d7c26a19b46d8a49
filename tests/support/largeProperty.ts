import type { Xy } from '../../core/geometry/types.ts';
import { newCrossing, newGateway } from '../../core/model/defaults.ts';
import { type Project, projectOf } from '../../core/model/project.ts';
import type { Thing } from '../../core/model/things.ts';
import { drawing, energiser, gateSwitch, leadOut, line, property } from './drawings.ts';

const blockM = 250;
const vertexStepM = 50;

/**
 * An invented property of about `runs` runs: long fences 250 m apart, short ones between them that divide the land into
 * paddocks, each with a gateway, a crossing and (every fourth) a switch. The last 6 m of most short fences are rails that
 * are not live, so that the live network is a tree with a few rings.
 */
export function largeProperty(runs: number): Project {
  const side = Math.max(2, Math.round(Math.sqrt(runs / 3)));
  const things: Thing[] = [energiser('E', [-30, -30]), leadOut('L', 'E', [[-30, -30], wavy(0, 0)])];
  for (let row = 0; row <= side; row++) {
    things.push(
      line(
        `long-${row}`,
        steps(0, side * blockM).map((x) => wavy(x, row * blockM)),
      ),
    );
  }
  for (let row = 0; row < side; row++) {
    for (let column = 0; column <= side; column++) {
      const ring = column === row || column === 0;
      const reachM = ring ? blockM : blockM - 6;
      const from = row * blockM;
      const id = `short-${row}-${column}`;
      things.push(
        line(
          id,
          steps(from, from + reachM).map((y) => wavy(column * blockM, y)),
        ),
      );
      if (!ring) {
        const rails = [from + reachM, from + blockM].map((y) => wavy(column * blockM, y));
        things.push(line(`rails-${row}-${column}`, rails, { live: false }));
      }
      const gateway = newGateway({ id: `gate-${id}`, name: `G${things.length}`, lineId: id, atM: 20 });
      things.push(gateway, newCrossing(`crossing-${id}`, gateway, property().crossings));
      if ((row + column) % 4 === 0) things.push(gateSwitch(`switch-${id}`, gateway.id, 'start'));
    }
  }
  return projectOf([...[...drawing().fenceType.values()], property(), ...things]);
}

/** Every 50 m, and the last. */
function steps(from: number, to: number): number[] {
  const between = Array.from({ length: Math.ceil((to - from) / vertexStepM) }, (_, i) => from + i * vertexStepM);
  return [...between, to];
}

/** The land is not ruled with a ruler; the same point always comes out the same. */
function wavy(x: number, y: number): Xy {
  return [x + 8 * Math.sin(y / 170), y + 8 * Math.sin(x / 210)];
}
