import type { FenceCircuit } from '../../core/electrical/circuit/circuit.ts';
import { switchEffects } from '../../core/electrical/effects/switchEffects.ts';
import { fitLeakage } from '../../core/electrical/fit/fitLeakage.ts';
import { prepareVoltage } from '../../core/electrical/preparedVoltage.ts';
import { branchesOf } from '../../core/electrical/solver/branches.ts';
import { solveVoltage } from '../../core/electrical/solveVoltage.ts';
import { fenceLikeCircuit } from '../support/randomElectrical.ts';
import { measure } from './measure.ts';
import type { BenchRow } from './row.ts';

const SEED = 7;

/** Voltages of property-like networks: branches, switches, and one extra run in fifty closing a ring. */
export async function bench(): Promise<BenchRow[]> {
  const small = timed(() => solveVoltage(fence(1_000)), 60);
  const middle = timed(() => solveVoltage(fence(10_000)), 60);
  const large = timed(() => solveVoltage(fence(100_000)), 30);
  const rows: BenchRow[] = [
    { name: 'voltage at every node, from the drawn figures', size: 1_000, ...small, unit: 'ms', budget: null },
    { name: 'voltage at every node, from the drawn figures', size: 10_000, ...middle, unit: 'ms', budget: 10 },
    {
      name: `voltage at every node; from 10,000 on, time grows as n^${growth(middle.median, large.median).toFixed(2)}`,
      size: 100_000,
      ...large,
      unit: 'ms',
      budget: 100,
    },
    await besideSparseLu(10_000, middle),
  ];

  const prepared = prepareVoltage(fence(10_000));
  if (!prepared.ok) throw new Error('the network of the bench was refused');
  const linkCount = prepared.circuit.links.length;
  let link = 0;
  const opened = timed(() => prepared.withOpen(link++ % linkCount), 300);
  rows.push({ name: 'one switch opened, voltage at every node', size: 10_000, ...opened, unit: 'ms', budget: 5 });
  const every = timed(() => [...switchEffects(prepared)], 5, 1);
  const name = `what throwing each of ${linkCount} switches does`;
  rows.push({ name, size: 10_000, ...every, unit: 'ms', budget: null });
  rows.push({
    name: 'leakage of 20 sections fitted to 40 readings',
    size: 2_000,
    ...fitTimes(2_000),
    unit: 'ms',
    budget: null,
  });
  return rows;
}

const fences = new Map<number, FenceCircuit>();
function fence(nodeCount: number): FenceCircuit {
  const circuit = fences.get(nodeCount) ?? fenceLikeCircuit(nodeCount, SEED);
  fences.set(nodeCount, circuit);
  return circuit;
}

function fitTimes(nodeCount: number): Times {
  const circuit = fence(nodeCount);
  const sections = Array.from({ length: 20 }, (_, k) => ({
    name: `Section ${k + 1}`,
    spans: circuit.spans.map((_, i) => i).filter((i) => Math.floor((20 * i) / circuit.spans.length) === k),
  }));
  const spans = circuit.spans.map((span, i) => ({ ...span, leakageOhmKm: span.leakageOhmKm / (1 + (i % 5)) }));
  const truth = solveVoltage({ ...circuit, spans });
  if (!truth.ok) throw new Error('the network of the bench was refused');
  const readings = Array.from({ length: 40 }, (_, k) => {
    const node = Math.floor((k * nodeCount) / 40);
    return { node, volts: truth.nodeVoltageV[node]!, sigmaV: 50 };
  });
  return timed(() => fitLeakage(circuit, sections, readings), 5, 1);
}

type Times = ReturnType<typeof measure>;

/** Timed after `warmUp` rounds: the compiler takes a dozen to settle on code as large as a whole solve. */
function timed(work: () => unknown, rounds: number, warmUp = 15): Times {
  for (let i = 0; i < warmUp; i++) work();
  return measure(work, rounds);
}

/** The exponent b of time = a n^b between two sizes a factor of ten apart; 1 is linear. */
function growth(tenth: number, whole: number): number {
  return Math.log10(whole / tenth);
}

/** The part of a general library that is used here: sparse LU with a fill-reducing order, and its triangular solves. */
interface SparseLibrary {
  readonly SparseMatrix: new (data: object) => object;
  slu(matrix: object, order: number, threshold: number): object;
  lusolve(factors: object, rhs: readonly number[]): { toArray(): number[][] };
}

/** Beside mathjs, factor and solve alone on the matrix made ready for it; without it the row says so. */
async function besideSparseLu(nodeCount: number, ours: Times): Promise<BenchRow> {
  const row = { size: nodeCount, ...ours, unit: 'ms', budget: null } as const;
  const packageName = 'mathjs';
  const library = await import(packageName).then(
    (module: SparseLibrary) => module,
    () => null,
  );
  if (library === null) return { ...row, name: 'voltage beside a general sparse LU: mathjs is not installed' };
  const { matrix, rhs } = nodalMatrix(fence(nodeCount));
  const sparse = new library.SparseMatrix(matrix);
  const theirs = timed(() => library.lusolve(library.slu(sparse, 1, 0.001), rhs), 5, 2);
  const other = { name: 'mathjs slu + lusolve', median: theirs.median };
  return { ...row, name: 'voltage beside a general sparse LU', other };
}

/** The nodal equations in compressed columns; perfect joints as a tenth of a milliohm, which a general solver needs. */
function nodalMatrix(circuit: FenceCircuit) {
  const { nodeCount, source } = circuit;
  const links = circuit.links.map((link) => ({ ...link, ohm: Math.max(link.ohm, 1e-4) }));
  const { from, to, seriesS, shuntS } = branchesOf({ ...circuit, links });
  const columns = Array.from({ length: nodeCount }, () => new Map<number, number>());
  const add = (row: number, column: number, siemens: number): void => {
    columns[column]!.set(row, (columns[column]!.get(row) ?? 0) + siemens);
  };
  for (let v = 0; v < nodeCount; v++) add(v, v, shuntS[v]!);
  add(source.node, source.node, 1 / source.internalOhm);
  for (let b = 0; b < from.length; b++) {
    const u = from[b]!;
    const v = to[b]!;
    if (u === v) continue;
    add(u, u, seriesS[b]!);
    add(v, v, seriesS[b]!);
    add(u, v, -seriesS[b]!);
    add(v, u, -seriesS[b]!);
  }
  const values: number[] = [];
  const index: number[] = [];
  const ptr = [0];
  for (const column of columns) {
    for (const [row, value] of [...column].sort(([a], [b]) => a - b)) {
      index.push(row);
      values.push(value);
    }
    ptr.push(index.length);
  }
  const rhs = Array.from({ length: nodeCount }, () => 0);
  rhs[source.node] = source.openCircuitV / source.internalOhm;
  return { matrix: { values, index, ptr, size: [nodeCount, nodeCount] }, rhs };
}
