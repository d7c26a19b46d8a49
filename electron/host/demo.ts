import { readFileSync } from 'node:fs';
import { readBody } from '../../core/api/readBody.ts';
import { bodyVersion, isBody } from '../../core/kinds/upgrade.ts';
import type { Thing } from '../../core/model/things.ts';

/** The things of the demo property, from its JSON file. Throws where the file is not what it should be. */
export function readDemo(path: string): Thing[] {
  const bodies = JSON.parse(readFileSync(path, 'utf8')) as readonly unknown[];
  return bodies.flatMap((body, i) => {
    const read = readBody(isBody(body) ? String(body.kind) : 'thing', bodyVersion, body);
    if (read.ok) return read.things;
    throw new Error(`${path}: the ${read.at} of thing ${i + 1} is not what it should be.`);
  });
}
