import type { PaddockName, Post, Service } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { useFigures, useWords } from '../../state/useFigures.ts';
import { KindField, KindFields } from '../parts/KindField.tsx';

export function PostDetails({ post }: { readonly post: Post }) {
  return <KindFields thing={post} />;
}

export function PaddockDetails({ paddock }: { readonly paddock: PaddockName }) {
  const { survey } = useOpenFile();
  const f = useFigures();
  const words = f.words.window.draw.details.paddock;
  const found = survey.paddocks.find(({ named }) => named?.id === paddock.id);
  return (
    <>
      <p className="details-fact">
        {found ? (
          <>
            <span className="figure-value">{f.area(found.areaM2)}</span> {words.inside}
          </>
        ) : (
          words.notClosed
        )}
      </p>
      <KindFields thing={paddock} />
    </>
  );
}

export function ServiceDetails({ service }: { readonly service: Service }) {
  const { name, what } = service;
  const { steps } = useWords().window.draw.details;
  return (
    <>
      <KindField thing={service} field="name" step={steps.rename({ name })} />
      <KindField thing={service} field="what" step={steps.change({ name })} />
      {what === 'powerLine' ? <KindField thing={service} field="voltageV" step={steps.voltage({ name })} /> : null}
      {what === 'road' || what === 'path' ? (
        <KindField thing={service} field="open" step={steps.use({ name })} />
      ) : null}
      <KindFields thing={service} except={['name', 'what', 'voltageV', 'buried', 'open']} />
    </>
  );
}
