import type { CSSProperties, KeyboardEvent, PointerEvent, ReactNode } from 'react';
import { propertyOf } from '../../core/model/project.ts';
import { CommandButton } from '../commands/CommandButton.tsx';
import { type Page, useApp, useOpenFile } from '../state/appState.ts';
import { bookWidthLimitsPx, setBookWidth } from '../state/settings.ts';
import { useWords } from '../state/useFigures.ts';
import { useLasting } from '../state/useLasting.ts';
import { ChosenDetails } from './draw/ChosenDetails.tsx';
import { DrawPage } from './draw/DrawPage.tsx';
import { FaultBoundary } from './FaultBoundary.tsx';
import { lazyPart } from './lazyPart.tsx';
import { PictureProgress } from './underlay/PictureProgress.tsx';

const workspaces = ['draw', 'divide', 'power', 'order', 'record', 'find'] as const satisfies readonly Page[];

const pages = {
  cover: lazyPart(async () => (await import('./cover/CoverPage.tsx')).CoverPage),
  draw: DrawPage,
  divide: lazyPart(async () => (await import('./divide/DividePage.tsx')).DividePage),
  power: lazyPart(async () => (await import('./power/PowerPage.tsx')).PowerPage),
  order: lazyPart(async () => (await import('./order/OrderPage.tsx')).OrderPage),
  record: lazyPart(async () => (await import('./record/RecordPage.tsx')).RecordPage),
  find: lazyPart(async () => (await import('./find/FindPage.tsx')).FindPage),
} satisfies Record<Page, (props: object) => ReactNode>;

/** The one panel beside the map: name, verbs, and the page of the verb that is open. */
export function Inspector() {
  const widthPx = useApp((state) => state.bookWidthPx);
  const page = useApp((state) => state.page);
  const { project } = useOpenFile();
  const chosen = useApp((state) => state.chosen);
  const View = pages[page];
  const { inspector: words, parts } = useWords().window.frame;
  return (
    <aside
      className="inspector"
      aria-label={words.name}
      style={{ '--inspector-width': `${widthPx}px` } as CSSProperties}
    >
      <InspectorEdge widthPx={widthPx} />
      <h1 className="visually-hidden">{propertyOf(project).name}</h1>
      <header className="inspector-head">
        <button
          type="button"
          className="inspector-name"
          aria-pressed={page === 'cover'}
          title={words.fileMenuTip}
          onClick={() => useApp.setState({ page: 'cover' })}
        >
          <span className="inspector-name-text">{propertyOf(project).name}</span>
          <span className="inspector-name-more">{words.fileMenu}</span>
        </button>
        <div className="inspector-undo">
          <CommandButton id="undo" />
          <CommandButton id="redo" />
        </div>
      </header>
      <nav className="verbs" aria-label={words.workspaces}>
        {workspaces.map((each) => (
          <button
            key={each}
            type="button"
            aria-current={page === each ? 'page' : undefined}
            onClick={() => useApp.setState({ page: each, lit: [] })}
          >
            {words.pages[each]}
          </button>
        ))}
      </nav>
      <FaultBoundary key={page} what={words.pages[page]}>
        <div className="inspector-page">
          <View />
        </div>
      </FaultBoundary>
      {page === 'cover' || page === 'find' ? null : (
        <FaultBoundary key={`${chosen.length} ${chosen.at(-1)}`} what={parts.selected}>
          <ChosenDetails />
        </FaultBoundary>
      )}
      <FaultBoundary what={parts.picture}>
        <PictureProgress />
      </FaultBoundary>
      <LastLine />
    </aside>
  );
}

/** An edit is in the file sooner, as a rule; what is said for a moment only nobody reads. */
const longWriteMs = 150;

/** The last line: what was just done and that it is in the file, or why something could not be done. */
function LastLine() {
  const { inspector: words } = useWords().window.frame;
  const lastLine = useApp((state) => state.lastLine);
  const saving = useLasting(
    useApp((state) => state.saving > 0 && state.groundQuestion === null),
    longWriteMs,
  );
  const path = useApp((state) => state.file?.path ?? '');
  return (
    <footer className={`last-line ${lastLine?.kind ?? ''}`} title={path}>
      <p role="status">{saving ? words.writing : (lastLine?.text ?? words.allSaved)}</p>
    </footer>
  );
}

/** The inspector's edge: drag it, or use the arrow keys, to make the inspector wider or narrower. */
function InspectorEdge({ widthPx }: { readonly widthPx: number }) {
  const { inspector: words } = useWords().window.frame;
  const [narrowestPx, widestPx] = bookWidthLimitsPx;
  const onPointerMove = (event: PointerEvent) => {
    if (event.buttons === 1) setBookWidth(window.innerWidth - event.clientX);
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const step = { ArrowLeft: 20, ArrowRight: -20 }[event.key];
    if (step !== undefined) setBookWidth(widthPx + step);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: an hr can't be dragged
    <div
      className="inspector-edge"
      role="separator"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label={words.width}
      aria-valuenow={widthPx}
      aria-valuemin={narrowestPx}
      aria-valuemax={widestPx}
      onPointerDown={(event) => event.currentTarget.setPointerCapture(event.pointerId)}
      onPointerMove={onPointerMove}
      onKeyDown={onKeyDown}
    />
  );
}
