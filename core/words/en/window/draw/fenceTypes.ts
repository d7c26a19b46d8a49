/** The fence types, and the conductors to choose from. */
export const fenceTypes = {
  caption: 'Fence types',
  none: 'No fence types.',
  name: 'Name',
  live: 'Live',
  earth: 'Earth',
  plain: 'Plain',
  barbed: 'Barbed',
  newName: 'New fence type',
  add: 'Add a fence type',
  clear: 'Clear selection',
  about:
    'Plain wires are dead: ordered, strained and stapled like the others. Barbed wire is counted for itself and never electrified.',
  sameAsLive: 'The same as the live wire',
  steps: {
    name: 'Rename the fence type',
    liveWires: 'Change the live wires',
    earthWires: 'Change the earth wires',
    plainWires: 'Change the plain wires',
    barbedWires: 'Change the barbed wires',
    postSpacingM: 'Change the post spacing',
    wireId: 'Change the live wire',
    plainWireId: 'Change the earth and plain wire',
  },
  notInFile: ({ id }: { id: string }) => `Not in this file: ${id}`,
};
