// @vitest-environment happy-dom
import { cleanup, screen, within } from '@testing-library/react';
import userEvent from '@testing-library/user-event';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { FaultBoundary } from '../../renderer/panels/FaultBoundary.tsx';
import { CheckField, NumberField, SelectField, TextField } from '../../renderer/panels/parts/fields.tsx';
import { LengthField } from '../../renderer/panels/parts/LengthField.tsx';
import { type Column, Register } from '../../renderer/panels/parts/Register.tsx';
import { useApp } from '../../renderer/state/appState.ts';
import { emptyDialog, show } from './fakeWindow.tsx';

const user = userEvent.setup();

afterEach(cleanup);

describe('a field of text', () => {
  it('counts when Enter is pressed, without the spaces around it', async () => {
    const commit = vi.fn();
    show(<TextField label="Name" value="F1" onCommit={commit} />);
    const field = screen.getByLabelText('Name');
    await user.clear(field);
    await user.type(field, ' North fence {Enter}');
    expect(commit.mock.calls).toEqual([['North fence']]);
  });

  it('is taken back by Escape, and says where nothing may be left out', async () => {
    const commit = vi.fn();
    show(<TextField label="Name" required value="F1" onCommit={commit} />);
    const field = screen.getByLabelText<HTMLInputElement>('Name');
    await user.type(field, '23{Escape}');
    expect(field.value).toBe('F1');
    await user.clear(field);
    await user.tab();
    expect(screen.getByRole('alert').textContent).toBe("Name can't be empty.");
    expect(field.getAttribute('aria-invalid')).toBe('true');
    expect(commit).not.toHaveBeenCalled();
  });
});

describe('a field of a number', () => {
  const shown = (onCommit: (value: number | null) => void, more: object = {}) =>
    show(
      <NumberField
        label="Peak"
        unit="V"
        decimals={0}
        min={100}
        max={20_000}
        value={6000}
        onCommit={onCommit}
        {...more}
      />,
    );

  it('reads what it shows, and figures in groups', async () => {
    const commit = vi.fn();
    shown(commit);
    const field = screen.getByLabelText<HTMLInputElement>('Peak');
    expect(field.value).toBe('6000');
    await user.clear(field);
    await user.type(field, '7,250{Enter}');
    expect(commit.mock.calls).toEqual([[7250]]);
  });

  it.each(['20,001', '99', 'many'])('refuses %s, and keeps it to be put right', async (text) => {
    const commit = vi.fn();
    shown(commit);
    const field = screen.getByLabelText<HTMLInputElement>('Peak');
    await user.clear(field);
    await user.type(field, `${text}{Enter}`);
    expect(screen.getByRole('alert').textContent).not.toBe('');
    expect(field.value).toBe(text);
    expect(commit).not.toHaveBeenCalled();
  });

  it('may be empty only where that means something', async () => {
    const commit = vi.fn();
    shown(commit, { optional: true });
    await user.clear(screen.getByLabelText('Peak'));
    await user.keyboard('{Enter}');
    expect(commit.mock.calls).toEqual([[null]]);
  });

  it('gives a length back in metres', async () => {
    const commit = vi.fn();
    show(<LengthField label="Depth" valueM={0.3} maxM={3} onCommitM={commit} />);
    const field = screen.getByLabelText('Depth');
    await user.clear(field);
    await user.type(field, '0.45{Enter}');
    expect(commit.mock.calls).toEqual([[0.45]]);
  });
});

describe('a choice', () => {
  it('tells what was chosen', async () => {
    const [chose, ticked] = [vi.fn(), vi.fn()];
    const choices = [
      { value: 'left', label: 'Left' },
      { value: 'right', label: 'Right' },
    ] as const;
    show(
      <>
        <SelectField label="Side" value="left" choices={choices} onCommit={chose} />
        <CheckField label="Pinned" value={false} onCommit={ticked} />
      </>,
    );
    await user.selectOptions(screen.getByLabelText('Side'), 'Right');
    await user.click(screen.getByLabelText('Pinned'));
    expect([chose.mock.calls, ticked.mock.calls]).toEqual([[['right']], [[true]]]);
  });
});

interface Row {
  readonly id: string;
  readonly name: string;
  readonly figure: number;
}

describe('a register', () => {
  const columns: readonly Column<Row>[] = [
    { title: 'Name', cell: ({ name }) => name, sortBy: ({ name }) => name },
    { title: 'Figure', cell: ({ figure }) => figure, sortBy: ({ figure }) => figure },
  ];
  const rowsOf = (count: number) =>
    Array.from({ length: count }, (_, i): Row => ({ id: `r${i}`, name: `F${i}`, figure: (i * 7) % 10 }));
  const register = (rows: readonly Row[]) => (
    <Register<Row> caption="Fences" rows={rows} idOf={({ id }) => id} empty="No fences yet." columns={columns} />
  );
  const names = () =>
    within(screen.getAllByRole('rowgroup')[1]!)
      .getAllByRole('row')
      .map((row) => row.firstChild?.textContent);

  beforeEach(() => useApp.setState({ chosen: [], pointed: null }));

  it('says so where it has no rows', () => {
    show(register([]));
    expect(screen.getByText('No fences yet.')).toBeTruthy();
  });

  it('sorts by a column, up and down and back, with F2 before F10', async () => {
    show(register(rowsOf(12)));
    await user.click(screen.getByRole('button', { name: /Name/ }));
    expect(names()).toEqual(rowsOf(12).map(({ name }) => name));
    await user.click(screen.getByRole('button', { name: /Name/ }));
    expect(names()[0]).toBe('F11');
    expect(screen.getByRole('columnheader', { name: /Name/ }).getAttribute('aria-sort')).toBe('descending');
  });

  it('is walked with the arrows and chosen from with Enter', async () => {
    show(register(rowsOf(3)));
    screen.getAllByRole('row')[1]!.focus();
    await user.keyboard('{ArrowDown}{Enter}');
    expect(useApp.getState()).toMatchObject({ chosen: ['r1'], pointed: 'r1' });
    expect(screen.getAllByRole('row')[2]!.getAttribute('aria-selected')).toBe('true');
  });

  it('shows a stretch of a long one, and moves to what is chosen', async () => {
    const { rerender } = show(register(rowsOf(900)));
    expect(names()).toHaveLength(100);
    await user.click(screen.getByRole('button', { name: 'Show more (800 left)' }));
    expect(names()).toHaveLength(600);
    useApp.setState({ chosen: ['r850'] });
    rerender(register(rowsOf(900)));
    expect(names()).toContain('F850');
  });
});

let fails = true;

function Faulty() {
  if (fails) throw new Error('No such line.');
  return <p>Here again</p>;
}

describe('a part that fails', () => {
  it('says what happened, leaves the rest, and can be tried again', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined);
    show(
      <>
        <FaultBoundary what="Draw">
          <Faulty />
        </FaultBoundary>
        <p>The rest</p>
      </>,
    );
    expect(screen.getByRole('alert').textContent).toContain('Draw can’t be shown');
    expect(screen.getByRole('alert').textContent).toContain('What happened: No such line.');
    expect(screen.getByText('The rest')).toBeTruthy();
    fails = false;
    await user.click(screen.getByRole('button', { name: 'Try again' }));
    expect(screen.getByText('Here again')).toBeTruthy();
    vi.restoreAllMocks();
  });
});

describe('a dialog', () => {
  it('has its title, and is closed by its button and by Escape', async () => {
    const close = vi.fn();
    show(emptyDialog(close));
    const dialog = screen.getByRole('dialog', { name: 'Empty' });
    await user.click(within(dialog).getByRole('button', { name: 'Close' }));
    dialog.dispatchEvent(new Event('cancel', { cancelable: true }));
    expect(close).toHaveBeenCalledTimes(2);
  });
});
