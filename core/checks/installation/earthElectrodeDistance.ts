import { polylineGap } from '../../geometry/polyline.ts';
import { called } from '../../model/edits/support/find.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import type { Finding } from '../finding.ts';
import type { Check } from '../support/context.ts';
import { finding, standard, theService } from '../support/make.ts';

const leastM = 10;

/** The energiser's earth stakes stand well away from any other earthing system. */
export const earthElectrodeDistance: Check = ({ project, survey, services, say }) => {
  const electrodes = services.filter(({ service }) => service.what === 'earthElectrode');
  const findings: Finding[] = [];
  for (const energiser of project.energiser.values()) {
    const fields = [...project.earthField.values()].filter(({ energiserId }) => energiserId === energiser.id);
    if (fields.length === 0) {
      findings.push(
        finding('earthElectrodeDistance', 'notKnown', [energiser.id], {
          message: `Where the earth stakes of ${called(energiser)} are is not drawn, so their distance from other earthing systems is not known.`,
          remedy: 'Draw the earth field of this energiser.',
          source: standard,
          at: energiser.at,
        }),
      );
    }
    for (const field of fields) {
      if (!isPlaceOnEarth(field.at)) continue;
      if (electrodes.length === 0) {
        findings.push(
          finding('earthElectrodeDistance', 'notKnown', [field.id], {
            message: `Whether the earth stakes of ${called(energiser)} stand ${say(leastM)} from every other earthing system is not known: none is drawn.`,
            remedy: 'Mark the earth electrodes of the mains and the telephone as services.',
            source: standard,
            at: field.at,
          }),
        );
      }
      const xy = survey.plane.toXy(field.at);
      // The row of stakes reaches this far from its middle, whichever way it runs.
      const reachM = ((field.rods - 1) * field.spacingM) / 2;
      for (const { service, xy: path } of electrodes) {
        const awayM = polylineGap([xy], path)!.distanceM;
        if (awayM - reachM >= leastM) continue;
        const sure = awayM < leastM;
        findings.push(
          finding('earthElectrodeDistance', sure ? 'error' : 'notKnown', [field.id, service.id], {
            message: sure
              ? `The earth stakes of ${called(energiser)} are ${say(awayM)} from ${theService(service)}; ${say(leastM)} is the least.`
              : `The middle of the earth stakes of ${called(energiser)} is ${say(awayM)} from ${theService(service)}, but the row is ${say(2 * reachM)} long and may reach nearer than ${say(leastM)}.`,
            remedy: sure
              ? 'Move the earth stakes away from it.'
              : 'Measure from the nearest stake, and move the row if need be.',
            source: standard,
            at: field.at,
          }),
        );
      }
    }
  }
  return findings;
};
