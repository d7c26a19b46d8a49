import { useMemo } from 'react';
import { crossingThing, leftThing } from '../../../core/locate/buriedThings.ts';
import { crossingAt } from '../../../core/locate/crossingAsBuilt.ts';
import { digCheck, numbered } from '../../../core/locate/digCheck.ts';
import { suspectsIn } from '../../../core/locate/faultSearch/faultSearchSuspects.ts';
import { switchesInWords } from '../../../core/locate/faultSearch/faultSearchWords.ts';
import { leftInGround } from '../../../core/locate/inGround/leftInGround.ts';
import type { Project } from '../../../core/model/project.ts';
import type { Survey } from '../../../core/survey/types.ts';
import type { Figures } from '../../../core/words/types.ts';
import type { DigMark, FaultSearchMark, FindOverlay } from '../../map/findTypes.ts';
import { useApp, useOpenFile } from '../../state/appState.ts';
import { useFigures } from '../../state/useFigures.ts';
import { type FaultSearchNow, useFaultSearchNow } from './faultSearchNow.ts';
import { useFind } from './findState.ts';
import { useSought } from './useCrossingRows.ts';

/** What the map shows for Find; null on the other pages. */
export function useFindOverlay(): FindOverlay | null {
  const { project, survey } = useOpenFile();
  const f = useFigures();
  const isOpen = useApp((state) => state.page === 'find');
  const view = useFind((state) => state.view);
  const dig = useFind((state) => state.dig);
  const soughtId = useSought();
  const now = useFaultSearchNow();
  const digMark = useMemo((): DigMark | null => {
    if (!isOpen || view !== 'dig' || !dig) return null;
    const hits = numbered(digCheck(project, survey, dig)).map(({ finding, number, overhead }) => {
      const { ways, inGround } = finding.thing;
      return { number, ways, inGround, nearest: finding.nearest, overlap: finding.overlap && !overhead };
    });
    return { ...dig, hits };
  }, [isOpen, view, dig, project, survey]);
  const sought = useMemo(() => {
    if (!isOpen || view !== 'crossings' || !soughtId) return null;
    const left = leftInGround(project, survey).find(({ thing }) => thing.id === soughtId);
    if (left) return leftThing(left);
    const crossing = crossingAt(project, survey, soughtId);
    return crossing && crossingThing(crossing);
  }, [isOpen, view, soughtId, project, survey]);
  const search = useMemo(
    () => (isOpen && view === 'fault' && now ? faultSearchMark(now, project, survey, f) : null),
    [isOpen, view, now, project, survey, f],
  );
  return useMemo(() => (isOpen ? { dig: digMark, sought, search } : null), [isOpen, digMark, sought, search]);
}

function faultSearchMark(
  { search, ground, walk }: FaultSearchNow,
  project: Project,
  survey: Survey,
  f: Figures,
): FaultSearchMark | null {
  if (!ground || !walk) return null;
  const words = f.words.window.find.onMap;
  const edgesOf = (pieces: Iterable<number>) =>
    [...pieces].flatMap((piece) => {
      const section = ground.pieces[piece]!.section;
      return section === null ? [] : survey.sections[section]!.edges;
    });
  const { state, inQuestion } = walk;
  const out = [...ground.pieces.keys()].filter((piece) => !inQuestion.has(piece));
  const section = state.kind === 'found' ? ground.pieces[state.piece]!.section : null;
  const suspects =
    section === null
      ? []
      : suspectsIn(project, survey, survey.sections[section]!)
          .slice(0, 6)
          .map(({ xy }, index) => ({ xy, number: String(index + 1) }));
  return { inQuestion: edgesOf(inQuestion), outOfQuestion: edgesOf(out), next: nextPlace(), suspects };

  function nextPlace(): FaultSearchMark['next'] {
    const step =
      state.kind === 'read' || state.kind === 'found'
        ? state.step
        : state.kind === 'contradiction'
          ? state.repeat
          : null;
    const switchId = state.kind === 'openFirst' ? state.switchIds[0]! : step?.switchId;
    if (switchId) {
      const row = survey.switches.find((each) => each.switch.id === switchId);
      const name = f.say(switchesInWords(project, [switchId]));
      const text = state.kind === 'openFirst' ? words.open({ name }) : words.readAt({ name });
      return row ? { xy: row.xy, text } : null;
    }
    const energiser = step ? project.energiser.get(search.energiserId) : undefined;
    return energiser ? { xy: survey.plane.toXy(energiser.at), text: words.readHere } : null;
  }
}
