import type { Project } from '../../model/project.ts';
import { plainWords } from '../../words/figures.ts';
import { own } from '../preview/raw.ts';
import type { AnyFeature } from './featuresOf.ts';

const pointWords: Readonly<Record<string, string>> = { startFoot: 'Riser foot', endFoot: 'Riser foot', bend: 'Bend' };

/** What a feature is called on another program's map. */
export function outgoingName(project: Project, { properties, id }: AnyFeature): string {
  const text = (field: string) => {
    const value: unknown = own(properties ?? {}, field);
    return typeof value === 'string' ? value : '';
  };
  const isPlanned = own(properties ?? {}, 'inTheGround') === false;
  const [kind, ...rest] = String(id).split(':');
  switch (kind) {
    case 'crossing': {
      const where = project.gateway.get(text('gatewayId'))?.name ?? 'no gateway';
      return isPlanned ? `Planned crossing at ${where}, not in the ground` : `Crossing at ${where}`;
    }
    case 'leadOut':
      return isPlanned ? `${text('name')} (planned, not in the ground)` : text('name') || rest.join(':');
    case 'inGround':
      return `${text('name')} (${text('state')})`;
    case 'buriedPoint': {
      const crossing = project.crossing.get(text('crossingId'));
      const gateway = project.gateway.get(crossing?.gatewayId ?? '')?.name ?? 'no gateway';
      const known = text('placeKnownBy');
      // A handheld shows the name and little else.
      const { ambiguous, contradictory } = plainWords().locate.basis;
      const open = known === ambiguous || known === contradictory ? ` (${known})` : '';
      return `${text('name') || pointWords[text('role')] || 'Point'} of crossing at ${gateway}${open}`;
    }
    case 'earthField':
      return `Earth of ${project.energiser.get(text('energiserId'))?.name ?? 'no energiser'}`;
    case 'reading':
      return `Reading ${text('date')}`;
    case 'run':
      return `Section ${text('section') || '-'}`;
    case 'paddockOutline':
      return 'Paddock without a name';
    default:
      return text('name') || rest.join(':');
  }
}
