import { setGatewayWidth } from '../../../core/model/edits/setGatewayWidth.ts';
import type { Gateway } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { commit } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { KindField, KindFields } from '../parts/KindField.tsx';
import { CrossingDetails } from './CrossingDetails.tsx';

export function GatewayDetails({ gateway }: { readonly gateway: Gateway }) {
  const { survey } = useOpenFile();
  const { name } = gateway;
  const { hint } = useWords().kinds.gateway.widthM;
  const line = survey.lines.get(gateway.lineId)?.line;
  return (
    <>
      <KindField thing={gateway} field="name" step={`Rename ${name}`} />
      <KindField
        thing={gateway}
        field="widthM"
        hint={`In fence ${line?.name ?? 'not known'}. ${hint(null)}`}
        onCommit={(widthM) =>
          void commit(`Change the width of ${name}`, setGatewayWidth({ gatewayId: gateway.id, widthM }))
        }
      />
      <KindField thing={gateway} field="status" step={(status) => `Mark ${status}: ${name}`} />
      <CrossingDetails gateway={gateway} />
      <section className="crossing" aria-label="The gate">
        <h3>The gate</h3>
        <div className="field-pair">
          <KindField thing={gateway} field="leaves" step={`Change the leaves of ${name}`} />
          <KindField thing={gateway} field="hungFrom" step={`Rehang ${name}`} />
        </div>
        <KindFields thing={gateway} except={['name', 'status', 'leaves', 'hungFrom']} />
      </section>
    </>
  );
}
