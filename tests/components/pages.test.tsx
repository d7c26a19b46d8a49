// @vitest-environment happy-dom
import { act, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fail } from '../../core/api/result.ts';
import { newProperty, startingFenceTypes } from '../../core/model/defaults.ts';
import { projectOf, propertyOf } from '../../core/model/project.ts';
import { KeysDialog } from '../../renderer/panels/dialogs/KeysDialog.tsx';
import { DividePage } from '../../renderer/panels/divide/DividePage.tsx';
import { ChosenDetails } from '../../renderer/panels/draw/ChosenDetails.tsx';
import { Inspector } from '../../renderer/panels/Inspector.tsx';
import { ProblemBar } from '../../renderer/panels/ProblemBar.tsx';
import { type Page, useApp } from '../../renderer/state/appState.ts';
import { closeWindow, demo, type FakeHost, openWindow, show } from './fakeWindow.tsx';

const user = userEvent.setup();
let host: FakeHost;

beforeEach(async () => {
  host = await openWindow();
});
afterEach(closeWindow);

const pages: readonly Page[] = ['cover', 'draw', 'divide', 'power', 'order', 'record', 'find'];

describe.each(pages)('the page %s', (page) => {
  const faults = () => screen.queryAllByText(/can’t be shown/);

  it('shows the example property, in metres and in feet', async () => {
    useApp.setState({ page });
    show(<Inspector />);
    expect(faults()).toEqual([]);
    expect(screen.getByRole('complementary', { name: 'Inspector' }).textContent!.length).toBeGreaterThan(100);
    const { file } = useApp.getState();
    const property = { ...propertyOf(file!.project), units: 'imperial' as const };
    const project = { ...file!.project, property: new Map([['property', property]]) };
    act(() => useApp.setState({ file: { ...file!, project } }));
    expect(faults()).toEqual([]);
  });

  it('opens each of its registers', async () => {
    useApp.setState({ page });
    show(<Inspector />);
    const choice = screen.queryByRole('navigation', { name: 'Registers' });
    for (const button of choice ? within(choice).getAllByRole('button') : []) {
      await user.click(button);
      expect(faults()).toEqual([]);
      expect(button.getAttribute('aria-pressed')).toBe('true');
    }
  });

  it('shows a property on which nothing is drawn', async () => {
    closeWindow();
    await openWindow(projectOf([newProperty('Bare', null), ...startingFenceTypes()]));
    useApp.setState({ page });
    show(<Inspector />);
    expect(faults()).toEqual([]);
  });

  it('says where something could not be worked out', () => {
    const { analysis } = useApp.getState();
    const failed = { findings: 'no room', plan: 'no room', power: 'no room', fit: 'no room' };
    useApp.setState({ page, analysis: { ...analysis!, failed } });
    show(<Inspector />);
    expect(faults()).toEqual([]);
  });
});

describe('a change in a field', () => {
  const gateway = [...demo.gateway.values()][0]!;

  it('is an edit in the file, and is on the screen once the host has answered', async () => {
    useApp.setState({ page: 'draw', chosen: [gateway.id] });
    show(<ChosenDetails />);
    const name = screen.getAllByRole<HTMLInputElement>('textbox').find(({ value }) => value === gateway.name)!;
    await user.clear(name);
    await user.type(name, 'Top gate{Enter}');
    await expect.poll(() => host.now.gateway.get(gateway.id)!.name).toBe('Top gate');
    expect(host.edits).toHaveLength(1);
    await expect.poll(() => useApp.getState().file!.project.gateway.get(gateway.id)!.name).toBe('Top gate');
  });

  it('that the file refuses leaves all as it was, and says why', async () => {
    host.refusal = fail('damaged', 'The file could not be written.', 'Save a copy.');
    useApp.setState({ page: 'draw', chosen: [gateway.id] });
    show(
      <>
        <ProblemBar />
        <ChosenDetails />
      </>,
    );
    const name = screen.getAllByRole<HTMLInputElement>('textbox').find(({ value }) => value === gateway.name)!;
    await user.clear(name);
    await user.type(name, 'Top gate{Enter}');
    expect((await screen.findByRole('alert')).textContent).toContain('The file could not be written. Save a copy.');
    expect(useApp.getState().file!.project.gateway.get(gateway.id)).toEqual(gateway);
  });
});

it('each thing of the example has details that can be shown', () => {
  for (const kind of [
    'fenceLine',
    'gateway',
    'switch',
    'post',
    'energiser',
    'leadOut',
    'service',
    'fenceType',
  ] as const) {
    const [thing] = [...demo[kind].values()];
    if (!thing) continue;
    act(() => useApp.setState({ page: 'draw', chosen: [thing.id] }));
    const { container, unmount } = show(<ChosenDetails />);
    expect(container.textContent, kind).not.toBe('');
    unmount();
  }
});

describe('Divide', () => {
  it('says why there is no plan, and offers another try', () => {
    const { analysis } = useApp.getState();
    useApp.setState({ page: 'divide', analysis: { ...analysis!, failed: { plan: 'out of memory' } } });
    show(<DividePage />);
    expect(screen.getByText(/The plan could not be worked out \(out of memory\)/)).toBeTruthy();
    expect(screen.getByRole('button', { name: 'Try again' })).toBeTruthy();
  });
});

describe('the list of keys', () => {
  it('has the tools of Find and of Divide too', () => {
    show(<KeysDialog />);
    for (const words of ['Hole, in Find', 'Trench, in Find', 'Area, in Find', 'Place, in Divide']) {
      expect(screen.getByText(words)).toBeTruthy();
    }
  });
});
