const eighths = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'] as const;

/** The nearest of eight directions to a bearing in degrees: "north-east". */
export function compassWord(bearingDeg: number): (typeof eighths)[number] {
  return eighths[((Math.round(bearingDeg / 45) % 8) + 8) % 8]!;
}
