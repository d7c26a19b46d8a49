import { called } from '../../model/edits/support/find.ts';
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
    const head = `The ${overhead ? 'overhead ' : ''}crossing of ${called(gateway)} carries no earth`;
    const carry = overhead ? 'Carry an earth wire across overhead as well' : 'Lay an earth cable in the trench as well';
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    if (type && type.earthWires > 0) {
      return finding('earthAcrossGateway', 'warning', [crossing.id, gateway.id], {
        message: `${head}, and its fence type "${type.name}" has an earth-return wire that is cut at this gateway.`,
        remedy: `${carry}.`,
        source: commonPractice,
        at,
      });
    }
    if (soilOhmM > poorSoilOhmM) {
      return finding('earthAcrossGateway', 'warning', [crossing.id, gateway.id], {
        message: `${head}, and soil of ${soilOhmM} ohm m conducts poorly.`,
        remedy: `${carry}.`,
        source: commonPractice,
        at,
      });
    }
    return finding('earthAcrossGateway', 'notKnown', [crossing.id, gateway.id], {
      message: `${head}. Whether it is needed depends on the posts, which are not recorded.`,
      remedy: `With timber or plastic posts, or dry, sandy or stony ground: ${carry.charAt(0).toLowerCase()}${carry.slice(1)}, and enter it.`,
      source: commonPractice,
      at,
    });
  });
