import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { projectionOf } from '../../../core/coordinates/projection.ts';
import { utmDefinition, utmZoneAt } from '../../../core/coordinates/utm.ts';
import { writeDxf } from '../../../core/exchange/dxf/writeDxf.ts';
import { projectOf, propertyOf, put } from '../../../core/model/project.ts';
import { surveyOf } from '../../../core/survey/survey.ts';

const demo = projectOf(demoThings());
const survey = surveyOf(demo);

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly text?: string;
  readonly position?: { readonly x: number; readonly y: number };
  readonly vertices?: readonly { readonly x: number; readonly y: number }[];
}

function read(text: string): Entity[] {
  return new DxfParser().parseSync(text)!.entities as unknown as Entity[];
}

describe('DXF, by another reader', () => {
  it('holds every fence line with the length that it has, each kind on its layer', () => {
    const entities = read(writeDxf(demo, survey));
    const lines = entities.filter(({ type, layer }) => type === 'LWPOLYLINE' && layer.startsWith('FENCE'));
    expect(lines).toHaveLength(demo.fenceLine.size);
    const lengthM = lines.reduce((sum, { vertices }) => {
      return (
        sum + vertices!.slice(1).reduce((so, b, i) => so + Math.hypot(b.x - vertices![i]!.x, b.y - vertices![i]!.y), 0)
      );
    }, 0);
    const drawnM = [...survey.lines.values()].reduce((sum, line) => sum + line.lengthM, 0);
    expect(lengthM / drawnM).toBeCloseTo(1, 5);
    expect(entities.filter(({ type, layer }) => type === 'POINT' && layer === 'GATEWAYS')).toHaveLength(
      demo.gateway.size,
    );
    const names = entities.flatMap(({ type, layer, text }) => (type === 'TEXT' && layer === 'GATEWAYS' ? [text] : []));
    expect(names.sort()).toEqual([...demo.gateway.values()].map(({ name }) => name).sort());
  });

  it('is in the plane system that the property is shown in, and says so', () => {
    const shown = put(demo, { kind: 'coordinateSettings', id: 'coordinates', system: 'utm', own: null });
    const entities = read(writeDxf(shown, surveyOf(shown)));
    expect(entities.find(({ layer }) => layer === 'NOTES')!.text).toContain('UTM');
    const { projection } = projectionOf(utmDefinition(utmZoneAt(propertyOf(demo).origin)));
    const [gateway] = survey.gateways.values();
    const [east, north] = projection!.toGrid(survey.plane.toLonLat(gateway!.centre));
    const points = entities.filter(({ type, layer }) => type === 'POINT' && layer === 'GATEWAYS');
    expect(points.some(({ position }) => Math.hypot(position!.x - east, position!.y - north) < 0.01)).toBe(true);
  });

  it('keeps letters beyond ASCII, in the way of the format', () => {
    const post = {
      kind: 'post',
      id: 'p',
      name: 'Māra\n2',
      at: propertyOf(demo).origin,
      role: 'other',
      note: '',
    } as const;
    expect(writeDxf(put(demo, post), surveyOf(put(demo, post)))).toContain('M\\U+0101ra 2');
  });
});
