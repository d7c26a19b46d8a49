import { useState } from 'react';
import type { Problem } from '../../core/api/result.ts';
import { askForNewAddress } from '../client/enter.ts';
import { useApp } from '../state/appState.ts';
import { useWords } from '../state/useFigures.ts';

/** What a browser shows that was not let in: why, and how to open the app again. */
export function NotLetIn() {
  const { notLetIn: words } = useWords().window.frame;
  const problem = useApp((state) => state.problem);
  const [written, setWritten] = useState(false);
  const [refused, setRefused] = useState<Problem | null>(null);
  const ask = async () => {
    const answer = await askForNewAddress();
    setWritten(answer.ok);
    setRefused(answer.ok ? null : answer.problem);
  };
  return (
    <main className="welcome">
      <h1>Undergate</h1>
      <p className="welcome-job" role="alert">
        {problem?.message}
      </p>
      <section className="not-let-in" aria-label={words.section}>
        <p>{words.why}</p>
        <p className="buttons">
          <button type="button" className="main" onClick={() => void ask()}>
            {words.write}
          </button>
        </p>
        <p role="status">
          {written ? words.written : ''}
          {refused ? refused.message : ''}
        </p>
        <p>{words.orRestart}</p>
      </section>
    </main>
  );
}
