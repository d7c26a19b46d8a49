import type { ReactNode } from 'react';

/** The workspace's question answered, in one sentence with figures. */
export function Answer({ children }: { readonly children: ReactNode }) {
  return (
    <p className="answer" role="status">
      {children}
    </p>
  );
}
