import { mapView } from '../../state/mapView.ts';

/** What to do with an empty property, in order. */
export function FirstSteps() {
  return (
    <ol className="steps">
      <li>
        <strong>Draw the boundary and the fences.</strong> Press <kbd>F</kbd> on the map and click along the line, or
        type a length and a bearing.
        <button type="button" className="main" onClick={() => mapView.setTool('fence')}>
          Draw a fence
        </button>
      </li>
      <li>
        <strong>Place the gateways</strong> (<kbd>G</kbd>) on the fences. Each live one gets its crossing under the
        gate.
      </li>
      <li>
        <strong>Place the energiser</strong> (<kbd>E</kbd>) and lead out to the fence.
      </li>
      <li>
        Then open <strong>Divide</strong>: it suggests where cut-out switches should go.
      </li>
      <li>
        A photo from the air or a scanned plan can lie under the drawing: <strong>Background maps</strong>, below.
      </li>
      <li>Or bring fences in from a GeoJSON file: on the cover.</li>
    </ol>
  );
}
