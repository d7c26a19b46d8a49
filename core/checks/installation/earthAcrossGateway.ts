import { called } from '../../model/edits/support/find.ts';
import type { Check } from '../support/context.ts';
import { commonPractice, finding } from '../support/make.ts';

/** Above this the ground is taken for a poor conductor; an assumption of this project. */
const poorSoilOhmM = 300;

/** A crossing that leaves the earth behind where the fence or the ground needs it carried across. */
export const earthAcrossGateway: Check = ({ project, survey, property }) =>
  [...survey.crossings.values()].flatMap(({ crossing, gateway }) => {
    if (crossing.earth) return [];
    const line = project.fenceLine.get(gateway.lineId);
    const type = line && project.fenceType.get(line.typeId);
    const { soilOhmM } = property.power;
    const at = survey.gateways.get(gateway.id)?.startPostAt ?? null;
    if (type && type.earthWires > 0) {
      return finding('earthAcrossGateway', 'warning', [crossing.id, gateway.id], {
        message: `The crossing of ${called(gateway)} carries no earth, and its fence type "${type.name}" has an earth-return wire that stops at the gateway.`,
        remedy: 'Lay an earth cable in the trench as well.',
        source: commonPractice,
        at,
      });
    }
    if (soilOhmM > poorSoilOhmM) {
      return finding('earthAcrossGateway', 'warning', [crossing.id, gateway.id], {
        message: `The crossing of ${called(gateway)} carries no earth, and soil of ${soilOhmM} ohm m conducts poorly.`,
        remedy: 'Lay an earth cable in the trench as well.',
        source: commonPractice,
        at,
      });
    }
    return finding('earthAcrossGateway', 'notKnown', [crossing.id, gateway.id], {
      message: `The crossing of ${called(gateway)} carries no earth. Whether it is needed depends on the posts, which are not recorded.`,
      remedy: 'With timber or plastic posts, or dry, sandy or stony ground, lay an earth cable too and enter it.',
      source: commonPractice,
      at,
    });
  });
