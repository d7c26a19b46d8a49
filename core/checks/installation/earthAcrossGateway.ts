import { refTo } from '../../model/refTo.ts';
import { message } from '../../words/message.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** Above this the ground is taken for a poor conductor; an assumption of this project. */
const poorSoilOhmM = 300;

/** A crossing, under the gateway or over it, that leaves the earth behind where the fence or the ground needs it carried across. */
export const earthAcrossGateway: Check = ({ project, survey, property }) =>
  [...survey.crossings.values()].flatMap(({ crossing, gateway }) => {
    if (crossing.earth) return [];
    const line = project.fenceLine.get(gateway.lineId);
    const type = line && project.fenceType.get(line.typeId);
    const { soilOhmM } = property.power;
    const overhead = crossing.method === 'overhead';
    const noEarth = { overhead, gateway: refTo(gateway) };
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    if (type && type.earthWires > 0) {
      return finding('earthAcrossGateway', 'warning', [crossing.id, gateway.id], {
        message: message('checks.earthAcrossGateway.earthWire', { ...noEarth, type: type.name }),
        remedy: message('checks.earthAcrossGateway.remedy', { overhead }),
        source: commonPractice,
        at,
      });
    }
    if (soilOhmM > poorSoilOhmM) {
      return finding('earthAcrossGateway', 'warning', [crossing.id, gateway.id], {
        message: message('checks.earthAcrossGateway.poorSoil', { ...noEarth, soilOhmM }),
        remedy: message('checks.earthAcrossGateway.remedy', { overhead }),
        source: commonPractice,
        at,
      });
    }
    return finding('earthAcrossGateway', 'notKnown', [crossing.id, gateway.id], {
      message: message('checks.earthAcrossGateway.notKnown', noEarth),
      remedy: message('checks.earthAcrossGateway.notKnownRemedy', { overhead }),
      source: commonPractice,
      at,
    });
  });
