// The loopback host as a process of its own, without a browser: its first line is an address of the page, and so is each
// further line that it writes when a page asks for a new one.
import { serve } from './serve.ts';

const { newAddress } = await serve(process.argv.slice(2), (address) => console.log(address));
console.log(newAddress());
