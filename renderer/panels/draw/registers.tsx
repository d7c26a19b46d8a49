import type { Gateway, Post } from '../../../core/model/things.ts';
import type { CrossingFigures, LineShape } from '../../../core/shapes/types.ts';
import type { Paddock } from '../../../core/survey/types.ts';
import { fixed, formatArea, formatLength, formatTape } from '../../../core/words/numbers/write.ts';
import { paddockMapId } from '../../map/mapTypes.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useNextFenceType } from '../../state/useNextFenceType.ts';
import { useUnits } from '../../state/useUnits.ts';
import { SelectField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';

export function FenceRegister() {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const nextType = useNextFenceType();
  return (
    <>
      <SelectField
        label="The next fence is of type"
        value={nextType ?? ''}
        choices={[...project.fenceType.values()].map(({ id, name }) => ({ value: id, label: name }))}
        onCommit={(nextFenceTypeId) => useApp.setState({ nextFenceTypeId })}
      />
      <Register<LineShape>
        caption="Fence lines"
        rows={[...survey.lines.values()]}
        idOf={({ line }) => line.id}
        empty="No fence lines yet."
        columns={[
          { title: 'Name', cell: ({ line }) => line.name, sortBy: ({ line }) => line.name },
          { title: 'Type', cell: ({ type }) => type?.name ?? 'not known', sortBy: ({ type }) => type?.name ?? '' },
          {
            title: 'Live',
            cell: ({ line }) => (line.live ? 'live' : 'not live'),
            sortBy: ({ line }) => Number(line.live),
          },
          {
            title: 'Length',
            figures: true,
            cell: ({ lengthM }) => formatLength(lengthM, units),
            sortBy: ({ lengthM }) => lengthM,
          },
        ]}
      />
    </>
  );
}

export function GatewayRegister() {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  return (
    <Register<Gateway>
      caption="Gateways"
      rows={[...project.gateway.values()]}
      idOf={({ id }) => id}
      empty="No gateways yet. Press G on the map and click on a fence."
      columns={[
        { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
        {
          title: 'In fence',
          cell: ({ lineId }) => survey.lines.get(lineId)?.line.name ?? 'none',
          sortBy: ({ lineId }) => survey.lines.get(lineId)?.line.name ?? '',
        },
        {
          title: 'Width',
          figures: true,
          cell: ({ widthM }) => formatTape(widthM, units),
          sortBy: ({ widthM }) => widthM,
        },
        {
          title: 'Crossing',
          cell: ({ id }) => crossingWord(survey.crossings.get(id), survey.gateways.get(id)?.lineLive ?? false),
        },
        { title: 'State', cell: ({ status }) => status, sortBy: ({ status }) => status },
      ]}
    />
  );
}

function crossingWord(figures: CrossingFigures | undefined, live: boolean): string {
  if (figures) return figures.crossing.method;
  return live ? 'missing' : 'not needed';
}

export function CrossingRegister() {
  const { survey } = useOpenFile();
  const units = useUnits();
  return (
    <Register<CrossingFigures>
      caption="Under-gate crossings"
      rows={[...survey.crossings.values()]}
      idOf={({ gateway }) => gateway.id}
      empty="No crossings yet. A gateway in a live fence gets one by itself."
      columns={[
        { title: 'Gateway', cell: ({ gateway }) => gateway.name, sortBy: ({ gateway }) => gateway.name },
        lengthColumn('Trench', (row) => row.trenchM),
        lengthColumn('Pipe', (row) => row.pipeM),
        lengthColumn('Live cable', (row) => row.liveCableM),
        lengthColumn('Earth cable', (row) => row.earthCableM),
      ]}
    />
  );

  function lengthColumn(title: string, lengthM: (row: CrossingFigures) => number) {
    return { title, figures: true, cell: (row: CrossingFigures) => formatTape(lengthM(row), units), sortBy: lengthM };
  }
}

export function PaddockRegister() {
  const { survey } = useOpenFile();
  const units = useUnits();
  return (
    <Register<Paddock>
      caption="Paddocks, as the fences close them in"
      rows={survey.paddocks}
      idOf={paddockMapId}
      empty="No paddock is closed in by fences yet."
      columns={[
        { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
        {
          title: 'Area',
          figures: true,
          cell: ({ areaM2 }) => formatArea(areaM2, units),
          sortBy: ({ areaM2 }) => areaM2,
        },
      ]}
    />
  );
}

export function PostRegister() {
  const { project } = useOpenFile();
  return (
    <Register<Post>
      caption="Posts"
      rows={[...project.post.values()]}
      idOf={({ id }) => id}
      empty="No posts are marked. Press P on the map to mark a strainer; gate posts come with their gateway."
      columns={[
        { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
        { title: 'Role', cell: ({ role }) => role, sortBy: ({ role }) => role },
      ]}
    />
  );
}

interface SupplyRow {
  readonly id: string;
  readonly name: string;
  readonly what: string;
  readonly figure: string;
}

export function SupplyRegister() {
  const { project, survey } = useOpenFile();
  const units = useUnits();
  const leadOutM = new Map(
    survey.network.edges.flatMap((edge) => (edge.kind === 'leadOut' ? [[edge.leadOutId, edge.cableLengthM]] : [])),
  );
  const rows: SupplyRow[] = [
    ...[...project.energiser.values()].map(({ id, name, openCircuitV }) => ({
      id,
      name,
      what: 'energiser',
      figure: `${fixed(openCircuitV / 1000, 1)} kV open`,
    })),
    ...[...project.leadOut.values()].map(({ id, name }) => ({
      id,
      name,
      what: 'lead-out',
      figure: leadOutM.has(id) ? formatLength(leadOutM.get(id)!, units) : 'touches no fence',
    })),
    ...[...project.earthField.values()].map(({ id, rods, rodLengthM }) => ({
      id,
      name: 'Earth stakes',
      what: 'earth field',
      figure: `${rods} of ${formatTape(rodLengthM, units)}`,
    })),
  ];
  return (
    <Register<SupplyRow>
      caption="Energiser, lead-outs, earth"
      rows={rows}
      idOf={({ id }) => id}
      empty="No energiser yet. Press E on the map, click where it stands, then lead out to the fence."
      columns={[
        { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
        { title: 'What', cell: ({ what }) => what, sortBy: ({ what }) => what },
        { title: 'Figure', figures: true, cell: ({ figure }) => figure },
      ]}
    />
  );
}
