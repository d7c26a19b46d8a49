import { plainWords } from '../../core/words/figures.ts';
import { createService, pageFolder } from '../host/createService.ts';
import { openFirst } from '../host/openFirst.ts';
import { startLoopback } from './server.ts';

/** The whole app on the loopback host, until `stop` or until the process is told to end. */
export interface Serving {
  /** An address of the page that lets in once, within two minutes. */
  newAddress(): string;
  stop(): Promise<void>;
}

/**
 * Serves the app; `args` are those of the command line: a project file, or `--demo`. `writeAddress` is called with a new
 * address when a page asks for one.
 */
export async function serve(args: readonly string[], writeAddress: (address: string) => void): Promise<Serving> {
  const service = createService();
  await openFirst(service, args);
  const host = await startLoopback({ service, pageFolder, onAddressWanted: () => writeAddress(host.newAddress()) });
  const stop = async () => {
    await host.close();
    const problem = service.dispose();
    if (problem) console.error(plainWords().host.problem(problem));
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
    process.once(signal, () => void stop().then(() => process.exit(0)));
  }
  return { newAddress: () => host.newAddress(), stop };
}
