import { capital } from '../../text.ts';
import type { Figures, Phrase } from '../../types.ts';

/** Units of heights, as a list names them. */
const units = { metres: 'metres', feet: 'feet', usFeet: 'US survey feet' };
type Unit = keyof typeof units;

/** What is said of an elevation model. */
export const heights = {
  units,
  toldBy: {
    band: 'the unit of its band',
    verticalUnit: 'its vertical unit',
    system: ({ epsg }: { epsg: number }) => `its vertical system (EPSG:${epsg})`,
    systemName: 'the name of its vertical system',
    you: 'your choice',
    /** Several of these. */
    all: ({ by }: { by: readonly Phrase[] }, f: Figures) => f.list(by.map(f.say)),
  },
  unitKnown: ({ unit, by }: { unit: Unit; by: Phrase }, f: Figures) => `${capital(units[unit])} by ${f.say(by)}.`,
  contradicts: ({ told }: { told: readonly { readonly unit: Unit; readonly by: Phrase }[] }, f: Figures) =>
    `The file contradicts itself: its heights are in ${told.map(({ unit, by }) => `${units[unit]} by ${f.say(by)}`).join(', but ')}.`,
  unknownUnit: ({ called, inFeet }: { called: string; inFeet: boolean }) =>
    `The file calls the unit of its heights “${called}”, which is not known here: metres are an assumption.${planeHint(inFeet)}`,
  noUnit: ({ inFeet }: { inFeet: boolean }) =>
    `The file does not say in which unit its heights are: metres are an assumption.${planeHint(inFeet)}`,
  tooHighInMetres:
    'The file does not say in which unit its heights are. In metres some would lie higher than any mountain: feet are an assumption.',
  elsewhere: 'The elevation model lies elsewhere: none of it is under this property.',
  noneKnown: 'The elevation model knows no heights under this property.',
  damaged: 'The GeoTIFF is damaged, or packed in a way that can’t be read. Save it with Deflate or LZW, or unpacked.',
  noGeoTiff: 'This is no GeoTIFF that can be read. Select an elevation model with the ending .tif.',
  isPicture: 'This GeoTIFF is a picture: it has colours, not one height to a pixel. Bring it in as a map underneath.',
  depths: 'This GeoTIFF holds depths below the water, not heights of the ground. Select another.',
  noPlace: 'The GeoTIFF does not say where it lies. Select one that was saved with its coordinates.',
  notOnEarth: ({ system }: { system: Phrase }, f: Figures) =>
    `The GeoTIFF lies at no place on earth, if its coordinates are in ${f.say(system)}.`,
  kept: ({ everyM, decimals, system }: { everyM: number; decimals: number; system: Phrase }, f: Figures) =>
    `A height is kept every ${f.number(everyM, decimals)} m. Its coordinates are in ${f.say(system)}.`,
  covers: ({ percent }: { percent: number }, f: Figures) =>
    `It covers ${f.number(percent)} % of the ground of the property; elsewhere lengths stay as on the plan.`,
  failed: ({ fault }: { fault: string }) => `The elevation model could not be read (${fault}).`,
  /** What the heights of a file are called. */
  imported: 'Imported heights',
  named: ({ file }: { file: string }) => `Heights of ${file}`,
};

function planeHint(inFeet: boolean): string {
  return inFeet ? ' Its plane coordinates are in feet, so its heights may be in feet too.' : '';
}
