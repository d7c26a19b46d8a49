import type { Check } from '../support/context.ts';
import { finding } from '../support/make.ts';

/** Nothing is drawn yet. */
export const emptyProject: Check = ({ project, property }) =>
  project.fenceLine.size > 0
    ? []
    : [
        finding('emptyProject', 'hint', ['property'], {
          message: `No fence is drawn on ${property.name} yet.`,
          remedy: 'Draw the first fence line, or import lines from a GeoJSON file.',
        }),
      ];
