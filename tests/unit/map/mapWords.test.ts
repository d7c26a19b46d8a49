import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { paletteOf } from '../../../core/drawing/palette.ts';
import { serviceKinds } from '../../../core/model/serviceKinds.ts';
import { english } from '../../../core/words/en.ts';
import { figures } from '../../../core/words/figures.ts';
import { setLanguage } from '../../../core/words/language.ts';
import { pseudo } from '../../../core/words/pseudo.ts';
import { commands, keyText, labelOf } from '../../../renderer/commands/commands.ts';
import { gridFigure } from '../../../renderer/map/interaction/gridLabels.ts';
import { typedBearingDeg, typedLengthM } from '../../../renderer/map/interaction/typedMeasures.ts';
import { mapKeys, toolKeys, toolsFor, toolsOf, type Workspace } from '../../../renderer/map/mapTypes.ts';
import { voltageAt } from '../../../renderer/map/tools/choose/voltageAt.ts';
import { createTools } from '../../../renderer/map/tools/createTools.ts';
import type { PaintTools } from '../../../renderer/map/tools/tool.ts';
import { sidesOfGateway } from '../../../renderer/panels/draw/sidesOfGateway.ts';
import { useApp } from '../../../renderer/state/appState.ts';
import { englishIn, proseIn } from '../../support/pseudo.ts';
import { exampleContext, exampleScene, key, pointer } from './support.ts';

beforeEach(() => setLanguage(pseudo()));
afterEach(() => setLanguage(english));

const names = ['F1', 'F2', 'F3', 'G1', 'G2', 'P1', 'P2', 'S1', 'E1', 'L1', 'Undergate'];
const scene = exampleScene();

/** A canvas that keeps what is written on it. */
function paper(written: string[]): PaintTools['ctx'] {
  const known: Record<string, unknown> = {
    fillText: (text: string) => void written.push(text),
    measureText: () => ({ width: 10 }),
  };
  return new Proxy({} as PaintTools['ctx'], {
    get: (_, name) => known[String(name)] ?? (() => {}),
    set: () => true,
  });
}

/** All that a tool says while the pointer goes over the example, clicks, types and drags. */
async function saidBy(name: keyof ReturnType<typeof createTools>, change: Parameters<typeof exampleContext>[1]) {
  const { context, made, refused } = exampleContext(scene, change);
  const tool = createTools(context)[name];
  const said: string[] = [];
  const tools: PaintTools = {
    ctx: paper(said),
    view: context.view(),
    palette: paletteOf('light'),
    say: figures('metric').say,
  };
  const look = () => {
    said.push(tool.hint());
    const { snappedTo } = tool.progress();
    if (snappedTo) {
      expect(proseIn(snappedTo, new Set())).toEqual([]);
      said.push(figures('metric').say(snappedTo));
    }
    tool.paint(tools);
  };
  look();
  const places = [
    [100, 0],
    [200, 0],
    [50, 0],
    [48, 0],
    [70, 1],
    [100, 100],
    [100, 140],
    [20, 60],
    [200, 200],
    [-90, -90],
  ] as const;
  for (const [x, y] of places) {
    tool.move(pointer(x, y));
    look();
  }
  for (const [x, y] of places) {
    tool.click(pointer(x, y));
    await Promise.resolve();
    look();
  }
  tool.typed?.('twelve', 'up');
  tool.typed?.('5', 'up');
  tool.typed?.('900000', '');
  tool.key(key('Enter'));
  await Promise.resolve();
  tool.cancel();
  tool.key(key('Enter'));
  tool.doubleClick?.(pointer(1, 1));
  for (const [x, y] of places) {
    if (!tool.press?.(pointer(x, y))) continue;
    tool.drag?.(pointer(x + 3, y + 4));
    look();
    tool.release?.(pointer(x + 3, y + 4), true);
    await Promise.resolve();
  }
  return [...said, ...refused, ...made.map(({ label }) => label)];
}

const left = (texts: readonly string[]) => texts.map((text) => englishIn(text, names)).filter((text) => text !== '');

describe('what the map says comes from the catalogue', () => {
  for (const workspace of Object.keys(toolsOf) as Workspace[]) {
    for (const { name } of toolsOf[workspace]) {
      it(`${name} in ${workspace}`, async () => {
        for (const chosen of [[], ['F2'], ['G1'], ['P1'], ['F1', 'F2']]) {
          const said = await saidBy(name, { workspace, chosen });
          expect(said.length).toBeGreaterThan(5);
          expect(left(said)).toEqual([]);
        }
      });
    }
  }

  it('what is drawn of each service', async () => {
    for (const what of serviceKinds) {
      const service = { what, voltageV: null };
      const shown = toolsFor({ workspace: 'draw', service }).flatMap(({ label, purpose }) => [label, purpose]);
      expect(left([...shown, ...(await saidBy('service', { service }))])).toEqual([]);
    }
  });

  it('the placing of a picture', async () => {
    const placed = { underlayId: 'none', marked: [] };
    for (const way of ['distance', 'points'] as const) {
      const placing = { ...placed, way };
      expect(left(await saidBy('pin', { placing: placing as never }))).toEqual([]);
    }
  });

  it('the keys', () => {
    const keys = [...toolKeys(), ...mapKeys('imperial').map(({ keys: each, does }) => ({ key: each, does }))];
    expect(left(keys.map(({ does }) => does))).toEqual([]);
    expect(left(mapKeys('metric').map((each) => each.keys))).toEqual([]);
    for (const workspace of Object.keys(toolsOf) as Workspace[]) {
      expect(left(toolsFor({ workspace }).flatMap(({ label, purpose }) => [label, purpose]))).toEqual([]);
    }
  });

  it('the commands, with their keys and why they can not be done', () => {
    for (const command of commands) {
      const why = command.whyNot(useApp.getState());
      expect(left([labelOf(command), keyText(command.key ?? ''), why ?? '']), command.id).toEqual([]);
    }
  });

  it('typed figures and the grid', () => {
    const problems = [typedLengthM('twelve', 'metric'), typedLengthM('900 km', 'imperial'), typedBearingDeg('up')];
    expect(left(problems.map((each) => (each as { problem: string }).problem))).toEqual([]);
    expect(gridFigure(200, 100, 'metric', 'east', 'west')).toMatch(/^⟦.*⟧$/);
  });

  it('what a fence reads', () => {
    const shading = (volts: number | null) => ({
      ofEdge: () => null,
      along: () => volts,
      openSwitchIds: new Set<string>(),
      maxV: 8000,
      minimumV: 3000,
    });
    const said = [null, 0, 2000, 6000].map((volts) =>
      voltageAt(scene, exampleContext(scene, { voltage: shading(volts) }).context.input(), [100, 60], 2),
    );
    expect(said).not.toContain(null);
    expect(left(said.map(String))).toEqual([]);
  });
});

it('the sides of a gateway go by the compass and the paddocks there', () => {
  const { survey } = scene;
  const shape = survey.gateways.get('G1')!;
  const { posts, hands } = sidesOfGateway(shape, survey);
  expect(posts).toEqual({ start: 'west', end: 'east' });
  const west = survey.paddocks.find(({ ring }) => ring.every(([x]) => x < 101))!;
  expect(hands.left).toEqual({ side: 'north', paddock: west.name });
  expect(hands.right).toEqual({ side: 'south', paddock: null });
});
