import { createService, pageFolder } from '../host/createService.ts';
import { startLoopback } from './server.ts';

/**
 * The loopback host as a process of its own, without a browser: prints its address as its first line and serves until it
 * is told to end.
 */
const service = createService();
const host = await startLoopback({ service, pageFolder });
console.log(host.address);

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
  process.once(signal, () => {
    void host.close().then(() => {
      service.dispose();
      process.exit(0);
    });
  });
}
