import { expect, it } from 'vitest';
import { paletteOf } from '../../../core/drawing/palette.ts';
import { figures } from '../../../core/words/figures.ts';
import { message } from '../../../core/words/message.ts';
import { drawSwitchOffer } from '../../../renderer/map/tools/switchTool.ts';
import type { PaintTools } from '../../../renderer/map/tools/tool.ts';
import { exampleContext, exampleScene } from './support.ts';

it('a place for a switch that is told by its distance is told in the units of the property', () => {
  const label = message('survey.switches.candidate.corner', { line: 'F1', atM: 340 });
  const said = (units: 'metric' | 'imperial'): string[] => {
    const written: string[] = [];
    const known: Record<string, unknown> = {
      fillText: (text: string) => void written.push(text),
      measureText: () => ({ width: 10 }),
    };
    const ctx = new Proxy({} as PaintTools['ctx'], {
      get: (_, name) => known[String(name)] ?? (() => {}),
      set: () => true,
    });
    const { context } = exampleContext(exampleScene());
    const tools = { ctx, view: context.view(), palette: paletteOf('light'), say: figures(units).say };
    const spot = message('window.map.spots.suggested', { label });
    drawSwitchOffer(tools, {
      place: { on: 'line', lineId: 'F1', atM: 340 },
      xy: [0, 0],
      along: [1, 0],
      spot,
    });
    return written;
  };
  expect(said('metric').join()).toContain('340 m');
  expect(said('imperial').join()).toContain('1,115 ft');
});
