import { CommandButton } from '../commands/CommandButton.tsx';
import { useApp } from '../state/appState.ts';
import { openDemo, openFile } from '../state/session.ts';

/** What the window shows while no property is open: the ways to begin. */
export function Welcome() {
  const recent = useApp((state) => state.recent);
  return (
    <main className="welcome">
      <h1>Undergate</h1>
      <p className="welcome-job">
        Plan an electric-fence network, record what is buried under each gateway, and find it again years later.
      </p>
      <section className="ways" aria-label="Ways to begin">
        <div className="way">
          <h2>Draw on the grid</h2>
          <p>Start a new property on a blank metric grid. Draw its fences, place the gateways, then the energiser.</p>
          <CommandButton id="newProperty" className="main" />
        </div>
        <div className="way">
          <h2>Go on with a property</h2>
          <p>
            Open a property file (its name ends in .undergate). Fences from another program come in as GeoJSON, from the
            cover.
          </p>
          <CommandButton id="openProperty" />
        </div>
        <div className="way">
          <h2>Look at an example</h2>
          <p>An invented farm of about 600 ha with everything in it. It opens as a copy: change it as you like.</p>
          <button type="button" onClick={() => void openDemo()}>
            Open the example
          </button>
        </div>
      </section>
      {recent.length > 0 ? (
        <section aria-labelledby="recent-title">
          <h2 id="recent-title">Opened lately</h2>
          <ul className="recent">
            {recent.map((file) => (
              <li key={file.path}>
                <button type="button" disabled={!file.present} onClick={() => void openFile(file.path)}>
                  <strong>{file.fileName}</strong>
                  <span>{file.present ? file.path : `${file.path} (no longer there)`}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <p className="welcome-caution">
        Undergate helps to plan and to remember. It replaces neither local rules nor licensed work: turn the energiser
        off and prove the fence dead before touching it, and have other buried services located before you dig.
      </p>
    </main>
  );
}
