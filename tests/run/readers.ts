import { installDebianPackages } from './debian.ts';
import { hasProgram } from './run.ts';

/** Programs, none of them ours, that tests look at our files with, and Debian's packages of them. */
export const packageOf = {
  gdal_translate: 'gdal-bin',
  gdalwarp: 'gdal-bin',
  ogrinfo: 'gdal-bin',
  gpsbabel: 'gpsbabel',
  pdftotext: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  zbarimg: 'zbar-tools',
  sqlite3: 'sqlite3',
  python3: 'python3',
} as const;

export type Reader = keyof typeof packageOf;

/** Those of the programs that are not on this machine. */
export function missingReaders(readers = Object.keys(packageOf) as readonly Reader[]): Reader[] {
  return readers.filter((program) => !hasProgram(program));
}

/** Gets the programs that are missing where that can be done; says of the others how, since their tests are left out. */
export function provideReaders(): void {
  const packages = (readers: readonly Reader[]) => [...new Set(readers.map((program) => packageOf[program]))];
  const missing = missingReaders();
  if (missing.length === 0) return;
  installDebianPackages(packages(missing));
  const still = packages(missingReaders(missing));
  if (still.length === 0) return;
  console.log(`Not here, so that the tests with them are left out (in CI they fail): ${still.join(', ')}.`);
  console.log(`Install them: on Debian "apt-get install ${still.join(' ')}" as root.`);
}
