import { polylineGap } from '../../geometry/polyline.ts';
import { refTo, refToService } from '../../model/refTo.ts';
import { isPlaceOnEarth } from '../../shapes/workingPlane.ts';
import { message } from '../../words/message.ts';
import type { Found } from '../finding.ts';
import type { Check } from '../support/context.ts';
import { finding, standard } from '../support/make.ts';

const leastM = 10;

/** The energiser's earth stakes stand well away from any other earthing system. */
export const earthElectrodeDistance: Check = ({ project, survey, services }) => {
  const electrodes = services.filter(({ service }) => service.what === 'earthElectrode');
  const findings: Found[] = [];
  for (const energiser of project.energiser.values()) {
    const fields = [...project.earthField.values()].filter(({ energiserId }) => energiserId === energiser.id);
    if (fields.length === 0) {
      findings.push(
        finding('earthElectrodeDistance', 'notKnown', [energiser.id], {
          message: message('checks.earthElectrodeDistance.notDrawn', { thing: refTo(energiser) }),
          remedy: message('checks.earthElectrodeDistance.notDrawnRemedy'),
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
            message: message('checks.earthElectrodeDistance.noElectrodes', { thing: refTo(energiser), leastM }),
            remedy: message('checks.earthElectrodeDistance.noElectrodesRemedy'),
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
        const near = { thing: refTo(energiser), service: refToService(service), awayM, leastM };
        findings.push(
          finding('earthElectrodeDistance', sure ? 'error' : 'notKnown', [field.id, service.id], {
            message: sure
              ? message('checks.earthElectrodeDistance.near', near)
              : message('checks.earthElectrodeDistance.maybeNear', { ...near, rowM: 2 * reachM }),
            remedy: message(
              sure ? 'checks.earthElectrodeDistance.nearRemedy' : 'checks.earthElectrodeDistance.maybeNearRemedy',
            ),
            source: standard,
            at: field.at,
          }),
        );
      }
    }
  }
  return findings;
};
