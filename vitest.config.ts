import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      'tests/unit/**/*.test.ts',
      'tests/components/**/*.test.tsx',
      'tests/contract/**/*.test.ts',
      'tests/reference/**/*.test.ts',
      'tests/install/**/*.test.ts',
    ],
    testTimeout: 60_000,
  },
});
