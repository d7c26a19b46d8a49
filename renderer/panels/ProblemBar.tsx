import { useApp } from '../state/appState.ts';
import { useWords } from '../state/useFigures.ts';

/** What went wrong and what to do about it; stays until it has been read. */
export function ProblemBar() {
  const { common } = useWords().window.frame;
  const problem = useApp((state) => state.problem);
  const lost = useApp((state) => state.phase === 'lost');
  if (!problem) return null;
  return (
    <div className="problem" role="alert">
      <p>
        <strong>{problem.message}</strong> {problem.remedy}
      </p>
      {lost ? null : (
        <button type="button" onClick={() => useApp.setState({ problem: null })}>
          {common.close}
        </button>
      )}
    </div>
  );
}
