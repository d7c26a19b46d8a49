import { describe, it } from 'vitest';
import { missingReaders, packageOf, type Reader } from '../run/readers.ts';

/** Tests with programs that are not ours. Where one of them is not installed they are left out by name; in CI they fail. */
export function describeWith(readers: readonly Reader[], name: string, tests: () => void): void {
  const missing = missingReaders(readers);
  if (missing.length === 0) {
    describe(name, () => tests());
    return;
  }
  const toInstall = [...new Set(missing.map((program) => packageOf[program]))].join(' ');
  if (!process.env.CI) {
    describe.skip(`${name} (install ${toInstall})`, () => tests());
    return;
  }
  describe(name, () => {
    it('has the programs that it needs', () => {
      throw new Error(`${missing.join(', ')} is not installed. On Debian: "apt-get install ${toInstall}" as root.`);
    });
  });
}
