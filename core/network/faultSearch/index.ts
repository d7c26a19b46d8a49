export { planFaultSearch } from './planFaultSearch.ts';
export type * from './types.ts';
