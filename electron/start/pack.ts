// Makes the handover pack of a project file without a window: npm run pack -- FILE.undergate OUT.pdf
// With --parts map,crossings only these; with --scale 5000 the map at that scale; with --paper A4 on smaller sheets.

import { writeFileSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { type PackOptions, type PackPart, packParts } from '../../core/api/packOptions.ts';
import { projectOf } from '../../core/model/project.ts';
import { handoversOf } from '../../core/record/edits/handOver.ts';
import { SheetProblem } from '../../core/sheets/sheetProblem.ts';
import { plainWords } from '../../core/words/figures.ts';
import { languageOf, setLanguage } from '../../core/words/language.ts';
import { readFileNumber } from '../../core/words/numbers/read.ts';
import { readSettings, settingsPath } from '../host/settingsFile.ts';
import { userFolders } from '../host/userFolders.ts';
import { printJob } from '../print/printJob.ts';
import { smallPhotos } from '../print/printRoom.ts';
import { ProblemError, problemOf } from '../store/problems.ts';
import { openProjectFile } from '../store/projectFile.ts';

setLanguage(languageOf(readSettings(settingsPath(userFolders())).language));

const words = plainWords().host;
const said = words.start.pack;
const usage = said.usage({ parts: packParts.join(',') });

try {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      parts: { type: 'string' },
      paper: { type: 'string' },
      scale: { type: 'string' },
      by: { type: 'string' },
      for: { type: 'string' },
      date: { type: 'string' },
    },
  });
  const [file, out] = positionals;
  if (!file || !out || positionals.length > 2) throw new ProblemError('not-valid', usage, said.nameBoth);
  await makePack(resolve(file), resolve(out), {
    parts: partsOf(values.parts),
    paper: paperOf(values.paper),
    orientation: 'landscape',
    scaleDenominator: scaleOf(values.scale),
    preparedBy: values.by ?? '',
    preparedFor: values.for ?? '',
    note: '',
    date: dateOf(values.date),
  });
} catch (error) {
  console.error(inWords(error));
  process.exitCode = 1;
}

async function makePack(file: string, out: string, options: Omit<PackOptions, 'handoverNumber'>): Promise<void> {
  const { store, things } = openProjectFile(file);
  try {
    const [handover] = handoversOf(projectOf(things));
    const photos = smallPhotos(things, (blobId) => store.photoBytes(blobId));
    const job = { what: 'pack', options: { ...options, handoverNumber: handover?.number ?? null } } as const;
    const made = await printJob(job, things, photos);
    write(out, made.bytes);
    console.log(said.made({ path: out, kb: Math.ceil(made.bytes.length / 1024) }));
  } finally {
    store.close();
  }
}

function partsOf(list: string | undefined): readonly PackPart[] {
  if (list === undefined) return packParts;
  const wanted = list.split(',').map((part) => part.trim());
  const unknown = wanted.find((part) => !(packParts as readonly string[]).includes(part));
  if (unknown === undefined) return wanted as PackPart[];
  throw new ProblemError('not-valid', said.noPart.message({ part: unknown }), said.noPart.remedy({ parts: packParts }));
}

/** Says of the PDF's own path what is wrong with it. */
function write(out: string, bytes: Uint8Array): void {
  try {
    writeFileSync(out, bytes);
  } catch (error) {
    const { code, message } = problemOf(error, out);
    const missing = code === 'not-found' ? said.noFolder({ path: dirname(out) }) : message;
    throw new ProblemError(code, missing, said.otherPlace);
  }
}

function paperOf(given = 'A3'): PackOptions['paper'] {
  if (given === 'A3' || given === 'A4') return given;
  throw new ProblemError('not-valid', said.noPaper.message({ given }), said.noPaper.remedy);
}

/** "5000" and "1:5000" alike; null for the scale that suits. */
function scaleOf(given: string | undefined): number | null {
  if (given === undefined) return null;
  const scale = readFileNumber(given.replace(/^1:/, ''));
  if (scale !== null && scale >= 1) return scale;
  throw new ProblemError('not-valid', said.noScale.message({ given }), said.noScale.remedy);
}

/** The given day, or today by this machine's clock. */
function dateOf(given: string | undefined): string {
  if (given === undefined) {
    const now = new Date();
    const two = (value: number) => String(value).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  }
  if (/^\d{4}-\d{2}-\d{2}$/.test(given) && !Number.isNaN(Date.parse(given))) return given;
  throw new ProblemError('not-valid', said.noDate.message({ given }), said.noDate.remedy);
}

function inWords(error: unknown): string {
  if (error instanceof SheetProblem) return words.problem(error);
  if (error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS'))
    return `${error.message}\n${usage}`;
  return words.problem(problemOf(error, process.argv[2] ?? words.files.what.file));
}
