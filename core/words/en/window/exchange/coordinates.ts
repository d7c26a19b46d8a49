type Named = { readonly name: string };
type Line = { readonly line: string };

/** How coordinates are written on a property, and where on earth it is. */
export const coordinates = {
  title: 'Coordinates',
  change: 'Change the coordinate system',
  system: 'Shown and typed as',
  systemHint:
    'The status bar shows the pointer’s place in it; Alt+G goes to coordinates. Degrees may be typed in any of them.',
  another: 'Another: I paste its PROJ text',
  middle: ({ place }: { place: string }) => `The middle of the working plane is at ${place}.`,
  projText: 'PROJ text of the system',
  projTextHint: 'The text that begins with +proj=, as lists of coordinate systems give it for an EPSG code.',
  ourOwn: 'Our own system',
  ownName: 'Its name',
  /** Giving a property that was drawn on the blank grid its place on earth. */
  onEarth: {
    title: 'Place on earth',
    intro:
      'The property is drawn on the blank grid and has no place on earth yet. Give it one and maps, coordinates and handhelds fit it. Lengths stay as they are.',
    known: 'I know',
    twoPlaces: 'Where two places of the drawing are',
    onePlace: 'Where one place is, and which way is north',
    first: 'First place',
    second: 'Second place',
    north: 'True bearing of the grid’s north',
    northHint: '0 where the drawing’s up is true north.',
    place: 'Place the property on the earth',
    put: 'Put it there',
    onDrawing: 'On the drawing',
    selectMark: 'Select a post, gate or corner',
    onGrid: 'Or on the grid',
    onGridHint: ({ example }: { example: string }) => `Such as "${example}".`,
    onTheEarth: 'On the earth',
    set: ({ place }: { place: string }) => `Set: ${place}`,
    /** Places of the drawing that someone can have measured. */
    marks: {
      middle: 'The grid’s own middle',
      post: ({ name }: Named) => `Post ${name}`,
      energiser: ({ name }: Named) => `Energiser ${name}`,
      start: ({ line }: Line) => `Start of ${line}`,
      end: ({ line }: Line) => `End of ${line}`,
    },
  },
};
