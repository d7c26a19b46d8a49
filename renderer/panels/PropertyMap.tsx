import { useCallback, useEffect, useMemo } from 'react';
import { switchAt } from '../../core/model/edits/support/switchPlace.ts';
import type { Project } from '../../core/model/project.ts';
import type { SwitchPlace } from '../../core/model/things.ts';
import type { DividePlan } from '../../core/survey/types.ts';
import { MapView } from '../map/MapView.tsx';
import type { MapEvents, MapHandle, MapInput } from '../map/mapTypes.ts';
import { useApp, useOpenFile } from '../state/appState.ts';
import { choose, point } from '../state/choose.ts';
import { mapView } from '../state/mapView.ts';
import { newId } from '../state/newId.ts';
import { commit } from '../state/session.ts';
import { useNextFenceType } from '../state/useNextFenceType.ts';
import { useStanding } from '../state/useStanding.ts';
import { useUnits } from '../state/useUnits.ts';
import { setDig } from './find/findState.ts';
import { useFindOverlay } from './find/useFindOverlay.ts';
import { powerView } from './power/usePower.ts';
import { voltageShading } from './power/voltageShading.ts';
import { foundOverlay, recordOverlay } from './record/recordOverlay.ts';
import { useNextService } from './services/nextService.ts';
import { onPlacing, usePlacing } from './underlay/placing.ts';
import { forgetTileFiles, openShownTileFiles } from './underlay/tileFileStates.ts';
import { tileSupply } from './underlay/tileSupply.ts';

const noFindings: MapInput['findings'] = [];

/** The map, fed from the window's state. */
export function PropertyMap() {
  const { path, project, survey } = useOpenFile();
  // biome-ignore lint/correctness/useExhaustiveDependencies: another file is another property.
  useEffect(() => forgetTileFiles, [path]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: of another file all is asked anew.
  useEffect(() => openShownTileFiles(project.underlay.values()), [path, project.underlay]);
  const page = useApp((state) => state.page);
  const chosen = useApp((state) => state.chosen);
  const pointed = useApp((state) => state.pointed);
  const lit = useApp((state) => state.lit);
  const findings = useApp((state) => state.analysis?.findings ?? noFindings);
  const plan = useApp((state) => state.analysis?.plan ?? null);
  const isCurrent = useStanding('plan') === 'current';
  const suggested = useMemo(() => {
    if (page !== 'divide' || !plan) return null;
    return isCurrent ? plan : stillThere(plan, project);
  }, [page, plan, isCurrent, project]);
  const theme = useApp((state) => state.theme);
  const nextFenceTypeId = useNextFenceType();
  const units = useUnits();
  const shownOpen = useApp((state) => state.shownOpen);
  const voltage = useMemo(
    () => (page === 'power' ? voltageShading(powerView(project, survey, shownOpen)) : null),
    [page, project, survey, shownOpen],
  );
  const record = useMemo(() => {
    if (page === 'find') return foundOverlay(project, survey);
    return page === 'record' ? recordOverlay(project, survey) : null;
  }, [page, project, survey]);
  const placing = usePlacing((state) => state.placing);
  const service = useNextService(({ drawing, next }) => (drawing ? next : null));
  const find = useFindOverlay();
  const input = useMemo<MapInput>(
    () => ({
      project,
      survey,
      findings,
      workspace: page === 'cover' ? 'draw' : page,
      chosen,
      pointed,
      lit,
      plan: suggested,
      voltage,
      record,
      units,
      theme,
      tiles: tileSupply,
      placing,
      service,
      find,
      ...(nextFenceTypeId === undefined ? {} : { nextFenceTypeId }),
    }),
    [
      project,
      survey,
      findings,
      page,
      chosen,
      pointed,
      lit,
      suggested,
      voltage,
      record,
      units,
      theme,
      placing,
      service,
      find,
      nextFenceTypeId,
    ],
  );
  const attach = useCallback((handle: MapHandle | null) => mapView.attach(handle), []);
  return <MapView input={input} events={mapEvents} ref={attach} />;
}

/** Of a plan that was made before the last change: the switches that can still be suggested, until the new one is there. */
function stillThere(plan: DividePlan, project: Project): DividePlan {
  const isThere = (place: SwitchPlace): boolean => {
    if (place.on === 'gateway') return project.gateway.has(place.gatewayId);
    return place.on === 'leadOut' ? project.leadOut.has(place.leadOutId) : project.fenceLine.has(place.lineId);
  };
  return {
    ...plan,
    missing: plan.missing.filter(({ place }) => isThere(place) && !switchAt(project, place)),
    surplus: plan.surplus.filter((id) => project.switch.has(id)),
  };
}

const mapEvents: MapEvents = {
  onChoose: choose,
  onPoint: point,
  onEdit: ({ label, apply, mergeKey, choose: ids }) =>
    commit(label, apply, { ...(mergeKey === undefined ? {} : { mergeKey }), ...(ids ? { choose: ids } : {}) }),
  newId,
  onFinding: (finding) => choose(finding.thingIds),
  onPlacing,
  onDig: (dig) => setDig(dig),
};
