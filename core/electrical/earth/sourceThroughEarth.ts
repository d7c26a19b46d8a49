import type { Source } from '../circuit/circuit.ts';

/**
 * The source with its earth field in the circuit. The pulse leaves by the fence and comes back through the ground into
 * the earth field, so the field's resistance stands in series with the energiser's own and takes its share of the
 * voltage: what the fence reads to far earth is V0 - I (Rs + Rearth). The ground in between is taken as no resistance.
 */
export function sourceThroughEarth(source: Source, earthOhm: number): Source {
  return { ...source, internalOhm: source.internalOhm + earthOhm };
}

/** Peak voltage of the earth field itself to far earth (V) while the energiser gives `sourceCurrentA`: an estimate of what an earth test reads. */
export function earthFieldVoltage(earthOhm: number, sourceCurrentA: number): number {
  return earthOhm * sourceCurrentA;
}
