import { execFileSync, spawnSync } from 'node:child_process';

/** Another program's SQLite, older than ours, that answers queries on a file. */
export interface OtherSqlite {
  readonly name: string;
  /** Whether the program is here. */
  readonly isHere: boolean;
  /** The answers to queries that give one text a row. */
  ask(path: string, queries: readonly string[]): string[][];
}

/** SQLITE3=program in the environment has the files read by another one than the system's. */
const shell = process.env.SQLITE3 ?? 'sqlite3';

const python = `
import json, sqlite3, sys
path, queries = json.load(sys.stdin)
database = sqlite3.connect('file:' + path + '?mode=ro', uri=True)
json.dump([[row[0] for row in database.execute(query)] for query in queries], sys.stdout)
`;

export const otherSqlites: readonly OtherSqlite[] = [
  {
    name: `the program sqlite3 (${versionOf(shell, ['-init', '/dev/null', '-version'])})`,
    isHere: versionOf(shell, ['-version']) !== 'not here',
    ask: (path, queries) => queries.map((query) => linesOf(execFileSync(shell, [...shellOptions, path, query], text))),
  },
  {
    name: `Python's sqlite3 (${versionOf('python3', ['-c', 'import sqlite3; print(sqlite3.sqlite_version)'])})`,
    isHere: versionOf('python3', ['-c', 'import sqlite3']) !== 'not here',
    ask: (path, queries) => {
      const input = JSON.stringify([path, queries]);
      return JSON.parse(execFileSync('python3', ['-c', python], { ...text, input })) as string[][];
    },
  },
];

const text = { encoding: 'utf8', maxBuffer: 1e8 } as const;
const shellOptions = ['-init', '/dev/null', '-batch', '-noheader', '-readonly'];

function linesOf(output: string): string[] {
  return output.split('\n').slice(0, -1);
}

function versionOf(program: string, args: readonly string[]): string {
  const { status, stdout } = spawnSync(program, args, { encoding: 'utf8' });
  return status === 0 ? stdout.trim().split(' ')[0]! : 'not here';
}
