import { type Project, propertyOf } from '../../model/project.ts';
import type { Property } from '../../model/things.ts';
import type { Survey } from '../../survey/types.ts';
import type { Found } from '../finding.ts';
import { type Components, componentsOf } from './components.ts';
import { type Meeting, meetingsOf } from './meetings.ts';
import { type Openings, openingsOf } from './openings.ts';
import { type ServiceShape, serviceShapes } from './services.ts';
import { WireIndex } from './wireIndex.ts';

/** One rule: all it has to say about a drawing. */
export type Check = (context: CheckContext) => Found[];

/** A drawing as the rules look at it. What several rules need is worked out once, when the first of them asks. */
export class CheckContext {
  readonly project: Project;
  readonly survey: Survey;
  readonly property: Property;

  constructor(project: Project, survey: Survey) {
    this.project = project;
    this.survey = survey;
    this.property = propertyOf(project);
  }

  /** Live fence lines and lead-outs above ground, for looking up what is near. */
  get wires(): WireIndex {
    return this.#once('wires', () => new WireIndex(this.project, this.survey));
  }

  /** Where segments of two live lines come together. */
  get meetings(): readonly Meeting[] {
    return this.#once('meetings', () => meetingsOf(this.wires, this.property.snapToleranceM));
  }

  /** Stretches of each line that gateways take up. */
  get openings(): Openings {
    return this.#once('openings', () => openingsOf(this.survey));
  }

  /** What hangs together electrically when every switch is closed, and with each in its normal position. */
  get components(): Components {
    return this.#once('components', () => componentsOf(this.survey.network));
  }

  get services(): readonly ServiceShape[] {
    return this.#once('services', () => serviceShapes(this.project, this.survey));
  }

  readonly #kept = new Map<string, unknown>();

  #once<T>(name: string, make: () => T): T {
    if (!this.#kept.has(name)) this.#kept.set(name, make());
    return this.#kept.get(name) as T;
  }
}
