import { mapView } from '../../state/mapView.ts';
import { useWords } from '../../state/useFigures.ts';
import { Marked } from '../parts/Marked.tsx';

/** What to do with an empty property, in order. */
export function FirstSteps() {
  const words = useWords().window.draw.firstSteps;
  return (
    <ol className="steps">
      <li>
        <Marked text={words.fences({ key: 'F' })} />
        <button type="button" className="main" onClick={() => mapView.setTool('fence')}>
          {words.drawFence}
        </button>
      </li>
      <li>
        <Marked text={words.gateways({ key: 'G' })} />
      </li>
      <li>
        <Marked text={words.energiser({ key: 'E' })} />
      </li>
      <li>
        <Marked text={words.divide} />
      </li>
      <li>
        <Marked text={words.maps} />
      </li>
      <li>{words.bringIn}</li>
    </ol>
  );
}
