import type { Gateway, Post } from '../../../core/model/things.ts';
import type { CrossingFigures, LineShape } from '../../../core/shapes/types.ts';
import type { Paddock } from '../../../core/survey/types.ts';
import type { Texts } from '../../../core/words/message.ts';
import { paddockMapId } from '../../map/mapTypes.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { useNextFenceType } from '../../state/useNextFenceType.ts';
import { SelectField } from '../parts/fields.tsx';
import { Register } from '../parts/Register.tsx';

export function FenceRegister() {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { heads, ...words } = f.words.window.draw.lists;
  const nextType = useNextFenceType();
  return (
    <>
      <SelectField
        label={words.nextType}
        value={nextType ?? ''}
        choices={[...project.fenceType.values()].map(({ id, name }) => ({ value: id, label: name }))}
        onCommit={(nextFenceTypeId) => useApp.setState({ nextFenceTypeId })}
      />
      <Register<LineShape>
        caption={words.fences}
        rows={[...survey.lines.values()]}
        idOf={({ line }) => line.id}
        empty={words.noFences}
        columns={[
          { title: heads.name, cell: ({ line }) => line.name, sortBy: ({ line }) => line.name },
          {
            title: heads.type,
            cell: ({ type }) => type?.name ?? f.words.things.notKnown,
            sortBy: ({ type }) => type?.name ?? '',
          },
          {
            title: heads.live,
            cell: ({ line }) => (line.live ? words.live : words.notLive),
            sortBy: ({ line }) => Number(line.live),
          },
          {
            title: heads.length,
            figures: true,
            cell: ({ lengthM }) => f.length(lengthM),
            sortBy: ({ lengthM }) => lengthM,
          },
        ]}
      />
    </>
  );
}

export function GatewayRegister() {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const { heads, ...words } = f.words.window.draw.lists;
  return (
    <Register<Gateway>
      caption={words.gateways}
      rows={[...project.gateway.values()]}
      idOf={({ id }) => id}
      empty={words.noGateways}
      columns={[
        { title: heads.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
        {
          title: heads.inFence,
          cell: ({ lineId }) => survey.lines.get(lineId)?.line.name ?? words.noFence,
          sortBy: ({ lineId }) => survey.lines.get(lineId)?.line.name ?? '',
        },
        {
          title: heads.width,
          figures: true,
          cell: ({ widthM }) => f.tape(widthM),
          sortBy: ({ widthM }) => widthM,
        },
        {
          title: heads.crossing,
          cell: ({ id }) => crossingWord(survey.crossings.get(id), survey.gateways.get(id)?.lineLive ?? false, words),
        },
        {
          title: heads.state,
          cell: ({ status }) => words.states[status],
          sortBy: ({ status }) => words.states[status],
        },
      ]}
    />
  );
}

function crossingWord(
  figures: CrossingFigures | undefined,
  live: boolean,
  words: Omit<Texts['window']['draw']['lists'], 'heads'>,
): string {
  if (figures) return words.methods[figures.crossing.method];
  return live ? words.noCrossing : words.noCrossingNeeded;
}

export function CrossingRegister() {
  const { survey } = useOpenFile();
  const f = useFigures();
  const { crossing, lists } = f.words.window.draw;
  const { heads, ...words } = lists;
  return (
    <Register<CrossingFigures>
      caption={words.crossings}
      rows={[...survey.crossings.values()]}
      idOf={({ gateway }) => gateway.id}
      empty={words.noCrossings}
      columns={[
        { title: heads.gateway, cell: ({ gateway }) => gateway.name, sortBy: ({ gateway }) => gateway.name },
        lengthColumn(crossing.trench, (row) => row.trenchM),
        lengthColumn(crossing.pipe, (row) => row.pipeM),
        lengthColumn(crossing.liveCable, (row) => row.liveCableM),
        lengthColumn(crossing.earthCable, (row) => row.earthCableM),
      ]}
    />
  );

  function lengthColumn(title: string, lengthM: (row: CrossingFigures) => number) {
    return { title, figures: true, cell: (row: CrossingFigures) => f.tape(lengthM(row)), sortBy: lengthM };
  }
}

export function PaddockRegister() {
  const { survey } = useOpenFile();
  const f = useFigures();
  const { heads, ...words } = f.words.window.draw.lists;
  const nameOf = ({ name }: Paddock) => name ?? f.words.survey.unnamedPaddock;
  return (
    <Register<Paddock>
      caption={words.paddocks}
      rows={survey.paddocks}
      idOf={paddockMapId}
      empty={words.noPaddocks}
      columns={[
        { title: heads.name, cell: nameOf, sortBy: nameOf },
        {
          title: heads.area,
          figures: true,
          cell: ({ areaM2 }) => f.area(areaM2),
          sortBy: ({ areaM2 }) => areaM2,
        },
      ]}
    />
  );
}

export function PostRegister() {
  const { project } = useOpenFile();
  const { heads, ...words } = useFigures().words.window.draw.lists;
  return (
    <Register<Post>
      caption={words.posts}
      rows={[...project.post.values()]}
      idOf={({ id }) => id}
      empty={words.noPosts}
      columns={[
        { title: heads.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
        { title: heads.role, cell: ({ role }) => words.roles[role], sortBy: ({ role }) => words.roles[role] },
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
  const f = useFigures();
  const { heads, ...words } = f.words.window.draw.lists;
  const leadOutM = new Map(
    survey.network.edges.flatMap((edge) => (edge.kind === 'leadOut' ? [[edge.leadOutId, edge.cableLengthM]] : [])),
  );
  const rows: SupplyRow[] = [
    ...[...project.energiser.values()].map(({ id, name, openCircuitV }) => ({
      id,
      name,
      what: f.kind('energiser'),
      figure: words.noLoad({ volts: openCircuitV }),
    })),
    ...[...project.leadOut.values()].map(({ id, name }) => ({
      id,
      name,
      what: f.kind('leadOut'),
      figure: leadOutM.has(id) ? f.length(leadOutM.get(id)!) : words.touchesNothing,
    })),
    ...[...project.earthField.values()].map(({ id, rods, rodLengthM }) => ({
      id,
      name: words.earthStakes,
      what: f.kind('earthField'),
      figure: words.stakes({ rods, lengthM: rodLengthM }),
    })),
  ];
  return (
    <Register<SupplyRow>
      caption={words.supply}
      rows={rows}
      idOf={({ id }) => id}
      empty={words.noSupply}
      columns={[
        { title: heads.name, cell: ({ name }) => name, sortBy: ({ name }) => name },
        { title: heads.what, cell: ({ what }) => what, sortBy: ({ what }) => what },
        { title: heads.figure, figures: true, cell: ({ figure }) => figure },
      ]}
    />
  );
}
