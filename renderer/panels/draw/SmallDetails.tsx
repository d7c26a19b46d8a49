import type { PaddockName, Post, Service } from '../../../core/model/things.ts';
import { formatArea } from '../../../core/words/numbers/write.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useUnits } from '../../state/useUnits.ts';
import { KindField, KindFields } from '../parts/KindField.tsx';

export function PostDetails({ post }: { readonly post: Post }) {
  return <KindFields thing={post} />;
}

export function PaddockDetails({ paddock }: { readonly paddock: PaddockName }) {
  const { survey } = useOpenFile();
  const units = useUnits();
  const found = survey.paddocks.find(({ named }) => named?.id === paddock.id);
  return (
    <>
      <p className="details-fact">
        {found ? (
          <>
            <span className="figure-value">{formatArea(found.areaM2, units)}</span> inside its fences
          </>
        ) : (
          'No fence closes it in now; the name is kept for when one does.'
        )}
      </p>
      <KindFields thing={paddock} />
    </>
  );
}

export function ServiceDetails({ service }: { readonly service: Service }) {
  const { name, what } = service;
  return (
    <>
      <KindField thing={service} field="name" step={`Rename ${name}`} />
      <KindField thing={service} field="what" step={`Change ${name}`} />
      {what === 'powerLine' ? (
        <KindField thing={service} field="voltageV" step={`Change the voltage of ${name}`} />
      ) : null}
      {what === 'road' || what === 'path' ? (
        <KindField thing={service} field="open" step={`Change the use of ${name}`} />
      ) : null}
      <KindFields thing={service} except={['name', 'what', 'voltageV', 'buried', 'open']} />
    </>
  );
}
