/** Positions as GeoJSON has them; what is no number stays text, to be told of. */

/** From a `coordinates` element: "lon,lat,height lon,lat,height"; spaces beside the commas are put up with. */
export function coordinatesIn(text: string, heights: boolean): unknown[] {
  const positions: unknown[] = [];
  let waiting = '';
  for (const word of text.split(/\s+/)) {
    if (word === '') continue;
    const goesOn = waiting.endsWith(',') || (waiting !== '' && word.startsWith(','));
    if (waiting !== '' && !goesOn) positions.push(position(waiting.split(','), heights));
    waiting = goesOn ? waiting + word : word;
  }
  if (waiting !== '') positions.push(position(waiting.split(','), heights));
  return positions;
}

/** From a `gx:coord` element: "lon lat height". */
export function trackCoordinate(text: string, heights: boolean): unknown {
  return position(text.split(/\s+/), heights);
}

function position(words: readonly string[], heights: boolean): unknown[] {
  return words.slice(0, heights ? 3 : 2).map(numberOrText);
}

export function numberOrText(word: string): number | string {
  const number = Number(word);
  return word.trim() === '' || !Number.isFinite(number) ? word : number;
}
