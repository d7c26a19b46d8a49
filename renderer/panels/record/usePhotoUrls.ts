import { useEffect, useState } from 'react';
import { photoLimits } from '../../../core/api/photoApi.ts';
import { host } from '../../state/session.ts';

/** Pictures shown last, as addresses that the page made itself; the oldest are let go. */
const shown = new Map<string, string>();
const mostShown = 200;

/** Addresses of pictures by their ids; those still to come, or not in the file, are missing. */
export function usePhotoUrls(blobIds: readonly string[]): ReadonlyMap<string, string> {
  const [, setCount] = useState(0);
  const key = blobIds.join(' ');
  useEffect(() => {
    let gone = false;
    const missing = [...new Set(key.split(' '))].filter((id) => id !== '' && !shown.has(id));
    void fetchAll(missing, () => {
      if (!gone) setCount((count) => count + 1);
    });
    return () => {
      gone = true;
    };
  }, [key]);
  return shown;
}

async function fetchAll(blobIds: readonly string[], onSome: () => void): Promise<void> {
  const atOnce = Math.min(8, photoLimits.atOnce);
  for (let from = 0; from < blobIds.length; from += atOnce) {
    const some = blobIds.slice(from, from + atOnce);
    const answer = await host().project.photoBytes({ blobIds: some });
    if (!answer.ok) return;
    answer.value.forEach((bytes, i) => {
      if (bytes) keep(some[i]!, bytes);
    });
    onSome();
  }
}

function keep(id: string, bytes: Uint8Array): void {
  if (shown.has(id)) return;
  shown.set(id, URL.createObjectURL(new Blob([bytes as BlobPart], { type: 'image/jpeg' })));
  for (const [oldest, url] of shown) {
    if (shown.size <= mostShown) break;
    URL.revokeObjectURL(url);
    shown.delete(oldest);
  }
}
