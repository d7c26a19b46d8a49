import type { LonLat, Xy } from '../geometry/types.ts';
import type { NetworkNode, NodeRole } from './types.ts';

/** What a point of the network stands for; where several fall together, the first kind of this list names the node. */
const kindsByRank = ['gatePost', 'energiser', 'lineEnd', 'leadOut', 'join', 'switch', 'post'] as const;
type JointKind = (typeof kindsByRank)[number];
const joinRank = kindsByRank.indexOf('join');

const roles: readonly NodeRole[] = ['lineEnd', 'junction', 'gatePost', 'switch', 'post', 'energiser', 'leadOut'];
const roleBit = Object.fromEntries(roles.map((role, i) => [role, 1 << i])) as Record<NodeRole, number>;
const roleLists = new Map<number, readonly NodeRole[]>();

interface Joint {
  readonly key: string;
  readonly rank: number;
  readonly xy: Xy;
  /** Worked out only where this point gives its node the place. */
  readonly at: () => LonLat;
}

/** Points of the drawing that may turn out to be one node: joined as touches are found, numbered at the end. */
export class Joints {
  readonly #joints: Joint[] = [];
  readonly #parent: number[] = [];
  readonly #roles: number[] = [];

  add(kind: JointKind, key: string, xy: Xy, at: () => LonLat): number {
    const index = this.#joints.length;
    this.#joints.push({ key, rank: kindsByRank.indexOf(kind), xy, at });
    this.#parent.push(index);
    this.#roles.push(kind === 'join' ? 0 : roleBit[kind]);
    return index;
  }

  addRole(joint: number, role: NodeRole): void {
    this.#roles[joint]! |= roleBit[role];
  }

  xyOf(joint: number): Xy {
    return this.#joints[joint]!.xy;
  }

  join(a: number, b: number): void {
    const rootA = this.#root(a);
    const rootB = this.#root(b);
    if (rootA !== rootB) this.#parent[Math.max(rootA, rootB)] = Math.min(rootA, rootB);
  }

  /** The nodes, and which of them each point became. */
  number(): { nodes: NetworkNode[]; nodeOf: Int32Array } {
    const count = this.#joints.length;
    const nodeOf = new Int32Array(count).fill(-1);
    const named: Joint[] = [];
    const roleSets: number[] = [];
    for (let joint = 0; joint < count; joint++) {
      const root = this.#root(joint);
      if (nodeOf[root] === -1) nodeOf[root] = named.push(this.#joints[root]!) - 1;
      const node = nodeOf[root]!;
      nodeOf[joint] = node;
      if (namesBefore(this.#joints[joint]!, named[node]!)) named[node] = this.#joints[joint]!;
      roleSets[node] = (roleSets[node] ?? 0) | this.#roles[joint]!;
    }
    // Only where lines join can two nodes have the same name: all else is named by its own id.
    const used = new Set<string>();
    const nodes = named.map(({ key, rank, xy, at }, node) => {
      const unique = rank === joinRank ? unusedKey(key, used) : key;
      return { key: unique, xy, at: at(), roles: roleList(roleSets[node]!) };
    });
    return { nodes, nodeOf };
  }

  #root(joint: number): number {
    let root = joint;
    while (this.#parent[root] !== root) {
      this.#parent[root] = this.#parent[this.#parent[root]!]!;
      root = this.#parent[root]!;
    }
    return root;
  }
}

function namesBefore(a: Joint, b: Joint): boolean {
  return a.rank < b.rank || (a.rank === b.rank && a.key < b.key);
}

function roleList(set: number): readonly NodeRole[] {
  let list = roleLists.get(set);
  if (!list) {
    list = roles.filter((role) => set & roleBit[role]);
    roleLists.set(set, list);
  }
  return list;
}

/** The key, or the key with a number where it is taken; takes it. */
function unusedKey(key: string, used: Set<string>): string {
  const known = used.size;
  let unused = key;
  used.add(unused);
  for (let n = 2; used.size === known; n++) {
    unused = `${key}#${n}`;
    used.add(unused);
  }
  return unused;
}
