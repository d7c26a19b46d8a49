import { useOpenFile } from '../../state/appState.ts';
import { FaultSearchList } from './FaultSearchList.tsx';
import { FaultSearchStart } from './FaultSearchStart.tsx';
import { FaultSearchWalkView } from './FaultSearchWalkView.tsx';
import { useFaultSearchNow } from './faultSearchNow.ts';

/** Find a fault: from a low reading at the energiser, switch by switch, to one section. */
export function FaultView() {
  const { project } = useOpenFile();
  const now = useFaultSearchNow();
  return (
    <>
      {now ? <FaultSearchWalkView key={now.search.id} now={now} /> : <FaultSearchStart />}
      {project.faultHunt.size > 0 ? <FaultSearchList /> : null}
    </>
  );
}
