import { resolve } from 'node:path';
import { plainWords } from '../../core/words/figures.ts';
import { fileEnding } from '../store/fileFormat.ts';
import type { ProjectService } from './projectService.ts';

/** npm runs its scripts in the project's top folder; this is where the user was. */
const folder = process.env.INIT_CWD ?? '.';

/** Opens what the command line names, a project file or `--demo`; says on the console why it can't. */
export async function openFirst(service: ProjectService, args: readonly string[]): Promise<void> {
  const project = service.forWindow('command-line');
  const file = args.find((argument) => argument.endsWith(fileEnding));
  const result = args.includes('--demo')
    ? await project.openDemo()
    : file && (await project.open({ path: resolve(folder, file) }));
  if (result && !result.ok) console.error(plainWords().host.problem(result.problem));
}
