import { Component, type ReactNode } from 'react';
import { faultText } from '../state/report.ts';

interface Props {
  /** What could not be shown: "This page". */
  readonly what: string;
  /** Tells of the fault elsewhere, and nothing is shown here. */
  readonly onFault?: (error: unknown) => void;
  readonly children: ReactNode;
}

interface State {
  readonly fault: { readonly error: unknown } | null;
}

/** Keeps a fault of one part of the window from taking the rest with it: says what happened and how to go on. */
export class FaultBoundary extends Component<Props, State> {
  override state: State = { fault: null };

  static getDerivedStateFromError(error: unknown): State {
    return { fault: { error } };
  }

  override componentDidCatch(error: unknown): void {
    this.props.onFault?.(error);
  }

  override render(): ReactNode {
    const { what, onFault, children } = this.props;
    const { fault } = this.state;
    if (!fault) return children;
    if (onFault) return null;
    return (
      <section className="inspector-page" role="alert">
        <h2>{what} can’t be shown</h2>
        <p>What happened: {faultText(fault.error)}.</p>
        <p>
          What was saved is in the file. Try again, or go on elsewhere; undo the last step if it came with that. If it
          comes again, close the window and start Undergate again.
        </p>
        <p className="buttons">
          <button type="button" className="main" onClick={() => this.setState({ fault: null })}>
            Try again
          </button>
        </p>
      </section>
    );
  }
}
