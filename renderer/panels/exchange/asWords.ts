import type { ImportAs } from '../../../core/exchange/preview/types.ts';

/** What a piece of a file can become, in words. */
export const asWords: Readonly<Record<ImportAs, string>> = {
  fenceLine: 'fence line, live',
  boundary: 'boundary fence, not live',
  gateway: 'gateway',
  post: 'post',
  energiser: 'energiser',
  powerLine: 'power line',
  waterPipe: 'water pipe',
  gasPipe: 'gas pipe',
  dataCable: 'data cable',
  drain: 'drain',
  road: 'road',
  path: 'path',
  creek: 'creek',
  floodZone: 'ground that floods',
  earthElectrode: 'earth electrode',
  heights: 'heights of the ground only',
  leaveOut: 'leave out',
};
