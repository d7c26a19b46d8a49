import type { Thing } from '../../../core/model/things.ts';
import type { Texts } from '../../../core/words/message.ts';
import { CommandButton } from '../../commands/CommandButton.tsx';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { choose } from '../../state/choose.ts';
import { findThing } from '../../state/findThing.ts';
import { mapView } from '../../state/mapView.ts';
import { useWords } from '../../state/useFigures.ts';
import { SwitchDetails } from '../divide/SwitchDetails.tsx';
import { lazyPart } from '../lazyPart.tsx';
import { FenceLineDetails } from './FenceLineDetails.tsx';
import { FenceTypeDetails } from './FenceTypes.tsx';
import { GatewayDetails } from './GatewayDetails.tsx';
import { SeveralLines } from './SeveralLines.tsx';
import { PaddockDetails, PostDetails, ServiceDetails } from './SmallDetails.tsx';
import { EarthFieldDetails, EnergiserDetails, LeadOutDetails } from './SupplyDetails.tsx';

const ConductorDetails = lazyPart(async () => (await import('../power/ConductorDetails.tsx')).ConductorDetails);
const ReadingDetails = lazyPart(async () => (await import('../power/ReadingDetails.tsx')).ReadingDetails);
const RecordDetails = lazyPart(async () => (await import('../record/RecordDetails.tsx')).RecordDetails);
const UnderlayDetails = lazyPart(async () => (await import('../underlay/UnderlayDetails.tsx')).UnderlayDetails);

/** The details of what is chosen, wherever it was chosen. */
export function ChosenDetails() {
  const { project } = useOpenFile();
  const words = useWords().window.draw.details;
  const chosen = useApp((state) => state.chosen);
  const things = chosen.flatMap((id) => findThing(project, id) ?? []);
  const thing = things.at(-1);
  if (!thing) return null;
  const title = things.length === 1 ? titleOf(thing, words.titles) : words.titles.several({ count: things.length });
  return (
    <section className="details" aria-label={words.region({ title })}>
      <header className="details-head">
        <h2>{title}</h2>
        <button type="button" onClick={() => mapView.zoomTo(thing.id)}>
          {words.show}
        </button>
        <CommandButton id="delete" label={words.delete} />
        <button type="button" className="plain" onClick={() => choose([])}>
          {words.done}
        </button>
      </header>
      {things.length === 1 ? <Details thing={thing} /> : <SeveralLines things={things} />}
    </section>
  );
}

/** In Record a thing is recorded; everywhere else it is drawn. */
function Details({ thing }: { readonly thing: Thing }) {
  const drawn = <DetailsOf thing={thing} />;
  return useApp((state) => state.page) === 'record' ? <RecordDetails thing={thing} others={drawn} /> : drawn;
}

function titleOf(thing: Thing, titles: Texts['window']['draw']['details']['titles']): string {
  const name = 'name' in thing ? thing.name : '';
  switch (thing.kind) {
    case 'fenceLine':
    case 'gateway':
    case 'switch':
    case 'post':
    case 'energiser':
    case 'leadOut':
    case 'fenceType':
    case 'conductor':
      return titles[thing.kind]({ name });
    case 'earthField':
      return titles.earthField;
    case 'reading':
      return titles.reading({ day: thing.date.slice(0, 10) });
    default:
      return titles.other({ kind: thing.kind, name });
  }
}

function DetailsOf({ thing }: { readonly thing: Thing }) {
  switch (thing.kind) {
    case 'fenceLine':
      return <FenceLineDetails line={thing} />;
    case 'gateway':
      return <GatewayDetails gateway={thing} />;
    case 'switch':
      return <SwitchDetails cutOut={thing} />;
    case 'post':
      return <PostDetails post={thing} />;
    case 'paddock':
      return <PaddockDetails paddock={thing} />;
    case 'energiser':
      return <EnergiserDetails energiser={thing} />;
    case 'leadOut':
      return <LeadOutDetails leadOut={thing} />;
    case 'earthField':
      return <EarthFieldDetails field={thing} />;
    case 'fenceType':
      return <FenceTypeDetails type={thing} />;
    case 'underlay':
      return <UnderlayDetails underlay={thing} />;
    case 'service':
      return <ServiceDetails service={thing} />;
    case 'conductor':
      return <ConductorDetails conductor={thing} />;
    case 'reading':
      return <ReadingDetails reading={thing} />;
    default:
      return null;
  }
}
