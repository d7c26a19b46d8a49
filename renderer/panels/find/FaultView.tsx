import { useOpenFile } from '../../state/appState.ts';
import { HuntList } from './HuntList.tsx';
import { HuntStart } from './HuntStart.tsx';
import { HuntWalkView } from './HuntWalkView.tsx';
import { useHuntNow } from './huntNow.ts';

/** Find a fault: from a low reading at the energiser, switch by switch, to one section. */
export function FaultView() {
  const { project } = useOpenFile();
  const now = useHuntNow();
  return (
    <>
      {now ? <HuntWalkView key={now.hunt.id} now={now} /> : <HuntStart />}
      {project.faultHunt.size > 0 ? <HuntList /> : null}
    </>
  );
}
