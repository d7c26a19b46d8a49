import type { ReactNode } from 'react';
import { useWords } from '../../state/useFigures.ts';

/** A caution, where the danger is. */
export function Caution({ children }: { readonly children: ReactNode }) {
  return (
    <p className="caution" role="note">
      <strong>{useWords().window.frame.caution} </strong>
      {children}
    </p>
  );
}
