import fc from 'fast-check';
import { beforeEach, describe, expect, it } from 'vitest';
import { demoThings } from '../../../assets/demo/makeDemo.ts';
import { allCrossings } from '../../../core/locate/allCrossings.ts';
import { alsoInTrench } from '../../../core/locate/alsoInTrench.ts';
import { buriedThings, overheadLines } from '../../../core/locate/buriedThings.ts';
import {
  assumedInShort,
  basisInShort,
  certaintyInWords,
  standingInShort,
  stateInWords,
  withinInShort,
} from '../../../core/locate/certaintyWords.ts';
import type { CrossingAsBuilt } from '../../../core/locate/crossingAsBuilt.ts';
import { crossingRows } from '../../../core/locate/crossingSearch.ts';
import { depthOf } from '../../../core/locate/depth.ts';
import {
  depthHeading,
  depthInWords,
  depthLabel,
  depthThereInShort,
  depthThereInWords,
  depthThereLabel,
  leftOutInWords,
} from '../../../core/locate/depthWords.ts';
import { faultSearchGround } from '../../../core/locate/faultSearch/faultSearchGround.ts';
import { suspectsIn } from '../../../core/locate/faultSearch/faultSearchSuspects.ts';
import type { FaultSearchStep } from '../../../core/locate/faultSearch/faultSearchWalk.ts';
import {
  leftInWords,
  pieceInWords,
  readingInWords,
  sectionPlace,
  staysOpenInWords,
  stepInWords,
  switchesInWords,
} from '../../../core/locate/faultSearch/faultSearchWords.ts';
import { planWhole, testsLeft } from '../../../core/locate/faultSearch/testPlan.ts';
import { findSentence } from '../../../core/locate/findSentence.ts';
import { leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import { fateInShort, fateInWords } from '../../../core/locate/inGround/leftWords.ts';
import { groundQuestion } from '../../../core/locate/inGround/question.ts';
import { touchedBy } from '../../../core/locate/inGround/touched.ts';
import { stakeOut } from '../../../core/locate/stakeOut.ts';
import { fixedPosts } from '../../../core/locate/tieFrom.ts';
import {
  ambiguousInWords,
  doNotMeetInWords,
  placeMarks,
  placeNames,
  postThen,
  tiesInWords,
  whichInWords,
} from '../../../core/locate/tieWords.ts';
import { difference } from '../../../core/model/difference.ts';
import type { Project } from '../../../core/model/project.ts';
import { projectOf } from '../../../core/model/project.ts';
import { surveyOf } from '../../../core/survey/survey.ts';
import type { Message } from '../../../core/words/message.ts';
import type { Value } from '../../../core/words/types.ts';
import { attempts, dice } from '../../support/everyEdit.ts';
import { englishIn, expectFromCatalogue, inPseudo, namesIn } from '../../support/pseudo.ts';
import { drawingWithLeft, recordedDrawing } from '../../support/recordedDrawing.ts';
import { recordedProjects } from '../../support/recordedProjects.ts';

let said = new Set<string>();

beforeEach(() => {
  said = new Set();
});

/** Codes of a message and of those inside of it. */
function note(value: Value): void {
  if (typeof value !== 'object' || value === null) return;
  if ('code' in value && typeof value.code === 'string') said.add(value.code);
  for (const part of Object.values(value as Readonly<Record<string, Value>>)) note(part);
}

function check(messages: readonly (Message | null)[], names: ReadonlySet<string>): void {
  for (const message of messages) {
    if (message === null) continue;
    expectFromCatalogue(message, names);
    note(message);
  }
}

const projects: readonly Project[] = [
  projectOf(demoThings()),
  recordedDrawing(),
  drawingWithLeft(),
  ...recordedProjects.slice(0, 12),
];

function ofCrossing(crossing: CrossingAsBuilt, fixed: ReturnType<typeof fixedPosts>): (Message | null)[] {
  const { points, postNames, depth } = stakeOut(crossing, fixed);
  return [
    certaintyInWords(crossing),
    standingInShort(crossing),
    stateInWords(crossing.figures.crossing.status, crossing.inGround),
    withinInShort(crossing.certainty),
    assumedInShort(crossing.certainty.basis),
    basisInShort(crossing.certainty.basis),
    alsoInTrench(crossing.record),
    depthInWords(depth),
    depthHeading(depth),
    ...depthLabel({ ...depthOf(crossing), inGround: crossing.inGround }),
    leftOutInWords(depth, crossing.lengthM),
    postNames.start,
    postNames.end,
    ...points.flatMap(({ label, tapes, depth: there }) => [
      label,
      ...tapes.map(({ postName }) => postName),
      depthThereInWords(there),
      depthThereInShort(there),
      depthThereLabel(there),
    ]),
    ...crossing.points.flatMap((solved) => [
      tiesInWords(solved),
      doNotMeetInWords(solved),
      ...placeNames(solved.places),
      ...placeMarks(solved.places),
      ...(solved.places.length > 1 ? [ambiguousInWords(solved), whichInWords(solved.places)] : []),
      ...solved.ties.map(postThen),
    ]),
  ];
}

describe('what is said of where buried things lie comes from the catalogue', () => {
  it('of each crossing and every other thing in the ground', () => {
    for (const project of projects) {
      const names = namesIn(project);
      const survey = surveyOf(project);
      const fixed = fixedPosts(project, survey);
      check(
        fixed.map(({ name }) => name),
        names,
      );
      for (const crossing of allCrossings(project, survey).values()) check(ofCrossing(crossing, fixed), names);
      for (const thing of [...buriedThings(project, survey), ...overheadLines(project, survey)]) {
        check([thing.name, thing.beside, basisInShort(thing.basis)], names);
      }
      for (const { thing } of leftInGround(project, survey)) {
        for (const fate of ['inUse', 'dead', 'takenOut'] as const)
          check([fateInShort({ ...thing, fate }), fateInWords({ ...thing, fate })], names);
      }
      check(
        [findSentence(crossingRows(project, survey), project.faultHunt.values(), project.inGround.values())],
        names,
      );
    }
  });

  it('of a search for a fault', () => {
    for (const project of projects) {
      const names = namesIn(project);
      const survey = surveyOf(project);
      for (const section of survey.sections) {
        check(
          suspectsIn(project, survey, section).flatMap(({ name, why }) => [name, why]),
          names,
        );
        check([sectionPlace(project, section)], names);
      }
      const ids = ['gone', ...project.switch.keys()];
      for (const switchId of [null, ...ids]) {
        const step: FaultSearchStep = {
          check: 'test',
          switchId,
          openIds: ids,
          toOpen: ids.slice(1),
          toClose: ids.slice(0, 2),
        };
        // Where the switch stands is said by the survey.
        const words = stepInWords(step, project, survey);
        note(words);
        expect(englishIn(inPseudo(words), names)).toBe('');
        check([staysOpenInWords(step, project), switchesInWords(project, ids)], names);
        for (const checked of ['start', 'test', 'with', 'without'] as const) {
          const yardstick = { usualV: 8100, by: 'estimate', lowBelowV: 5000, goodFromV: 6000 } as const;
          const reading = { switchId, switchName: '', openIds: [], at: '', setAside: false, check: checked };
          check([readingInWords({ ...reading, voltageV: 2100, result: 'low', doubtful: true, yardstick })], names);
          check([readingInWords({ ...reading, voltageV: null, result: 'good', doubtful: false })], names);
        }
      }
      for (const { energiserId } of survey.network.sources) {
        const ground = faultSearchGround(survey, energiserId);
        if (!ground) continue;
        check([leftInWords(testsLeft(ground, planWhole(ground, [], 'walking').tree))], names);
        check(
          [...ground.pieces.keys()].map((piece) => pieceInWords(ground, piece, survey)),
          names,
        );
      }
    }
    expect(said.size).toBeGreaterThan(18);
  });

  it('of what an edit would do to what is in the ground, whatever the edit', () => {
    const makers = Object.values(attempts);
    fc.assert(
      fc.property(fc.constantFrom(...projects.slice(1)), fc.nat(makers.length - 1), dice, (before, which, thrown) => {
        const edit = makers[which]!(before, thrown);
        let after = before;
        try {
          after = edit?.(before) ?? before;
        } catch {
          return;
        }
        const touch = touchedBy(before, after, difference(before, after), { deleting: true });
        if (touch.asked.length === 0) return;
        const names = namesIn([before, after]);
        for (const touched of touch.asked) {
          const { title, lines, ask, choices } = groundQuestion(before, [touched]);
          check([title, ...lines, ask, ...choices.flatMap(({ label, means }) => [label, means])], names);
        }
        check([groundQuestion(before, touch.asked).title], names);
      }),
      { numRuns: 1000, seed: 7 },
    );
    expect(said.size).toBeGreaterThan(50);
  });
});
