import { resolve } from 'node:path';
import { fileEnding } from '../store/fileFormat.ts';
import type { ProjectService } from './projectService.ts';

/** Opens what the command line names, a project file or `--demo`; says on the console why it can't. */
export async function openFirst(service: ProjectService, args: readonly string[]): Promise<void> {
  const project = service.forWindow('command line');
  const file = args.find((argument) => argument.endsWith(fileEnding));
  const result = args.includes('--demo')
    ? await project.openDemo()
    : file && (await project.open({ path: resolve(file) }));
  if (result && !result.ok) console.error(`${result.problem.message} ${result.problem.remedy}`);
}
