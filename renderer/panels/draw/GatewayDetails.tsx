import { setGatewayWidth } from '../../../core/model/edits/setGatewayWidth.ts';
import type { Gateway } from '../../../core/model/things.ts';
import { useOpenFile } from '../../state/appState.ts';
import { change } from '../../state/change.ts';
import { commit } from '../../state/session.ts';
import { useWords } from '../../state/useFigures.ts';
import { SelectField } from '../parts/fields.tsx';
import { KindField, KindFields } from '../parts/KindField.tsx';
import { CrossingDetails } from './CrossingDetails.tsx';
import { sidesOfGateway } from './sidesOfGateway.ts';

export function GatewayDetails({ gateway }: { readonly gateway: Gateway }) {
  const { survey } = useOpenFile();
  const { name } = gateway;
  const words = useWords();
  const { gate, steps } = words.window.draw.details;
  const hint = words.kinds.gateway.widthM.hint(null);
  const line = survey.lines.get(gateway.lineId)?.line;
  return (
    <>
      <KindField thing={gateway} field="name" step={steps.rename({ name })} />
      <KindField
        thing={gateway}
        field="widthM"
        hint={line ? gate.inFence({ name: line.name, hint }) : gate.inUnknownFence({ hint })}
        onCommit={(widthM) => void commit(steps.width({ name }), setGatewayWidth({ gatewayId: gateway.id, widthM }))}
      />
      <KindField thing={gateway} field="status" step={(status) => steps.mark({ status, name })} />
      <CrossingDetails gateway={gateway} />
      <section className="crossing" aria-label={gate.title}>
        <h3>{gate.title}</h3>
        <div className="field-pair">
          <KindField thing={gateway} field="leaves" step={steps.gate({ name })} />
          <HingePost gateway={gateway} />
        </div>
        <Swing gateway={gateway} />
        <KindFields thing={gateway} except={['name', 'status', 'leaves', 'hungFrom', 'opens']} />
      </section>
    </>
  );
}

/** Which post it hangs from, by the compass: nobody sees which one is the start. */
function HingePost({ gateway }: { readonly gateway: Gateway }) {
  const { survey } = useOpenFile();
  const words = useWords();
  const { gate, steps } = words.window.draw.details;
  const step = steps.hinge({ name: gateway.name });
  const shape = survey.gateways.get(gateway.id);
  if (!shape) return <KindField thing={gateway} field="hungFrom" step={step} />;
  const { posts } = sidesOfGateway(shape, survey);
  return (
    <SelectField
      label={words.kinds.gateway.hungFrom.label}
      value={gateway.hungFrom}
      choices={(['start', 'end'] as const).map((value) => ({ value, label: gate.hingePost({ side: posts[value] }) }))}
      onCommit={(hungFrom) => change(step, 'gateway', gateway.id, { hungFrom })}
    />
  );
}

/** To which side it swings, by the compass and the paddock there. */
function Swing({ gateway }: { readonly gateway: Gateway }) {
  const { survey } = useOpenFile();
  const words = useWords();
  const { gate, steps } = words.window.draw.details;
  const step = steps.swing({ name: gateway.name });
  const shape = survey.gateways.get(gateway.id);
  if (!shape) return <KindField thing={gateway} field="opens" step={step} />;
  const { hands } = sidesOfGateway(shape, survey);
  const label = ({ side, paddock }: (typeof hands)['left']) =>
    paddock === null ? gate.swings({ side }) : gate.swingsInto({ side, paddock });
  return (
    <SelectField
      label={words.kinds.gateway.opens.label}
      value={gateway.opens}
      choices={(['left', 'right'] as const).map((value) => ({ value, label: label(hands[value]) }))}
      onCommit={(opens) => change(step, 'gateway', gateway.id, { opens })}
    />
  );
}
