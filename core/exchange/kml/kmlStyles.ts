import { type Ink, okabeIto, sectionColours } from '../../drawing/palette.ts';
import type { AnyFeature } from '../outgoing/featuresOf.ts';
import { own, type RawObject } from '../preview/raw.ts';

interface Style {
  readonly colour: Ink;
  readonly widthPx: number;
  /** Of an area; 0 leaves it open. */
  readonly fill?: number;
}

const styles: Readonly<Record<string, Style>> = {
  gateway: { colour: okabeIto.blue, widthPx: 3 },
  crossing: { colour: okabeIto.vermilion, widthPx: 5 },
  inGround: { colour: okabeIto.black, widthPx: 5 },
  planned: { colour: '#c8c8c8', widthPx: 2 },
  takenOut: { colour: '#808080', widthPx: 1 },
  switch: { colour: okabeIto.purple, widthPx: 3 },
  liveFence: { colour: okabeIto.orange, widthPx: 3 },
  deadFence: { colour: '#c8c8c8', widthPx: 2 },
  supply: { colour: okabeIto.green, widthPx: 4 },
  post: { colour: '#ffffff', widthPx: 2 },
  service: { colour: okabeIto.skyBlue, widthPx: 3, fill: 0.3 },
  paddock: { colour: okabeIto.green, widthPx: 1, fill: 0.15 },
  reading: { colour: okabeIto.yellow, widthPx: 2 },
  ...Object.fromEntries(sectionColours.map((colour, i) => [`section${i}`, { colour, widthPx: 4 }])),
};

/** The styles that placemarks point to. Signs are named, never fetched from anywhere: each program shows its own pin. */
export function kmlStyles(): string[] {
  return Object.entries(styles).map(([id, { colour, widthPx, fill = 0 }]) => {
    const line = `<LineStyle><color>${abgr(colour, 1)}</color><width>${widthPx}</width></LineStyle>`;
    const area = `<PolyStyle><color>${abgr(colour, fill)}</color><fill>${fill > 0 ? 1 : 0}</fill></PolyStyle>`;
    return `<Style id="${id}"><IconStyle><color>${abgr(colour, 1)}</color></IconStyle>${line}${area}</Style>`;
  });
}

/** A thing's kind; `planned` of what is buried once it is built, and `takenOut` of what is drawn no longer and was dug up. */
export function kindShown({ id, properties }: AnyFeature): string {
  const kind = String(id).split(':', 1)[0]!;
  if (own(properties ?? {}, 'inTheGround') !== false) return kind;
  return kind === 'inGround' ? 'takenOut' : 'planned';
}

/** The style of a feature by what it is; none for what has no place. */
export function styleOf(feature: AnyFeature): string | null {
  const kind = kindShown(feature);
  const fields = (feature.properties ?? {}) as RawObject;
  switch (kind) {
    case 'fenceLine':
      return own(fields, 'live') === true ? 'liveFence' : 'deadFence';
    case 'energiser':
    case 'leadOut':
    case 'earthField':
      return 'supply';
    case 'buriedPoint':
      return 'crossing';
    case 'paddockOutline':
      return 'paddock';
    case 'run':
      return sectionStyle(own(fields, 'section'));
    default:
      return kind in styles ? kind : null;
  }
}

/** "A" is the first colour, "Z" the 26th, "AA" the 27th, and so on round. */
function sectionStyle(letter: unknown): string {
  const letters = typeof letter === 'string' ? Array.from(letter) : [];
  const number = letters.reduce((sum, one) => 26 * sum + one.charCodeAt(0) - 64, 0);
  return `section${(number + sectionColours.length - 1) % sectionColours.length}`;
}

/** KML writes alpha, blue, green, red. */
function abgr(rgb: Ink, opacity: number): string {
  const alpha = Math.round(255 * opacity)
    .toString(16)
    .padStart(2, '0');
  return `${alpha}${rgb.slice(5, 7)}${rgb.slice(3, 5)}${rgb.slice(1, 3)}`;
}
