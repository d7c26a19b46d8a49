import { type GroundAnswer, withAnswer } from '../../core/locate/inGround/answer.ts';
import { groundQuestion, touchedKey } from '../../core/locate/inGround/question.ts';
import { type TouchOptions, touchedBy } from '../../core/locate/inGround/touched.ts';
import { difference } from '../../core/model/difference.ts';
import type { Project } from '../../core/model/project.ts';
import { localDate } from '../../core/words/dates.ts';
import { useApp } from './appState.ts';
import { newId } from './newId.ts';

/**
 * Steps that follow each other within this are one movement of the hand: what was answered once holds for all of what it
 * was answered of.
 */
const sameMovementMs = 5000;

interface Answered {
  readonly mergeKey: string;
  readonly answer: GroundAnswer;
  /** What it was answered of. */
  readonly of: ReadonlySet<string>;
  readonly at: number;
}

let answered: Answered | null = null;

function holdsFor({ mergeKey, of, at }: Answered, nowKey: string | undefined, nowOf: ReadonlySet<string>): boolean {
  return mergeKey === nowKey && Date.now() - at < sameMovementMs && [...nowOf].every((key) => of.has(key));
}

/**
 * The edited project with what lies in the ground kept as the user says; asked only where the edit touches something
 * built, recorded or taped from. Null: the user would rather not make the edit.
 */
export async function asGroundSays(
  before: Project,
  edited: Project,
  { mergeKey, ...options }: TouchOptions & { readonly mergeKey?: string },
): Promise<Project | null> {
  if (edited === before) return edited;
  const touch = touchedBy(before, edited, difference(before, edited), options);
  const context = { before, after: edited, touch, newId, date: localDate(new Date()) };
  if (touch.asked.length === 0) return withAnswer(context, 'stays');
  const of = new Set(touch.asked.map(touchedKey));
  const known = answered && holdsFor(answered, mergeKey, of) ? answered : null;
  const answer = known ? known.answer : await ask(before, touch.asked);
  answered = answer && mergeKey !== undefined ? { mergeKey, answer, of: known?.of ?? of, at: Date.now() } : null;
  return answer && withAnswer(context, answer);
}

function ask(before: Project, asked: Parameters<typeof groundQuestion>[1]): Promise<GroundAnswer | null> {
  return new Promise((resolve) => {
    const answer = (given: GroundAnswer | null) => {
      useApp.setState({ groundQuestion: null });
      resolve(given);
    };
    useApp.setState({ groundQuestion: { question: groundQuestion(before, asked), answer } });
  });
}
