import { earthTestVerdict } from '../../electrical/earth/earthTest.ts';
import { propertyOf } from '../../model/project.ts';
import type { EarthTest } from '../../model/recordThings.ts';
import { earthFigures } from '../../survey/power/earthFigures.ts';
import { estimateOf } from '../../survey/power/estimateOf.ts';
import { lineVoltages } from '../../survey/power/lineVoltages.ts';
import { powerOf } from '../../survey/power/powerOf.ts';
import { powerSentence } from '../../survey/power/powerSentence.ts';
import { fixed } from '../../words/numbers/write.ts';
import type { Table } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { placeText } from '../placeText.ts';
import { held, listed, paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** Energiser, earth stakes and their tests, and the voltage that is estimated. */
export function powerPages(input: PackInput): PageDraft[] {
  const { project, survey, f, measure } = input;
  const said = f.words.sheets.power;
  const widthMm = uprightWidthMm(input);
  const power = powerOf(project, survey);
  const estimate = estimateOf(power);
  const lines = lineVoltages(power, estimate);
  const blocks = [
    ...listed(said.energisers, energiserTable(input), said.noEnergiser, widthMm, measure),
    ...listed(said.earthStakes, earthTable(input), said.noEarthStakes, widthMm, measure),
    ...listed(said.earthTests, earthTestTable(input), said.noEarthTest, widthMm, measure),
    paragraph(said.limits, widthMm, measure),
    paragraph(f.say(powerSentence(power, estimate, lines)), widthMm, measure, 'bold'),
    paragraph(said.estimates, widthMm, measure),
  ];
  return textPages(said.title, blocks, 'portrait', input);
}

function energiserTable({ project, f }: PackInput): Table {
  const { placed } = propertyOf(project);
  const { power: said, heads, cells } = f.words.sheets;
  const joules = (value: number | null) => (value === null ? cells.notNoted : `${value} J`);
  return {
    columns: [
      { title: heads.energiser, strong: true },
      { title: heads.state },
      { title: said.withNoLoad, align: 'right' },
      { title: said.into500Ohm, align: 'right' },
      { title: said.stored, align: 'right' },
      { title: said.output, align: 'right' },
      ...(placed ? [{ title: heads.place }] : []),
      { title: heads.remarks },
    ],
    rows: [...project.energiser.values()].map((energiser) => [
      energiser.name,
      cells[energiser.status],
      f.volts(energiser.openCircuitV),
      f.volts(energiser.into500OhmV),
      joules(energiser.storedJ),
      joules(energiser.outputJ),
      ...(placed ? [placeText(energiser.at)] : []),
      energiser.note || '-',
    ]),
  };
}

function earthTable({ project, survey, f }: PackInput): Table {
  const { power: said, heads, cells } = f.words.sheets;
  const figures = new Map(
    powerOf(project, survey).supplies.flatMap((supply) =>
      earthFigures(supply).map((each) => [each.field.id, each] as const),
    ),
  );
  return {
    columns: [
      { title: heads.energiser, strong: true },
      { title: heads.state },
      { title: said.rods, align: 'right' },
      { title: said.length, align: 'right' },
      { title: said.thickness, unit: 'mm', align: 'right' },
      { title: said.apart, align: 'right' },
      { title: said.together, unit: 'ohm', align: 'right' },
      { title: heads.remarks },
    ],
    rows: [...project.earthField.values()].map((field) => [
      project.energiser.get(field.energiserId)?.name ?? '-',
      cells[field.status],
      String(field.rods),
      f.tape(field.rodLengthM),
      String(field.rodDiameterMm),
      f.tape(field.spacingM),
      figures.has(field.id) ? fixed(figures.get(field.id)!.ohm, 1) : cells.notKnown,
      field.note || '-',
    ]),
  };
}

function earthTestTable({ project, f }: PackInput): Table {
  const { power: said, heads } = f.words.sheets;
  const name = ({ earthFieldId }: EarthTest) => {
    const field = project.earthField.get(earthFieldId);
    return (field && project.energiser.get(field.energiserId)?.name) ?? '-';
  };
  return {
    columns: [
      { title: heads.date },
      { title: heads.energiser, strong: true },
      { title: said.atLastRod, align: 'right' },
      { title: said.fenceLoaded, align: 'right' },
      { title: said.verdict },
      { title: said.loadedBy },
      { title: heads.meterWeatherBy },
      { title: heads.remarks },
    ],
    rows: [...project.earthTest.values()].map((test) => [
      held(f.date(test.date)),
      name(test),
      f.volts(test.earthV),
      test.fenceV === null ? said.notRead : f.volts(test.fenceV),
      said.verdicts[earthTestVerdict(test.earthV)],
      test.load || '-',
      [test.meter, test.weather, test.by].filter((part) => part !== '').join(', ') || '-',
      test.note || '-',
    ]),
  };
}
