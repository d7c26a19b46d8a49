/**
 * What is believed before the readings have spoken, as standard errors of a logarithm: the property as a whole may leak
 * ten times more or less than its growth classes say (wet or dry, well or badly guessed), and a section three times
 * more or less than its neighbours. Assumptions of this project. Without the shared part, a lone reading at the
 * energiser would put all of the leakage into one section.
 */
const WHOLE_PROPERTY = Math.log(10);
const ONE_SECTION = Math.log(3);

/** Where the readings weigh less than this in a direction, the pull has the last word there. */
export const WEAKER_THAN_THE_PULL = 1 / ONE_SECTION ** 2;

/** The belief's precision matrix for `count` sections: inverse of ONE_SECTION^2 I + WHOLE_PROPERTY^2 11' (Sherman-Morrison). */
export function growthPull(count: number): number[][] {
  const own = ONE_SECTION ** 2;
  const shared = WHOLE_PROPERTY ** 2;
  const across = -shared / (own * (own + count * shared));
  return Array.from({ length: count }, (_, i) =>
    Array.from({ length: count }, (_, j) => (i === j ? 1 / own + across : across)),
  );
}
