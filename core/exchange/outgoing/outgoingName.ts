import type { Project } from '../../model/project.ts';
import { own } from '../preview/raw.ts';
import type { AnyFeature } from './featuresOf.ts';

/** What a feature is called on another program's map. */
export function outgoingName(project: Project, { properties, id }: AnyFeature): string {
  const text = (field: string) => {
    const value: unknown = own(properties ?? {}, field);
    return typeof value === 'string' ? value : '';
  };
  const [kind, ...rest] = String(id).split(':');
  switch (kind) {
    case 'crossing':
      return `Crossing at ${project.gateway.get(text('gatewayId'))?.name ?? 'no gateway'}`;
    case 'buriedPoint':
      return `${text('name') || 'Point'} of crossing`;
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
