import { type ReactNode, useEffect, useId, useRef } from 'react';
import { useApp } from '../../state/appState.ts';
import { useWords } from '../../state/useFigures.ts';

export function closeDialog(): void {
  useApp.setState({ dialog: null });
}

/** A modal dialog with its title; Escape closes it and the focus goes back to where it was. */
export function DialogFrame({
  title,
  children,
  wide = false,
  closeWord,
  onClose = closeDialog,
  asksUnbidden = false,
}: {
  readonly title: string;
  readonly children: ReactNode;
  readonly wide?: boolean;
  readonly closeWord?: string;
  readonly onClose?: () => void;
  /** It comes up by itself: no button of it has the focus, so that the key that was just pressed answers nothing. */
  readonly asksUnbidden?: boolean;
}) {
  const { common } = useWords().window.frame;
  const element = useRef<HTMLDialogElement>(null);
  const titleId = useId();
  useEffect(() => {
    const dialog = element.current;
    dialog?.showModal();
    if (asksUnbidden) dialog?.focus();
    return () => dialog?.close();
  }, [asksUnbidden]);
  return (
    <dialog
      ref={element}
      tabIndex={asksUnbidden ? -1 : undefined}
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
          {closeWord ?? common.close}
        </button>
      </header>
      <div className="dialog-body">{children}</div>
    </dialog>
  );
}
