import { Caution } from '../parts/Caution.tsx';

/** Said at each step that has somebody touch a switch. */
export function SwitchCaution() {
  return (
    <Caution>
      Turn the energiser off before you open or close a switch, unless its maker allows it live. Off, and proven dead,
      before you touch a wire. Keep people and stock clear while it is on to read.
    </Caution>
  );
}
