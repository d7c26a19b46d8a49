import { useState } from 'react';
import type { Problem } from '../../core/api/result.ts';
import { askForNewAddress } from '../client/enter.ts';
import { useApp } from '../state/appState.ts';

/** What a browser shows that was not let in: why, and how to open the app again. */
export function NotLetIn() {
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
      <section className="not-let-in" aria-label="To open Undergate again">
        <p>
          Each window of Undergate is opened by an address that works once, so that nobody else on this machine can get
          in. Have a new one written in the terminal where you started Undergate, and paste it in the address bar above.
        </p>
        <p className="buttons">
          <button type="button" className="main" onClick={() => void ask()}>
            Write a new address
          </button>
        </p>
        <p role="status">
          {written ? 'A new address now stands in the terminal where Undergate runs. It is good for two minutes.' : ''}
          {refused ? refused.message : ''}
        </p>
        <p>
          Or end Undergate in that terminal (Ctrl+C) and start it again with npm start: all that was saved is in the
          file.
        </p>
      </section>
    </main>
  );
}
