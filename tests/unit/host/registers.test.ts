import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import type { WasCrossing } from '../../../core/model/inGroundThings.ts';
import { allThings, put } from '../../../core/model/project.ts';
import type { Thing } from '../../../core/model/things.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import { ProjectService } from '../../../electron/host/projectService.ts';
import { registersOf } from '../../../electron/host/registers.ts';
import { makeFile, withSqlite } from '../../support/projectFile.ts';
import { drawingWithLeft } from '../../support/recordedDrawing.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

const demoFile = join(import.meta.dirname, '..', '..', '..', 'assets', 'demo', 'demo-property.json');

test('a closed file tells its sections and crossing lengths to plain SQLite', async () => {
  const folder = temporaryFolder();
  const things = JSON.parse(readFileSync(demoFile, 'utf8')) as Thing[];
  const path = makeFile(join(folder, 'Demo.undergate'), things);
  const service = new ProjectService({
    folders: { config: folder, projects: folder },
    demoFile,
    print: () => Promise.reject(new Error('not here')),
    madeWith: 'Undergate test',
  });
  expect((await service.forWindow('test').open({ path })).ok).toBe(true);
  service.dispose();

  const rows = (view: string) =>
    withSqlite(path, (database) => database.prepare<[], Record<string, unknown>>(`SELECT * FROM ${view}`).all());
  const [sections, crossings] = [rows('v_sections'), rows('v_crossings')];
  expect(sections.length).toBeGreaterThan(1);
  for (const section of sections) expect(section).toMatchObject({ up_to_date: 1, fed: expect.any(Number) as number });
  expect(crossings).toHaveLength(things.filter(({ kind }) => kind === 'crossing').length);
  for (const { pipe_m, trench_m, up_to_date } of crossings) {
    expect(pipe_m).toBeGreaterThan(trench_m as number);
    expect(up_to_date).toBe(1);
  }
});

test('what is left in the ground is told within what reaches all that may be', () => {
  const project = drawingWithLeft();
  const thing = [...project.inGround.values()].find(({ was }) => was.what === 'crossing')!;
  const was = thing.was as WasCrossing;
  const points = was.points.map((point) => ({ ...point, side: null, ties: point.ties.slice(0, 2) }));
  const open = put(project, { ...thing, was: { ...was, points } });
  const left = leftInGround(open, surveyOf(open)).find((each) => each.thing.id === thing.id)!;
  const { courses, certainty } = left.crossing!;
  expect(certainty.withinM).toBeGreaterThan(Math.max(...courses.map(({ withinM }) => withinM)) + 1);
  const { inGround } = registersOf([...allThings(open)]);
  expect(inGround).toContainEqual(expect.objectContaining({ id: thing.id, withinM: certainty.withinM }));
});
