import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { keepSettings, readSettings } from '../../../electron/host/settingsFile.ts';
import { temporaryFolder } from '../../support/temporaryFolder.ts';

it('settings kept before numbers and dates could be set keep the rest', () => {
  const path = join(temporaryFolder(), 'settings.json');
  writeFileSync(path, JSON.stringify({ theme: 'dark', bookWidthPx: 512 }));
  expect(readSettings(path)).toEqual({ theme: 'dark', bookWidthPx: 512, locale: null, language: null });
  keepSettings(path, { theme: null, bookWidthPx: null, locale: 'sv-SE', language: null });
  expect(readSettings(path).locale).toBe('sv-SE');
});
