import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** The page, built into plain files that are served by the window's own scheme or by the loopback host. */
export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react()],
  worker: { format: 'es' },
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    // The content policy lets no font or script in from a data: address.
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 2000,
    rolldownOptions: {
      output: {
        codeSplitting: {
          // What a window starts with comes as two files: who asks the host, and all that the first picture needs.
          groups: [
            { name: 'main', test: /renderer[\\/]main\.ts$/, priority: 3 },
            { name: 'window', test: /renderer[\\/]window\.tsx$/, priority: 2 },
            { name: 'parts', minShareCount: 2, entriesAware: true, entriesAwareMergeThreshold: 20_000, priority: 1 },
          ],
        },
      },
    },
  },
});
