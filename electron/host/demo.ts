import { readFileSync } from 'node:fs';
import * as z from 'zod';
import { thingSchema } from '../../core/api/thingSchemas.ts';
import type { Thing } from '../../core/model/things.ts';

/** The things of the demo property, from its JSON file. Throws where the file is not what it should be. */
export function readDemo(path: string): Thing[] {
  return z.array(thingSchema).parse(JSON.parse(readFileSync(path, 'utf8')));
}
