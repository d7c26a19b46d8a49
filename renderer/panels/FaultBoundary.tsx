import { Component, type ReactNode } from 'react';
import { plainWords } from '../../core/words/figures.ts';
import { faultText } from '../state/report.ts';
import { DialogFrame } from './dialogs/DialogFrame.tsx';

interface Props {
  /** What could not be shown: "Draw", "The map". */
  readonly what: string;
  /** It is a dialog, and this closes it. */
  readonly onClose?: () => void;
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

  override render(): ReactNode {
    const { what, onClose, children } = this.props;
    const { fault } = this.state;
    if (!fault) return children;
    const { fault: words, common } = plainWords().window.frame;
    const title = words.title({ what });
    const said = (
      <>
        <p>{words.happened({ why: faultText(fault.error) })}</p>
        <p>{words.goOn}</p>
        <p className="buttons">
          <button type="button" className="main" onClick={() => this.setState({ fault: null })}>
            {common.tryAgain}
          </button>
        </p>
      </>
    );
    if (onClose) {
      return (
        <DialogFrame title={title} onClose={onClose}>
          <div role="alert" className="fault">
            {said}
          </div>
        </DialogFrame>
      );
    }
    return (
      <section className="inspector-page fault" role="alert">
        <h2>{title}</h2>
        {said}
      </section>
    );
  }
}
