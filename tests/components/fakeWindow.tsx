import { join } from 'node:path';
import { cleanup, render } from '@testing-library/react';
import type { ReactNode } from 'react';
import { expect, vi } from 'vitest';
import type { Edit, FileState, Host, OpenProject } from '../../core/api/projectApi.ts';
import { fail, type Result, succeed } from '../../core/api/result.ts';
import { allFindings } from '../../core/checks/allFindings.ts';
import { applyChanges } from '../../core/model/difference.ts';
import { allThings, type Project, projectOf } from '../../core/model/project.ts';
import { readDemo } from '../../electron/host/demo.ts';
import { firstCalls } from '../../renderer/client/firstCalls.ts';
import { DialogFrame } from '../../renderer/panels/dialogs/DialogFrame.tsx';
import { fetchParts } from '../../renderer/panels/lazyPart.tsx';
import { useApp } from '../../renderer/state/appState.ts';
import { startSession } from '../../renderer/state/session.ts';
import { FakeWorker } from '../support/fakeWorker.ts';

const demoFile = join(import.meta.dirname, '..', '..', 'assets', 'demo', 'demo-property.json');

/** The invented example property. */
export const demo: Project = projectOf(readDemo(demoFile));

/** A host that keeps one property in memory; calls that no test needs answer `not-available`. */
export class FakeHost implements Host {
  project: Host['project'];
  desktop: Host['desktop'];
  readonly edits: Edit[] = [];
  /** What the next edit is answered with in place of being made. */
  refusal: Result<FileState> | null = null;
  #things: Project;
  #state: FileState = { revision: 1, undo: null, redo: null };

  constructor(things: Project) {
    this.#things = things;
    const open = (): OpenProject => ({
      path: '/tmp/Invented.undergate',
      fileName: 'Invented',
      things: [...allThings(this.#things)],
      state: this.#state,
      holdsUnknown: false,
    });
    const known: Partial<Host['project']> = {
      current: async () => succeed(open()),
      recent: async () => succeed([]),
      apply: async (edit) => this.#apply(edit),
      subscribe: () => () => undefined,
    };
    const others = async () => fail('not-available', 'Not here.', 'It is not needed.');
    const answering = <T extends object>(calls: Partial<T>) =>
      new Proxy(calls as T, { get: (all, name) => Reflect.get(all, name) ?? others });
    this.project = answering<Host['project']>(known);
    this.desktop = answering<Host['desktop']>({});
  }

  get now(): Project {
    return this.#things;
  }

  #apply(edit: Edit): Result<FileState> {
    if (this.refusal) return this.refusal;
    this.edits.push(edit);
    this.#things = applyChanges(this.#things, edit.changes);
    this.#state = { revision: this.#state.revision + 1, undo: edit.label, redo: null };
    return succeed(this.#state);
  }
}

/** The window's state with this property open, over a host of its own; what the worker would say of it is there already. */
export async function openWindow(things: Project = demo): Promise<FakeHost> {
  const host = new FakeHost(things);
  vi.stubGlobal('Worker', FakeWorker);
  Object.defineProperty(window, 'undergate', { value: host, configurable: true });
  await startSession(firstCalls(), () => undefined);
  await vi.waitFor(() => expect(useApp.getState().analysis).not.toBeNull());
  await fetchParts();
  const { project, survey } = useApp.getState().file!;
  const { analysis } = useApp.getState();
  useApp.setState({
    problem: null,
    dialog: null,
    analysis: { ...analysis!, findings: allFindings(project, survey), of: { findings: 1 } },
  });
  return host;
}

/** Ends what a test has shown. */
export function closeWindow(): void {
  cleanup();
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
}

/** Shows a part of the window. */
export const show = (part: ReactNode) => render(part);

/** A dialog with nothing but a title, for its own tests. */
export const emptyDialog = (onClose: () => void) => (
  <DialogFrame title="Empty" onClose={onClose}>
    <p>Nothing</p>
  </DialogFrame>
);
