type WithKey = { readonly key: string };

/** What to do with an empty property; *strong*, and [keys]. */
export const firstSteps = {
  fences: ({ key }: WithKey) =>
    `*Draw the boundary and the fences.* Press [${key}] on the map and click along the line, or type a length and a bearing.`,
  drawFence: 'Draw a fence',
  gateways: ({ key }: WithKey) =>
    `*Place the gateways* ([${key}]) on the fences. Each live one gets its crossing under the gate.`,
  energiser: ({ key }: WithKey) => `*Place the energiser* ([${key}]) and lead out to the fence.`,
  divide: 'Then open *Divide*: it suggests where cut-out switches should go.',
  maps: 'A photo from the air or a scanned plan can lie under the drawing: *Background maps*, below.',
  bringIn: 'Or bring fences in from a GeoJSON file: in the File menu.',
};
