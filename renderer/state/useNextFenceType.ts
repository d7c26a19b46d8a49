import { useApp } from './appState.ts';

/** Id of the fence type that the next line gets: the one last asked for if it is still there, else the first. */
export function useNextFenceType(): string | undefined {
  return useApp(({ file, nextFenceTypeId }) => {
    const types = file?.project.fenceType;
    if (nextFenceTypeId !== null && types?.has(nextFenceTypeId)) return nextFenceTypeId;
    return types?.keys().next().value;
  });
}
