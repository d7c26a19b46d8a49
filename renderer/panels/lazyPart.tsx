import { type ComponentType, createElement, type ReactNode, Suspense, use } from 'react';

/** The code of a part, fetched once. */
class Source<P extends object> {
  readonly #load: () => Promise<ComponentType<P>>;
  #fetching: Promise<ComponentType<P>> | null = null;
  /** Null until it is fetched. */
  part: ComponentType<P> | null = null;

  constructor(load: () => Promise<ComponentType<P>>) {
    this.#load = load;
  }

  /** What can't be fetched is fetched anew the next time. */
  fetched(): Promise<ComponentType<P>> {
    this.#fetching ??= this.#load().then(
      (loaded) => {
        this.part = loaded;
        return loaded;
      },
      (error: unknown) => {
        this.#fetching = null;
        throw error;
      },
    );
    return this.#fetching;
  }
}

const loads: (() => Promise<unknown>)[] = [];

/**
 * A part of the window whose code is fetched when it is first shown, or before that by `fetchParts`. Until then its place is
 * empty. What can't be fetched is thrown, for the boundary around it, and fetched anew when it is tried again.
 */
export function lazyPart<P extends object>(load: () => Promise<ComponentType<P>>): (props: P) => ReactNode {
  const source = new Source(load);
  loads.push(() => source.fetched());
  return (props) => (
    <Suspense fallback={null}>
      <Fetched source={source} props={props} />
    </Suspense>
  );
}

function Fetched<P extends object>({ source, props }: { readonly source: Source<P>; readonly props: P }) {
  return createElement(source.part ?? use(source.fetched()), props);
}

/** Fetches all parts one after another, so that none is waited for later; what fails is tried again when it is shown. */
export async function fetchParts(): Promise<void> {
  for (const load of loads) await load().catch(() => {});
}
