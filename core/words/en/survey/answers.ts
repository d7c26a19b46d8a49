import type { Figures, PluralForms } from '../../types.ts';

interface Drawn {
  readonly fenceM: number;
  readonly paddocks: number;
  readonly paddockAreaM2: number;
  readonly gateways: number;
}

interface Divided {
  readonly sections: number;
  readonly longestM: number;
  readonly over: number;
}

/** Each workspace's answer in one sentence, with figures. */
export const answers = {
  cover: {
    nothing: 'Nothing is drawn yet.',
    drawn: ({ sections, ...drawn }: Drawn & { sections: number }, f: Figures) =>
      `${row([fence(drawn, f), ...paddocks(drawn, f), ...gateways(drawn, f), ...some(sections, section, f)])}.`,
  },
  draw: {
    nothing: 'Draw the first fence line, or bring in a file of lines.',
    notLive: (drawn: Drawn, f: Figures) => `${allDrawn(drawn, f)}; none of it is live.`,
    noEnergiser: (drawn: Drawn, f: Figures) => `${allDrawn(drawn, f)}; no energiser is drawn yet.`,
    reachesNone: (drawn: Drawn, f: Figures) => `${allDrawn(drawn, f)}; the energiser reaches none of it.`,
    reachesAll: (drawn: Drawn, f: Figures) => `${allDrawn(drawn, f)}; the energiser reaches all that is live.`,
    reachesSome: ({ deadM, parts, ...drawn }: Drawn & { deadM: number; parts: number }, f: Figures) =>
      `${allDrawn(drawn, f)}; the energiser does not reach ${f.length(deadM)} in ${counted(parts, part, f)}.`,
  },
  divide: {
    nothing: 'No live fence is drawn, so there is nothing to divide.',
    noEnergiser: (divided: Divided, f: Figures) => `${sections(divided, f)}; no energiser feeds them yet.`,
    drawn: (divided: Divided, f: Figures) => `${sections(divided, f)}.`,
    /** Beside the plan. */
    planned: (
      { missing, surplus, overLimit, ...divided }: Divided & { missing: number; surplus: number; overLimit: number },
      f: Figures,
    ) => {
      const changes = row([
        ...(missing > 0 ? [`${counted(missing, cutOut, f)} missing`] : []),
        ...(surplus > 0 ? [`${f.number(surplus)} not needed`] : []),
        ...(overLimit > 0 ? [`${counted(overLimit, stretch, f)} that no switch brings within the limits`] : []),
      ]);
      return `${sections(divided, f)}; ${changes}.`;
    },
  },
};

const paddock = { one: 'paddock', other: 'paddocks' };
const gateway = { one: 'gateway', other: 'gateways' };
const section = { one: 'section', other: 'sections' };
const part = { one: 'part', other: 'parts' };
const cutOut = { one: 'switch', other: 'switches' };
const stretch = { one: 'stretch', other: 'stretches' };

function counted(count: number, forms: PluralForms, f: Figures): string {
  return `${f.number(count, 0)} ${f.plural(count, forms)}`;
}

function some(count: number, forms: PluralForms, f: Figures): string[] {
  return count > 0 ? [counted(count, forms, f)] : [];
}

/** Figures one after another. */
function row(parts: readonly string[]): string {
  return parts.join(', ');
}

function fence({ fenceM }: Drawn, f: Figures): string {
  return `${f.length(fenceM)} of fence`;
}

function paddocks({ paddocks: count, paddockAreaM2 }: Drawn, f: Figures): string[] {
  return count > 0 ? [`${counted(count, paddock, f)} of ${f.area(paddockAreaM2)}`] : [];
}

function gateways({ gateways: count }: Drawn, f: Figures): string[] {
  return some(count, gateway, f);
}

function allDrawn(drawn: Drawn, f: Figures): string {
  return row([fence(drawn, f), ...gateways(drawn, f), ...paddocks(drawn, f)]);
}

function sections({ sections: count, longestM, over }: Divided, f: Figures): string {
  return row([
    counted(count, section, f),
    `longest ${f.length(longestM)}`,
    ...(over > 0 ? [`${f.number(over)} over the limit`] : []),
  ]);
}
