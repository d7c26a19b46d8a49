import type { ReactNode } from 'react';

/** A caution, where the danger is. */
export function Caution({ children }: { readonly children: ReactNode }) {
  return (
    <p className="caution" role="note">
      <strong>Caution. </strong>
      {children}
    </p>
  );
}
