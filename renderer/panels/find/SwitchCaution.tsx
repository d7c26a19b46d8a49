import { useWords } from '../../state/useFigures.ts';
import { Caution } from '../parts/Caution.tsx';

/** Said at each step that has somebody touch a switch. */
export function SwitchCaution() {
  return <Caution>{useWords().window.find.search.switchCaution}</Caution>;
}
