import { expect, test } from 'vitest';
import type * as z from 'zod';
import { thingSchemas } from '../../../core/api/thingSchemas.ts';
import { bodySteps } from '../../../core/kinds/bodySteps.ts';
import { bodiesWithin, bodyVersion } from '../../../core/kinds/upgrade.ts';
import { kinds } from '../../../core/model/project.ts';
import { newestVersion, readMigrations } from '../../../electron/store/migrations.ts';

/** Where a schema holds whole bodies, objects that say their kind: as `bodiesWithin` writes it. */
function bodiesIn(schema: z.core.$ZodType, path: string): string[] {
  const { def } = (schema as z.core.$ZodTypes)._zod;
  switch (def.type) {
    case 'nullable':
    case 'optional':
    case 'nonoptional':
      return bodiesIn(def.innerType, path);
    case 'array':
      return bodiesIn(def.element, `${path}[]`);
    case 'union':
      return def.options.flatMap((option) => bodiesIn(option, path));
    case 'object': {
      const kind = def.shape.kind as z.core.$ZodTypes | undefined;
      if (path !== '' && kind?._zod.def.type === 'literal') return [path];
      const within = (field: string) => (path === '' ? field : `${path}.${field}`);
      return Object.entries(def.shape).flatMap(([field, each]) => bodiesIn(each, within(field)));
    }
    default:
      return [];
  }
}

test('bodies within bodies are found wherever a schema has them', () => {
  for (const kind of kinds) {
    const places = new Set(bodiesIn(thingSchemas[kind], ''));
    expect(new Set(bodiesWithin[kind]), kind).toEqual(places);
  }
});

test('each step is of a migration, and one kind has one step in it', () => {
  const newest = newestVersion(readMigrations());
  const keys = bodySteps.map(({ to, kind }) => `${to} ${kind}`);
  expect(new Set(keys).size).toBe(keys.length);
  for (const { to } of bodySteps) expect(to).toBeLessThanOrEqual(newest);
  expect(bodyVersion).toBeLessThanOrEqual(newest);
});
