export { type Feed, type Feeding, feedingWays } from './normallyOpen.ts';
export { planSections } from './plan.ts';
export { Planning, startPlanning } from './planning.ts';
export {
  type PriceOfChange,
  type PriceOfWithout,
  priceOfChange,
  priceOfForbidding,
  priceOfForcing,
  priceOfWithout,
  type Requests,
  withRequests,
} from './price.ts';
export { type SectionGraph, type SectionSwitch, sectionGraph, sectionsWith } from './sectionGraph.ts';
export { type SectionTest, SectionTests, type SwitchState, testStates } from './testStates.ts';
export type * from './types.ts';
