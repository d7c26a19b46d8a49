// @vitest-environment happy-dom
import { act, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { english } from '../../core/words/en.ts';
import { setLanguage } from '../../core/words/language.ts';
import { pseudo } from '../../core/words/pseudo.ts';
import { CoordinateBlock } from '../../renderer/panels/coordinates/CoordinateBlock.tsx';
import { PackDialog } from '../../renderer/panels/record/PackDialog.tsx';
import { RecordDetails } from '../../renderer/panels/record/RecordDetails.tsx';
import { RecordPage } from '../../renderer/panels/record/RecordPage.tsx';
import { useApp } from '../../renderer/state/appState.ts';
import { englishLeft, textsOfPage } from '../support/englishOnScreen.ts';
import { namesIn } from '../support/pseudo.ts';
import { closeWindow, openWindow, show } from './fakeWindow.tsx';

const user = userEvent.setup();
/** Names of systems, formats and the like, which are the same in every language. */
const proper = ['WGS 84', 'UTM', 'NZTM2000', 'PDF', 'GPX', 'GPS', 'GeoJSON', 'A4', 'A3', 'kV'];

beforeEach(async () => {
  setLanguage(pseudo());
  await openWindow();
});
afterEach(() => {
  closeWindow();
  setLanguage(english);
});

function left(): string[] {
  const { project } = useApp.getState().file!;
  return englishLeft(textsOfPage(), [...namesIn(project), ...proper]);
}

it('every register of Record comes from the catalogue', async () => {
  useApp.setState({ page: 'record' });
  show(<RecordPage />);
  const [choice] = screen.getAllByRole('navigation');
  const found = new Set(left());
  for (const button of within(choice!).getAllByRole('button')) {
    await user.click(button);
    for (const text of left()) found.add(text);
  }
  expect([...found]).toEqual([]);
});

it('every part of a crossing’s record, and what else is recorded of things, comes from the catalogue', async () => {
  const { project } = useApp.getState().file!;
  const crossed = new Set([...project.crossing.values()].map(({ gatewayId }) => gatewayId));
  const gateways = [...project.gateway.values()].filter(({ id }) => crossed.has(id)).slice(0, 6);
  const others = [...project.energiser.values(), ...project.reading.values(), ...project.switch.values()].slice(0, 4);
  const found = new Set<string>();
  for (const thing of [...gateways, ...others]) {
    const { unmount } = show(<RecordDetails thing={thing} others={null} />);
    for (const text of left()) found.add(text);
    for (const nav of screen.queryAllByRole('navigation')) {
      for (const button of within(nav).getAllByRole('button')) {
        await user.click(button);
        for (const text of left()) found.add(text);
      }
    }
    act(() => unmount());
  }
  expect([...found]).toEqual([]);
});

it('the handover pack’s dialog and the coordinates come from the catalogue', () => {
  show(<PackDialog />);
  expect(left()).toEqual([]);
  show(<CoordinateBlock />);
  expect(left()).toEqual([]);
});
