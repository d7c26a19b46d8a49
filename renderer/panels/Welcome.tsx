import { CommandButton } from '../commands/CommandButton.tsx';
import { useApp } from '../state/appState.ts';
import { openDemo, openFile } from '../state/session.ts';
import { useWords } from '../state/useFigures.ts';

/** What the window shows while no property is open: the ways to begin. */
export function Welcome() {
  const { welcome: words } = useWords().window.frame;
  const recent = useApp((state) => state.recent);
  return (
    <main className="welcome">
      <h1>Undergate</h1>
      <p className="welcome-job">{words.job}</p>
      <section className="ways" aria-label={words.ways}>
        <div className="way">
          <h2>{words.draw}</h2>
          <p>{words.drawMeans}</p>
          <CommandButton id="newProperty" className="main" />
        </div>
        <div className="way">
          <h2>{words.goOn}</h2>
          <p>{words.goOnMeans}</p>
          <CommandButton id="openProperty" />
        </div>
        <div className="way">
          <h2>{words.example}</h2>
          <p>{words.exampleMeans}</p>
          <button type="button" onClick={() => void openDemo()}>
            {words.openExample}
          </button>
        </div>
      </section>
      {recent.length > 0 ? (
        <section aria-labelledby="recent-title">
          <h2 id="recent-title">{words.recent}</h2>
          <ul className="recent">
            {recent.map((file) => (
              <li key={file.path}>
                <button type="button" disabled={!file.present} onClick={() => void openFile(file.path)}>
                  <strong>{file.fileName}</strong>
                  <span>{file.present ? file.path : words.gone({ path: file.path })}</span>
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <p className="welcome-caution">{words.caution}</p>
    </main>
  );
}
