import { earthTestVerdict } from '../../electrical/earth/earthTest.ts';
import { propertyOf } from '../../model/project.ts';
import type { EarthTest } from '../../model/recordThings.ts';
import { earthFigures } from '../../survey/power/earthFigures.ts';
import { estimateOf } from '../../survey/power/estimateOf.ts';
import { lineVoltages } from '../../survey/power/lineVoltages.ts';
import { powerOf } from '../../survey/power/powerOf.ts';
import { powerSentence } from '../../survey/power/powerSentence.ts';
import { dateText } from '../../words/dates.ts';
import { figures } from '../../words/figures.ts';
import { fixed, formatTape, formatVoltage, type Units } from '../../words/numbers/write.ts';
import type { Table } from '../flow/table.ts';
import { textPages } from '../flow/textPages.ts';
import type { PageDraft } from '../pageDraft.ts';
import { placeText } from '../placeText.ts';
import { held, listed, paragraph, uprightWidthMm } from './packBlocks.ts';
import type { PackInput } from './packInput.ts';

/** Energiser, earth stakes and their tests, and the voltage that is estimated. */
export function powerPages(input: PackInput): PageDraft[] {
  const { project, survey, measure } = input;
  const { units } = propertyOf(project);
  const widthMm = uprightWidthMm(input);
  const power = powerOf(project, survey);
  const estimate = estimateOf(power);
  const lines = lineVoltages(power, estimate);
  const blocks = [
    ...listed('Energisers', energiserTable(input), 'No energiser is drawn.', widthMm, measure),
    ...listed('Earth stakes', earthTable(input, units), 'No earth stakes are drawn.', widthMm, measure),
    ...listed('Earth tests', earthTestTable(input), 'No earth test was recorded.', widthMm, measure),
    paragraph(
      '200 V and under is good; over 300 V, add rods and test again (common practice, no source).',
      widthMm,
      measure,
    ),
    paragraph(figures(units).say(powerSentence(power, estimate, lines)), widthMm, measure, 'bold'),
    paragraph(
      'Voltages are estimates of the peak with the switches as they normally stand. What a tester reads goes before them.',
      widthMm,
      measure,
    ),
  ];
  return textPages('Energiser and earth', blocks, 'portrait', input);
}

function energiserTable({ project }: PackInput): Table {
  const { placed } = propertyOf(project);
  const joules = (value: number | null) => (value === null ? 'not noted' : `${value} J`);
  return {
    columns: [
      { title: 'Energiser', strong: true },
      { title: 'State' },
      { title: 'Open-circuit peak', align: 'right' },
      { title: 'Peak into 500 ohm', align: 'right' },
      { title: 'Stored', align: 'right' },
      { title: 'Output', align: 'right' },
      ...(placed ? [{ title: 'Place' }] : []),
      { title: 'Remarks' },
    ],
    rows: [...project.energiser.values()].map((energiser) => [
      energiser.name,
      energiser.status,
      formatVoltage(energiser.openCircuitV),
      formatVoltage(energiser.into500OhmV),
      joules(energiser.storedJ),
      joules(energiser.outputJ),
      ...(placed ? [placeText(energiser.at)] : []),
      energiser.note || '-',
    ]),
  };
}

function earthTable({ project, survey }: PackInput, units: Units): Table {
  const fields = new Map(
    powerOf(project, survey).supplies.flatMap((supply) =>
      earthFigures(supply).map((each) => [each.field.id, each] as const),
    ),
  );
  return {
    columns: [
      { title: 'Energiser', strong: true },
      { title: 'State' },
      { title: 'Rods', align: 'right' },
      { title: 'Length', align: 'right' },
      { title: 'Thickness', unit: 'mm', align: 'right' },
      { title: 'Apart', align: 'right' },
      { title: 'Together, estimate', unit: 'ohm', align: 'right' },
      { title: 'Remarks' },
    ],
    rows: [...project.earthField.values()].map((field) => [
      project.energiser.get(field.energiserId)?.name ?? '-',
      field.status,
      String(field.rods),
      formatTape(field.rodLengthM, units),
      String(field.rodDiameterMm),
      formatTape(field.spacingM, units),
      fields.has(field.id) ? fixed(fields.get(field.id)!.ohm, 1) : 'not known',
      field.note || '-',
    ]),
  };
}

export const verdictWords = {
  good: 'good',
  borderline: 'borderline: test again at the driest',
  moreRods: 'add rods and test again',
} as const;

function earthTestTable({ project }: PackInput): Table {
  const name = ({ earthFieldId }: EarthTest) => {
    const field = project.earthField.get(earthFieldId);
    return (field && project.energiser.get(field.energiserId)?.name) ?? '-';
  };
  return {
    columns: [
      { title: 'Date' },
      { title: 'Energiser', strong: true },
      { title: 'At the last rod', align: 'right' },
      { title: 'Fence, loaded', align: 'right' },
      { title: 'Verdict' },
      { title: 'Loaded by' },
      { title: 'Meter, weather, by' },
      { title: 'Remarks' },
    ],
    rows: [...project.earthTest.values()].map((test) => [
      held(dateText(test.date)),
      name(test),
      formatVoltage(test.earthV),
      test.fenceV === null ? 'not read' : formatVoltage(test.fenceV),
      verdictWords[earthTestVerdict(test.earthV)],
      test.load || '-',
      [test.meter, test.weather, test.by].filter((part) => part !== '').join(', ') || '-',
      test.note || '-',
    ]),
  };
}
