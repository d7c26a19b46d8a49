// The loopback host as a process of its own, without a browser: its first line is its address.
import { serve } from './serve.ts';

const { address } = await serve(process.argv.slice(2));
console.log(address);
