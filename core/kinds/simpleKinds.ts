import { builtMark } from './builtMark.ts';
import { crossing } from './crossing.ts';
import { faultHunt } from './faultHunt.ts';
import { fenceLine } from './fenceLine.ts';
import { fenceType } from './fenceType.ts';
import { gateway } from './gateway.ts';
import { ground } from './ground.ts';
import { inGround } from './inGround.ts';
import { catalogueItem, fenceMake, kit, labourRate, orderSettings, rollOnHand, stage, stageMark } from './order.ts';
import { post } from './post.ts';
import { property } from './property.ts';
import { reading } from './reading.ts';
import { earthField, energiser, leadOut } from './supply.ts';
import { conductor, paddock, service } from './surroundings.ts';
import { cutOutSwitch, switchCandidate, switchRule } from './switches.ts';
import { earthTest, testRun } from './tests.ts';
import { buriedPoint, crossingRecord } from './trench.ts';
import { coordinateSettings, underlay } from './underlay.ts';

/** All kinds but those that hold or name things of any kind; what a thing stands on comes before it. */
export const simpleKinds = [
  property,
  fenceType,
  conductor,
  fenceLine,
  post,
  energiser,
  leadOut,
  earthField,
  gateway,
  crossing,
  switchCandidate,
  cutOutSwitch,
  switchRule,
  paddock,
  service,
  reading,
  orderSettings,
  fenceMake,
  catalogueItem,
  kit,
  labourRate,
  rollOnHand,
  stage,
  stageMark,
  crossingRecord,
  buriedPoint,
  testRun,
  earthTest,
  builtMark,
  inGround,
  faultHunt,
  ground,
  underlay,
  coordinateSettings,
] as const;

export type SimpleKind = (typeof simpleKinds)[number];
