import { useEffect, useState } from 'react';

/** Whether `holds` has held for a while. */
export function useLasting(holds: boolean, forMs: number): boolean {
  const [lasts, setLasts] = useState(false);
  useEffect(() => {
    if (!holds) return;
    const timer = setTimeout(() => setLasts(true), forMs);
    return () => {
      clearTimeout(timer);
      setLasts(false);
    };
  }, [holds, forMs]);
  return holds && lasts;
}
