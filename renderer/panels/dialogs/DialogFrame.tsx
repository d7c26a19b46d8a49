import { type ReactNode, useEffect, useId, useRef } from 'react';
import { useApp } from '../../state/appState.ts';

export function closeDialog(): void {
  useApp.setState({ dialog: null });
}

/** A modal dialog with its title; Escape closes it and the focus goes back to where it was. */
export function DialogFrame({
  title,
  children,
  wide = false,
  closeWord = 'Close',
  onClose = closeDialog,
}: {
  readonly title: string;
  readonly children: ReactNode;
  readonly wide?: boolean;
  readonly closeWord?: string;
  readonly onClose?: () => void;
}) {
  const element = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const dialog = element.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog
      ref={element}
      className={wide ? 'dialog wide' : 'dialog'}
      aria-labelledby={titleId}
      onCancel={(event) => {
        event.preventDefault();
        onClose();
      }}
    >
      <header className="dialog-head">
        <h2 id={titleId}>{title}</h2>
        <button type="button" className="plain" onClick={onClose}>
          {closeWord}
        </button>
      </header>
      <div className="dialog-body">{children}</div>
    </dialog>
  );
}
