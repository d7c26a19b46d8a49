// @vitest-environment happy-dom
import { act, screen } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { english } from '../../core/words/en.ts';
import { setLanguage } from '../../core/words/language.ts';
import { pseudo } from '../../core/words/pseudo.ts';
import { FindPage } from '../../renderer/panels/find/FindPage.tsx';
import { type FindView, setDig, useFind } from '../../renderer/panels/find/findState.ts';
import { useApp } from '../../renderer/state/appState.ts';
import { englishIn, namesIn } from '../support/pseudo.ts';
import { closeWindow, demo, openWindow, show } from './fakeWindow.tsx';

// There is no canvas here.
vi.mock('../../renderer/panels/find/measureText.ts', () => ({ measureText: (text: string) => text.length }));

beforeEach(async () => {
  setLanguage(pseudo());
  await openWindow();
});
afterEach(() => {
  setLanguage(english);
  closeWindow();
});

const user = userEvent.setup();
const spoken = ['aria-label', 'title', 'placeholder', 'alt'];
const units = /\d[\d.,]*\s*(?:m|mm|km|kV|ha)(?![A-Za-z])/g;
/** Units in columns, formats, and how a place on earth is told apart. */
const proper = ['kV', 'mm', 'GPX', 'KML', 'WGS 84', 'May', 'February'];

/** English on the page that does not come from the catalogue. */
function left(): string[] {
  const names = [...namesIn(demo), ...proper];
  const texts = [...document.body.querySelectorAll('*')].flatMap((element) => {
    const own = [...element.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim());
    const attributes = spoken.flatMap((name) => element.getAttribute(name) ?? []);
    return own ? [...attributes, element.textContent ?? ''] : attributes;
  });
  return [...new Set(texts.map((text) => englishIn(text.replaceAll(units, ' '), names)).filter((text) => text !== ''))];
}

it('no view of Find says anything outside of the catalogue', () => {
  useApp.setState({ page: 'find' });
  show(<FindPage />);
  const gateway = [...demo.gateway.values()][0]!;
  for (const view of ['crossings', 'dig', 'fault', 'along'] as const satisfies readonly FindView[]) {
    act(() => {
      useApp.setState({ chosen: [gateway.id] });
      const [line] = demo.fenceLine.values();
      if (view === 'dig') setDig({ shape: 'point', path: [line!.path[0]!] });
      useFind.setState({ view });
    });
    expect(screen.getAllByRole('button').length).toBeGreaterThan(0);
    expect(document.body.textContent).toContain('⟦');
    expect([view, left()]).toEqual([view, []]);
  }
});

it('nor does a fault search on its way to a section', async () => {
  useApp.setState({ page: 'find' });
  useFind.setState({ view: 'fault' });
  const { container } = show(<FindPage />);
  const click = (selector: string) => user.click(container.querySelector(selector)!);
  await click('.fix');
  for (let step = 0; step < 12; step++) {
    await expect.poll(() => container.querySelector('.fault-search-do')).not.toBeNull();
    expect([step, left()]).toEqual([step, []]);
    const before = container.querySelectorAll('.fault-search-readings li').length;
    const entry = container.querySelector('.reading-entry');
    if (!entry) {
      await click('.fix');
      continue;
    }
    // Low each time: the search ends at the energiser.
    await user.click(entry.querySelectorAll('.buttons button')[1]!);
    await expect.poll(() => container.querySelectorAll('.fault-search-readings li').length).toBeGreaterThan(before);
    if (container.querySelector('.found')) break;
  }
  expect(container.querySelector('.found')).not.toBeNull();
  expect(left()).toEqual([]);
});
